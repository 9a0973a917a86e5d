// Every page at every size and in both languages: nothing is cut off, nothing overlaps, every control has its name.

#include <algorithm>
#include <cmath>
#include <set>

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"
#include "tests/ui/ink.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr Screen screens[] = {{1366, 620, false}, {1280, 720, false}, {768, 1024, false}, {390, 844, false},
                              {683, 310, false},  {360, 640, false},  {390, 844, true},   {768, 1024, true}};

bool is_interactive(Role role) {
    return role == Role::textbox || role == Role::select || role == Role::radio || role == Role::button ||
           role == Role::check_box || role == Role::tab || role == Role::slider;
}

bool is_container(Role role) {
    return role == Role::region || role == Role::group || role == Role::radio_group || role == Role::navigation ||
           role == Role::list || role == Role::status;
}

bool overlap(const Rect& a, const Rect& b, float slack) {
    return a.x + slack < b.right() && b.x + slack < a.right() && a.y + slack < b.bottom() && b.y + slack < a.bottom();
}

std::string words(const Rect& r) {
    const auto whole = [](float v) { return std::to_string(std::lround(v)); };
    return whole(r.x) + ',' + whole(r.y) + ' ' + whole(r.w) + 'x' + whole(r.h);
}

/// Collects what is wrong with one page as it stands.
class Inspection {
public:
    explicit Inspection(Desk& desk) : desk_(desk) {
        for (const Node& node : desk.nodes()) {
            if (node.parent == "fixed" || fixed_.find(node.parent) != fixed_.end()) fixed_.insert(node.key);
        }
    }

    std::set<std::string> faults() {
        names();
        rectangles();
        ink();
        return std::move(faults_);
    }

private:
    void fault(const std::string& what) { faults_.insert(what); }
    bool is_fixed(const Node& node) const { return fixed_.find(node.key) != fixed_.end(); }

    void names() {
        std::set<std::string> keys;
        for (const Node& node : desk_.nodes()) keys.insert(node.key);
        for (const Node& node : desk_.nodes()) {
            if (is_interactive(node.role) || node.role == Role::image || node.role == Role::math ||
                node.role == Role::radio_group || node.role == Role::region || node.role == Role::navigation ||
                node.role == Role::output) {
                const std::string name = desk_.name_of_control(node);
                if (name.empty()) fault(node.key + " has no name");
                if (name.find('{') != std::string::npos) fault(node.key + " has a name with an open place");
                if (name == node.key) fault(node.key + " is named by its key");
            }
            if (node.role == Role::label) {
                const Node* control = desk_.find(node.for_key);
                if (control == nullptr || !is_interactive(control->role)) {
                    fault(node.key + " is the label of no control");
                } else if (desk_.name_of_control(*control).find(node.name) == std::string::npos) {
                    fault(node.key + " is not contained in the control's name");
                }
            }
            if (node.role == Role::radio_group) {
                const Node* shown = desk_.find(node.key + ".label");
                if (shown == nullptr || node.name.find(shown->name) == std::string::npos) {
                    fault(node.key + ": the words shown are not its name");
                }
            }
            std::string rest = node.described_by;
            while (!rest.empty()) {
                const std::string key = rest.substr(0, rest.find(' '));
                rest.erase(0, key.size() + 1);
                if (keys.find(key) == keys.end()) fault(node.key + " is described by " + key + ", which is not there");
            }
            if (node.role == Role::text || node.role == Role::heading || node.role == Role::label) {
                if (node.name.empty()) fault(node.key + " says nothing");
                if (node.name.find('{') != std::string::npos) fault(node.key + " has an open place");
            }
        }
    }

