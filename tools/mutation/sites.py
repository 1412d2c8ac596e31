"""Where a C++ source can be changed by one small mistake.

A source is cut into tokens; comments, strings, preprocessor lines, assertions and attributes bear no mutants. Whether `<`, `*` or `&` is an operator
is read off the blanks round it, which the formatter sets: a binary operator has one on either side, an angle bracket has not.

A mutant keeps two ways of being put into the source: `plain`, as a person would have mistyped it, and `switched`, with the mistake and the original
both compiled in and chosen when the program runs (switch.hpp). Every edit is (start, end, text) over the original's characters.
"""

import dataclasses
import re

TOKEN = re.compile(
    r"""(?P<space>\s+|//[^\n]*|/\*.*?\*/)
      | (?P<line>\#(?:\\\n|[^\n])*)
      | (?P<string>(?:u8|u|U|L)?R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)"\w* | (?:u8|u|U|L)?"(?:\\.|[^"\\\n])*"\w* | (?:u8|u|U|L)?'(?:\\.|[^'\\\n])+')
      | (?P<number>\.?\d(?:'?[\w.]|(?<=[eE])[+-])*)
      | (?P<name>[A-Za-z_]\w*)
      | (?P<sign><=>|<<=|>>=|\.\.\.|->\*|->|::|\+\+|--|&&|\|\||[<>=!+\-*/%&|^]=|<<|>>|.)""",
    re.VERBOSE | re.DOTALL)

SWAPS = {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "+": "-", "-": "+", "*": "/", "/": "*",
         "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*="}
LOGIC = {"&&": ("both", "||"), "||": ("either", "&&")}
STEPS = {"++": "--", "--": "++"}
# Functions of the standard library that are easily taken for each other.
TWINS = {"min": "max", "min_element": "max_element", "floor": "ceil", "lower_bound": "upper_bound", "any_of": "all_of"}
TWINS.update({b: a for a, b in TWINS.items()})
MEMBER_TWINS = {"begin": "end", "end": "begin", "front": "back", "back": "front"}

OPENING = {"(": ")", "[": "]", "{": "}"}
CLOSING = {b: a for a, b in OPENING.items()}
ASSIGNMENTS = {"=", "+=", "-=", "*=", "/=", "%=", "&=", "|=", "^=", "<<=", ">>="}
NO_CALL = {"return", "if", "for", "while", "switch", "assert", "static_assert", "else", "do", "case", "default", "break", "continue", "using",
           "namespace", "template", "typedef", "struct", "class", "enum", "public", "private", "goto", "delete", "new", "sizeof", "const", "auto"}
# A tolerance this small is meant to be far below anything measured: a factor makes no difference, and is not asked about.
TOLERANCE = re.compile(r"[eE]-0*([6-9]|\d{2,})")


@dataclasses.dataclass
class Token:
    kind: str
    text: str
    start: int
    end: int
    mate: int = -1  # of a bracket: the index of its other one


@dataclasses.dataclass
class Mutant:
    kind: str
    start: int
    end: int
    change: str
    plain: list
    switched: object = None  # function of the number, giving edits; None where the two can't be compiled into one
    # set by `find`
    line: int = 0
    column: int = 0
    code: str = ""
    ordinal: int = 1  # which of the equal changes of the line, from 1

    def name(self):
        return f"{self.change}" + (f" ({self.ordinal})" if self.ordinal > 1 else "")


def tokens_of(text):
    tokens, open_ones = [], []
    for match in TOKEN.finditer(text):
        kind = match.lastgroup if match.lastgroup != "mark" else "string"
        if kind in ("space", "line"):
            continue
        token = Token(kind, match.group(), match.start(), match.end())
        if kind == "sign" and token.text in OPENING:
            open_ones.append(len(tokens))
        elif kind == "sign" and token.text in CLOSING and open_ones:
            token.mate = open_ones.pop()
            tokens[token.mate].mate = len(tokens)
        tokens.append(token)
    return tokens


class Source:
    def __init__(self, text):
        self.text = text
        self.tokens = tokens_of(text)
        self.barred = self._barred()

    def _barred(self):
        """Token indices within assertions and attributes."""
        barred = set()
        for i, token in enumerate(self.tokens[:-1]):
            after = self.tokens[i + 1]
            if token.text in ("assert", "static_assert") and after.text == "(":
                barred.update(range(i, after.mate + 1))
            if token.text == "[" and after.text == "[":
                barred.update(range(i, token.mate + 1))
        return barred

    def spaced(self, i):
        token = self.tokens[i]
        return self.text[token.start - 1].isspace() and self.text[token.end:token.end + 1].isspace()

    def is_binary(self, i):
        before = self.tokens[i - 1]
        return i > 0 and self.spaced(i) and (before.kind in ("name", "number", "string") or before.text in (")", "]", "}")) and before.text not in (
            "operator", "return", "case")

    def operand_left(self, i, stops):
        """The first token of the left operand of the binary operator i."""
        j = i - 1
        while j >= 0:
            token = self.tokens[j]
            if token.text in CLOSING and token.kind == "sign":
                j = token.mate
            elif token.text in OPENING or token.text in stops or token.text in ASSIGNMENTS or token.text in ("?", ":", ",", ";", "return"):
                break
            j -= 1
        return j + 1

    def operand_right(self, i, stops):
        """The token after the right operand of the binary operator i."""
        j = i + 1
        while j < len(self.tokens):
            token = self.tokens[j]
            if token.kind == "sign" and token.text in OPENING:
                j = token.mate
            elif token.text in CLOSING or token.text in stops or token.text in ("?", ":", ",", ";"):
                break
            j += 1
        return j

    def postfix_end(self, i):
        """The token after the name i and what is called, indexed or reached through it; i itself when no name stands there."""
        tokens = self.tokens
        if tokens[i].kind != "name":
            return i
        j = i + 1
        while j < len(tokens):
            if tokens[j].text in ("(", "["):
                j = tokens[j].mate + 1
            elif tokens[j].text in (".", "->", "::") and tokens[j + 1].kind == "name":
                j += 2
            else:
                break
        return j


