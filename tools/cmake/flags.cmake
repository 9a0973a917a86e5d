# Compiler settings. `overwater_own_code(target)` is for what is written here; what comes from others is compiled
# without our warnings.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)

# Sizes count on the page, so -Oz there; the sanitizers want line numbers and real stack frames. They make optimizing slow:
# the interface and the tests compile in half the time without, and what computes asks for it (`overwater_optimized`).
set(CMAKE_CXX_FLAGS_SANITIZED "-O0 -g1 -fno-omit-frame-pointer" CACHE STRING "" FORCE)
if(EMSCRIPTEN)
    set(CMAKE_CXX_FLAGS_RELEASE "-Oz -DNDEBUG" CACHE STRING "" FORCE)
else()
    set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG" CACHE STRING "" FORCE)
endif()

# The same bits on every machine: no fused multiply-add unless written.
add_compile_options(-ffp-contract=off -fno-rtti)
# Four extensions of WebAssembly that browsers have since the spring of 2023 at the latest (as they have constructed style
# sheets, without which the page would not run either): conversions to whole numbers, copying and sign extension become one
# instruction each, so the page gets smaller; two numbers are worked on at once, so a million trials take half the time.
if(EMSCRIPTEN)
    add_compile_options(-mnontrapping-fptoint -mbulk-memory -msign-ext -msimd128)
    # With -Oz Emscripten asks for no inlining at all, so that vector::size() is a call; what is smaller inlined than
    # called makes the page smaller and faster. Nothing is destroyed at the end of a page.
    add_compile_options(-finline-functions -fno-c++-static-destructors)
endif()
if(OVERWATER_SANITIZE)
    add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all)
    add_link_options(-fsanitize=address,undefined)
endif()
# For libFuzzer everything is told where it branches; the executables bring its main.
option(OVERWATER_FUZZ "Parsers under libFuzzer (clang++)" OFF)
if(OVERWATER_FUZZ)
    add_compile_options(-g1 -fno-omit-frame-pointer -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all)
    add_link_options(-fsanitize=address,undefined)
endif()
# Which lines the tests run through (tools/test --coverage).
option(OVERWATER_COVERAGE "Count how often each line runs (g++)" OFF)
if(OVERWATER_COVERAGE)
    add_compile_options(--coverage -fprofile-update=single)
    add_link_options(--coverage)
endif()

# tools/mutate compiles anew a hundred times.
option(OVERWATER_QUICK "Compile fast: standard headers read once, only the core optimized" OFF)

function(overwater_optimized target)
    if(OVERWATER_SANITIZE OR OVERWATER_QUICK)
        target_compile_options(${target} PRIVATE -O1)
    endif()
endfunction()

# Of an inline function that many objects have, the linker takes the first copy it meets: here the optimized ones of the
# libraries and not those of the tests, which are compiled without optimizing. The core's tests run three times as fast.
function(overwater_optimized_copies_first target)
    if((OVERWATER_SANITIZE OR OVERWATER_QUICK) AND NOT EMSCRIPTEN)
        foreach(library IN LISTS ARGN)
            target_link_options(${target} PRIVATE
                "LINKER:--whole-archive,$<TARGET_FILE:${library}>,--no-whole-archive")
        endforeach()
    endif()
endfunction()

# The standard headers that most files include, read once. Only in builds for tests and in the tests for WebAssembly: what
# the page is made of is seen without them, so that a file that forgot one is noticed.
function(overwater_standard_headers target)
    get_target_property(kind ${target} TYPE)
    if(OVERWATER_SANITIZE OR OVERWATER_COVERAGE OR OVERWATER_QUICK OR kind STREQUAL EXECUTABLE)
        target_precompile_headers(${target} PRIVATE <algorithm> <array> <cmath> <cstdint> <functional> <memory> <optional>
            <span> <string> <string_view> <utility> <vector> ${ARGN})
    endif()
endfunction()

set(overwater_warnings -Wall -Wextra -Wpedantic -Wconversion -Werror)
if(NOT OVERWATER_TOGETHER)
    list(APPEND overwater_warnings -Wshadow)
endif()

function(overwater_own_code target)
    target_compile_options(${target} PRIVATE ${overwater_warnings} -fno-exceptions)
    target_include_directories(${target} PUBLIC "${PROJECT_SOURCE_DIR}")
endfunction()

# doctest reports a failed REQUIRE by throwing, so tests alone have exceptions; the code under test never does.
function(overwater_test_code target)
    target_compile_options(${target} PRIVATE ${overwater_warnings} -fexceptions)
    target_include_directories(${target} PRIVATE "${PROJECT_SOURCE_DIR}")
    if(EMSCRIPTEN)
        target_link_options(${target} PRIVATE -fexceptions)
    endif()
endfunction()