    void rectangles() {
        std::vector<const Node*> controls;
        for (const Node& node : desk_.nodes()) {
            if (node.role == Role::status) continue;  // has no place of its own
            const Rect& r = node.rect;
            if (r.x < -0.5F || r.right() > desk_.screen().width + 0.5F)
                fault(node.key + " goes beyond the page's width");
            if (!(r.w > 0) || !(r.h >= 0)) fault(node.key + " has a rectangle without a width: " + words(r));
            const float bottom = is_fixed(node) ? desk_.screen().height : desk_.document().height;
            if (r.y < -0.5F || r.bottom() > bottom + 0.5F) fault(node.key + " goes beyond the page's height");
            if (!is_interactive(node.role)) continue;
            // 24 px at least (WCAG 2.2, 2.5.8); a radio button's label is a part of what can be hit.
            if (r.w < 24 || r.h < 24) fault(node.key + " is hard to hit: " + words(r));
            controls.push_back(&node);
        }
        for (std::size_t i = 0; i < controls.size(); ++i) {
            for (std::size_t k = i + 1; k < controls.size(); ++k) {
                if (is_fixed(*controls[i]) != is_fixed(*controls[k])) continue;
                if (overlap(controls[i]->rect, controls[k]->rect, 0.5F)) {
                    fault(controls[i]->key + " overlaps " + controls[k]->key);
                }
            }
        }
    }

    /// All letters, viewport by viewport down the page: each within the node that says it, none over another.
    void ink() {
        const Screen screen = desk_.screen();
        for (float top = 0; top < desk_.document().height; top += screen.height - 40) {
            desk_.send(Event::Kind::scroll, {}, {}, static_cast<double>(top));
            desk_.frame();
            speakers_.clear();
            for (const Node& node : desk_.nodes()) {
                Rect rect = node.rect;
                if (!is_fixed(node)) rect.y -= top;
                if (!is_container(node.role) && rect.bottom() > 0 && rect.y < screen.height) {
                    speakers_.push_back(node);
                    speakers_.back().rect = rect;
                }
            }
            examine(painted_letters(screen.width, screen.height), top);
        }
        desk_.send(Event::Kind::scroll, {}, {}, 0);
        desk_.frame();
    }

    const Node* speaker(const Rect& letter) const {
        const float x = letter.x + letter.w / 2;
        const float y = letter.y + letter.h / 2;
        const Node* best = nullptr;
        for (const Node& node : speakers_) {
            if (!node.rect.contains(x, y)) continue;
            if (best == nullptr || node.rect.w * node.rect.h < best->rect.w * best->rect.h) best = &node;
        }
        return best;
    }

    /// The node that ends last above a letter in its column: the text that ran on.
    std::string after_which(const Rect& letter) const {
        const Node* best = nullptr;
        for (const Node& node : speakers_) {
            if (node.rect.x > letter.x || node.rect.right() < letter.x || node.rect.y > letter.y) continue;
            if (best == nullptr || node.rect.bottom() > best->rect.bottom()) best = &node;
        }
        return best == nullptr ? std::string("at the top") : "after " + best->key;
    }

    std::string near_by(const Rect& letter, float top) const {
        const Node* node = speaker(letter);
        return node != nullptr ? node->key : "no node at " + words({letter.x, letter.y + top, letter.w, letter.h});
    }

    void examine(std::vector<Letter> letters, float top) {
        const Screen screen = desk_.screen();
        float dock = screen.height;
        for (const Node& node : desk_.nodes()) {
            if (node.parent == "fixed") dock = std::min(dock, node.rect.y);
        }
        for (const Letter& letter : letters) {
            const Rect& r = letter.rect;
            if (r.x < -0.5F || r.right() > screen.width + 0.5F)
                fault("a letter beyond the page's edge at " + near_by(r, top));
            if (letter.framed) {
                if (letter.cut) cut(r);
                continue;
            }
            if (speaker(r) == nullptr) fault("letters outside of every node, " + after_which(r));
        }
        // Letters of a line touch at most by a hair; what shares more was set upon something else.
        std::sort(letters.begin(), letters.end(), [](const Letter& a, const Letter& b) { return a.rect.x < b.rect.x; });
        for (std::size_t i = 0; i < letters.size(); ++i) {
            const Rect& a = letters[i].rect;
            for (std::size_t k = i + 1; k < letters.size() && letters[k].rect.x < a.right() - 2.5F; ++k) {
                const Rect& b = letters[k].rect;
                // What lies under the dock is covered by it, not mixed with it.
                const bool covered = (a.y + a.h / 2 >= dock) || (b.y + b.h / 2 >= dock);
                if (!covered && overlap(a, b, 2.5F))
                    fault("letters overlap: " + near_by(a, top) + " and " + near_by(b, top));
            }
        }
    }

