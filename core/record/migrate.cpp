#include "core/record/migrate.hpp"

#include <array>
#include <cstddef>

#include "core/record/record.hpp"

namespace overwater {

namespace {

using Step = void (*)(Json& record);

/// The step at place i brings version i + 1 to version i + 2. A step once released never changes; each new one comes
/// with a fixture of the version it starts from.
constexpr std::array<Step, record_version - 1> steps{};

}  // namespace

void migrate(Json& record, int from) {
    for (auto step = static_cast<std::size_t>(from - 1); step < steps.size(); ++step) steps[step](record);
}

}  // namespace overwater
