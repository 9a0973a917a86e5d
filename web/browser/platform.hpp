#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// All that the interface asks of the machine it runs on. In the page these call the shell (browser_platform.cpp and
/// shell/*.mjs), in tests an in-memory twin (native_platform.cpp). The shell carries out and decides nothing.

namespace overwater::platform {

enum class StoreResult : std::uint8_t { ok, full, denied };

struct Media {
    bool dark = false;
    bool more_contrast = false;
    bool forced_colors = false;
    bool reduced_motion = false;
    bool coarse_pointer = false;
};

/// The text kept under `key`, or nothing where there is none or storage may not be read.
std::optional<std::string> store_get(std::string_view key);
/// Writes synchronously; `full` and `denied` leave what was there before.
StoreResult store_put(std::string_view key, std::string_view text);
void store_remove(std::string_view key);
/// All keys that begin with `prefix`.
std::vector<std::string> store_list(std::string_view prefix);

/// Offers `text` as a file to keep.
void save_file(std::string_view name, std::string_view media_type, std::string_view text);
/// Prints a document of its own, given as HTML without styles, scripts or files of its own; only in answer to a person's
/// action.
void print_html(std::string_view html);
/// Puts text on the clipboard; only in answer to a person's action. A text that begins with # is a fragment of the page's
/// address, and the whole address is put there.
void clipboard_put(std::string_view text);

/// Applies a patch of the mirror: JSON as described in web/ui/mirror.md.
void patch_mirror(std::string_view json);
/// Moves the focus to the control `key`; the caret goes to `caret` where it is a text field (-1: the end).
void focus(std::string_view key, int caret);
/// Scrolls the document so that its top is at `y` CSS pixels.
void scroll_to(double y);

/// Asks for at least `frames` more frames.
void wake(int frames);
/// Asks for an event `timer` with this name after `milliseconds`; a second call with the same name replaces the first.
void start_timer(std::string_view name, int milliseconds);

/// Milliseconds from an arbitrary start, monotonic.
double now_ms();
/// Coordinated universal time as 2026-01-31T09:30:00Z.
std::string iso_time();
/// 64 random bits for the names of records; not for secrets.
std::uint64_t random_bits();

/// The language the browser asks for, as a BCP 47 tag.
std::string language();
/// Asks for an event `text` with the text of a language, or with none where it cannot be had.
void bring_text(std::string_view tag);
/// Asks for the program's second part. True where it is there already, as natively; else an event `part` answers.
bool bring_second_part();
Media media();
/// What follows # in the address, without it.
std::string address_fragment();
/// Takes it out of the address, also of what loading the page again would read.
void forget_fragment();

/// Changes to the newer version that an event `update` told of, by loading the page again.
void take_update();
/// Removes the offline worker and the files it kept, so that nothing of the page is left on this computer.
void forget_offline();

}  // namespace overwater::platform