def swap(source, i):
    token = source.tokens[i]
    other = SWAPS[token.text]
    return Mutant("operator", token.start, token.end, f"{token.text} to {other}", [(token.start, token.end, other)],
                  lambda n: [(token.start, token.end, f"{token.text} ::mutant::At<{n}>{{}} {token.text}")])


def logic(source, i):
    token = source.tokens[i]
    function, other = LOGIC[token.text]
    first = source.tokens[source.operand_left(i, ("||",) if token.text == "&&" else ())].start
    last = source.tokens[source.operand_right(i, ("&&", "||") if token.text == "&&" else ("||",)) - 1].end
    return Mutant("logic", first, last, f"{token.text} to {other}",
                  [(first, first, "("), (token.start, token.end, other), (last, last, ")")],
                  lambda n: [(first, first, f"::mutant::{function}<{n}>([&]() -> bool {{ return bool("),
                             (token.start, token.end, "); }, [&]() -> bool { return bool("), (last, last, "); })")])


def negation(source, i):
    token = source.tokens[i]
    return Mutant("negation", token.start, token.end, "! left out", [(token.start, token.end, "")],
                  lambda n: [(token.start, token.end, f"!(::mutant::Not<{n}>)")])


def constant(source, i):
    token = source.tokens[i]
    if token.text in ("true", "false"):
        other = "false" if token.text == "true" else "true"
    elif re.fullmatch(r"(0[xX][\da-fA-F']+|\d[\d']*)([uUlLzZ]*)", token.text):
        digits, suffix = re.fullmatch(r"(0[xX][\da-fA-F']+|\d[\d']*?)([uUlLzZ]*)", token.text).groups()
        other = f"{int(digits.replace(chr(39), ''), 0 if digits[:2] in ('0x', '0X') else 10) + 1}{suffix}"
    elif TOLERANCE.search(token.text):
        return None
    else:
        value, suffix = re.fullmatch(r"(.*?)([fFlL]?)", token.text.replace("'", "")).groups()
        other = repr(2 * float(value) or 1.0) + suffix
    edits = lambda n: [(token.start, token.end, f"::mutant::constant<{n}>({token.text})")]
    begin = i
    while begin > 0 and source.tokens[begin - 1].text not in (";", "{", "}", "public", ":") and begin > i - 40:
        begin -= 1
    # A constant of the source would have to be known when it is compiled.
    fixed = [t for t in source.tokens[begin:i] if t.text == "constexpr"]
    in_list = source.tokens[begin - 1].text == "{" and not fixed
    if in_list:
        fixed = [t for t in source.tokens[max(0, begin - 30):begin] if t.text == "constexpr"][-1:]
    if fixed:
        word = fixed[0]
        edits = lambda n: [(word.start, word.end, "const"), (token.start, token.end, f"::mutant::constant<{n}>({token.text})")]
    return Mutant("constant", token.start, token.end, f"{token.text} to {other}", [(token.start, token.end, other)], edits)


def twin(source, i):
    token = source.tokens[i]
    other = TWINS[token.text]
    std = source.tokens[i - 2]
    plain = [(token.start, token.end, other)]
    switched = None
    if source.tokens[i + 1].text == "(":
        switched = lambda n: [(std.start, token.end, f"::mutant::twin<{n}>(MUTANT_CALL(std::{token.text}), MUTANT_CALL(std::{other}))")]
    return Mutant("twin", std.start, token.end, f"{token.text} to {other}", plain, switched)


def member_twin(source, i):
    token = source.tokens[i]
    other = MEMBER_TWINS[token.text]
    return Mutant("twin", token.start, token.end, f"{token.text} to {other}", [(token.start, token.end, other)])


