"""C++ string literals and the writing of generated files."""


def literal(text):
    """A C++ narrow string literal holding `text` as UTF-8. Bytes beyond ASCII are octal escapes of three digits, which
    cannot swallow a digit that follows as hexadecimal ones would."""
    escapes = {0x22: '\\"', 0x5C: "\\\\", 0x0A: "\\n", 0x09: "\\t", 0x3F: "\\?"}
    out = [escapes.get(b) or (chr(b) if 0x20 <= b < 0x7F else f"\\{b:03o}") for b in text.encode("utf-8")]
    return '"' + "".join(out) + '"'


def write_file(path, text):
    """Writes `text` to `path` as UTF-8, making the folder."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
