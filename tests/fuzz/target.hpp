#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

/// Makes a libFuzzer target of a property (property.hpp): a broken promise is a crash, its words stand above it.

#define OVERWATER_FUZZ_TARGET(property)                                                                 \
    extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);                  \
    extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {                 \
        const std::string_view broken = property({reinterpret_cast<const char*>(data), size});          \
        if (broken.empty()) return 0;                                                                   \
        std::fprintf(stderr, "broken promise: %.*s\n", static_cast<int>(broken.size()), broken.data()); \
        std::abort();                                                                                   \
    }
