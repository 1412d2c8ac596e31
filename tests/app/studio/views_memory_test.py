#!/usr/bin/env python3
"""Every view of a project, asked for again and again: the server keeps nothing of an answer. (A font's configuration kept by a library for
each drawing once took 75 kB an answer.)"""

import json
import pathlib
import re
import sys

from studio_server import Server, check, folder, long_run

ROUNDS = 60 if long_run() else 30
MOST_KB = 40  # an answer, on average over the rounds


def views(source):
    """The addresses under a project that are asked for with GET and name nothing but the project and a band."""
    text = (source / "docs/openapi.yaml").read_text()
    for address, methods in re.findall(r"^  /api/projects/\{project\}/(\S+):\n((?:    .*\n)+)", text, re.M):
        if re.search(r"^    get:", methods, re.M) and not re.search(r"\{(?!band\})", address):
            yield address.replace("{band}", "0")


def main():
    source = pathlib.Path(sys.argv[2])
    with folder() as place:
        (pathlib.Path(place) / "moon.evencount.json").write_text((source / "examples/moonwatch.evencount.json").read_text())
        server = Server(sys.argv[1], place)
        asked = [*views(source), "bands/0/drawings/chart", "bands/0/drawings/band"]
        check(len(asked) > 12, f"only {asked}")
        answered = 0
        for view in asked:
            ask = lambda: server.call("GET", f"/api/projects/moon/{view}").status
            answered += ask() == 200
            for _ in range(20):
                ask()
            before = server.memory_kb()
            for _ in range(ROUNDS):
                ask()
            grown = (server.memory_kb() - before) / ROUNDS
            if grown > 1:
                print(f"{view}: {grown:.1f} kB an answer")
            check(grown < MOST_KB, f"{view} takes {grown:.1f} kB an answer for good")
        check(answered > 10, f"only {answered} of {len(asked)} views answered")
        server.end()
        print(f"{len(asked)} views, {ROUNDS} answers each: no growth")


main()
