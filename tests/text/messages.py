"""Rule of the messages: each gets what its sentence has a place for, and nothing else."""
from cpp_tokens import arguments_of, closing, functions, texts
from sources import KEY, PLACE

ADDERS = {"text", "count", "quantity", "figures", "field"}


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
