#pragma once

/// Before the definition of a constant that only the second part of the page's program reads: it goes there
/// (tools/second_part.mjs) and is no part of a first visit. What reads it has to be reached through the second part alone; the
/// build of the page stops where that is not so.
#ifdef __EMSCRIPTEN__
#define OVERWATER_SECOND_PART_CONSTANT [[gnu::section("second_part")]]
#else
#define OVERWATER_SECOND_PART_CONSTANT
#endif
