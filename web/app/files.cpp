// Records as files: exported one by one or all together, and taken in again.

#include <algorithm>

#include "core/record/json.hpp"
#include "core/record/text_guard.hpp"
#include "web/app/app.hpp"
#include "web/app/files_scan.hpp"
#include "web/app/incoming.hpp"
#include "web/app/record_link.hpp"
#include "web/app/record_title.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

/// More than any browser stores.
constexpr std::size_t most_file_bytes = 16'000'000;
constexpr std::size_t longest_file_name = 60;
constexpr std::string_view media_type = "application/json";

/// A name that every file system takes: letters of any script stay, signs with a meaning become hyphens.
std::string safe_name(std::string_view name) {
    std::string out;
    for (const char c : name) {
        const auto byte = static_cast<unsigned char>(c);
        const bool letter = byte >= 0x80 || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (letter || c == '_') {
            out += c;
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    while (out.size() > longest_file_name || (!out.empty() && out.back() == '-')) {
        // Whole characters only.
        while (out.size() > 1 && (static_cast<unsigned char>(out.back()) & 0xc0) == 0x80) out.pop_back();
        out.pop_back();
    }
    return out.empty() ? std::string("record") : out;
}

std::string file_name(std::string_view name) {
    return safe_name(name) + "-" + platform::iso_time().substr(0, 10) + ".json";
}

void read_one(std::string_view json, Incomings& into) {
    LoadResult loaded = record_from_json(json);
    if (!loaded.record) {
        into.problem = std::move(loaded.problem);
        return;
    }
    Incoming incoming;
    incoming.record = *std::move(loaded.record);
    incoming.newer = loaded.newer;
    if (loaded.newer) incoming.as_it_came = json;
    into.records.push_back(std::move(incoming));
}

bool usable_id(std::string_view id) {
    const auto fits = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
    };
    return !id.empty() && id.size() <= 40 && id != "example" && std::all_of(id.begin(), id.end(), fits);
}

/// Whether two records say the same; when they were saved does not count.
bool same_content(Record one, Record other) {
    one.saved.clear();
    other.saved.clear();
    return one == other;
}

}  // namespace

Incomings records_in(std::string_view text) {
    Incomings all;
    if (text.size() > most_file_bytes) {
        all.problem = Message{"import.file_too_large"};
        return all;
    }
    text = without_byte_order_mark(text);
    if (text.empty()) {
        all.problem = Message{"import.empty"};
        return all;
    }
    if (member_text(text, "overwater") != R"("records")") {
        read_one(text, all);
        return all;
    }
    // Many records in one file. Each is read under the limits of a single one.
    const auto list = member_text(text, "records");
    const auto elements = list ? element_texts(*list) : std::nullopt;
    if (member_text(text, "version") != "1") {
        all.problem = Message{"import.newer_set"};
    } else if (!elements) {
        all.problem = Message{"import.not_json"};
    } else if (elements->empty()) {
        all.problem = Message{"import.no_records"};
    } else {
        for (const std::string_view element : *elements) {
            read_one(element, all);
            if (all.problem) break;
        }
    }
    return all;
}

void App::export_record(const std::string& id) {
    const auto text = shelf_.file_text(id);
    if (text) {
        const auto loaded = shelf_.load(id);
        platform::save_file(file_name(loaded ? loaded->record.name : id), media_type, *text);
    } else if (id == record_.id) {
        platform::save_file(file_name(record_.name), media_type, record_to_json(record_));
    }
}

void App::save_course() {
    const OwnCourse& course = own_courses_[open_course_];
    platform::save_file(file_name(course.name), media_type, course_to_json(course) + '\n');
}

void App::export_all() {
    std::string all = R"({"overwater":"records","version":1,"records":[)";
    bool first = true;
    for (const Shelf::Card& card : shelf_.cards()) {
        const auto text = shelf_.file_text(card.id);
        if (!text) continue;
        all += first ? "\n" : ",\n";
        all += *text;
        first = false;
    }
    all += "]}\n";
    platform::save_file(file_name("overwater-records"), media_type, all);
}

void App::export_damaged(const std::string& key) {
    if (const auto text = platform::store_get(key)) {
        platform::save_file(safe_name(key) + ".txt", "text/plain", *text);
    }
}

void App::copy_record_link() {
    platform::clipboard_put('#' + record_fragment(record_));
    tell(say("records.link_copied"));
}

void App::import_file(const std::string& name, const std::string& text) {
    // All of a file or nothing: everything is read before anything changes.
    const std::string file = name.size() <= 80 ? name : safe_name(name);
    if (member_text(without_byte_order_mark(text), "overwater") == R"("course")") return offer_course(text, file);
    Incomings all = records_in(text);
    if (all.problem) {
        tell(say(Message{"import.refused"}.text("file", file).text("reason", say(*all.problem))), true);
        return;
    }
    int fresh = 0;
    int known = 0;
    std::string shown;
    bool newer = false;
    for (Incoming& incoming : all.records) {
        Record& record = incoming.record;
        if (!usable_id(record.id)) record.id = Shelf::new_id();
        if (const auto here = shelf_.load(record.id)) {
            const bool same = incoming.newer ? shelf_.file_text(record.id) == incoming.as_it_came
                                             : same_content(here->record, record);
            if (same) {
                ++known;
                shown = record.id;
                continue;
            }
            record.id = Shelf::new_id();
            record.name = copy_title(language_, record.name);
        }
        // A damaged text that lies under the id is a conflict too: it is left as it is.
        const auto keep = [&] {
            return incoming.newer ? shelf_.keep_as_it_came(record, incoming.as_it_came) : shelf_.keep(record);
        };
        if (keep() == Shelf::Kept::conflict) {
            record.id = Shelf::new_id();
            keep();
        }
        ++fresh;
        newer = newer || incoming.newer;
        shown = record.id;
    }
    if (auto loaded = shelf_.load(shown)) take(std::move(loaded->record), loaded->newer);
    shelf_.set_setting("record", shown);
    if (all.records.size() > 1) {
        tell(say(Message{"import.opened_many"}.text("file", file).count("number", fresh)));
        if (known > 0) tell(say(Message{"import.known_many"}.count("number", known)));
    } else {
        const std::string title = record_title(language_, record_.name);
        tell(say(Message{known > 0 ? "import.known" : "import.opened"}.text("file", file).text("name", title)));
    }
    // Where the one shown is such a record, that is said as long as it is shown.
    if (newer && !read_only_) tell(say(Message{"import.newer"}), true);
}

}  // namespace overwater
