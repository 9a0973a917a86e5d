// The one translation unit that holds doctest itself; each test executable links it.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>
