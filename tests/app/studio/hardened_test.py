#!/usr/bin/env python3
"""The promises of docs/security.md that are kept by the running server as a whole. A minute more, of waiting, with EVENCOUNT_LONG=1."""

import json
import os
import pathlib
import re
import socket
import subprocess
import sys
import time

from studio_server import Beside, Server, check, folder, long_run, project, put_project, read_all

KEPT_FIELDS = {"Content-Security-Policy": "frame-ancestors 'none'", "X-Content-Type-Options": "nosniff", "X-Frame-Options": "DENY",
               "Referrer-Policy": "no-referrer", "Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Resource-Policy": "same-origin"}


def status_of(answer):
    return int(answer.split(b" ", 2)[1]) if answer.startswith(b"HTTP/1.1 ") else None


def answers_in(data):
    return len(re.findall(rb"HTTP/1\.1 \d", data))


class Hardened:
    def __init__(self, server, place):
        self.server, self.place = server, place
        self.host = f"127.0.0.1:{server.port}"

    def head(self, line, *fields, end="\r\n"):
        return end.join([line, f"Host: {self.host}", f"Cookie: {self.server.cookie}", "X-Evencount: 1", *fields, "", ""]).encode()

    def call(self, method, target, body=None):
        return self.server.call(method, target, body)

    def asked_by_a_small_reader(self, target):
        """A connection that has asked, and holds so little that the answer has to wait for whoever reads it."""
        connection = socket.socket()
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
        connection.connect(("127.0.0.1", self.server.port))
        connection.sendall(self.head(f"GET {target} HTTP/1.1"))
        return connection

    def lives(self, what):
        check(self.server.lives(), f"{what}: the server does not serve any more")

    def status(self, what, answer, *statuses):
        found = status_of(answer) if isinstance(answer, bytes) else answer.status
        check(found in statuses, f"{what}: answered {found}, expected {statuses}")
        self.lives(what)

    # Who may ask

    def listens_on_loopback_only(self):
        listening = []
        for table in ["/proc/self/net/tcp", "/proc/self/net/tcp6"]:
            for line in pathlib.Path(table).read_text().splitlines()[1:]:
                local, state = line.split()[1], line.split()[3]
                if state == "0A" and int(local.split(":")[1], 16) == self.server.port:
                    listening.append(local.split(":")[0])
        check(listening == ["0100007F"], f"listens on {listening}")

    def secrets_are_kept(self):
        for what in ["cmdline", "environ"]:
            text = pathlib.Path(f"/proc/{self.server.process.pid}/{what}").read_bytes()
            check(self.server.key.encode() not in text, f"the key is in the process's {what}")
        entered = self.server.raw("GET", f"/?key={self.server.key}")
        cookie = entered.headers["Set-Cookie"]
        value = re.fullmatch(rf"evencount-{self.server.port}=([0-9a-f]{{64}}); Path=/; HttpOnly; SameSite=Strict", cookie)
        check(value and value[1] != self.server.key, f"the cookie is {cookie}")
        check(entered.status == 303 and entered.headers["Location"] == "/" and entered.headers["Cache-Control"] == "no-store", "the key stays in the address")
        for answer in [self.call("GET", "/"), self.call("GET", "/api/about"), self.call("GET", "/api/none")]:
            text = answer.body.decode() + str(answer.headers)
            check(self.server.key not in text and value[1] not in text, "an answer holds a secret")

    def log_is_harmless(self):
        key = self.server.key
        foreign = {"Host": "evil.example"}
        self.server.raw("GET", f"/?key={key}", None, foreign)
        self.server.raw("GET", f"/api/none?key={key}", None, self.server.own_headers())
        self.server.raw("GET", f"/none.js?key={key}")
        self.server.raw("GET", f"/?key={key[:-1]}g")
        self.server.raw("GET", f"/?key={key}%zz")
        self.server.says(self.head(f"GET x?key={key} HTTP/1.1"))
        self.call("GET", "/api/projects/%1b%5b31m%07%0d%0afaked%20line")
        self.call("GET", "/api/projects/%c2%9b31m%e2%80%aegnp")
        self.call("GET", "/api/projects/test/bands/%1b%5b31m/words")
        self.call("POST", "/api/projects", json.dumps({"\x1b[31m": 1}))
        self.call("POST", "/api/projects/test/operations?revision=0", '{"do":"\\u001b[31m\\r\\nfaked"}')
        self.server.says(b"BR\x1b[31mEW / HTTP/1.1\r\n\r\n")
        time.sleep(0.3)
        log = "".join(self.server.log)
        check(len(self.server.log) > 10, "nothing is logged")
        for begin in range(0, len(key) - 12):
            check(key[begin:begin + 12] not in log, "a part of the key is in the log")
        check(self.server.cookie.split("=")[1][:12] not in log, "the cookie is in the log")
        bad = [line for line in self.server.log if any((ord(c) < 32 and c != "\n") or 0x7F <= ord(c) < 0xA0 or 0x202A <= ord(c) <= 0x202E for c in line)]
        check(not bad, f"a terminal would obey {bad}")
        check(all(line.startswith("evencount: ") for line in self.server.log), "something sent has made a line of its own")

    # What an answer carries

    def fields_are_everywhere(self):
        own = self.server.own_headers()
        answers = [self.server.raw("GET", "/"), self.server.raw("GET", "/none.js"), self.server.raw("POST", "/"), self.server.raw("GET", "/?key=0"),
                   self.server.raw("GET", f"/?key={self.server.key}"), self.server.raw("GET", "/api/projects"), self.call("GET", "/api/projects"),
                   self.call("GET", "/api/none"), self.call("PUT", "/api/projects", ""), self.call("POST", "/api/projects", "{"), self.call("HEAD", "/api/projects"),
                   self.call("POST", "/api/pair", "x" * 5000), self.server.raw("POST", "/api/projects", "{}", {**own, "Content-Encoding": "gzip"}),
                   self.call("GET", "/api/projects/test/thumbnail"), self.call("GET", "/api/projects/test/bands/0/positions")]
        for answer in answers:
            self.carries(answer.status, answer.headers.items())
        raw = [self.server.says(self.head("GET / HTTP/1.1", *[f"X-{i}: {'y' * 100}" for i in range(400)])), self.server.says(b"x\r\n\r\n"),
               self.server.says(b"GET / HTTP/1.1\r\n\r\n")]
        for answer in raw:
            fields = [tuple(line.split(": ", 1)) for line in answer.decode().split("\r\n\r\n")[0].split("\r\n")[1:]]
            self.carries(status_of(answer), fields)
        statuses = {answer.status for answer in answers} | {status_of(answer) for answer in raw}
        check(statuses >= {200, 303, 400, 403, 404, 405, 413, 415, 431}, f"only {statuses} were looked at")

    def carries(self, status, fields):
        for name, part in KEPT_FIELDS.items():
            values = [value for given, value in fields if given.lower() == name.lower()]
            check(len(values) == 1 and part in values[0], f"an answer with {status} has {name}: {values}")
        check(not any(name.lower().startswith("access-control") for name, _ in fields), "another site is let in")

    def drawings_can_do_nothing(self):
        for address in ["/api/projects/test/thumbnail", "/api/projects/test/bands/0/drawings/chart", "/api/projects/test/bands/0/drawings/band"]:
            answer = self.call("GET", address)
            policies = answer.headers.get_all("Content-Security-Policy")
            check(answer.status == 200 and len(policies) == 1 and "default-src 'none'" in policies[0] and "sandbox" in policies[0], f"{address}: {policies}")
            check(b"<script" not in answer.body and not re.search(rb"\son\w+=", answer.body), f"{address} has a script")

    # How requests are read

    def requests_are_read_one_way(self):
        inner = b"GET /api/projects/smuggled HTTP/1.1\r\nHost: x\r\n\r\n"
        post = "POST /api/projects HTTP/1.1"
        for what, request in [("bare line feeds", self.head("GET /api/projects HTTP/1.1", end="\n")),
                              ("a folded length of another kind", self.head(post, "Transfer-Encoding:\r\n chunked") + b"0\r\n\r\n" + inner),
                              ("a folded field", self.head("GET / HTTP/1.1", "X: a\r\n b")), ("one folded by a tab", self.head("GET / HTTP/1.1", "X: a\r\n\tb")),
                              ("a blank before the colon", self.head(post, "Content-Length : 5") + b"{}   " + inner),
                              ("a field that begins with a blank", self.head(post, " Content-Length: 5") + inner),
                              ("NUL in a value", self.head("GET / HTTP/1.1", "X: a\0b")), ("NUL in a name", self.head("GET / HTTP/1.1", "X\0: a")),
                              ("NUL in an address", self.head("GET /\0 HTTP/1.1")), ("a length with a sign", self.head(post, "Content-Length: +5") + b"{}   " + inner),
                              ("a length in hexadecimal", self.head(post, "Content-Length: 0x5") + b"{}   " + inner),
                              ("a length with a point", self.head(post, "Content-Length: 5.0") + b"{}   " + inner),
                              ("the same length twice", self.head(post, "Content-Length: 2", "Content-Length: 2") + b"{}" + inner),
                              ("an empty length", self.head(post, "Content-Length: ") + inner), ("HTTP/2", self.head("GET / HTTP/2.0")),
                              ("the preface of HTTP/2", b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n"), ("no version", b"GET /\r\n\r\n"),
                              ("an upgrade of unclear length", self.head("GET / HTTP/1.1", "Upgrade: h2c", "Transfer-Encoding: chunked"))]:
            answer = self.server.says(request)
            self.status(what, answer, 400)
            check(answers_in(answer) == 1, f"{what}: what was smuggled in has been answered")
        good = self.head("GET /api/about HTTP/1.1")
        check(answers_in(self.server.says(good + good + self.head("GET /api/about HTTP/1.1", "Connection: close"))) == 3, "requests one after another are not answered")
        for bad in [b"BAD\r\n\r\n", self.head(post, "Content-Length: 9999999999"), self.head("GET / HTTP/1.1", "Host: x")]:
            check(answers_in(self.server.says(bad + good)) == 1, "after an error the connection goes on")
        packed = self.server.raw("POST", "/api/projects", b"\x1f\x8b\x08\0", {**self.server.own_headers(), "Content-Encoding": "gzip"})
        self.status("a packed body", packed, 415)

    def methods(self):
        for method in ["TRACE", "OPTIONS", "PUT", "PATCH", "CONNECT", "get", "POST", "BREW"]:
            answer = self.server.says(self.head(f"{method} /api/tables HTTP/1.1", "Connection: close"))
            self.status(method, answer, 400, 405)
            check(b"X-Evencount: 1" not in answer, f"{method} gives back what was sent")
        for address in ["/", "/api/about", "/api/projects", "/api/projects/test", "/api/none"]:
            whole, head = self.call("GET", address), self.server.says(self.head(f"HEAD {address} HTTP/1.1", "Connection: close"))
            lines, _, body = head.partition(b"\r\n\r\n")
            check(body == b"" and status_of(head) == whole.status, f"HEAD {address} answers {head}")
            check(f"Content-Length: {len(whole.body)}".encode() in lines, f"HEAD {address} tells another length")
        begin = time.monotonic()
        stream = self.server.says(self.head("HEAD /api/events HTTP/1.1"))
        check(status_of(stream) == 200 and stream.endswith(b"\r\n\r\n") and answers_in(stream) == 1 and time.monotonic() - begin < 10, f"HEAD of the events answers {stream}")

    def ranges_are_not_served(self):
        whole = self.call("GET", "/api/projects/test/file").body
        for ranges in ["bytes=0-0", "bytes=-1", "bytes=5-2", "bytes=99999999999999999999-", "bytes=0-18446744073709551616", "bytes=" + ",".join(["0-"] * 1000),
                       "bytes=0-10,5-15,0-", "lines=1-2", "bytes=--1", "\xff"]:
            for address in ["/api/projects/test/file", "/"]:
                answer = self.server.raw("GET", address, None, {**self.server.own_headers(), "Range": ranges, "If-Range": '"x"'})
                check(answer.status == 200 and not answer.headers["Content-Range"], f"{ranges}: answered {answer.status}")
                check(address == "/" or answer.body == whole, f"{ranges}: not the whole")

    # Crowds

    def idle_connections_make_room(self):
        for what, begin in [("silence", b""), ("half a head", b"GET / HTTP/1.1\r\n"), ("half a body without a cookie", f"POST /api/pair HTTP/1.1\r\nHost: {self.host}\r\nX-Evencount: 1\r\nContent-Length: 1000\r\n\r\n{{".encode())]:
            crowd = []
            for _ in range(70):
                connection = self.server.socket()
                connection.sendall(begin)
                crowd.append(connection)
            for _ in range(5):
                self.lives(f"70 connections with {what}")
            for connection in crowd:
                connection.close()

    def streams(self):
        for i in range(24):
            connection = self.server.socket()
            connection.sendall(self.head("GET /api/events HTTP/1.1"))
            status = status_of(connection.recv(100))
            connection.close()
            check(status == 200, f"a page that is loaded anew for the {i}th time gets no events: {status}")
            time.sleep(0.15)
        time.sleep(2.5)
        deaf = [self.asked_by_a_small_reader("/api/events") for _ in range(16)]
        check(all(status_of(connection.recv(20)) == 200 for connection in deaf), "16 windows are not served")
        self.status("a stream too many", self.server.says(self.head("GET /api/events HTTP/1.1")), 429)
        before = self.server.memory_kb()
        for _ in range(100):
            check(self.call("POST", "/api/projects/test/along").status in (202, 429), "work is not begun beside streams that nobody reads")
        check(self.server.memory_kb() - before < 100_000, "what nobody reads grows")
        for connection in deaf:
            connection.close()
        time.sleep(2.5)
        again = self.server.socket()
        again.sendall(self.head("GET /api/events HTTP/1.1"))
        self.status("a stream after they have gone", again.recv(100), 200)
        again.close()

    def work(self):
        ids = []
        answer = None
        for _ in range(40):
            answer = self.call("POST", "/api/projects/test/render", {"size": "2000x2000", "samples": 2000})
            if answer.status != 202:
                break
            ids.append(answer.json()["id"])
        self.status("work without end", answer, 429)
        check(len(ids) <= 16, f"{len(ids)} pieces of work wait")
        for one in ids:
            check(self.call("DELETE", f"/api/jobs/{one}").status == 200, "work can not be called off")
        for _ in range(200):
            states = {job["state"] for job in self.call("GET", "/api/jobs").json()["jobs"]}
            if not states & {"running", "waiting"}:
                break
            time.sleep(0.1)
        check(not states & {"running", "waiting"}, "work that was called off goes on")
        self.status("work afterwards", self.call("POST", "/api/projects/test/along"), 202)
        self.status("a picture of too many samples", self.call("POST", "/api/projects/test/render", {"size": "30000x30000"}), 202)
        for size in ["30001x1", "0x0", "-1x5", "1e3x5", "99999999999999999999x1", "4294967297x1"]:
            self.status(f"a picture of {size}", self.call("POST", "/api/projects/test/render", {"size": size}), 400, 422)

    def bodies_in_sum(self):
        sockets, statuses = [], []
        for _ in range(5):
            connection = self.server.socket()
            connection.sendall(self.head("POST /api/pictures HTTP/1.1", f"Content-Length: {64 << 20}"))
            sockets.append(connection)
            time.sleep(0.1)
        sockets[-1].settimeout(10)
        statuses = status_of(sockets[-1].recv(100))
        check(statuses == 429, f"a fifth body of 64 MiB is answered with {statuses}")
        self.status("a small body beside large ones", self.call("POST", "/api/projects/test/operations?revision=0", "{}"), 422)
        for connection in sockets:
            connection.close()
        time.sleep(0.5)
        with self.server.socket() as connection:
            connection.sendall(self.head("POST /api/pictures HTTP/1.1", f"Content-Length: {64 << 20}"))
            connection.settimeout(1)
            try:
                refused = connection.recv(100)
            except TimeoutError:
                refused = b""
            check(refused == b"", f"bodies that never came are still counted: {refused}")
        self.lives("bodies in sum")

    def answers_nobody_reads(self):
        """More than a socket holds: the writing waits, nobody else does, and in the end it is given up."""
        sockets = [self.asked_by_a_small_reader("/api/projects/large/file") for _ in range(20)]
        begun = [status_of(connection.recv(20)) for connection in sockets]
        check(begun == [200] * 20, f"20 large answers begin with {begun}")
        silent = [self.server.socket() for _ in range(44)]
        for _ in range(5):
            self.lives("answers that nobody reads")
        begin = time.monotonic()
        if long_run():
            time.sleep(35)
            data = read_all(sockets[-1])
            check(0 < len(data) < len(self.call("GET", "/api/projects/large/file").body) and time.monotonic() - begin < 60, "an answer that nobody read was waited with")
        for connection in sockets + silent:
            connection.close()

    def slow(self):
        """With EVENCOUNT_LONG=1: a body byte by byte, and a connection that says nothing."""
        idle = self.server.socket(120)
        begin = time.monotonic()
        with self.server.socket(120) as connection:
            connection.sendall(self.head("POST /api/projects HTTP/1.1", "Content-Length: 1000"))
            try:
                while time.monotonic() - begin < 90:
                    connection.sendall(b" ")
                    time.sleep(0.5)
            except OSError:
                pass
            check(time.monotonic() - begin < 70, "a slow body was waited for")
        check(read_all(idle) == b"" and time.monotonic() - begin < 85, "an idle connection was waited for")
        self.lives("slow requests")

    # What stands in a request

    def json_bombs(self):
        wide = "{" + ",".join(f'"n{i}":0' for i in range(80_000)) + "}"
        for what, text in [("deep", "[" * 100_000 + "]" * 100_000), ("deep objects", '{"a":' * 100_000 + "1" + "}" * 100_000), ("wide", wide),
                           ("a long number", '{"title":' + "9" * 900_000 + "}"), ("a number beyond double", '{"samples":1e999}'),
                           ("a name twice", '{"title":"a","title":"b"}'), ("a name twice, deeper", '{"project":{"format":1,"format":1}}'),
                           ("a name twice in other letters", '{"title":"a","\\u0074itle":"b"}'), ("a lone surrogate", '{"title":"\\ud800"}'),
                           ("no UTF-8", b'{"title":"\xff"}'), ("NUL", b'{"title":"a\0b"}'), ("a second document", '{"title":"a"}{}')]:
            for address in ["/api/projects", "/api/projects/test/render", "/api/projects/test/picture", "/api/projects/test/operations?revision=0", "/api/pair"]:
                self.status(f"{what} to {address}", self.call("POST", address, text), 400, 413, 422)
        self.status("many values", self.call("POST", "/api/projects", "[" + "0," * 8_000_001 + "0]"), 422)

    def numbers(self):
        bad = ["99999999999999999999", "9223372036854775808", "-1", "-9223372036854775809", "1e3", "0x10", "+1", "%201", "1%20", "", "nan", "1.0", "%D9%A1", "4294967296000000"]
        for number in bad:
            for address in [f"/api/projects/test/patches?after={number}", f"/api/projects/test/history?count={number}", f"/api/projects/test/supplies?kits={number}",
                            f"/api/projects/test/bands/0/words?row={number}", f"/api/stock?count={number}", f"/api/fit?form=round:10x10&bead=cylinder-11&columns={number}",
                            f"/api/fit?form=round:10x10&bead=cylinder-11&together={number}"]:
                self.status(address, self.call("GET", address), 400, 404, 422)
            for address in [f"/api/projects/test/bands/{number}/words", f"/api/projects/test/bands/{number}/positions"]:
                self.status(address, self.call("GET", address), 404)
        for cell in ["1e999mm", "-1mm", "0mm", "nanmm", "infmm", "99999999999mm", "1e-300mm", "%00"]:
            self.status(f"a cell of {cell}", self.call("GET", f"/api/projects/test/bands/0/drawings/chart?cell={cell}"), 400, 422)
        for form in ["round:1e9x1e9", "round:-1x1", "round:nanx1", "round:" + "9" * 400, "lens:1x1x1x1x1x1", "outline:/etc/passwd", "round:10x10,hole=1e308"]:
            answer = self.call("GET", f"/api/fit?form={form}&bead=cylinder-11")
            self.status(f"a form {form}", answer, 400, 422)
            check(b"root:" not in answer.body, "a fit reads a file")

    def hostile_names(self):
        outer = sorted(path.name for path in self.place.parent.iterdir())
        titles = ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "../../../outside", "..\\..\\outside", ".hidden", "/etc/passwd", "CON", "-", "%2e%2e%2fx",
                  "é" * 500, "\u202egnp.exe", "'; rm -rf ~ #", "$(touch x)", "a" * 5000, " ", "👩‍👩‍👧" * 40, "x.evencount.json/../../y"]
        for title in titles:
            made = self.call("POST", "/api/projects", json.dumps({"title": title, "project": project(columns=4, edge=6, bands=1)}))
            self.status(f"a project {title!r}", made, 201)
            name = made.json()["id"]
            check(re.fullmatch(r"[a-z0-9\u00a0-\U0010ffff-]{1,100}", name) and not name.startswith("-"), f"{title!r} becomes {name!r}")
            check((self.place / f"{name}.evencount.json").is_file(), f"{title!r} lies elsewhere")
            check(self.call("GET", f"/api/projects/{quoted_path(name)}").json()["project"]["title"] == title, f"{title!r} is not kept")
            drawing = self.call("GET", f"/api/projects/{quoted_path(name)}/thumbnail").body
            check(b"<script" not in drawing and b"onerror" not in drawing, f"{title!r} is in a drawing as it is")
        for title in ["a\r\nSet-Cookie: x=1", "a\0b", "\x1b[31m", "\x7f"]:
            self.status(f"a project {title!r}", self.call("POST", "/api/projects", json.dumps({"title": title})), 400, 422)
        check(sorted(path.name for path in self.place.parent.iterdir()) == outer, "something was written outside the folder")
        self.page_of_a_hostile_name()

    def page_of_a_hostile_name(self):
        bad = "</script><script>alert(1)</script><img src=x onerror=alert(1)>"
        text = project(columns=4, edge=6, bands=1, title=bad)
        text["bands"][0]["name"] = bad
        text["legend"][0]["name"] = bad
        name = self.call("POST", "/api/projects", json.dumps({"project": text})).json()["id"]
        job = self.call("POST", f"/api/projects/{quoted_path(name)}/along").json()["id"]
        for _ in range(600):
            state = self.call("GET", f"/api/jobs/{job}").json()["state"]
            if state not in ("waiting", "running"):
                break
            time.sleep(0.1)
        check(state == "done", f"the page of a hostile name: {state}")
        page = self.call("GET", f"/api/jobs/{job}/parts/along.html")
        check(page.headers["Content-Disposition"] == 'attachment; filename="along.html"', "a page is shown as one of ours")
        check(b"<script>alert" not in page.body and b"<img src=x" not in page.body, "a name is read as HTML")

    # The page's files

    def page_files(self, program):
        with folder() as outer:
            here = pathlib.Path(outer)
            dist, projects = here / "page", here / "projects"
            (dist / "assets").mkdir(parents=True), projects.mkdir()
            (dist / "index.html").write_text("<p>the page"), (dist / "assets" / "a.js").write_text("1"), (here / "secret.js").write_text("SECRET")
            for hidden in [".env", ".git"]:
                (dist / hidden).write_text("SECRET")
            os.symlink(here / "secret.js", dist / "link.js"), os.symlink("../secret.js", dist / "assets" / "b.js"), os.symlink(here, dist / "up")
            os.symlink(here / "secret.js", dist / "assets" / "a.js.gz")
            os.mkfifo(dist / "pipe.js")
            (dist / "shut.js").write_text("SECRET"), (dist / "shut.js").chmod(0)
            server = Server(program, projects, "--studio-files", str(dist))
            for path in ["/link.js", "/assets/b.js", "/up/secret.js", "/.env", "/.git", "/%2eenv", "/../secret.js", "/%2e%2e/secret.js", "/..%2fsecret.js", "/%252e%252e/secret.js",
                         "/..%5csecret.js", "/assets/..%2f..%2fsecret.js", "/a.js%00.html", "/secret.js%00", "/pipe.js", "/" + "a" * 5000 + ".js", "/" + "a/" * 5000 + "b.js",
                         "/%c0%ae%c0%ae/secret.js", "/assets/.", "/assets/..", "//secret.js", "/./secret.js"]:
                answer = server.raw("GET", path)
                check(answer.status in (400, 404), f"{path}: answered {answer.status}")
                check(b"SECRET" not in answer.body and outer.encode() not in answer.body, f"{path} gives something away")
            packed = server.raw("GET", "/assets/a.js", None, {"Accept-Encoding": "gzip"})
            check(packed.body == b"1", "a packed file that is a link is followed")
            for path in ["/assets", "/assets/", "/api", "/api/", "/api/projects/"]:
                answer = server.raw("GET", path)
                check(b"a.js" not in answer.body and answer.status in (200, 403, 404), f"{path} lists a folder")
            if os.geteuid() != 0:
                answer = server.raw("GET", "/shut.js")
                check(answer.status >= 400 and outer.encode() not in answer.body, "a file that can't be read tells where it lies")
            server.end()

    def another_device(self, program):
        """With --lan, where this machine has a network."""
        with folder() as outer:
            process = subprocess.Popen([program, "studio", "--projects", outer, "--lan"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
            try:
                line = process.stderr.readline()
                found = re.search(r"other devices: http://([0-9.]+):(\d+)/ with the code (\d{6})$", line.strip())
                if not found and "no network" in line:
                    print("no network here: another device is not tried")
                    return
                check(found, f"no way in is told: {line}")
                host, port, code = found[1], int(found[2]), found[3]

                def asks(method, target, body=None, address=f"{host}:{port}", **fields):
                    head = [f"{method} {target} HTTP/1.1", f"Host: {address}", "Connection: close", *[f"{k.replace('_', '-')}: {v}" for k, v in fields.items()]]
                    data = (body or "").encode()
                    with socket.create_connection((host, port), timeout=20) as connection:
                        connection.sendall(("\r\n".join([*head, f"Content-Length: {len(data)}", "", ""])).encode() + data)
                        return read_all(connection)

                def pairs(with_code):
                    return asks("POST", "/api/pair", json.dumps({"code": with_code}), X_Evencount="1")

                check(status_of(asks("GET", "/")) == 200, "another device gets no page")
                check(status_of(asks("GET", "/api/projects")) == 403, "another device is let in without a code")
                check(status_of(asks("GET", "/", address=f"evil.example:{port}")) == 403, "another name leads here")
                good = pairs(code)
                cookie = re.search(rb"Set-Cookie: ([^;\r]+); Path=/; HttpOnly; SameSite=Strict", good)
                check(status_of(good) == 200 and cookie, f"the code is not good: {good}")
                check(status_of(asks("GET", "/api/projects", Cookie=cookie[1].decode())) == 200, "the code lets nobody in")
                wrong = "000000" if code != "000000" else "111111"
                statuses = [status_of(pairs(wrong)) for _ in range(5)]
                check(statuses == [403] * 5, f"wrong codes are answered {statuses}")
                check(status_of(pairs(code)) == 429, "codes can be tried without end")
            finally:
                process.terminate()
                process.communicate()

    def stock_tells_no_path(self, program):
        with folder() as outer:
            here = pathlib.Path(outer)
            (here / "projects").mkdir()
            put_project(here / "projects")
            where = subprocess.run([program, "stock", "list"], env={**os.environ, "XDG_DATA_HOME": str(here / "data")}, capture_output=True, text=True)
            data = here / "data" / "evencount"
            data.mkdir(parents=True, exist_ok=True)
            for path in [*data.glob("*"), data / "stock.evencount-stock", data / "stock.db"]:
                path.write_bytes(b"no database at all" * 100)
            os.environ["XDG_DATA_HOME"] = str(here / "data")
            server = Server(program, here / "projects")
            del os.environ["XDG_DATA_HOME"]
            for address in ["/api/stock", "/api/projects/test/supplies?stock=true"]:
                answer = server.call("GET", address)
                check(str(here / "data").encode() not in answer.body, f"{address} tells where the stock lies ({where.returncode})")
            server.end()


def quoted_path(name):
    import urllib.parse
    return urllib.parse.quote(name, safe="")


def main():
    program = sys.argv[1]
    with folder() as outer:
        place = pathlib.Path(outer) / "projects"
        place.mkdir()
        put_project(place)
        put_project(place, "large", columns=2, edge=10_000, bands=40)
        server = Server(program, place)
        hardened = Hardened(server, place)
        waiting = [Beside(hardened.slow)] if long_run() else []
        for promise in [hardened.listens_on_loopback_only, hardened.secrets_are_kept, hardened.log_is_harmless, hardened.fields_are_everywhere,
                        hardened.drawings_can_do_nothing, hardened.requests_are_read_one_way, hardened.methods, hardened.ranges_are_not_served, hardened.json_bombs,
                        hardened.numbers, hardened.hostile_names, hardened.bodies_in_sum, hardened.work, hardened.streams]:
            begin = time.monotonic()
            promise()
            print(f"{promise.__name__}: {time.monotonic() - begin:.1f} s")
        for thread in waiting:  # before the crowds: they push out whoever waits
            thread.end()
        for promise in [hardened.idle_connections_make_room, hardened.answers_nobody_reads]:
            begin = time.monotonic()
            promise()
            print(f"{promise.__name__}: {time.monotonic() - begin:.1f} s")
        server.end()
        hardened.page_files(program)
        hardened.stock_tells_no_path(program)
        hardened.another_device(program)


main()
