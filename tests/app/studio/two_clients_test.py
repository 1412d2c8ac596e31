#!/usr/bin/env python3
"""Two clients edit one project at once, each from its own view, which it brings up to date by patches. Afterwards both views, the server's
state and the file on disk are the same. Then: how long an edit takes, and that memory stays flat."""

import json
import random
import statistics
import sys
import threading
import time

from studio_server import Server, cells_of, check, folder, long_run, put_project

COLUMNS, EDGE = 12, 16
EMPTY = -1


class Client:
    def __init__(self, server, seed):
        self.server, self.random = server, random.Random(seed)
        self.connection = server.connect()
        state = self.get("/api/projects/test").json()
        self.revision, self.title = state["revision"], state["project"]["title"]
        letters = [entry["letter"] for entry in state["project"]["legend"]]
        self.letters = letters
        self.cells = [[letters.index(letter) for step in cells_of(state["project"], band) for letter in step] for band in range(2)]
        self.accepted = self.refused = 0

    def get(self, target):
        return self.server.call("GET", target, None, self.connection)

    def take(self, patch):
        for cells in patch.get("cells", []):
            runs = cells["runs"]
            for first, count, before, after in zip(runs[0::4], runs[1::4], runs[2::4], runs[3::4]):
                for i in range(first, first + count):
                    check(self.cells[cells["band"]][i] == before, "a patch that does not fit the view")
                    self.cells[cells["band"]][i] = after
        for value in patch.get("values", []):
            if value["at"] == "/title":
                check(self.title == value["before"], "another title than the patch says")
                self.title = value["after"]

    def catch_up(self):
        while True:
            patches = self.get(f"/api/projects/test/patches?after={self.revision}").json()["patches"]
            for patch in patches:
                check(patch["revision"] == self.revision + 1, "patches out of order")
                self.take(patch["patch"])
                self.revision = patch["revision"]
            if not patches:
                return

    def edit(self):
        cell = lambda: [self.random.randrange(COLUMNS), self.random.randrange(EDGE)]
        band, letter = self.random.randrange(2), self.random.choice(self.letters)
        operation = self.random.choice([
            {"do": "set", "band": band, "cells": [cell()], "letter": letter},
            {"do": "line", "band": band, "from": cell(), "to": cell(), "letter": letter},
            {"do": "change_texts", "title": f"T{self.random.randrange(1000)}"},
        ])
        if self.random.random() < 0.1:
            answer = self.server.call("POST", f"/api/projects/test/undo?revision={self.revision}", None, self.connection)
            check(answer.status in (200, 404, 409), answer.body)
        else:
            answer = self.server.call("POST", f"/api/projects/test/operations?revision={self.revision}", operation, self.connection)
            check(answer.status in (200, 409), answer.body)
        self.accepted += answer.status == 200
        self.refused += answer.status == 409
        # Sometimes a client lags behind on purpose.
        if answer.status == 409 or self.random.random() < 0.7:
            self.catch_up()


def interleave(server, path):
    clients = [Client(server, seed) for seed in (1, 2)]

    def work(client):
        for _ in range(250):
            client.edit()

    threads = [threading.Thread(target=work, args=(client,)) for client in clients]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    for client in clients:
        client.catch_up()
    one, other = clients
    check(one.cells == other.cells and one.title == other.title and one.revision == other.revision, "the two views differ")
    check(server.call("POST", "/api/projects/test/save").status == 200, "save")
    disk = json.loads(path.read_text())
    on_disk = [[one.letters.index(letter) for step in cells_of(disk, band) for letter in step] for band in range(2)]
    check(on_disk == one.cells and disk["title"] == one.title, "the file differs from the views")
    check(one.accepted > 50 and other.accepted > 50, "hardly any edit was accepted")
    print(f"500 interleaved edits: {one.accepted + other.accepted} accepted, {one.refused + other.refused} refused as out of date, all equal")


def latency(server):
    connection, times, revision = server.connect(), [], server.call("GET", "/api/projects/large").json()["revision"]
    for i in range(400):
        begin = time.perf_counter()
        answer = server.call("POST", f"/api/projects/large/operations?revision={revision}",
                             {"do": "set", "band": 0, "cells": [[i % 200, i % 300]], "letter": "B"}, connection)
        times.append(1000 * (time.perf_counter() - begin))
        check(answer.status == 200, answer.body)
        revision = answer.json()["revision"]
    times.sort()
    print(f"an edit of a 200 x 300 band over HTTP, on disk before its answer: median {statistics.median(times):.2f} ms, "
          f"95 % below {times[int(0.95 * len(times))]:.2f} ms (promised: 8 ms)")


def memory(server):
    connection = server.connect()
    revision = server.call("GET", "/api/projects/large").json()["revision"]
    edits = 10_000 if long_run() else 1_500

    def make(count):
        nonlocal revision
        for i in range(count):
            answer = server.call("POST", f"/api/projects/large/operations?revision={revision}",
                                 {"do": "set", "band": 0, "cells": [[i % 200, i % 300]], "letter": "AB"[(i // 60000 + i) % 2]}, connection)
            check(answer.status == 200, answer.body)
            revision = answer.json()["revision"]

    make(300)
    before = server.memory_kb()
    make(edits)
    after = server.memory_kb()
    print(f"{edits} more edits: {before / 1024:.1f} MB before, {after / 1024:.1f} MB after")
    check(after < before + 20 * 1024, "memory grows with the number of edits")


def main():
    with folder() as place:
        path = put_project(place, columns=COLUMNS, edge=EDGE)
        put_project(place, name="large", columns=200, edge=300, bands=1)
        server = Server(sys.argv[1], place)
        interleave(server, path)
        latency(server)
        memory(server)
        server.end()


main()
