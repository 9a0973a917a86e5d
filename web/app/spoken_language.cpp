// Which language is spoken: the one in the address, else the one chosen by hand, else the browser's.

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

constexpr std::string_view language_setting = "language";
constexpr std::string_view sign_setting = "decimal_sign";
constexpr std::string_view link_prefix = "lang=";

}  // namespace

void App::begin_language(const std::string& fragment) {
    std::string wanted = shelf_.setting(language_setting);
    if (wanted.empty()) wanted = platform::language();
    const std::size_t at = fragment.find(link_prefix);
    if (at == 0 || (at != std::string::npos && fragment[at - 1] == '&')) {
        const std::size_t begin = at + link_prefix.size();
        wanted = fragment.substr(begin, fragment.find('&', begin) - begin);
    }
    if (const char* tag = language_for(wanted); tag != language_.tag()) ask_language(tag);
}

/// Speaks it at once where its text is here, else as soon as that comes.
void App::ask_language(const std::string& tag) {
    wanted_language_ = tag;
    if (language_.speak(tag)) {
        language_changed();
    } else {
        platform::bring_text(tag);
    }
}

void App::choose_language(const std::string& tag) {
    language_by_hand_ = true;
    ask_language(tag);
}

void App::text_came(const std::string& tag, const std::string& packed) {
    if (!language_.learn(tag, packed)) {
        for (const LanguageName& language : language_names) {
            if (language.tag != tag) continue;
            tell(say(Message{"language.not_loaded"}.text("language", language.name)), true);
        }
        language_by_hand_ = false;
        wanted_language_.clear();
        // The list shows again what is spoken.
        ++interaction_.write;
    } else if (tag == wanted_language_ && language_.speak(tag)) {
        language_changed();
    }
}

void App::language_changed() {
    wanted_language_.clear();
    if (language_by_hand_) {
        shelf_.set_setting(language_setting, language_.tag());
        shelf_.set_setting(sign_setting, {});
        language_by_hand_ = false;
    }
    if (!started_) return;
    // Words that were put together before are put together again, or go.
    notices_.clear();
    status_.clear();
    shelf_.forget_results();
    ++interaction_.write;
    for (PoolGroup& group : pool_.groups) assess_group(group);
    if (record_.id == example_id && shelf_.state_of(record_.id) == Shelf::Kept::nothing_yet) open_example();
    recompute();
    platform::wake(3);
}

DecimalSign App::new_decimal_sign() const {
    const std::string chosen = shelf_.setting(sign_setting);
    if (chosen.empty()) return language_.usual_decimal_sign();
    return chosen == "," ? DecimalSign::comma : DecimalSign::point;
}

void App::keep_decimal_sign() {
    shelf_.set_setting(sign_setting, record_.conventions.decimal_sign == DecimalSign::comma ? "," : ".");
}

}  // namespace overwater
