#!/usr/bin/python3
"""Checks that the catalogue assets/text/en.json and the C++ that names its keys fit together, and that the catalogues of the
other languages say the same.

Usage: text_check.py

Seven rules, each of which first has to find a fault planted in memory: keys that are missing, keys that nobody uses, places
and arguments of messages, sentences in C++, the form of the sentences, their characters, what another language has otherwise
than English. Names of fields, outputs and
choices are read out of the C++ sources. The last line is `N passed, N failed`.
"""
import functools
import json
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[1]
TOKEN = re.compile(r'''(?P<comment>//[^\n]*|/\*.*?\*/)|(?P<line>^[ \t]*\#[^\n]*(?:\\\n[^\n]*)*)
    |(?P<raw>R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)")|(?P<text>(?:u8|[uUL])?"(?:\\.|[^"\\\n])*")
    |(?P<char>'(?:\\.|[^'\\\n])+')|(?P<number>\d[\w.']*)|(?P<name>[A-Za-z_]\w*)|(?P<sign>::|->|\S)''',
                   re.VERBOSE | re.DOTALL | re.MULTILINE)
KEY = re.compile(r"[a-z][a-z0-9_]*(\.[A-Za-z0-9_]+)+")
PLACE = re.compile(r"\{(\w+)\}")
ADDERS = {"text", "count", "quantity", "figures", "field"}
OPENING, CLOSING = {"(", "{", "["}, {")", "}", "]"}
# Pieces put between other texts: they begin or end with a space on purpose.
PIECES = ("list.", "equation.")


class Token:
    def __init__(self, kind, text, line):
        self.kind, self.text, self.line = kind, text, line

    @property
    def said(self):
        """The characters of a literal."""
        if self.text.startswith("R"):
            return self.text[self.text.index("(") + 1:self.text.rindex(")")]
        return self.text[self.text.index('"') + 1:-1]


@functools.cache
def tokens_of(source):
    found = []
    for match in TOKEN.finditer(source):
        kind = "text" if match.lastgroup in ("raw", "mark") or match.group("raw") else match.lastgroup
        if kind not in ("comment", "line"):
            found.append(Token(kind, match.group(), source.count("\n", 0, match.start()) + 1))
    return found


def closing(tokens, at):
    """Index of the bracket that closes the one at `at`."""
    depth = 0
    for i in range(at, len(tokens)):
        if tokens[i].kind == "sign":
            depth += (tokens[i].text in OPENING) - (tokens[i].text in CLOSING)
            if depth == 0:
                return i
    return len(tokens) - 1


def texts(tokens):
    return [t.said for t in tokens if t.kind == "text"]


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


def functions(path, tokens):
    """(path, name, parameters, body) of everything that looks like a function with a body."""
    for i, token in enumerate(tokens[:-1]):
        if token.kind != "name" or token.text in ("if", "for", "while", "switch") or tokens[i + 1].text != "(":
            continue
        end = closing(tokens, i + 1)
        after = end + 1
        while after < len(tokens) and tokens[after].text in ("const", "override", "noexcept"):
            after += 1
        if after >= len(tokens) or tokens[after].text != "{":
            continue
        parameters, depth = [[]], 0
        for t in tokens[i + 2:end]:
            depth += (t.text in OPENING) - (t.text in CLOSING)
            if t.text == "," and depth == 0:
                parameters.append([])
            elif t.kind == "name":
                parameters[-1].append(t.text)
        yield (path, token.text, [p[-1] if p else "" for p in parameters],
               tokens[after:closing(tokens, after) + 1])


def node_functions(sources):
    """Function to the index of the argument that is the key of a node, not of a sentence: the widget vocabulary, and
    what hands a parameter on to it."""
    nodes = {name: 0 for name in re.findall(r"\b(\w+)\((?:const )?(?:std::string(?:_view)?|TextView)&? key\b", sources.files["web/ui/ui.hpp"])}
    nodes.update(before_change=0, after_change=0)
    helpers = {}
    for path, tokens in sources.tokens.items():
        if not path.startswith("web/panels/"):
            continue
        for _, name, parameters, body in functions(path, tokens):
            for i, token in enumerate(body[:-2]):
                if token.text in nodes and body[i + 1].text == "(" and body[i + 2].text in parameters and (
                        body[i + 3].text == "," and name not in nodes):
                    helpers[name] = parameters.index(body[i + 2].text)
    return nodes, helpers


