#!/usr/bin/python3
"""Turns the interface text, a JSON object of key -> sentence or {"one": ..., "other": ...}, into two C++
texts, keys and sentences.

Usage: text_table.py TEXT.json FOLDER     writes text_<language>.hpp and text_<language>.cpp, the language being the
name of the JSON file. A key given twice, or a value of another shape, stops the build.
"""
import json
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from cpp_literal import literal, write_file  # noqa: E402


def no_duplicates(pairs):
    seen = {}
    for key, value in pairs:
        if key in seen:
            sys.exit(f"text_table: the key {key} stands twice")
        seen[key] = value
    return seen


def forms(key, value):
    """The sentence of one key, or its two forms with a byte 1 between (core/quantity/catalogue.hpp)."""
    if isinstance(value, str):
        return value
    if isinstance(value, dict) and set(value) == {"one", "other"} and all(isinstance(v, str) for v in value.values()):
        return f"{value['one']}\1{value['other']}"
    sys.exit(f"text_table: {key} is neither a sentence nor {{one, other}}")


def view(name, parts):
    """A std::string_view of the parts, each ended by a zero byte."""
    lines = ['    ""'] + [f'    {literal(part)} "\\0"' for part in parts]
    size = sum(len(part.encode()) + 1 for part in parts)
    return f"constexpr std::string_view {name}{{\n" + "\n".join(lines) + f",\n    {size}}};\n"


def main(source, folder):
    source, folder = pathlib.Path(source), pathlib.Path(folder)
    name = f"text_{source.stem}"
    text = source.read_text(encoding="utf-8") if source.exists() else "{}"
    table = json.loads(text, object_pairs_hook=no_duplicates)
    keys = sorted(table, key=lambda k: k.encode())  # bytes, not characters, as the program searches
    write_file(folder / f"{name}.hpp", f"""// Written by tools/text_table.py from {source.name}.
#pragma once
#include <string_view>

namespace overwater {{

/// Keys and sentences as core/quantity/catalogue.hpp takes them.
extern const std::string_view text_keys;
extern const std::string_view {name};

}} // namespace overwater
""")
    write_file(folder / f"{name}.cpp", f"""// Written by tools/text_table.py from {source.name}.
#include "generated/{name}.hpp"

namespace overwater {{

{view("text_keys", keys)}
{view(name, [forms(k, table[k]) for k in keys])}
}} // namespace overwater
""")


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
