"""Edits a project of a studio's server, and remembers what was acknowledged."""

import resource

from faults import cells_of, check

COLUMNS, EDGE = 20, 30


class Editor:
    """Edits one project and remembers what was acknowledged."""

    def __init__(self, server, name="test"):
        self.name, self.cells, self.count, self.last = name, {}, 0, None
        self.connect(server)

    def connect(self, server):
        self.server, self.revision = server, server.call("GET", f"/api/projects/{self.name}").json()["revision"]

    def edit(self, count=1):
        """How the last of them was answered; those before it were accepted."""
        for _ in range(count):
            cell, letter = (self.count * 7 % COLUMNS, self.count * 11 % EDGE), "BCA"[self.count // 100 % 3]
            self.count += 1
            answer = self.server.call("POST", f"/api/projects/{self.name}/operations?revision={self.revision}",
                                      {"do": "set", "band": 0, "cells": [list(cell)], "letter": letter})
            if answer.status != 200:
                return answer
            self.revision, self.cells[cell], self.last = answer.json()["revision"], letter, cell
        return answer

    def undone(self, answer):
        """The last edit was: what its cell was before isn't remembered."""
        self.revision = answer.json()["revision"]
        self.cells.pop(self.last, None)

    def must_edit(self, count=1):
        answer = self.edit(count)
        check(answer.status == 200, answer.body)

    def state(self):
        answer = self.server.call("GET", f"/api/projects/{self.name}")
        check(answer.status == 200, answer.body)
        return answer.json()

    def nothing_is_lost(self, what):
        state = self.state()
        check(state["revision"] == self.revision, f"{what}: revision {state['revision']}, acknowledged was {self.revision}")
        there = cells_of(state["project"], 0)
        for (column, step), letter in self.cells.items():
            check(there[step][column] == letter, f"{what}: {column}, {step} is {there[step][column]}, acknowledged was {letter}")
        return state


def limit(server, kind, number):
    """The soft limit of a running server; None for what it may have at the most."""
    hard = resource.prlimit(server.process.pid, kind)[1]
    resource.prlimit(server.process.pid, kind, (hard if number is None else number, hard))
