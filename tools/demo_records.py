#!/usr/bin/python3
"""Embeds the demo records as C++ strings. Usage: demo_records.py FOLDER RECORD.json..."""
import json
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from cpp_literal import literal, write_file  # noqa: E402


def main(folder, *records):
    folder = pathlib.Path(folder)
    rows = []
    for record in sorted(map(pathlib.Path, records), key=lambda path: path.name):
        # Compact, with every key in its place: line breaks and indents are for readers of the repository only.
        compact = json.dumps(json.loads(record.read_text(encoding="utf-8")), ensure_ascii=False, separators=(",", ":"))
        rows.append(f"{{{literal(record.stem)}, {literal(compact)}}}")
    write_file(folder / "demo_records.hpp", """// Written by tools/demo_records.py.
#pragma once
#include <cstddef>

namespace overwater {

/// An invented record that ships with the page: the name of its file without the ending, and its JSON text.
struct DemoRecord {
    const char* name;
    const char* json;
};

/// The demo records, sorted by name.
extern const DemoRecord demo_records[];
extern const std::size_t demo_record_count;

} // namespace overwater
""")
    body = ",\n    ".join(rows or ["{nullptr, nullptr}"])
    write_file(folder / "demo_records.cpp", f"""// Written by tools/demo_records.py.
#include "generated/demo_records.hpp"

namespace overwater {{

constexpr DemoRecord demo_records[] = {{
    {body},
}};
constexpr std::size_t demo_record_count = {len(rows)};

}} // namespace overwater
""")


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    main(*sys.argv[1:])
