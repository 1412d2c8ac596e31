#!/usr/bin/env python3
"""docs/limits.md and docs/security.md against the code: every figure is the constant's, every test that is named exists, and every
promise names one."""

import pathlib
import re
import sys

HOME = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2])
UNITS = {"KiB": 1 << 10, "MiB": 1 << 20, "GiB": 1 << 30}
faults = []


def fault(text):
    faults.append(text)


def text_of(path):
    file = HOME / path
    if not file.is_file():
        fault(f"{path} is not there")
        return ""
    return file.read_text()


def without_comments(text):
    return re.sub(r"//.*", "", text)


def expression_of(name, text):
    """What the constant is set to, up to the comma, brace or semicolon that ends it."""
    found = re.search(rf"(?<![\w.]){name}\s*[={{]\s*", text)
    if not found:
        return None
    depth, end = 0, found.end()
    while text[end] not in ",;" or depth:
        depth += (text[end] in "({") - (text[end] in ")}")
        if depth < 0:
            break
        end += 1
    return text[found.end():end].strip()


def value_of(name, text):
    expression = expression_of(name, text)
    if expression is None:
        return None
    plain = expression.replace("'", "")
    plain = re.sub(r"std::\w+\{(\d+)\}", r"\1", plain)
    plain = re.sub(r"(?:millimetres|grams)\(([^)]*)\)", r"\1", plain)
    plain = re.sub(r"(?<=\d)[uUlL]+\b", "", plain)
    for word in set(re.findall(r"\b(?:\w+::)*[a-z_]+\b", plain)) - {"e"}:
        inner = value_of(word.split("::")[-1], text)
        if inner is None:
            inner = next((value for value in (value_of(word.split("::")[-1], without_comments(file.read_text())) for file in sorted(HOME.glob(f"src/{word.split('::')[0]}/*.hpp")))
                          if value is not None), None)
        plain = plain.replace(word, str(inner))
    if not re.fullmatch(r"[\d\s.e+*/<()-]+", plain):
        return None
    return eval(plain)


def numbers_in(text):
    """'0.1 to 100 mm', '64 MiB', '1,000 and 12'."""
    found = re.findall(r"(\d[\d,]*(?:\.\d+)?)(?:\s*(KiB|MiB|GiB)\b)?", text)
    return [float(number.replace(",", "").rstrip(",")) * UNITS.get(unit, 1) for number, unit in found]


def test_exists(reference):
    path, _, name = reference.partition(": ")
    text = text_of(path)
    if not name:
        return fault(f"{reference} names no test")
    if path.endswith(".py"):
        good = re.search(rf"def {re.escape(name)}\(", text) and re.search(rf"\b{re.escape(name)}\b(?!\(self)", text.replace(f"def {name}(", "", 1))
    elif "." in name:
        suite, test = name.split(".")
        good = re.search(rf"TEST(?:_F)?\({re.escape(suite)}, {re.escape(test)}\)", text)
    else:
        good = name in text
    if not good:
        fault(f"{path} has no test {name}")


def references_in(text):
    return re.findall(r"tests/[\w/]+\.(?:cpp|py): [\w.]+", text)


def rows_of(path):
    for line in text_of(path).splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split(" | ")]
        if line.startswith("|") and not set(line) <= set("|- ") and cells[0] != "what":
            yield cells


def check_limits():
    count = 0
    for cells in rows_of("docs/limits.md"):
        if len(cells) != 5:
            fault(f"limits: a row of {len(cells)} cells: {cells[0]}")
            continue
        what, most, why, where, test = cells
        count += 1
        if not why:
            fault(f"{what}: no reason")
        values = []
        for place in where.split("; "):
            path, _, names = place.partition(": ")
            if not names:
                continue
            text = without_comments(text_of(path))
            for name in names.split(", "):
                value = value_of(name, text)
                if value is None:
                    fault(f"{what}: {path} has no constant {name}")
                else:
                    values.append(float(value))
        stated = numbers_in(most)
        if values and (stated[:len(values)] != values):
            fault(f"{what}: the table says {stated}, the code {values}")
        references = references_in(test)
        if test.startswith("tests/") and not references:
            fault(f"{what}: no test in {test!r}")
        for reference in references:
            test_exists(reference)
    if count < 50:
        fault(f"only {count} limits were found")


def check_promises():
    text = text_of("docs/security.md")
    promises = re.findall(r"^(\d+)\. (.*(?:\n(?!\d+\. |\n|#).*)*)", text, re.MULTILINE)
    if [int(number) for number, _ in promises] != list(range(1, len(promises) + 1)) or len(promises) < 25:
        fault(f"promises are numbered {[number for number, _ in promises]}")
    for number, promise in promises:
        references = references_in(promise)
        if not references:
            fault(f"promise {number} names no test")
        for reference in references:
            test_exists(reference)


check_limits()
check_promises()
if faults:
    raise SystemExit("\n".join(faults))
print("the documents say what the code does")
