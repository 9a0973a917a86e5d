// Readings that no bench has: what is typed stays, a sentence says what is wrong with it, and nothing becomes "nan" or "inf".

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "core/bench/apparatus.hpp"
#include "tests/ui/desk.hpp"
#include "tests/ui/every_state.hpp"
#include "tests/ui/no_number.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

// The largest and the smallest double, what lies beyond both, and what is below zero or nothing.
constexpr const char* absurd[] = {"1e308", "-1e308", "1e400", "4.9e-324", "-1", "0"};

/// The fields of numbers that the bench shows now.
std::vector<std::string> number_fields(const Desk& desk) {
    std::vector<std::string> keys;
    for (const Node& node : desk.nodes()) {
        if (node.role == Role::textbox && node.input_mode == "decimal" && node.key.starts_with("bench."))
            keys.push_back(node.key);
    }
    return keys;
}

void look(Desk& desk) {
    for (const Node& node : desk.nodes()) {
        CHECK_MESSAGE(!says_no_number(node), (node.key + ": " + node.name + ' ' + node.value));
    }
}

bool explained(const Desk& desk, const Node& field) {
    for (const Node& node : desk.nodes()) {
        if (field.described_by.find(node.key) != std::string::npos && node.name.size() > 10) return true;
    }
    return false;
}

void run_of(Desk& desk, Apparatus vessel) {
    desk.own_run();
    desk.type_record_a();
    if (vessel == Apparatus::tube_over_water) return;
    desk.press("bench.details.tube");
    desk.choose("bench.apparatus", std::string(name_of(vessel)));
    for (const auto& [key, text] : {std::pair{"bench.flask_volume", "150.0"},
                                    {"bench.pressure_after", "120.1"},
                                    {"bench.displaced_mass", "43.1"},
                                    {"bench.tube_capacity", "60"},
                                    {"bench.scale_reading", "43.2"}}) {
        if (desk.find(key) != nullptr) enter(desk, key, text);
    }
}

}  // namespace

TEST_CASE("no reading is so absurd that the page says nothing to it, or says a number that is none") {
    for (std::size_t i = 0; i < apparatus_count; ++i) {
        const auto vessel = static_cast<Apparatus>(i);
        CAPTURE(std::string(name_of(vessel)));
        new_world();
        Desk desk;
        run_of(desk, vessel);
        const std::vector<std::string> fields = number_fields(desk);
        REQUIRE(fields.size() >= 5);
        for (const std::string& key : fields) {
            CAPTURE(key);
            const std::string before = desk.node(key).value;
            for (const char* text : absurd) {
                CAPTURE(text);
                enter(desk, key, text);
                desk.blur();
                desk.settle();
                CHECK(desk.node(key).value == text);
                look(desk);
                // Nothing is a length, a temperature or a level too; of what is larger or smaller than all benches something is said.
                const std::string_view typed = text;
                if (typed != "0" && typed != "-1") CHECK(explained(desk, desk.node(key)));
                for (const char* page : {"header.working", "header.gap"}) {
                    if (desk.find(page) == nullptr) continue;
                    desk.press(page);
                    look(desk);
                }
                desk.press("header.bench");
            }
            // Trials take their time: with the smallest number alone, which is one to all that follows.
            enter(desk, key, "4.9e-324");
            desk.press("header.how_sure");
            look(desk);
            desk.press("header.bench");
            enter(desk, key, before);
        }
    }
}
