#include "tests/ui/desk.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>

#include "doctest/doctest.h"
#include "imgui.h"
#include "web/browser/imgui_host.hpp"

namespace overwater::test {

namespace {

constexpr std::string_view record_prefix = "overwater.record.";

}  // namespace

bool Desk::online = true;

void new_world() {
    native_world() = NativeWorld{};
    Desk::online = true;
}

Desk::Desk(Screen screen) : screen_(screen), context_(ImGui::CreateContext()) {
    ImGui::SetCurrentContext(context_);
    set_up_imgui();
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    // Lines without textures, so that letters are the only textured quads (ink.cpp).
    ImGui::GetStyle().AntiAliasedLinesUseTex = false;
    native_world().patches.clear();
    native_world().focused.clear();
    app_ = std::make_unique<App>();
    app_->load_fonts();
    native_world().media.coarse_pointer = screen.touch;
    send(Event::Kind::media);
    send(Event::Kind::painting, {}, {}, 1);
    settle();
}

Desk::~Desk() {
    app_.reset();
    drop_textures();
    ImGui::DestroyContext(context_);
}

bool Desk::send(Event::Kind kind, const std::string& key, const std::string& text, double a, double b) {
    Event event{kind, key, text, a, b, 1};
    const bool used = app_->handle(event);
    platform::wake(3);
    answer_texts();
    return used;
}

void Desk::answer_texts() {
    auto& wanted = native_world().texts_wanted;
    while (!wanted.empty()) {
        const std::string tag = wanted.front();
        wanted.erase(wanted.begin());
        app_->handle({Event::Kind::text, tag, online ? text_file(tag) : std::string()});
        platform::wake(3);
    }
}

std::string text_file(const std::string& tag) {
    std::ifstream file(std::string(OVERWATER_TEXT_FOLDER) + '/' + tag + ".txt", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

bool Desk::frame() {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = ImVec2(screen_.width, screen_.height);
    io.DeltaTime = 1.0F / 60;
    int& wanted = native_world().frames_wanted;
    if (wanted > 0) --wanted;
    native_world().patches.clear();
    ImGui::NewFrame();
    app_->frame(screen_.width, screen_.height);
    ImGui::Render();
    answer_textures(ImGui::GetDrawData());
    last_patches = native_world().patches;
    document_.rest();
    for (const std::string& patch : last_patches) document_.apply(patch);
    // What the shell does with a focus asked for.
    if (std::string& wish = native_world().focused; !wish.empty() && find(wish) != nullptr) {
        const std::string key = wish;
        wish.clear();
        focus(key);
    }
    return !last_patches.empty();
}

void Desk::settle() {
    for (int i = 0; i < 12; ++i) {
        // A press is answered in the frame after it, and what it changed is drawn in the next.
        if (!frame() && i > 0) return;
    }
    FAIL("the page changes without an end");
}

void Desk::resize(Screen screen) {
    screen_ = screen;
    native_world().media.coarse_pointer = screen.touch;
    send(Event::Kind::media);
    send(Event::Kind::resize, {}, {}, static_cast<double>(screen.width), static_cast<double>(screen.height));
    settle();
}

void Desk::wait(double milliseconds) {
    for (const std::string& name : native_advance(milliseconds)) send(Event::Kind::timer, name);
    settle();
}

void Desk::focus(const std::string& key) {
    if (document_.focused == key) return;
    blur();
    document_.focused = key;
    send(Event::Kind::focus, key);
}

void Desk::blur() {
    if (document_.focused.empty()) return;
    const std::string key = document_.focused;
    document_.focused.clear();
    send(Event::Kind::blur, key);
}

void Desk::type(const std::string& key, std::string_view text) {
    REQUIRE_MESSAGE(find(key) != nullptr, key);
    focus(key);
    std::string typed;
    for (const char c : text) {
        typed += c;
        document_.type(key, typed);
        // A letter of several bytes comes at once.
        const std::size_t next = typed.size();
        if (next < text.size() && (static_cast<unsigned char>(text[next]) & 0xc0) == 0x80) continue;
        send(Event::Kind::input, key, typed, static_cast<double>(typed.size()));
        frame();
    }
    if (text.empty()) {
        document_.type(key, typed);
        send(Event::Kind::input, key, typed);
        frame();
    }
}

void Desk::choose(const std::string& key, const std::string& value) {
    const Node* control = find(key);
    REQUIRE_MESSAGE(control != nullptr, key);
    focus(key);
    if (control->role == Role::select) document_.type(key, value);
    send(Event::Kind::change, key, value);
    settle();
}

void Desk::press(const std::string& key) {
    REQUIRE_MESSAGE(find(key) != nullptr, key);
    focus(key);
    send(Event::Kind::click, key);
    settle();
}

void Desk::own_run() { press("example.start_own"); }

void Desk::type_record_a() {
    // Record A of method.md; the demo record's acid as its last line has it.
    type("bench.mass_of_metal", "0.0412");
    choose("bench.metal", "magnesium");
    choose("bench.acid.hydrochloric", "hydrochloric");
    type("bench.acid_volume", "10.0");
    type("bench.acid_concentration", "3.0");
    choose("bench.number_at_closed_end.largest", "largest");
    type("bench.tube_capacity", "50");
    type("bench.end_space", "2.35");
    type("bench.scale_reading", "9.15");
    choose("bench.liquid_stands.higher_inside", "higher_inside");
    type("bench.level_difference", "112");
    type("bench.temperature", "21.4");
    type("bench.barometer", "99.62");
    settle();
}

const Node* Desk::find(std::string_view key) const {
    for (const Node& node : nodes()) {
        if (node.key == key) return &node;
    }
    return nullptr;
}

const Node& Desk::node(std::string_view key) const {
    const Node* found = find(key);
    REQUIRE_MESSAGE(found != nullptr, std::string(key));
    return *found;
}

const Node* Desk::find(Role role, std::string_view name) const {
    for (const Node& node : nodes()) {
        if (node.role == role && name_of_control(node) == name) return &node;
    }
    return nullptr;
}

std::string Desk::output(std::string_view name) const {
    const Node* found = find(Role::output, name);
    REQUIRE_MESSAGE(found != nullptr, std::string(name));
    return plain(found->value);
}

std::string Desk::name_of_control(const Node& control) const {
    if (!control.name.empty()) return control.name;
    for (const Node& node : nodes()) {
        if (node.role == Role::label && node.for_key == control.key) return node.name;
    }
    return {};
}

std::string plain(std::string_view words) {
    std::string out(words);
    const auto replace = [&out](std::string_view what, std::string_view by) {
        for (std::size_t at = out.find(what); at != std::string::npos; at = out.find(what, at + by.size())) {
            out.replace(at, what.size(), by);
        }
    };
    replace("\u2212", "-");
    replace("\u202f", "");
    replace("\u2009", "");
    replace("\u00a0", " ");
    return out;
}

Shown shown(std::string_view words) {
    const std::string text = plain(words);
    Shown out;
    char* end = nullptr;
    out.value = std::strtod(text.c_str(), &end);
    const auto length = static_cast<std::size_t>(end - text.c_str());
    out.number = length > 0;
    if (const std::size_t point = text.find('.'); point < length) {
        out.last_digit = std::pow(10.0, -static_cast<double>(length - point - 1));
    }
    out.unit = text.substr(length);
    if (!out.unit.empty()) out.unit.erase(0, 1);
    return out;
}

bool rounds_to(const Shown& shown, double expected, double step) {
    return shown.number && std::abs(shown.value - expected) <= (shown.last_digit + step) / 2 * (1 + 1e-9);
}

std::string stored_record(const std::string& id) {
    const auto found = native_world().store.find(std::string(record_prefix) + id);
    return found == native_world().store.end() ? std::string() : found->second;
}

std::vector<std::string> stored_ids() {
    std::vector<std::string> ids;
    for (const auto& [key, text] : native_world().store) {
        if (key.starts_with(record_prefix)) ids.push_back(key.substr(record_prefix.size()));
    }
    return ids;
}

}  // namespace overwater::test
