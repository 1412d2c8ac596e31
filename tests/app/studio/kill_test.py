#!/usr/bin/env python3
"""The server is killed in the middle of a stream of edits, again and again: every edit that was acknowledged is there when it is started
again, no file is torn, and undo goes back over all of them. 20 times; 500 with EVENCOUNT_LONG=1."""

import json
import random
import subprocess
import sys
import threading
import time

from studio_server import Server, cells_of, check, folder, long_run, put_project

COLUMNS, EDGE = 20, 30


def stream(server, revision, random_state, acknowledged):
    """Edits until the server is gone; each that was answered is noted."""
    connection = server.connect()
    try:
        while True:
            cell, letter = [random_state.randrange(COLUMNS), random_state.randrange(EDGE)], random_state.choice("ABC")
            # Noted before it is asked for: what the kill caught between may be there or not.
            acknowledged["asked"] = (cell, letter)
            answer = server.call("POST", f"/api/projects/test/operations?revision={revision}",
                                 {"do": "set", "band": 0, "cells": [cell], "letter": letter}, connection)
            check(answer.status == 200, answer.body)
            revision = answer.json()["revision"]
            acknowledged["cells"][tuple(cell)] = letter
            acknowledged["revision"] = revision
            acknowledged["count"] += 1
            acknowledged["asked"] = None
    except (OSError, EOFError, ValueError) as gone:
        acknowledged["end"] = repr(gone)
    except Exception as gone:  # http.client's own
        acknowledged["end"] = repr(gone)


def main():
    program = sys.argv[1]
    kills = 500 if long_run() else 20
    random_state = random.Random(11)
    cells, total, revision = {}, 0, 0
    with folder() as place:
        path = put_project(place, columns=COLUMNS, edge=EDGE)
        for turn in range(kills):
            server = Server(program, place)
            state = server.call("GET", "/api/projects/test").json()
            check(state["revision"] >= revision, f"revision {state['revision']} after {revision} was acknowledged")
            there = cells_of(state["project"], 0)
            noted = {"cells": cells, "revision": state["revision"], "count": 0, "asked": None}
            for (column, step), letter in cells.items():
                check(there[step][column] == letter, f"turn {turn}: {column}, {step} is {there[step][column]}, acknowledged was {letter}")
            writer = threading.Thread(target=stream, args=(server, state["revision"], random_state, noted))
            writer.start()
            time.sleep(random_state.uniform(0.02, 0.9))
            server.kill()
            writer.join()
            if noted["asked"]:  # it may have been accepted without an answer
                cells.pop(tuple(noted["asked"][0]), None)
            revision = noted["revision"]
            total += noted["count"]
            json.loads(path.read_text())  # not torn
            shown = subprocess.run([program, "proof", str(path), "--json"], capture_output=True, text=True)
            check(shown.returncode in (0, 1), shown.stderr)
        server = Server(program, place)
        state = server.call("GET", "/api/projects/test").json()
        undone = 0
        while state["undo"] is not None:
            answer = server.call("POST", f"/api/projects/test/undo?revision={state['revision']}")
            check(answer.status == 200, answer.body)
            state = answer.json()
            undone += 1
        first = server.call("GET", "/api/projects/test").json()["project"]
        check(all(letter == "A" for step in cells_of(first, 0) for letter in step), "undo did not lead back to the beginning")
        server.end()
        check(json.loads(path.read_text()) == first, "the file is not what the server had")
        check(total > kills, f"only {total} edits in {kills} turns")
        print(f"{kills} kills, {total} acknowledged edits, none lost; {undone} undone")


main()