def arguments_of(tokens, opened):
    """The tokens of each argument of a call whose bracket opens at `opened`."""
    parts, depth = [[]], 0
    for token in tokens[opened + 1:closing(tokens, opened)]:
        depth += (token.text in OPENING) - (token.text in CLOSING)
        parts.append([]) if token.text == "," and depth == 0 else parts[-1].append(token)
    return parts


def node_literals(sources):
    """The literals that are keys of nodes, as tokens."""
    nodes, helpers = node_functions(sources)
    found = set()
    for path, tokens in sources.tokens.items():
        for i, token in enumerate(tokens[:-2]):
            own = token.text in nodes and (tokens[i - 1].text in (".", "->") or token.text.endswith("_change"))
            if not (own or token.text in helpers and path.startswith("web/panels/")) or tokens[i + 1].text != "(":
                continue
            index = nodes[token.text] if own else helpers[token.text]
            parts = arguments_of(tokens, i + 1)
            if index < len(parts) and parts[index] and parts[index][0].kind == "text":
                found.add(parts[index][0])
    return found


def literal_keys(sources):
    """(path, line, key) of each literal that names a sentence: not keys of nodes, nor what keys are compared with."""
    families = {k.split(".")[0] for k in sources.catalogue}
    nodes = node_literals(sources)
    node_keys = {token.said for token in nodes} - set(sources.catalogue)
    for path, tokens in sources.tokens.items():
        for i, token in enumerate(tokens):
            if token.kind != "text" or not (KEY.fullmatch(token.said) or token.said in sources.catalogue):
                continue
            before = tokens[i - 1].text if i > 0 else ""
            caller = tokens[i - 2].text if i > 1 else ""
            if path.startswith("web/"):
                if token in nodes or before == "=" and caller == "=" or before == "(" and caller == "starts_with":
                    continue
                # The key of a control whose words come from elsewhere.
                if token.said.split(".")[0] not in families or is_control(sources, token.said) or (
                        token.said in node_keys):
                    continue
            yield path, token.line, token.said


def is_control(sources, key):
    """Whether a literal is only ever the key of a control, as `header.bench` is."""
    if key in sources.catalogue or key.split(".")[0] not in ("bench", "header", "records"):
        return False
    parts = key.split(".")
    return parts[0] == "header" or key == "records.name" or parts[1] in sources.names("field_names")


def suffixes(sources, path, only_said):
    """Literals such as `.about` that a file puts behind a key."""
    tokens = sources.tokens[path]
    found = set()
    for i, token in enumerate(tokens):
        if token.kind == "text" and re.fullmatch(r"\.[a-z_]+", token.said):
            back = i
            while only_said and back > 0 and tokens[back].text not in ("say", ";", "{", ","):
                back -= 1
            if not only_said or tokens[back].text == "say":
                found.add(token.said)
    return found


def conventions(sources):
    """Each choice of the conventions to the names of its values, from the headers of the core."""
    types, values = {}, {}
    for token, name in re.findall(r"^\s+(?:Conventions::)?(\w+) (\w+) = \w+::", sources.files[
            "core/result/conventions.hpp"], re.MULTILINE):
        types[name] = token
    tokens = sources.tokens["core/record/convention_names.hpp"]
    for i, token in enumerate(tokens):
        if token.text == "ChoiceNames" and tokens[i - 1].text == "struct" and tokens[i + 1].text == "<":
            end = next(k for k in range(i, len(tokens)) if tokens[k].text == ">")
            body = next(k for k in range(end, len(tokens)) if tokens[k].text == "{")
            values[tokens[end - 1].text] = texts(tokens[body:closing(tokens, body)]) or sources.names(
                "standard_conditions_names")
    visited = [texts(arguments)[0] for _, arguments in sources.calls("visit", "core/") if texts(arguments)]
    return {name: values[types[name]] for name in visited + ["standard"]}