def step(source, i):
    tokens, token = source.tokens, source.tokens[i]
    other = STEPS[token.text]
    plain = [(token.start, token.end, other)]
    function = "step_up" if token.text == "++" else "step_down"
    before = tokens[i - 1]
    if before.kind == "name" and before.text != "return" or before.text in (")", "]"):  # x++
        switched = None
        if before.kind == "name" and tokens[i - 2].text not in (".", "->", "::"):
            switched = lambda n: [(before.start, before.start, f"::mutant::{function}_after<{n}>("), (token.start, token.end, ")")]
        return Mutant("step", before.start, token.end, f"{token.text} to {other}", plain, switched)
    end = source.postfix_end(i + 1)
    if end == i + 1:
        return Mutant("step", token.start, token.end, f"{token.text} to {other}", plain)
    last = tokens[end - 1].end
    return Mutant("step", token.start, last, f"{token.text} to {other}", plain,
                  lambda n: [(token.start, token.end, f"::mutant::{function}<{n}>("), (last, last, ")")])


def truth(source, i):
    """`return x;` of a bool, negated. Whether it is one, the compiler says."""
    tokens = source.tokens
    first, end = i + 1, i + 1
    while tokens[end].text != ";":
        end = tokens[end].mate + 1 if tokens[end].text in OPENING and tokens[end].kind == "sign" else end + 1
    if end == first or tokens[first].text in ("{", "!", "true", "false") and (tokens[first].text in ("{", "!") or end == first + 1):
        return None
    start, last = tokens[first].start, tokens[end - 1].end
    return Mutant("truth", start, last, "returned bool negated",
                  [(start, start, "::mutant::plainly_negated("), (last, last, ")")],
                  lambda n: [(start, start, f"::mutant::negated<{n}>("), (last, last, ")")])


def removal(source, i):
    """A call whose result is not used."""
    tokens = source.tokens
    before = tokens[i - 1].text if i else ""
    ends_condition = before == ")" and tokens[tokens[i - 1].mate - 1].text in ("if", "for", "while")
    if before not in (";", "{", "}", "else") and not ends_condition or tokens[i].text in NO_CALL:
        return None
    end = source.postfix_end(i)
    if end >= len(tokens) or tokens[end].text != ";" or tokens[end - 1].text != ")":
        return None
    start, last = tokens[i].start, tokens[end].end
    return Mutant("removal", start, last, "statement left out", [(start, last, "{}")],
                  lambda n: [(start, start, f"{{ if (!::mutant::on({n})) {{ "), (last, last, " } }")])


def at(source, i):
    tokens, token = source.tokens, source.tokens[i]
    before = tokens[i - 1].text if i else ""
    after = tokens[i + 1].text if i + 1 < len(tokens) else ""
    if token.kind == "number" or token.text in ("true", "false"):
        yield constant(source, i)
    elif token.kind == "name":
        if token.text in TWINS and before == "::" and tokens[i - 2].text == "std" and after in ("(", "<"):
            yield twin(source, i)
        if token.text in MEMBER_TWINS and before in (".", "->") and after == "(":
            yield member_twin(source, i)
        if token.text == "return":
            yield truth(source, i)
        yield removal(source, i)
    elif token.kind == "sign" and before != "operator":
        if token.text in SWAPS and source.is_binary(i):
            yield swap(source, i)
        elif token.text in LOGIC and source.is_binary(i):
            yield logic(source, i)
        elif token.text == "!":
            yield negation(source, i)
        elif token.text in STEPS:
            yield step(source, i)


def find(text):
    """Every mutant of the source, in order."""
    source = Source(text)
    found, seen = [], {}
    for i in range(len(source.tokens)):
        if i in source.barred:
            continue
        for mutant in at(source, i):
            if mutant is None:
                continue
            place = source.tokens[i].start
            begin = text.rfind("\n", 0, place) + 1
            mutant.line = text.count("\n", 0, place) + 1
            mutant.column = place - begin + 1
            mutant.code = text[begin:text.find("\n", place)].strip()
            key = (mutant.line, mutant.change)
            mutant.ordinal = seen[key] = seen.get(key, 0) + 1
            found.append(mutant)
    return found


def edited(text, edits):
    """The text with one set of edits that don't overlap; of insertions at one place the first stays first."""
    for start, end, new in sorted(edits, key=lambda e: (e[0], e[1]), reverse=True):
        text = text[:start] + new + text[end:]
    return text


def with_switches(text, numbered):
    """The text with several mutants in it, each behind its number: `numbered` holds (number, mutant)."""
    ends, begins, replaced = {}, {}, {}
    for number, mutant in numbered:
        for start, end, new in mutant.switched(number):
            if start < end:
                replaced[start] = (end, new)
            elif start == mutant.end and start != mutant.start:
                ends.setdefault(start, []).append((-mutant.start, new))
            else:
                begins.setdefault(start, []).append((-mutant.end, new))
    out, at_character = [], 0
    for place in sorted(set(ends) | set(begins) | set(replaced)):
        out.append(text[at_character:place])
        # Of mutants over the same stretch the one that begins first ends last.
        out += [new for _, new in sorted(reversed(ends.get(place, [])), key=lambda e: e[0])]
        out += [new for _, new in sorted(begins.get(place, []), key=lambda e: e[0])]
        at_character = place
        if place in replaced:
            at_character, new = replaced[place]
            out.append(new)
    out.append(text[at_character:])
    return "".join(out)
