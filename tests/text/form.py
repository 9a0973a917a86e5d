"""Rules of the sentences: none in C++, their form, their letters, what another language has otherwise than English."""
import re

from cpp_tokens import closing
from sources import PLACE

# Pieces put between other texts: they begin or end with a space on purpose.
PIECES = ("list.", "equation.")


def sentences_in_code(sources):
    faults = []
    for path, tokens in sources.tokens.items():
        if not path.startswith(("core/", "web/panels/")) or path == "core/record/evaluate_main.cpp":
            continue
        skip_to = -1
        for i, token in enumerate(tokens):
            if token.text == "static_assert":
                skip_to = closing(tokens, i + 1)
            if i > skip_to and token.kind == "text" and " " in token.said:
                faults.append(f'{path}:{token.line}: "{token.said}" is a sentence in C++')
    return faults


def bad_form(sources):
    faults = [f"{key}: twice in the catalogue" for key in sources.doubled]
    for key in sources.catalogue:
        if isinstance(sources.catalogue[key], dict) and set(sources.catalogue[key]) != {"one", "other"}:
            faults.append(f"{key}: plural forms are one and other")
        for sentence in sources.sentences(key):
            if not sentence or sentence != sentence.strip() and not key.startswith(PIECES):
                faults.append(f"{key}: empty, or a space at an end")
            if "  " in sentence or "\n" in sentence or "\t" in sentence:
                faults.append(f"{key}: more than one space together")
            if re.search(r"[{}]", PLACE.sub("", sentence)):
                faults.append(f"{key}: a bracket of a place without its other one")
            if '"' in sentence or "'" in sentence and not re.search(r"\w'\w", sentence) or "..." in sentence:
                faults.append(f"{key}: quotation marks and dots of a typewriter")
    return faults


def unknown_characters(sources):
    recipe = sources.files["assets/font/recipe.py"]
    begin = recipe.index("WANTED = ") + len("WANTED = ")
    wanted = set(eval(recipe[begin:recipe.index("\n])", begin) + 3]))  # the project's own file
    return [f"{key}: {c!r} is not in the page's font" for key in sources.catalogue for s in sources.sentences(key)
            for c in sorted(set(s)) if c not in wanted]


def other_than_english(sources):
    """Keys, plural forms and places that a translation has and English has not, or the other way round."""
    own, english = sources.catalogue, sources.english
    faults = [f"{key}: not translated" for key in english if key not in own]
    faults += [f"{key}: not an English key" for key in own if key not in english]
    places = lambda entry: [sorted(PLACE.findall(s)) for s in (entry.values() if isinstance(entry, dict) else [entry])]
    for key in own:
        if key not in english:
            continue
        if isinstance(own[key], dict) != isinstance(english[key], dict):
            faults.append(f"{key}: plural forms in one language, none in the other")
        elif {p for form in places(own[key]) for p in form} != {p for form in places(english[key]) for p in form}:
            faults.append(f"{key}: other places than in English")
    if [key for key in own if key in english] != [key for key in english if key in own]:
        faults.append("not in the order of the English catalogue")
    return faults