def glued(sources):
    """Keys glued from a literal and a name said by `say`: of a loop over literals, of a choice between literals, or
    handed to a helper."""
    keys = set()
    for path, tokens in sources.tokens.items():
        if not path.startswith("web/panels/"):
            continue
        helpers = {}
        for _, name, parameters, body in functions(path, tokens):
            for i, token in enumerate(body[:-2]):
                if token.kind != "text" or not re.fullmatch(r"[a-z_.]+\.", token.said) or body[i + 1].text != "+":
                    continue
                name_at = next((t.text for t in body[i + 2:i + 7] if t.kind == "name" and t.text not in (
                    "std", "string", "name_of")), "")
                variable = body[i - 2].text if body[i - 1].text == "=" else None
                said = body[i - 2].text == "say" or any(
                    t.text == "say" and body[k + 1].text == "(" and body[k + 2].text == variable and
                    body[k + 3].text == ")" for k, t in enumerate(body[:-3]))
                if not said:
                    continue
                if name_at in parameters and i + 7 < len(body):
                    end = next(k for k in range(i, len(body)) if body[k].text in (";", ",") or k == len(body) - 1)
                    if not any(t.kind == "text" for t in body[i + 1:end]):
                        helpers.setdefault(name, []).append((parameters.index(name_at), token.said))
                for k, t in enumerate(body[:i]):
                    values = []
                    if t.text == ":" and body[k - 1].text == name_at and body[k + 1].text == "{":
                        values = texts(body[k:closing(body, k + 1)])
                    elif t.text == "=" and body[k - 1].text == name_at:
                        values = texts(body[k:next(e for e in range(k, len(body)) if body[e].text == ";")])
                    keys.update(token.said + value for value in values if re.fullmatch(r"\w+", value))
        for i, token in enumerate(tokens[:-2]):
            if token.text in helpers and tokens[i + 1].text == "(":
                parts = arguments_of(tokens, i + 1)
                for index, beginning in helpers[token.text]:
                    if index < len(parts) and len(parts[index]) == 1 and parts[index][0].kind == "text":
                        keys.add(beginning + parts[index][0].said)
    return keys


def instruments(sources):
    """The keys of the instruments, from the rows of their tables."""
    return sorted({texts(arguments)[0] for name in ("simple", "scale")
                   for path, arguments in sources.calls(name, "core/bench/instrument") if texts(arguments)})


def asked_steps(sources):
    """The outputs about which a nudge may be said: in which a slip is made, or which the sheet asks for."""
    asked = {"mean"}
    for path, array in (("core/lesson/slip_table.cpp", "slip_table"), ("core/lesson/marking.cpp", "chain"),
                        ("core/lesson/marking.cpp", "chain_as_collected")):
        tokens = sources.tokens[path]
        begin = next(i for i, t in enumerate(tokens) if t.text == array)
        body = tokens[begin:closing(tokens, next(i for i in range(begin, len(tokens)) if tokens[i].text == "{"))]
        asked |= {body[i + 2].text for i, t in enumerate(body[:-2]) if t.text == "Output" and body[i + 1].text == "::"}
    return sorted(asked | {"percent_error"})


def families(sources):
    """(required, possible): keys made at run time out of a beginning and a name."""
    fields, outputs = sources.names("field_names"), sources.names("output_names")
    standards, choices = sources.names("standard_conditions_names"), sources.choices()
    used = {t for path, tokens in sources.tokens.items() if path.startswith("web/") for t in texts(tokens)}
    asked = {t.text for name in ("radios", "listed", "choices_of") for _, arguments in sources.calls(name)
             for i, t in enumerate(arguments) if i > 1 and arguments[i - 2].text == "Field"}
    required = {f"choice.{field}.{value}" for field in asked for value in choices.get(field, ())} | glued(sources)
    required |= {f"conventions.{name}{value}" for name, values in conventions(sources).items()
                 for value in [""] + [f".{v}" for v in values]}
    required |= {f"cause.{name}.about" for name in sources.names("cause_names") if "cause." in used}
    possible = {f"{key}.about" for key in required if re.fullmatch(r"conventions\.\w+", key)}
    for beginning, names, needed in (("field.", fields, True), ("output.", outputs, True),
                                     ("standard.", standards, True), ("conditions.", standards[:-1], True),
                                     ("instrument.", instruments(sources), True),
                                     ("shape.", sources.names("shape_names"), True),
                                     ("cause.", sources.names("cause_names"), True),
                                     ("doubt.from.", sources.names("doubt_from_names"), True),
                                     ("gap.plausible.", sources.names("plausibility_names"), True),
                                     ("codes.difficulty.", sources.names("difficulty_names"), True),
                                     ("codes.bench.", sources.names("difficulty_names"), True),
                                     ("codes.release.", sources.names("release_names"), True),
                                     ("codes.vapour.", sources.names("practice_vapour_names"), True),
                                     ("slip.", sources.names("slip_table"), True),
                                     ("slip.mean.", sources.names("mean_slip_names")[1:], True),
                                     ("nudge.", asked_steps(sources), True),
                                     ("plan.form.", sources.names("metal_form_names"), True),
                                     ("marking.rule.", sources.names("marking_rule_names"), True),
                                     ("doubt.kind.", sources.names("doubt_kind_names"), False),
                                     ("hint.", fields + ["start"], False), ("step.", outputs, False)):
        if beginning in used:
            (required if needed else possible).update(beginning + name for name in names)
    return required, required | possible


