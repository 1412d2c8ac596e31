"""The schema against the reader: examples and written projects are valid; broken ones are refused by both.

Run by CTest with Debian's python3-jsonschema. Fails when there is no example to check.
"""

import argparse
import copy
import json
import pathlib
import subprocess
import sys

import jsonschema

RANDOM_PROJECTS = 60

# Cases of tests/cases/project that a schema can't express: rules between fields, and the text below JSON's values.
BEYOND_A_SCHEMA = {
    "band-cells-many", "band-too-few-steps", "band-step-short", "band-step-long", "band-step-huge-run",
    "band-step-letter", "band-unknown-bead", "band-unknown-form", "bead-hole", "bead-twice", "costing-decimals", "form-shape-sizes",
    "form-twice", "legend-bead", "legend-letter-twice", "strand-line-feed",
}


def described(node, path=""):
    """Every named field has a description, its own or the one it refers to."""
    missing = []
    for name, field in node.get("properties", {}).items():
        if "description" not in field and "$ref" not in field:
            missing.append(f"{path}/{name}")
        missing += described(field, f"{path}/{name}")
    for name, definition in node.get("$defs", {}).items():
        if "description" not in definition:
            missing.append(f"{path}/{name}")
        missing += described(definition, f"{path}/{name}")
    return missing


def case_parts(path):
    head, _, text = path.read_bytes().partition(b"---\n")
    fields = dict(line.split(": ", 1) for line in head.decode().splitlines())
    return fields, text


def refuse_nan(name):
    raise ValueError(name)


def parsed(text):
    """The document, or None where the text is below what a schema sees: not JSON, or a name twice."""
    def single(pairs):
        if len({name for name, _ in pairs}) != len(pairs):
            raise ValueError("a name twice")
        return dict(pairs)

    try:
        return json.loads(text.decode(), object_pairs_hook=single, parse_constant=refuse_nan)
    except ValueError:
        return None


def field_of(document, pointer):
    for step in pointer[:-1]:
        document = document[step]
    return document, pointer[-1]


def broken_copies(document):
    """Each field of a good project, once left out where it must be there and once as a thing no field may be."""
    def walk(node, pointer):
        items = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ()
        for key, value in items:
            yield pointer + [key]
            yield from walk(value, pointer + [key])

    for pointer in walk(document, []):
        broken = copy.deepcopy(document)
        holder, key = field_of(broken, pointer)
        holder[key] = [[None]] if not isinstance(holder[key], list) else {"not": "a list"}
        yield pointer, broken


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--source", type=pathlib.Path, required=True)
    arguments.add_argument("--random-projects", required=True)
    options = arguments.parse_args()
    failures = []

    schema = json.loads((options.source / "schema/project.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    failures += [f"no description: {path}" for path in described(schema)]

    def expect_valid(document, name):
        failures.extend(f"{name}: {error.json_path}: {error.message[:200]}" for error in validator.iter_errors(document))

    examples = sorted((options.source / "examples").glob("*.evencount.json"))
    if not examples:
        failures.append("no example in examples/*.evencount.json")
    small = options.source / "tests/project/data/small.evencount.json"
    for path in [*examples, small]:
        expect_valid(json.loads(path.read_text()), path.name)

    written = subprocess.run([options.random_projects, str(RANDOM_PROJECTS)], capture_output=True, check=True).stdout
    documents = [json.loads(text) for text in written.decode().split("\x1e")[:-1]]
    if len(documents) != RANDOM_PROJECTS:
        failures.append(f"{len(documents)} random projects instead of {RANDOM_PROJECTS}")
    for seed, document in enumerate(documents):
        expect_valid(document, f"random project {seed}")

    refused = 0
    for path in sorted((options.source / "tests/cases/project").glob("*.case")):
        fields, text = case_parts(path)
        document = parsed(text)
        if fields["code"] == "none":
            expect_valid(document, path.name)
        elif document is not None and path.stem not in BEYOND_A_SCHEMA and not path.stem.startswith("text-"):
            refused += 1
            if validator.is_valid(document):
                failures.append(f"{path.name}: valid by the schema, {fields['code']} to the reader")
    for pointer, broken in broken_copies(json.loads(small.read_text())):
        refused += 1
        if validator.is_valid(broken):
            failures.append(f"valid with a wrong type at {pointer}")

    print(f"{len(examples)} examples, {len(documents)} random projects valid; {refused} broken ones tried")
    for failure in failures:
        print("FAILED", failure)
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
