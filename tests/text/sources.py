"""What the rules look at: the C++ of core and web, the catalogue of one language, the font's recipe."""
import json
import pathlib
import re
import sys

from cpp_tokens import closing, texts, tokens_of

ROOT = pathlib.Path(__file__).resolve().parents[2]
KEY = re.compile(r"[a-z][a-z0-9_]*(\.[A-Za-z0-9_]+)+")
PLACE = re.compile(r"\{(\w+)\}")


class Sources:
    """Everything the rules look at, as it is or with a fault planted."""

    def __init__(self, files, catalogue, doubled=(), english=None):
        """`english`: the catalogue that this one of another language is compared with."""
        self.files, self.catalogue, self.doubled, self.english = files, catalogue, list(doubled), english
        self.tokens = {path: tokens_of(text) for path, text in files.items()}

    def planted(self, path, source, keys=None, removed=None):
        files = dict(self.files, **{path: source})
        catalogue = {k: v for k, v in self.catalogue.items() if k != removed}
        catalogue.update(keys or {})
        return Sources(files, catalogue, self.doubled, self.english)

    def names(self, array):
        """The literals that a constant `array` is initialised with."""
        for tokens in self.tokens.values():
            for i, token in enumerate(tokens[:-1]):
                if token.text == array and tokens[i + 1].text == "{":
                    return texts(tokens[i:closing(tokens, i + 1)])
        sys.exit(f"text_check: the names {array} are in no source")

    def choices(self):
        """Field name to its choices, as `choices_of` gives them."""
        tokens = self.tokens["core/bench/entry.cpp"]
        begin = next(i for i, t in enumerate(tokens) if t.text == "choices_of")
        body = tokens[begin:closing(tokens, next(i for i in range(begin, len(tokens)) if tokens[i].text == "{"))]
        lists, chosen = {}, {}
        for i, token in enumerate(body[:-1]):
            if token.kind == "name" and body[i + 1].text == "{":
                lists[token.text] = texts(body[i:closing(body, i + 1)])
            # A list that is copied from the names of an enumeration.
            if token.kind == "name" and body[i + 1].text == "(" and body[i + 2].text.endswith("_names"):
                lists[token.text] = self.names(body[i + 2].text)
            if token.text == "case":
                field = next(t.text for t in reversed(body[i:i + 5]) if t.kind == "name" and t.text != "return")
                chosen[body[i + 3].text if body[i + 2].text == "::" else field] = body[i + 6].text
        return {field: lists[name] for field, name in chosen.items() if name in lists}

    def calls(self, name, under="web/"):
        """(path, tokens of the arguments) of each call of a function."""
        for path, tokens in self.tokens.items():
            for i, token in enumerate(tokens[:-1]):
                if path.startswith(under) and token.text == name and tokens[i + 1].text == "(":
                    yield path, tokens[i + 2:closing(tokens, i + 1)]

    def sentences(self, key):
        entry = self.catalogue[key]
        return list(entry.values()) if isinstance(entry, dict) else [entry]


def load(language="en", english=None):
    files = {str(p.relative_to(ROOT)): p.read_text(encoding="utf-8") for folder in ("core", "web")
             for p in sorted((ROOT / folder).rglob("*")) if p.suffix in (".cpp", ".hpp")}
    recipe = "assets/font/recipe.py"
    files[recipe] = (ROOT / recipe).read_text(encoding="utf-8")
    doubled = []

    def no_doubles(pairs):
        seen = set()
        for key, _ in pairs:
            doubled.extend([key] if key in seen else [])
            seen.add(key)
        return dict(pairs)

    text = (ROOT / f"assets/text/{language}.json").read_text(encoding="utf-8")
    catalogue = json.loads(text, object_pairs_hook=no_doubles)
    sources = Sources(files, catalogue, doubled, english)
    sources.tokens.pop(recipe)
    return sources
