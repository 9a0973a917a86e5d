#!/usr/bin/python3
"""Checks that the catalogue assets/text/en.json and the C++ that names its keys fit together, and that the catalogues of the
other languages say the same.

Usage: text_check.py

Seven rules, each of which first has to find a fault planted in memory: keys that are missing, keys that nobody uses, places
and arguments of messages, sentences in C++, the form of the sentences, their characters, what another language has otherwise
than English. Names of fields, outputs and
choices are read out of the C++ sources. The last line is `N passed, N failed`.
"""
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent / "text"))
from form import bad_form, other_than_english, sentences_in_code, unknown_characters  # noqa: E402
from keys import missing_keys, unused_keys  # noqa: E402
from messages import wrong_places  # noqa: E402
from sources import ROOT, Sources, load  # noqa: E402


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
