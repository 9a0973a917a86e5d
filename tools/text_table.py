#!/usr/bin/python3
"""Turns the interface text, a JSON object of key -> sentence or {"one": ..., "other": ...}, into what the page reads.

Usage: text_table.py ENGLISH.json FOLDER               writes text_en.hpp and text_en.cpp: keys and sentences
       text_table.py ENGLISH.json FOLDER LANGUAGE.json  writes LANGUAGE.txt: the sentences of another language
       text_table.py ENGLISH.json FOLDER en-x-pseudo    the same of English with accents and 40 % longer, which shows what
                                                        would be cut off in another language

Sentences that only the second part of the page's program says (web/panels/second_part.hpp) stand behind the others, in other
languages too; the English ones go into that part.

A key given twice, a value of another shape, or keys other than the English ones stop the build. The first line of a .txt is
a hash of the keys and of all that follows, so that a text for other keys, or a damaged one, is known (web/app/language.cpp).
"""
import json
import pathlib
import re
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from cpp_literal import literal, write_file  # noqa: E402


# What the keys of the second part begin with, and those of them that may be said on other pages too.
SECOND_PART = ("codes.", "key.", "equations.", "marking.", "pattern.", "plan.", "pool.", "suspects.")
ANYWHERE = ("plan.link", "pool.came_again", "pool.record_name")


def of_second_part(key):
    return key.startswith(SECOND_PART) and not key.startswith(ANYWHERE)


# Letters with accents for plain ones: the text stays legible and shows which glyphs are missing.
ACCENTED = dict(zip("acdeghijklnorstuwyz", "áçďéğĥíĵķļñöřšťüŵýž"))


def no_duplicates(pairs):
    seen = {}
    for key, value in pairs:
        if key in seen:
            sys.exit(f"text_table: the key {key} stands twice")
        seen[key] = value
    return seen


def table_in(source):
    text = source.read_text(encoding="utf-8") if source.exists() else "{}"
    return json.loads(text, object_pairs_hook=no_duplicates)


def forms(key, value):
    """The sentence of one key, or its two forms with a tab between (core/quantity/catalogue.hpp)."""
    if isinstance(value, str):
        text = value
    elif isinstance(value, dict) and set(value) == {"one", "other"} and all(isinstance(v, str) for v in value.values()):
        text = f"{value['one']}\t{value['other']}"
    else:
        sys.exit(f"text_table: {key} is neither a sentence nor {{one, other}}")
    if "\n" in text or text.count("\t") != isinstance(value, dict):
        sys.exit(f"text_table: {key} has a tab or the end of a line in it")
    return text


def pseudo(sentence):
    """Accents and 40 % more letters; places keep their names."""
    parts = re.split(r"(\{\w+\})", sentence)
    accented = [p if p.startswith("{") else "".join(ACCENTED.get(c, c) for c in p) for p in parts]
    letters = sum(len(p) if not p.startswith("{") else 1 for p in parts)
    padding = (letters * 2 + 4) // 5
    return "".join(accented) + "".join(" " if i % 6 == 0 and padding > 6 else "ö" for i in range(padding))


def fingerprint(*texts):
    """FNV-1a, 32 bits, as web/app/language.cpp has it."""
    value = 2166136261
    for byte in "".join(texts).encode():
        value = (value ^ byte) * 16777619 & 0xFFFFFFFF
    return f"{value:08x}"


def view(name, parts, attribute=""):
    """A std::string_view of the parts, a line each."""
    lines = ['    ""'] + [f"    {literal(part + chr(10))}" for part in parts]
    size = sum(len(part.encode()) + 1 for part in parts)
    letters = f"{attribute}constexpr char letters_of_{name}[] =\n" + "\n".join(lines) + ";\n"
    return f"{letters}{attribute}constexpr std::string_view {name}{{letters_of_{name}, {size}}};\n"


def write_english(source, folder, keys, table):
    name = f"text_{source.stem}"
    first, second = ([k for k in keys if of_second_part(k) == wanted] for wanted in (False, True))
    constant = "OVERWATER_SECOND_PART_CONSTANT "
    write_file(folder / f"{name}.hpp", f"""// Written by tools/text_table.py from {source.name}.
#pragma once
#include <cstdint>
#include <string_view>

namespace overwater {{

/// Keys and sentences as core/quantity/catalogue.hpp takes them.
extern const std::string_view text_keys;
extern const std::string_view {name};
/// Those that the page's second part alone says.
extern const std::string_view second_part_keys;
extern const std::string_view second_part_{source.stem};
/// Of all keys: what the hash of a text for these keys goes on from.
inline constexpr std::uint32_t text_keys_fingerprint = 0x{fingerprint(*(k + chr(10) for k in keys))};

}} // namespace overwater
""")
    write_file(folder / f"{name}.cpp", f"""// Written by tools/text_table.py from {source.name}.
#include "generated/{name}.hpp"

#include "core/quantity/second_part_constants.hpp"

// Longer than every compiler has to take; both of ours do.
#pragma GCC diagnostic ignored "-Woverlength-strings"

namespace overwater {{

{view("text_keys", first)}
{view(name, [forms(k, table[k]) for k in first])}
{view("second_part_keys", second, constant)}
{view(f"second_part_{source.stem}", [forms(k, table[k]) for k in second], constant)}
}} // namespace overwater
""")


def write_other(name, folder, keys, table):
    body = "".join(f"{forms(k, table[k])}\n" for k in keys)
    write_file(folder / f"{name}.txt", f"{fingerprint(*(k + chr(10) for k in keys), body)}\n{body}")


def main(source, folder, other=None):
    source, folder = pathlib.Path(source), pathlib.Path(folder)
    english = table_in(source)
    # Bytes, not characters, as the program searches.
    keys = sorted(english, key=lambda k: (of_second_part(k), k.encode()))
    if other is None:
        return write_english(source, folder, keys, english)
    if other == "en-x-pseudo":
        longer = {k: {n: pseudo(s) for n, s in v.items()} if isinstance(v, dict) else pseudo(v)
                  for k, v in english.items()}
        return write_other(other, folder, keys, longer)
    table = table_in(pathlib.Path(other))
    if wrong := sorted(set(table) ^ set(english)):
        sys.exit(f"text_table: {other} and {source.name} have not the same keys: {', '.join(wrong[:5])}")
    write_other(pathlib.Path(other).stem, folder, keys, table)


if __name__ == "__main__":
    if len(sys.argv) not in (3, 4):
        sys.exit(__doc__)
    main(*sys.argv[1:])
