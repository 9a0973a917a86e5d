#!/usr/bin/python3
"""Turns the interface text, a JSON object of key -> sentence or {"one": ..., "other": ...}, into a sorted C++ table.

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


def row(key, value):
    """One row {key, one, other}; `one` is null for a sentence without plural forms."""
    if isinstance(value, str):
        return f"{{{literal(key)}, nullptr, {literal(value)}}}"
    if isinstance(value, dict) and set(value) == {"one", "other"} and all(isinstance(v, str) for v in value.values()):
        return f"{{{literal(key)}, {literal(value['one'])}, {literal(value['other'])}}}"
    sys.exit(f"text_table: {key} is neither a sentence nor {{one, other}}")


def main(source, folder):
    source, folder = pathlib.Path(source), pathlib.Path(folder)
    name = f"text_{source.stem}"
    text = source.read_text(encoding="utf-8") if source.exists() else "{}"
    table = json.loads(text, object_pairs_hook=no_duplicates)
    # Bytes, not characters: the program searches with strcmp.
    rows = [row(key, table[key]) for key in sorted(table, key=lambda k: k.encode())]
    write_file(folder / f"{name}.hpp", f"""// Written by tools/text_table.py from {source.name}.
#pragma once
#include <cstddef>

namespace overwater {{

#ifndef OVERWATER_CATALOGUE_ROW
#define OVERWATER_CATALOGUE_ROW
/// One sentence of the interface. `one` is null where the sentence has no plural forms.
struct CatalogueRow {{
    const char* key;
    const char* one;
    const char* other;
}};
#endif

/// The rows, sorted by the bytes of their keys.
extern const CatalogueRow {name}_rows[];
extern const std::size_t {name}_count;

}} // namespace overwater
""")
    body = ",\n    ".join(rows or ["{nullptr, nullptr, nullptr}"])
    write_file(folder / f"{name}.cpp", f"""// Written by tools/text_table.py from {source.name}.
#include "generated/{name}.hpp"

namespace overwater {{

constexpr CatalogueRow {name}_rows[] = {{
    {body},
}};
constexpr std::size_t {name}_count = {len(rows)};

}} // namespace overwater
""")


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
