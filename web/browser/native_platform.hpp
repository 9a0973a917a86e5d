#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "web/browser/platform.hpp"

/// The in-memory twin of the browser: tests look into it and set what it answers.
namespace overwater {

struct SavedFile {
    std::string name;
    std::string media_type;
    std::string text;
};

struct NativeWorld {
    std::map<std::string, std::string, std::less<>> store;
    platform::StoreResult put_result = platform::StoreResult::ok;  ///< full, denied: nothing is written
    bool reading_denied = false;                                   ///< store_get and store_list find nothing

    std::vector<SavedFile> files;
    std::vector<std::string> clipboard;
    std::vector<std::string> printed;  ///< HTML, oldest first
    std::vector<std::string> patches;  ///< of the mirror, oldest first

    std::string focused;  ///< key of the last platform::focus, and its caret
    int caret = 0;
    double scroll = 0;
    int frames_wanted = 0;  ///< by platform::wake since the last frame

    std::map<std::string, double, std::less<>> timers;  ///< name to the time at which it is due, milliseconds
    double now_ms = 0;
    std::string iso_time = "2026-01-31T09:30:00Z";
    std::uint64_t random = 1;  ///< random_bits() counts up from here, well mixed

    std::string language = "en";
    std::vector<std::string> texts_wanted;  ///< languages of platform::bring_text, not yet answered
    bool second_part_there = true;          ///< false: an event `part` is awaited
    platform::Media media;
    std::string fragment;
    int updates_taken = 0;
    int offline_forgotten = 0;
};

/// The one world of this program.
NativeWorld& native_world();

/// Moves the clock and returns the names of the timers that come due meanwhile, in their order; they are removed.
std::vector<std::string> native_advance(double milliseconds);

}  // namespace overwater
