#!/usr/bin/env python3
"""Requests that mean harm, or are made by mistake: each is refused and written to the log, and the server goes on serving."""

import json
import os
import pathlib
import re
import socket
import sys
import time

from studio_server import Beside, Server, check, folder, put_project, read_all


def status_of(answer):
    return int(answer.split(b" ", 2)[1]) if answer.startswith(b"HTTP/1.1 ") else None


class Hostile:
    def __init__(self, server):
        self.server = server
        self.host = f"127.0.0.1:{server.port}"

    def refused(self, what, answer, *statuses):
        status = answer if answer is None or isinstance(answer, int) else status_of(answer) if isinstance(answer, bytes) else answer.status
        check(status in statuses, f"{what}: answered {status}, expected {statuses}")
        check(self.server.lives(), f"{what}: the server does not serve any more")

    def head(self, line, *fields):
        return "\r\n".join([line, f"Host: {self.host}", f"Cookie: {self.server.cookie}", "X-Evencount: 1", *fields, "", ""]).encode()

    def foreign_pages(self):
        own = self.server.own_headers()
        for name, value, status in [("Origin", "http://evil.example", 403), ("Origin", "null", 403), ("Host", "evil.example", 403),
                                    ("Host", f"localhost.evil.example:{self.server.port}", 403), ("Sec-Fetch-Site", "cross-site", 403),
                                    ("Cookie", "evencount=1", 403)]:
            self.refused(f"{name}: {value}", self.server.raw("GET", "/api/projects", None, {**own, name: value}), status)
        self.refused("no cookie", self.server.raw("GET", "/api/projects", None, {"X-Evencount": "1"}), 403)
        self.refused("no field of its own", self.server.raw("POST", "/api/projects", "{}", {"Cookie": self.server.cookie}), 403)
        self.refused("a form of another page", self.server.raw("POST", "/api/projects", "title=x", {
            "Cookie": self.server.cookie, "Origin": "http://evil.example", "Content-Type": "application/x-www-form-urlencoded"}), 403)
        self.refused("another key", self.server.raw("GET", "/?key=0000"), 403)
        self.refused("pairing without --lan", self.server.call("POST", "/api/pair", {"code": ""}), 403)
        preflight = self.server.raw("OPTIONS", "/api/projects", None, {"Origin": "http://evil.example", "Access-Control-Request-Method": "POST"})
        check(not any("access-control" in name.lower() for name in preflight.headers), "another site is let in")
        page = self.server.raw("GET", "/")
        check(page.status == 200 and "frame-ancestors 'none'" in page.headers["Content-Security-Policy"], "no content policy")
        check(page.headers["X-Content-Type-Options"] == "nosniff", "no nosniff")

    def paths(self, place):
        outside = place.parent / "outside.evencount.json"
        outside.write_text(json.dumps({"format": 1, "title": "SECRET", "beads": [], "legend": [], "bands": []}))
        os.symlink(outside, place / "link.evencount.json")
        os.symlink("/etc", place / "etc.evencount.json")
        for path in ["/api/projects/..%2Foutside", "/api/projects/../outside", "/api/projects/%2e%2e/outside", "/api/projects/%2e%2e%2foutside",
                     "/api/projects/..%5coutside", "/api/projects/link", "/api/projects/etc", "/api/projects/.bin", "/api/projects/%00",
                     "/api/projects/..%252foutside", "/api/projects/%c0%ae%c0%ae%2foutside", "/api/projects/" + "a" * 3000,
                     "/../../../../etc/passwd", "/..%2f..%2f..%2fetc/passwd", "/assets/../../outside.evencount.json", "/%2e%2e/outside.evencount.json",
                     "//etc/passwd", "/assets//etc/passwd"]:
            answer = self.server.says(self.head(f"GET {path} HTTP/1.1", "Connection: close"))
            check(b"SECRET" not in answer and b"root:" not in answer, f"{path} gives a file away")
            self.refused(path, answer, 400, 404)
        outside.unlink()

    def bodies(self):
        claim = self.head("POST /api/projects/test/operations?revision=0 HTTP/1.1", "Content-Length: 1073741824")
        begin = time.monotonic()
        self.refused("a claim of 1 GB", self.server.says(claim), 413)
        check(time.monotonic() - begin < 15, "the claim was waited for")
        self.refused("a body where none belongs", self.server.call("POST", "/api/projects/test/undo?revision=0", "x"), 413)
        self.refused("a body that is too large", self.server.call("POST", "/api/pair", "x" * 5000), 413)
        self.refused("half a body, then silence", self.half_body(), None, 400, 408)
        chunked = self.head("POST /api/projects/test/operations?revision=0 HTTP/1.1", "Transfer-Encoding: chunked") + b"5\r\nhello\r\n0\r\n\r\n"
        self.refused("a chunked body", self.server.says(chunked), 400)
        self.refused("an impossible length", self.server.says(self.head("POST /api/projects HTTP/1.1", "Content-Length: -5")), 400)
        self.refused("a huge length", self.server.says(self.head("POST /api/projects HTTP/1.1", "Content-Length: 99999999999999999999999")), 400)

    def half_body(self):
        with self.server.socket() as connection:
            connection.sendall(self.head("POST /api/projects HTTP/1.1", "Content-Length: 100") + b"{")
            connection.shutdown(socket.SHUT_WR)
            return status_of(read_all(connection))

    def smuggling(self):
        inner = b"GET /api/projects/smuggled HTTP/1.1\r\nHost: x\r\n\r\n"
        for fields in [("Content-Length: 6", "Transfer-Encoding: chunked"), ("Transfer-Encoding: chunked", "Content-Length: 6"),
                       ("Content-Length: 6", "Content-Length: 7"), ("Content-Length: 6, 7",), ("Transfer-Encoding: identity",),
                       ("Transfer-Encoding: xchunked",), ("Transfer-Encoding : chunked",)]:
            answer = self.server.says(self.head("POST /api/projects HTTP/1.1", *fields) + b"0\r\n\r\n" + inner)
            self.refused(f"smuggling by {fields}", answer, 400)
            check(len(re.findall(rb"HTTP/1\.1 \d", answer)) == 1, f"{fields}: what was smuggled in has been answered")

    def heads(self):
        self.refused("a head without end", self.server.says(self.head("GET / HTTP/1.1", *[f"X-{i}: {'y' * 100}" for i in range(400)])), 431)
        self.refused("no HTTP", self.server.says(b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03 TLS, say\r\n\r\n"), 400)
        self.refused("no host", self.server.says(b"GET / HTTP/1.1\r\n\r\n"), 400)
        self.refused("two hosts", self.server.says(self.head("GET / HTTP/1.1", f"Host: {self.host}")), 400)
        self.refused("another's address", self.server.says(self.head("GET http://evil.example/ HTTP/1.1")), 400)
        self.refused("an unknown method", self.server.says(self.head("BREW /api/projects HTTP/1.1", "Connection: close")), 405)
        self.refused("a field with a line end", self.server.says(self.head("GET / HTTP/1.1", "X: a\rb: c")), 400)

    def slow_head(self):
        begin = time.monotonic()
        with self.server.socket(60) as connection:
            try:
                for letter in self.head("GET / HTTP/1.1", *["X: y"] * 50)[:-2].decode():
                    connection.sendall(letter.encode())
                    time.sleep(0.1)
                    if time.monotonic() - begin > 40:
                        break
            except OSError:
                pass
            answer = read_all(connection)
        check(time.monotonic() - begin < 30, "a slow head was waited for")
        self.refused("a slow head", answer, 408, None)

    def operations(self):
        def operate(body):
            return self.server.call("POST", "/api/projects/test/operations?revision=0", body)

        for body in ["", "x", "[", "{}", "[]", "null", '{"do":1}', '{"do":"fill"}', '{"do":"fill","do":"set"}', "\xff", '{"do":"set","band":0,"cells":[[0,0]],"letter":"B","x":1}',
                     '{"do":"set","band":1e9,"cells":[],"letter":"B"}', '{"do":"several","operations":[{"do":"several","operations":[]}]}']:
            self.refused(f"operation {body!r}", operate(body), 400, 422)
        self.refused("nested lists", operate("[" * 200_000), 400)
        self.refused("nested objects", operate('{"a":' * 200_000), 400)
        self.refused("nested where it is read otherwise", self.server.call("POST", "/api/projects", "[" * 200_000), 400)
        self.refused("a nested field", operate('{"do":"replace","project":' + "[" * 100_000 + "]" * 100_000 + "}"), 400)
        self.refused("many cells", operate(json.dumps({"do": "insert_steps", "band": 0, "at": 0, "count": 10_000, "letter": "A"})), 422)
        self.refused("no revision", self.server.call("POST", "/api/projects/test/operations", "{}"), 422)
        self.refused("a bad revision", self.server.call("POST", "/api/projects/test/operations?revision=x", "{}"), 400)
        check(self.server.call("GET", "/api/projects/test").json()["revision"] == 0, "something of it was done")

    def crowds(self):
        sockets = [self.server.socket() for _ in range(80)]
        check(self.server.lives(), "too many connections: the server does not serve any more")
        for connection in sockets:
            connection.close()
        streams = []
        for _ in range(20):
            connection = self.server.socket()
            connection.sendall(self.head("GET /api/events HTTP/1.1"))
            streams.append(connection)
        statuses = [status_of(connection.recv(100)) for connection in streams]
        check(statuses.count(200) == 16 and statuses.count(429) == 4, f"streams: {statuses}")
        for connection in streams:
            connection.close()
        check(self.server.lives(), "too many streams: the server does not serve any more")


def main():
    with folder() as outer:
        place = pathlib.Path(outer) / "projects"
        place.mkdir()
        put_project(place)
        server = Server(sys.argv[1], place)
        hostile = Hostile(server)
        slow = Beside(hostile.slow_head)
        hostile.foreign_pages()
        hostile.paths(place)
        hostile.bodies()
        hostile.smuggling()
        hostile.heads()
        hostile.operations()
        slow.end()
        hostile.crowds()
        check(server.log and sum("refused" in line for line in server.log) > 30, "what was refused is not in the log")
        begin = time.monotonic()
        with server.socket() as idle, server.socket() as stream:
            stream.sendall(hostile.head("GET /api/events HTTP/1.1"))
            stream.recv(100)
            server.end()
            check(time.monotonic() - begin < 10, "open connections keep the server from ending")
        print(f"all refused and logged ({len(server.log)} lines), still serving")


main()