def missing_keys(sources):
    faults = [f"{key}: made at run time, not in the catalogue" for key in families(sources)[0]
              if key not in sources.catalogue]
    for path, line, key in literal_keys(sources):
        said = suffixes(sources, path, True)
        if key in sources.catalogue or said and all(key + end in sources.catalogue for end in said):
            continue
        faults.append(f"{path}:{line}: {key} is not in the catalogue")
    return faults


def unused_keys(sources):
    used = set(families(sources)[1])
    for path, _, key in literal_keys(sources):
        used.add(key)
        used.update(key + end for end in suffixes(sources, path, False))
    return [f"{key}: in the catalogue, used nowhere" for key in sources.catalogue if key not in used]


class Messages:
    """Every message that the sources build: its possible keys, its arguments, those given on a condition."""

    def __init__(self, sources):
        self.sources, self.built, self.helpers, self.returned = sources, [], {}, {}
        found = [f for path, tokens in sources.tokens.items() for f in functions(path, tokens)]
        for _, name, _, body in found:
            keys = {body[i + 1].said for i, t in enumerate(body[:-1])
                    if t.text == "return" and body[i + 1].kind == "text" and KEY.fullmatch(body[i + 1].said)}
            if keys:
                self.returned[name] = keys
        # A helper may call another: twice round is enough for what is here, three times shows that nothing changes.
        for _ in range(3):
            self.built = []
            for function in found:
                self.read(*function)

    def keys_of(self, expression, body):
        """The keys an expression can give: literals, a local variable, a function that returns literals."""
        keys = {t.said for t in expression if t.kind == "text" and t.said}
        for i, token in enumerate(expression):
            if token.kind == "name":
                keys |= self.returned.get(token.text, set()) if i + 1 < len(expression) else set()
                for k, t in enumerate(body[:-1]):
                    if not keys and t.text == token.text and body[k + 1].text == "=" and body[k + 2].text != "=":
                        end = next(e for e in range(k, len(body)) if body[e].text == ";")
                        keys |= set(texts(body[k:end]))
        return keys

    def read(self, path, name, parameters, body):
        for i, token in enumerate(body[:-2]):
            variable = None
            if token.text == "Message" and body[i + 1].text == "{":
                opened, helper = i + 1, None
            elif token.text == "Message" and body[i + 1].kind == "name" and body[i + 2].text == "{":
                opened, helper, variable = i + 2, None, body[i + 1].text
            elif token.text in self.helpers and body[i + 1].text == "(" and token.text != name:
                opened, helper = i + 1, self.helpers[token.text]
                if body[i - 1].text == "=" and body[i - 2].kind == "name":
                    variable = body[i - 2].text
            else:
                continue
            end = closing(body, opened)
            expression = body[opened + 1:end]
            given, maybe = set(helper[1] if helper else ()), set()
            if helper:
                parts = arguments_of(body, opened)
                expression = parts[helper[0]] if helper[0] < len(parts) else []
            self.chain(body, end + 1, given)
            if variable:
                self.later(body, end, variable, given, maybe)
            lone = expression[0].text if len(expression) == 1 else ""
            if lone and lone in parameters:
                self.helpers[name] = (parameters.index(lone), given)
                continue
            keys = self.keys_of(expression, body)
            if keys:
                self.built.append((path, token.line, keys, given, maybe))

    @staticmethod
    def chain(body, at, given):
        while at + 3 < len(body) and body[at].text == "." and body[at + 1].text in ADDERS:
            given.add(body[at + 3].said if body[at + 3].kind == "text" else "?")
            at = closing(body, at + 2) + 1

    def later(self, body, begin, variable, given, maybe):
        for i in range(begin, len(body) - 3):
            if body[i].text == variable and body[i + 1].text == "." and body[i + 2].text in ADDERS:
                self.chain(body, i + 1, maybe if body[i - 1].text == ")" else given)


def wrong_places(sources):
    faults, built = [], set()
    for path, line, keys, given, maybe in Messages(sources).built:
        wanted_somewhere = set()
        for key in keys:
            if key not in sources.catalogue:
                continue
            built.add(key)
            wanted = {p for s in sources.sentences(key) for p in PLACE.findall(s)}
            wanted_somewhere |= wanted
            faults += [f"{path}:{line}: {key} has a place {{{p}}} that gets nothing" for p in wanted - given - maybe]
            faults += [f"{path}:{line}: {key} has no place for {a}" for a in given - wanted]
            for sentence in sources.sentences(key):
                faults += [f"{key}: a plural form lacks {{{p}}}" for p in wanted - set(PLACE.findall(sentence))]
        faults += [f"{path}:{line}: nothing has a place for {a}" for a in maybe - wanted_somewhere]
    for key in sources.catalogue:
        if key not in built and any(PLACE.search(s) for s in sources.sentences(key)):
            faults.append(f"{key}: has places, but no message is built with it")
    for path, arguments in sources.calls("say"):
        if len(arguments) == 1 and arguments[0].kind == "text" and arguments[0].said in built:
            faults.append(f"{path}:{arguments[0].line}: {arguments[0].said} is said without its arguments")
    return faults


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


