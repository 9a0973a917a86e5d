"""C++ in tokens, as much of it as the text check needs: calls, their arguments, functions with a body."""
import functools
import re

TOKEN = re.compile(r'''(?P<comment>//[^\n]*|/\*.*?\*/)|(?P<line>^[ \t]*\#[^\n]*(?:\\\n[^\n]*)*)
    |(?P<raw>R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)")|(?P<text>(?:u8|[uUL])?"(?:\\.|[^"\\\n])*")
    |(?P<char>'(?:\\.|[^'\\\n])+')|(?P<number>\d[\w.']*)|(?P<name>[A-Za-z_]\w*)|(?P<sign>::|->|\S)''',
                   re.VERBOSE | re.DOTALL | re.MULTILINE)
OPENING, CLOSING = {"(", "{", "["}, {")", "}", "]"}


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


def arguments_of(tokens, opened):
    """The tokens of each argument of a call whose bracket opens at `opened`."""
    parts, depth = [[]], 0
    for token in tokens[opened + 1:closing(tokens, opened)]:
        depth += (token.text in OPENING) - (token.text in CLOSING)
        parts.append([]) if token.text == "," and depth == 0 else parts[-1].append(token)
    return parts