    /// A list shows its choice whole; a field may hold more than it shows.
    void cut(const Rect& letter) {
        const Node* node = speaker(letter);
        if (node != nullptr && node->role != Role::textbox) fault(node->key + " shows its words cut off");
    }

    Desk& desk_;
    std::set<std::string> fixed_;  ///< keys of nodes that do not scroll
    std::vector<Node> speakers_;   ///< whose letters may be found in their rectangles
    std::set<std::string> faults_;
};

/// All at once: what stands there letter by letter is looked at elsewhere.
void enter(Desk& desk, const std::string& key, const std::string& text) {
    desk.focus(key);
    desk.document().type(key, text);
    desk.send(Event::Kind::input, key, text);
    desk.settle();
}

void type_refusals(Desk& desk) {
    // Each text is refused or doubted in its own way, so that the longest sentences stand below the fields.
    desk.choose("bench.number_at_closed_end.largest", "largest");
    desk.choose("bench.liquid_stands.higher_inside", "higher_inside");
    static constexpr std::pair<const char*, const char*> texts[] = {
        {"bench.mass_of_metal", "0.0412 grain"}, {"bench.acid_volume", "-1"},  {"bench.acid_concentration", "3.0.0"},
        {"bench.tube_capacity", "50"},           {"bench.end_space", "-2"},    {"bench.scale_reading", "60.00"},
        {"bench.level_difference", "-112"},      {"bench.temperature", "212"}, {"bench.barometer", "abc"}};
    for (const auto& [key, text] : texts) enter(desk, key, text);
}

void start_practice(Desk& desk, Release release, Difficulty difficulty) {
    PracticeSettings settings;
    settings.seed = 2718;
    settings.student = 12;
    settings.release = release;
    settings.difficulty = difficulty;
    settings.mishap = release == Release::after_attempt;
    desk.press("header.practice");
    enter(desk, "practice.code", code_of(settings));
    desk.press("practice.start");
}

struct State {
    const char* name;
    void (*reach)(Desk&);
};

