#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/bench/readings.hpp"
#include "core/result/assess.hpp"
#include "core/result/method.hpp"

/// The slips that people make, each a value of Method with a name, the step it is made in and how common it is.

namespace overwater {

/// Where in the calculation a slip is made: slips of one part change that part's numbers only.
enum class SlipPart : std::uint8_t {
    volume,      ///< from the scale to the gas volume
    pressure,    ///< from the barometer to the dry-gas pressure
    amount,      ///< from the mass to the amount of gas
    conversion,  ///< to standard conditions, and what belongs to the gas law
    comparison   ///< with the accepted value, and what is made of it in another last line
};
inline constexpr std::size_t slip_part_count = 5;

struct Slip {
    std::string_view name;   ///< in keys of messages: slip.NAME.*
    std::uint8_t row;        ///< of the collection of mistakes, section 1 (standing in slip_table.cpp)
    SlipPart part;
    Output step;             ///< the first step that comes out wrong
    std::uint8_t axis;       ///< byte of Method that it changes
    std::uint8_t value;      ///< ... and to what
    std::uint8_t commonness; ///< 1 to 100, relative: common practice, no source

    constexpr bool excludes(const Slip& other) const { return axis == other.axis; }
};

/// All slips; an index into it is a slip's number.
inline constexpr std::size_t slip_count = 92;
extern const std::array<Slip, slip_count> slip_table;

using SlipIndex = std::uint8_t;

/// One to three slips made together.
struct SlipSet {
    std::array<SlipIndex, 3> slips{};
    std::uint8_t count = 0;

    bool add(SlipIndex slip);  ///< false, and nothing done, where there are three or one of the same step's kind
    bool has(SlipIndex slip) const;
    friend bool operator==(const SlipSet&, const SlipSet&) = default;
};

/// Makes the slip in `method`: each way is one byte, its place in the method is the slip's axis.
inline void make_slip(Method& method, SlipIndex slip) {
    reinterpret_cast<unsigned char*>(&method)[slip_table[slip].axis] = slip_table[slip].value;
}
Method method_of(const SlipSet& slips);

/// Whether the slip can be made in a run of this kind and would change something: an end space can be forgotten only
/// where there is one.
bool can_happen(SlipIndex slip, const Assessment& run);

}  // namespace overwater
