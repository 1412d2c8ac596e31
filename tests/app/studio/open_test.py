#!/usr/bin/env python3
"""`evencount studio --open` asks the desktop to show the studio, without telling the key to every user of the machine; the file that
leads there is gone when the studio ends."""

import os
import pathlib
import re
import sys
import time

from studio_server import Server, check, folder

RECORD = """#!/bin/sh
ls -l "/proc/$$/fd" >"$RECORD.files"
printf '%s\\n' "$@" >"$RECORD.new"
stat -c %a "$1" >>"$RECORD.new"
cat "$1" >>"$RECORD.new"
mv "$RECORD.new" "$RECORD"
"""


def main():
    program = sys.argv[1]
    with folder() as name:
        here = pathlib.Path(name)
        (here / "bin").mkdir()
        opener, record = here / "bin" / "xdg-open", here / "record"
        opener.write_text(RECORD)
        opener.chmod(0o755)
        os.environ.update(PATH=f"{here}/bin:{os.environ['PATH']}", RECORD=str(record), XDG_RUNTIME_DIR=str(here))
        server = Server(program, here / "projects", "--open")
        for _ in range(600):
            if record.exists():
                break
            time.sleep(0.05)
        file, mode, page = record.read_text().split("\n", 2)
        check(server.key not in file, "the key is in the arguments of a program")
        inherited = pathlib.Path(f"{record}.files").read_text()
        check("socket:" not in inherited, f"the browser holds the server's sockets: {inherited}")
        check(mode == "600", f"others may read the file: {mode}")
        address = f"http://127.0.0.1:{server.port}/?key={server.key}"
        check(re.search(r'http-equiv="refresh" content="0; url=([^"]+)"', page)[1] == address, "the file leads elsewhere")
        check(pathlib.Path(file).exists(), "the file is gone before the browser has read it")
        server.end()
        check(not pathlib.Path(file).exists(), "the file with the key is left")

        opener.unlink()  # no desktop: it is said, and the studio runs
        os.environ["PATH"] = f"{here}/bin"
        server = Server(program, here / "projects", "--open")
        check(server.call("GET", "/api/projects").status == 200, "no studio without a desktop")
        server.end()
        for _ in range(600):
            if any("ending" in line for line in server.log):
                break
            time.sleep(0.05)
        check(any("xdg-open" in line for line in server.log), f"nothing is said of xdg-open: {server.log}")
        check(not list(here.glob("evencount-*.html")), "a file with a key is left")


main()
