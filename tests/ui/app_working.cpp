// The working page: other results of the same readings, what limits the result, conversions, reasons, ties.

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

struct OwnRun {
    OwnRun() {
        new_world();
        desk = std::make_unique<Desk>();
        desk->own_run();
        desk->type_record_a();
    }
    Desk* operator->() const { return desk.get(); }
    std::string words(std::string_view key) const { return plain(desk->node(key).name); }
    std::string value(std::string_view key) const { return plain(desk->node(key).value); }
    void choose_convention(const std::string& key, const std::string& value) const {
        desk->press("header.conventions");
        desk->choose(key, value);
        desk->press("header.working");
    }
    std::unique_ptr<Desk> desk;
};

}  // namespace

TEST_CASE("Other results stand below the steps, each with what it compares with") {
    OwnRun run;
    run->press("header.working");
    CHECK(run.words("working.other") == "Other results from the same readings");
    // From the table of record A in method.md: 22.6818 L/mol x 1.69512 mmol = 38.4484 mL, and so on.
    CHECK(rounds_to(shown(run->output("Gas constant")), 8.30380, 0.00001));
    CHECK(rounds_to(shown(run->output("Volume at standard conditions")), 38.4484, 0.0004));
    CHECK(rounds_to(shown(run->output("Amount of gas from its volume")), 1.69294, 0.00004));
    CHECK(rounds_to(shown(run->output("Molar mass of the metal")), 24.3363, 0.0004));
    CHECK(rounds_to(shown(run->output("Purity found")), 99.8714, 0.0008));
    // 8.30380/8.31446 = 0.99872; 24.3363/24.305 = 1.00129.
    CHECK(run.words("working.row.gas_constant.remark1").find("8.31446 J/(mol") != std::string::npos);
    CHECK(run.words("working.row.gas_constant.remark1").find("-0.13 %") != std::string::npos);
    CHECK(run.words("working.row.molar_mass_found.remark1").find("24.305 g/mol") != std::string::npos);
    CHECK(run.words("working.row.molar_mass_found.remark1").find("+0.13 %") != std::string::npos);
    CHECK(run->find("working.row.purity_found.remark1") == nullptr);
    // They are none of the steps.
    for (const Node& node : run->nodes()) {
        if (node.key == "working.row.gas_constant") CHECK(node.parent == "working.others");
    }
    run->press("header.bench");
    run->type("bench.mass_of_metal", "0.0400");
    run->press("header.working");
    CHECK(run.words("working.row.purity_found.remark1").find("100 %") != std::string::npos);
}

TEST_CASE("With volumes as collected the gas constant alone is left of them") {
    OwnRun run;
    run.choose_convention("conventions.conversion.none", "none");
    CHECK(run->find("working.row.gas_constant") != nullptr);
    for (const char* output : {"volume_at_standard", "amount_by_volume", "molar_mass_found", "purity_found"}) {
        CHECK(run->find(std::string("working.row.") + output) == nullptr);
    }
    CHECK(run->find("working.other_about") == nullptr);
}

TEST_CASE("The reading that limits the result is named below it, and nowhere else") {
    OwnRun run;
    run->press("header.working");
    // method.md, section 5.
    CHECK(run.words("working.row.molar_volume_standard.remark1").find("Mass of metal has 3 figures") !=
          std::string::npos);
    CHECK(run->find("working.row.molar_volume_bench.remark1") == nullptr);
    // 50 - 48 + 2.35 mL: one figure is left.
    run->press("header.bench");
    run->type("bench.scale_reading", "48");
    run->press("header.working");
    const std::string limit = run.words("working.row.molar_volume_standard.remark1");
    CHECK(limit.find("Gas volume has 1 figure,") != std::string::npos);
    CHECK(limit.find("Scale reading") != std::string::npos);
}

TEST_CASE("Reasons and conversions stand on the working page alone") {
    OwnRun run;
    const auto count = [&](std::string_view part) {
        int found = 0;
        for (const Node& node : run->nodes()) found += node.key.find(part) != std::string::npos ? 1 : 0;
        return found;
    };
    CHECK(count(".reason") == 0);
    CHECK(count(".conversion1") == 0);
    run->press("header.working");
    int rows = 0;
    for (const Node& node : run->nodes()) {
        if (node.role == Role::list_item && node.key.starts_with("working.row.")) ++rows;
    }
    CHECK(rows > 12);
    CHECK(count(".reason") == rows);
    CHECK(run->find("working.row.column_pressure.conversion1") != nullptr);
    run->press("header.projector");
    CHECK(count(".reason") == 0);
}

TEST_CASE("A tie in a result comes out as the conventions say") {
    OwnRun run;
    // 50 - 9.1 + 2.35 = 43.25 mL, to a tenth: half up 43.3, to the even digit 43.2.
    run->type("bench.scale_reading", "9.1");
    CHECK(run->output("Gas volume") == "43.3 mL");
    run.choose_convention("conventions.rounding.half_to_even", "half_to_even");
    CHECK(run.value("working.row.gas_volume.value").starts_with("43.2 mL"));
    run->press("header.bench");
    CHECK(run->output("Gas volume") == "43.2 mL");
}