constexpr State states[] = {
    {"bench with the example", [](Desk&) {}},
    {"working", [](Desk& desk) { desk.press("header.working"); }},
    {"records", [](Desk& desk) { desk.press("header.record"); }},
    {"cautions", [](Desk& desk) { desk.press("header.cautions"); }},
    {"conventions", [](Desk& desk) { desk.press("header.conventions"); }},
    {"bench with the field at hand",
     [](Desk& desk) {
         desk.press("header.bench");
         desk.focus("bench.end_space");
         desk.settle();
     }},
    {"bench with a doubt open",
     [](Desk& desk) {
         desk.press("bench.scale_reading.doubt");
         desk.choose("bench.scale_reading.instrument", "burette_25_005_b");
         for (const char* number : {"0", "1", "2", "3", "4"}) {
             enter(desk, std::string("bench.scale_reading.repeat.") + number, "9.1");
         }
     }},
    {"bench with a doubt that cannot be",
     [](Desk& desk) {
         enter(desk, "bench.scale_reading.plus_minus", "half");
         enter(desk, "bench.scale_reading.repeat.0", "9,1.5");
         desk.choose("bench.scale_reading.instrument", "");
     }},
    {"bench with the doubt of the tube", [](Desk& desk) { desk.press("bench.tube_capacity.doubt"); }},
    {"bench with the acid too little", [](Desk& desk) { enter(desk, "bench.acid_volume", "0.5"); }},
    {"bench of an own run", [](Desk& desk) { desk.own_run(); }},
    {"working of an own run", [](Desk& desk) { desk.press("header.working"); }},
    {"bench with refusals",
     [](Desk& desk) {
         desk.press("header.bench");
         type_refusals(desk);
     }},
    {"working with refusals", [](Desk& desk) { desk.press("header.working"); }},
    {"bench with everything open, second run",
     [](Desk& desk) {
         desk.press("header.bench");
         for (const char* group : {"metal", "tube", "after", "room"}) {
             if (desk.find(std::string("bench.details.") + group) != nullptr) {
                 desk.press(std::string("bench.details.") + group);
             }
         }
         desk.press("runs.add");
     }},
    {"bench with ribbon and weather report",
     [](Desk& desk) {
         desk.choose("bench.mass_from.ribbon", "ribbon");
         desk.choose("bench.pressure_kind.reduced_to_sea_level", "reduced_to_sea_level");
         desk.choose("bench.acid.sulfuric", "sulfuric");
     }},
    {"conventions with conditions and a set of one's own",
     [](Desk& desk) {
         desk.press("header.conventions");
         desk.choose("conventions.standard.own", "own");
         desk.choose("conventions.vapour.older_table", "older_table");
         enter(desk, "conventions.set_name", "Class 3 b, spring");
         desk.press("conventions.set_keep");
     }},
    {"working with every unit to be converted",
     [](Desk& desk) {
         desk.press("header.bench");
         desk.choose("bench.mass_from.weighed", "weighed");
         desk.choose("bench.pressure_kind.at_the_bench", "at_the_bench");
         static constexpr std::pair<const char*, const char*> texts[] = {
             {"bench.mass_of_metal", "41.2 mg"}, {"bench.tube_capacity", "0.0500 L"},
             {"bench.end_space", "2.34 g"},      {"bench.scale_reading", "9.15 cm3"},
             {"bench.temperature", "70.5 degF"}, {"bench.level_difference", "4.41 in"},
             {"bench.barometer", "29.42 inHg"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.press("header.working");
     }},
    {"practice with what is no code",
     [](Desk& desk) {
         desk.press("header.practice");
         enter(desk, "practice.code", "0K3FQ-07H");
         desk.press("practice.start");
     }},
    {"codes for a class",
     [](Desk& desk) {
         desk.press("practice.to_codes");
         desk.choose("codes.release", "by_word");
         enter(desk, "codes.seed", "none");
     }},
    {"codes without a number of students", [](Desk& desk) { enter(desk, "codes.students", "1000"); }},
    {"bench of a practice run by word",
     [](Desk& desk) { start_practice(desk, Release::by_word, Difficulty::hard); }},
    {"practice run by word",
     [](Desk& desk) {
         desk.press("practice.to_check");
         enter(desk, "answers.word.away", "lalala");
         desk.press("answers.show");
     }},
    {"bench of a practice run, the meniscus enlarged",
     [](Desk& desk) {
         start_practice(desk, Release::at_once, Difficulty::usual);
         desk.focus("bench.scale_reading");
         desk.settle();
         desk.press("practice.larger");
     }},
    {"practice run with readings missing", [](Desk& desk) { desk.press("practice.to_check"); }},
    {"practice run after an attempt",
     [](Desk& desk) {
         start_practice(desk, Release::after_attempt, Difficulty::hard);
         enter(desk, "bench.temperature", "21.3");
         desk.press("practice.to_check");
         for (int run = 0; desk.find("practice.run." + std::to_string(run)) != nullptr || run == 0; ++run) {
             if (run > 0) desk.press("practice.run." + std::to_string(run));
             enter(desk, "answers.molar_volume.away", "22.4");
             desk.press("answers.show");
         }
     }},
    {"practice run with the mishap said", [](Desk& desk) { desk.choose("practice.mishap", "gas_warm"); }},
    {"answers of a record, checked and helped",
     [](Desk& desk) {
         // A record of one's own: the runs of a practice run are given.
         desk.press("header.record");
         desk.press("records.new");
         desk.press("header.bench");
         desk.press("runs.add");
         desk.type_record_a();
         desk.press("header.conventions");
         desk.choose("conventions.answers.live", "live");
         desk.press("header.answers");
         static constexpr std::pair<const char*, const char*> texts[] = {
             {"sheet.gas_volume", "43.20 mL"},         {"sheet.water_vapour_pressure", "2.5"},
             {"sheet.dry_gas_pressure", "98.52 kPa"},  {"sheet.amount_of_metal", "a few"},
             {"sheet.amount_of_gas", "0.001695 mmol"}, {"sheet.volume_at_standard", "39.4712345 mL"},
             {"sheet.molar_volume_standard", "77 L/mol"}, {"sheet.mean", "1"}, {"sheet.percent_error", "12"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.press("sheet.check_all");
         for (const char* step : {"dry_gas_pressure", "amount_of_metal", "molar_volume_standard", "percent_error", "mean"}) {
             for (int i = 0; i < 2; ++i) desk.press("sheet." + std::string(step) + ".check");
         }
     }},
    {"marking without sheets",
     [](Desk& desk) {
         desk.press("header.practice");
         desk.press("practice.to_marking");
         enter(desk, "marking.tolerance", "a lot");
         desk.press("marking.read");
     }},
    {"marking a class, one sheet open",
     [](Desk& desk) {
         enter(desk, "marking.text",
               "Group\tRun\tColour\tScale reading (mL)\tGas volume (mL)\tDry-gas pressure (kPa)\tMolar volume (L/mol)\n"
               "1\t1\t\t9.15\t43.20\t98.52\t23.28\n1\t2\t\t10.15\t42.20\t98.52\t22.75\n"
               "12345\t1\tgreen\t9.15\t11.5\t\t77\nAda\t\t\t9.15\t43.2\t95.97\t22.68\n");
         desk.press("marking.read");
         desk.press("marking.sheet.1.open");
     }},
    {"a plan with everything said",
     [](Desk& desk) {
         desk.press("header.class");
         desk.press("class.plan");
         const std::pair<std::string, std::string> texts[] = {
             {"plan.bench.mass_per_metre", "1.02"}, {"plan.bench.acid_concentration", "6.0"}, {"plan.groups", "12"},
             {"plan.runs", "2"}, {"plan.share", "0.5"}, {"plan.mouth_space", "-1"},
             {"plan.bench.height_above_sea_level", "4000"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.choose("plan.consent", "true");
         desk.choose("plan.bench.mass_from", "ribbon");
         enter(desk, "plan.bench.ribbon_length", "4.2");
     }},
    {"a plan that waits and refuses",
     [](Desk& desk) {
         desk.press("header.class");
         desk.press("class.plan");
         for (const char* key : {"plan.bench.temperature", "plan.spare", "plan.excess", "plan.least_share"}) {
             enter(desk, key, "a lot");
         }
         desk.choose("plan.bench.metal", "lithium");
         desk.choose("plan.bench.acid", "sulfuric");
     }},
    {"records with a long name",
     [](Desk& desk) {
         desk.press("header.record");
         enter(desk, "records.name", "Blue bench, group 7, the second run after the break of the first tube");
         desk.settle();
     }},
};

}  // namespace

TEST_CASE("An inspection finds what is cut off, overlaps, or has no name") {
    new_world();
    Desk desk;
    CHECK(Inspection(desk).faults().empty());
    auto& nodes = const_cast<std::vector<Node>&>(desk.nodes());
    const auto planted = [&](std::string_view key, auto change) {
        const std::vector<Node> before = desk.nodes();
        for (Node& node : nodes) {
            if (node.key == key) change(node);
        }
        const auto found = Inspection(desk).faults();
        nodes = before;
        return found.size();
    };
    CHECK(planted("bench.mass_of_metal.label", [](Node& n) { n.for_key = "bench.other"; }) > 0);
    CHECK(planted("bench.mass_of_metal", [](Node& n) { n.described_by = "not.there"; }) > 0);
    CHECK(planted("bench.mass_of_metal", [](Node& n) { n.rect.h += 20; }) > 0);
    CHECK(planted("results.scale", [](Node& n) { n.rect.w += 2000; }) > 0);
    CHECK(planted("results.scale", [](Node& n) { n.name.clear(); }) > 0);
    CHECK(planted("header.undo", [](Node& n) { n.rect.w = 10; }) > 0);
    // Ink: two texts at one place, one outside of every node, one cut.
    const auto letters = painted_letters(1366, 620);
    CHECK(letters.size() > 500);
    CHECK(std::any_of(letters.begin(), letters.end(), [](const Letter& l) { return l.framed; }));
    CHECK(std::none_of(letters.begin(), letters.end(), [](const Letter& l) { return l.cut; }));
}

namespace {

/// The faults of every state of the page at one size in one language.
void inspect_all(const std::string& language, const Screen& screen) {
    new_world();
    native_world().fragment = "lang=" + language;
    Desk desk(screen);
    REQUIRE(desk.document().language == language);
    for (const State& state : states) {
        state.reach(desk);
        const std::string place = language + ' ' + std::to_string(std::lround(screen.width)) + 'x' +
                                  std::to_string(std::lround(screen.height)) + (screen.touch ? " touch, " : ", ") +
                                  state.name;
        for (const std::string& fault : Inspection(desk).faults()) FAIL_CHECK((place + ": " + fault));
        for (const std::string& fault : desk.document().faults) FAIL_CHECK((place + ": " + fault));
        desk.document().faults.clear();
    }
}

}  // namespace

// tools/test runs this suite beside all others: it takes most of the time.
TEST_SUITE("layout") {
TEST_CASE("Nothing is cut off or overlaps, and everything has its name, on every page, at every size, also 40 % longer") {
    for (const char* language : {"en", "en-x-pseudo"}) {
        for (const Screen& screen : screens) {
            // Fingers need more room: where the longer words find it, the shorter ones do.
            if (screen.touch && std::string_view(language) == "en") continue;
            inspect_all(language, screen);
        }
    }
}

TEST_CASE("The same in every language, on a wide page and on the narrowest") {
    for (const LanguageName& language : language_names) {
        if (std::string_view(language.tag) == "en") continue;
        for (const Screen& screen : screens) {
            if (screen.width == 1366 || screen.width == 360) inspect_all(std::string(language.tag), screen);
        }
    }
}

}  // TEST_SUITE

TEST_CASE("The header with its list of languages is one row on a wide page") {
    for (const float width : {1366.0F, 1280.0F}) {
        new_world();
        Desk desk({width, 620, false});
        CHECK(desk.node("header").rect.h < 60);
        desk.own_run();
        CHECK(desk.node("header").rect.h < 60);
        CHECK(desk.node("header.language").rect.right() <= width);
    }
}

TEST_CASE("The bench needs no scrolling at 1366x620") {
    new_world();
    Desk desk({1366, 620, false});
    CHECK(desk.document().height <= 620);
    desk.own_run();
    CHECK(desk.document().height <= 620);
    desk.type_record_a();
    CHECK(desk.document().height <= 620);
    for (const Node& node : desk.nodes()) {
        if (node.role == Role::textbox) {
            desk.focus(node.key);
            break;
        }
    }
    desk.settle();
    CHECK(desk.document().height <= 620);
}
