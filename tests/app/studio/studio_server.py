"""Starts the studio's server for a test and talks to it."""

import atexit
import http.client
import json
import os
import pathlib
import re
import signal
import socket
import subprocess
import tempfile
import threading
import urllib.parse


class Answer:
    def __init__(self, status, headers, body):
        self.status, self.headers, self.body = status, headers, body

    def json(self):
        return json.loads(self.body)


class Server:
    """`evencount studio` on a folder of projects; its key is exchanged for the cookie."""

    def __init__(self, program, folder, *options):
        self.folder = pathlib.Path(folder)
        self.log = []
        self.process = subprocess.Popen(
            [program, "studio", "--projects", str(folder), *options], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        atexit.register(self.kill)  # also when a check fails
        line = self.process.stdout.readline()
        found = re.match(r"http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]+)$", line.strip())
        if not found:
            raise SystemExit(f"the server did not begin: {line!r} {self.process.stderr.read()}")
        self.port, self.key = int(found[1]), found[2]
        threading.Thread(target=self._read_log, daemon=True).start()
        self.cookie = self.raw("GET", f"/?key={self.key}").headers["Set-Cookie"].split(";")[0]

    def _read_log(self):
        for line in self.process.stderr:
            self.log.append(line)

    def connect(self, timeout=300):  # a busy machine is no fault
        return http.client.HTTPConnection("127.0.0.1", self.port, timeout=timeout)

    def raw(self, method, target, body=None, headers=None):
        connection = self.connect()
        connection.request(method, target, body=body, headers=headers or {})
        response = connection.getresponse()
        answer = Answer(response.status, response.headers, response.read())
        connection.close()
        return answer

    def own_headers(self):
        return {"Cookie": self.cookie, "X-Evencount": "1"}

    def call(self, method, target, body=None, connection=None):
        data = json.dumps(body) if isinstance(body, (dict, list)) else body
        if connection is None:
            return self.raw(method, target, data, self.own_headers())
        connection.request(method, target, body=data, headers=self.own_headers())
        response = connection.getresponse()
        return Answer(response.status, response.headers, response.read())

    def socket(self, timeout=20):
        return socket.create_connection(("127.0.0.1", self.port), timeout=timeout)

    def says(self, data, timeout=20):
        """What is answered to bytes, until the server closes."""
        with self.socket(timeout) as connection:
            connection.sendall(data)
            return read_all(connection)

    def lives(self):
        return self.process.poll() is None and self.call("GET", "/api/projects").status == 200

    def memory_kb(self):
        return int(re.search(r"VmRSS:\s+(\d+)", pathlib.Path(f"/proc/{self.process.pid}/status").read_text())[1])

    def end(self):
        self.process.send_signal(signal.SIGTERM)
        status = self.process.wait(30)
        assert status == 0, f"ended with {status}"

    def kill(self):
        self.process.kill()
        self.process.wait()


class Beside(threading.Thread):
    """What is checked beside other things: a thread's own failure would pass unseen."""

    def __init__(self, checks):
        super().__init__()
        self.checks, self.failure = checks, None
        self.start()

    def run(self):
        try:
            self.checks()
        except BaseException as failure:
            self.failure = failure

    def end(self):
        self.join()
        if self.failure:
            raise self.failure


def read_all(connection):
    data = b""
    try:
        while piece := connection.recv(65536):
            data += piece
    except (ConnectionResetError, TimeoutError):
        pass
    return data


def project(columns=20, edge=30, bands=2, title="Test"):
    band = lambda name: {"name": name, "technique": "peyote-even-count", "bead": "cylinder-11", "closure": "open", "columns": columns,
                         "edge": edge, "cells": [f"{columns}A"] * edge}
    letters = [("A", "#101030"), ("B", "#ffffee"), ("C", "#aa2233")]
    return {"format": 1, "title": title, "beads": [{"id": "cylinder-11"}],
            "legend": [{"letter": letter, "name": f"colour {letter}", "colour": colour, "bead": "cylinder-11"} for letter, colour in letters],
            "bands": [band(f"Band {i + 1}") for i in range(bands)]}


def put_project(folder, name="test", **sizes):
    path = pathlib.Path(folder) / f"{name}.evencount.json"
    path.write_text(json.dumps(project(**sizes)))
    return path


def cells_of(state, band):
    """A band's cells as letters, one list a step."""
    steps = []
    for line in state["bands"][band]["cells"]:
        step = []
        for count, letter in re.findall(r"(\d+)([A-Z]+|\.)", line):
            step += [letter] * int(count)
        steps.append(step)
    return steps


def long_run():
    return os.environ.get("EVENCOUNT_LONG") == "1"


def folder():
    return tempfile.TemporaryDirectory(prefix="evencount-studio-")


def quoted(text):
    return urllib.parse.quote(text, safe="")


def check(truth, what):
    if not truth:
        raise SystemExit(f"FAILED: {what}")