def main():
    real = load()
    panel = "web/panels/planted.cpp"

    def plant(body, **more):
        planted = real.planted(panel, "void planted(App& app, Ui& ui, bool yes) { " + body + " }", **more)
        planted.tokens.pop("assets/font/recipe.py")
        return planted

    helper = ('std::string with(std::string_view key) { Message message{key}; message.text("name", "x"); '
              'return say(message); } ')
    cases = [
        (missing_keys, [plant('app.say("bench.planted");'), plant('group("bench.group.planted", {});'),
                        plant("", removed="field.barometer"), plant("", removed="choice.metal.zinc"),
                        plant("", removed="conventions.theme.dark"), plant("", removed="conventions.vapour.table"),
                        plant("", removed="bench.group.room"),
                        plant("", removed="results.accepted_kind.real"), plant("", removed="cautions.glass.text"),
                        plant("", removed="text.no_digits"), plant("", removed="standard.own")]),
        (unused_keys, [plant("", keys={key: "Planted"}) for key in (
            "planted", "bench.planted", "field.planted", "hint.planted", "choice.metal.planted",
            "conventions.theme.planted", "cautions.planted.head", "conditions.own", "step.planted")]),
        (wrong_places, [plant('app.say(Message{"state.waiting"}.text("planted", "x"));'),
                        plant('app.say(Message{"state.waiting"});'), plant('app.say("state.waiting");'),
                        plant('app.say(Message{yes ? "page.bench" : "state.waiting"}.text("readings", "x"));'),
                        plant('Message m{"state.waiting"}; if (yes) m.text("planted", "x"); m.text("readings", "x");'),
                        plant(helper + 'with("state.waiting");'),
                        plant("", keys={"refusal.below_zero": "Below zero: {planted}"}),
                        plant("", keys={"planted": "A {place}"}),
                        plant("", keys={"records.unreadable": {"one": "One", "other": "{number} texts"}})]),
        (sentences_in_code, [plant('ui.text("a.b", "A sentence");'), plant('ui.text("a.b", R"(A sentence)");')]),
        (bad_form, [plant("", keys={"page.bench": text}) for text in (
            " Bench", "Bench ", "A  bench", "A {bench", "A bench}", "", 'A "bench"', "A bench...")]
            + [Sources(real.files, real.catalogue, ["planted"])]),
        (unknown_characters, [plant("", keys={"page.bench": "Bench \u4e2d"})]),
    ]
    for language in sorted(p.stem for p in (ROOT / "assets/text").glob("*.json")):
        if language == "en":
            continue
        other = load(language, real.catalogue)
        changed = lambda keys: Sources(other.files, {**other.catalogue, **keys}, (), real.catalogue)
        fewer = {k: v for k, v in other.catalogue.items() if k != "page.bench"}
        moved = {"page.bench": other.catalogue["page.bench"], **fewer}
        cases += [
            (other_than_english, [Sources(other.files, c, (), real.catalogue) for c in (fewer, moved)] + [
                                  changed({"planted": "x"}), changed({"page.bench": {"one": "x", "other": "x"}}),
                                  changed({"state.waiting": "x"})], other, language),
            (bad_form, [changed({"page.bench": "A  bench"})], other, language),
            (unknown_characters, [changed({"page.bench": "\u4e2d"})], other, language),
        ]
    passed = failed = 0
    for rule, planted, *of in cases:
        looked_at, language_of = (of[0], f"{of[1]}: ") if of else (real, "")
        before = set(rule(looked_at))
        for number, sources in enumerate(planted, 1):
            found = set(rule(sources)) - before
            passed, failed = passed + bool(found), failed + (not found)
            if not found:
                print(f"{rule.__name__}: {language_of}does not find the fault planted as number {number}")
        for fault in sorted(before):
            print(f"{rule.__name__}: {language_of}{fault}")
        passed, failed = passed + (not before), failed + len(before)
    print(f"{passed} passed, {failed} failed")
    return failed > 0


if __name__ == "__main__":
    sys.exit(main())
