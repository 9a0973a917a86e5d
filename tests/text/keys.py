"""Rules of the keys: none is missing from the catalogue, none is there that nobody says."""
import re

from cpp_tokens import arguments_of, closing, functions, texts
from sources import KEY


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
    # The sheet ends with what is sought: any output after the amount of gas by its volume.
    outputs = sources.names("output_names")
    asked = {"mean", *outputs[outputs.index("amount_by_volume"):]}
    for path, array in (("core/lesson/slip_table.cpp", "slip_table"), ("core/lesson/sheet_steps.cpp", "chain"),
                        ("core/lesson/sheet_steps.cpp", "chain_as_collected"), ("core/lesson/sheet_steps.cpp", "chain_to_constant"),
                        ("core/lesson/sheet_steps.cpp", "chain_by_volume")):
        tokens = sources.tokens[path]
        begin = next(i for i, t in enumerate(tokens) if t.text == array)
        body = tokens[begin:closing(tokens, next(i for i in range(begin, len(tokens)) if tokens[i].text == "{"))]
        asked |= {body[i + 2].text for i, t in enumerate(body[:-2]) if t.text == "Output" and body[i + 1].text == "::"}
    return sorted(asked)


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
    # What a reading is called depends on the vessel and on what is weighed.
    elsewhere = [*sources.names("apparatus_names"), "substance"]
    possible = {f"field.{field}.{where}" for field in fields for where in elsewhere}
    possible |= {f"output.{output}.substance" for output in outputs}
    possible |= {f"hint.{field}.{where}" for field in fields for where in elsewhere}
    possible |= {f"{key}.about" for key in required if re.fullmatch(r"conventions\.\w+", key)}
    for beginning, names, needed in (("field.", fields, True), ("output.", outputs, True),
                                     ("standard.", standards, True), ("conditions.", standards[:-1], True),
                                     ("instrument.", instruments(sources), True),
                                     ("shape.", sources.names("shape_names"), True),
                                     ("cause.", sources.names("cause_names"), True),
                                     ("doubt.from.", sources.names("doubt_from_names"), True),
                                     ("gap.plausible.", sources.names("plausibility_names"), True),
                                     ("practice.difficulty.", sources.names("difficulty_names"), True),
                                     ("codes.bench.", sources.names("difficulty_names"), True),
                                     ("practice.release.", sources.names("release_names"), True),
                                     ("practice.vapour.", sources.names("practice_vapour_names"), True),
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
