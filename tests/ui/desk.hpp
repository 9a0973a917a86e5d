#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "tests/ui/document.hpp"
#include "web/app/app.hpp"
#include "web/browser/native_platform.hpp"

struct ImGuiContext;

namespace overwater::test {

struct Screen {
    float width = 1366;
    float height = 620;
    bool touch = false;
};

/// The whole page without a browser: the application, the document that its patches make, and a person at it. One at a
/// time. The world (storage, clock) is the native platform's and lives on when a desk is closed.
class Desk {
public:
    explicit Desk(Screen screen = {});
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    App& app() { return *app_; }
    Document& document() { return document_; }
    const Screen& screen() const { return screen_; }

    bool send(Event::Kind kind, const std::string& key = {}, const std::string& text = {}, double a = 0, double b = 0);
    /// One frame, and its patch to the document. True where there was one.
    bool frame();
    /// Frames until one changes nothing.
    void settle();
    void resize(Screen screen);
    void wait(double milliseconds);

    // A person
    void focus(const std::string& key);
    void blur();
    /// Goes to the field and types letter by letter, a frame after each; what stood there is replaced.
    void type(const std::string& key, std::string_view text);
    void choose(const std::string& key, const std::string& value);
    void press(const std::string& key);
    /// A run of one's own, with record A of method.md typed key by key.
    void own_run();
    void type_record_a();

    // What is there
    const std::vector<Node>& nodes() const { return app_->nodes(); }
    const Node* find(std::string_view key) const;
    const Node& node(std::string_view key) const;
    const Node* find(Role role, std::string_view name) const;
    /// The words of a result, by its name as in method.md section 9; spaces of any kind become plain ones.
    std::string output(std::string_view name) const;
    std::string name_of_control(const Node& control) const;

    /// The texts of languages come.
    static bool online;
    /// The last frame's patches, as they were sent.
    std::vector<std::string> last_patches;

private:
    /// What the shell does with a language asked for.
    void answer_texts();

    Screen screen_;
    ImGuiContext* context_;
    std::unique_ptr<App> app_;
    Document document_;
};

/// The text of a language as the page gets it.
std::string text_file(const std::string& tag);
/// Forgets everything kept, every setting and every clock.
void new_world();
/// The same text with plain spaces, hyphens for minus signs, and no space between the groups of a number.
std::string plain(std::string_view words);
/// The number at the beginning of a result ("22.68 L/mol"), and what a unit in its last shown digit is.
struct Shown {
    double value = 0;
    double last_digit = 1;
    std::string unit;
    bool number = false;
};
Shown shown(std::string_view words);
/// Whether a shown number is `expected`, which itself was printed to half of `step`, rounded to the digits shown.
bool rounds_to(const Shown& shown, double expected, double step);

/// A person's record as it lies in storage, or empty.
std::string stored_record(const std::string& id);
std::vector<std::string> stored_ids();

}  // namespace overwater::test
