#!/usr/bin/env python3
"""`evencount studio --open` asks the desktop to show the studio, without telling the key to every user of the machine; the file that
leads there goes once it has been followed, and it is said when nothing was opened. Takes a minute more with EVENCOUNT_LONG=1: then the file
goes by itself."""

import os
import pathlib
import re
import sys
import time

from studio_server import Server, check, folder, long_run

RECORD = """#!/bin/sh
ls -l "/proc/$$/fd" >"$RECORD.files"
printf '%s\\n' "$@" >"$RECORD.new"
stat -c %a "$1" >>"$RECORD.new"
cat "$1" >>"$RECORD.new"
mv "$RECORD.new" "$RECORD"
"""


def until(truth):
    for _ in range(600):
        if truth():
            return True
        time.sleep(0.05)
    return False


def children(process):
    found = []
    for thread in pathlib.Path(f"/proc/{process.pid}/task").iterdir():
        try:
            found += (thread / "children").read_text().split()
        except (FileNotFoundError, ProcessLookupError):  # a thread that has ended since it was listed
            pass
    return found


def shows_it_in_a_browser(program, here, opener, record):
    """The file leads to the studio, and goes when it has been followed: not when the printed address was."""
    opener.write_text(RECORD)
    server = Server(program, here / "projects", "--open")
    check(until(record.exists), "nothing was opened")
    file, mode, page = record.read_text().split("\n", 2)
    check(server.key not in file, "the key is in the arguments of a program")
    inherited = pathlib.Path(f"{record}.files").read_text()
    check("socket:" not in inherited, f"the browser holds the server's sockets: {inherited}")
    check(mode == "600", f"others may read the file: {mode}")
    address = re.search(r'http-equiv="refresh" content="0; url=([^"]+)"', page)[1]
    begin = f"http://127.0.0.1:{server.port}"
    check(address.startswith(begin + "/?") and address.endswith(f"key={server.key}"), f"the file leads elsewhere: {address}")
    target = address[len(begin):]
    check(server.raw("GET", target.replace(server.key, "0" * len(server.key))).status == 403, "another key is good")
    check(pathlib.Path(file).exists(), "the file is gone before the browser has followed it")
    check(server.raw("GET", target).status == 303, "the file's address lets nobody in")
    check(not pathlib.Path(file).exists(), "the file with the key stays after it was followed")
    check(until(lambda: not children(server.process)), "the opener is not waited for")
    server.end()
    check(not any("xdg-open" in line for line in server.log), f"a good opener is complained of: {server.log}")


def takes_its_file_along(program, here, opener, record):
    record.unlink()
    server = Server(program, here / "projects", "--open")
    check(until(record.exists), "nothing was opened")
    if long_run():
        time.sleep(62)
        check(not list(here.glob("evencount-*.html")), "a file that nobody followed stays longer than a minute")
        check(server.lives(), "the studio ends after a minute")
    server.end()
    check(not list(here.glob("evencount-*.html")), "the file with the key is left")


def says_that_nothing_opened(program, here, said):
    """The studio runs all the same."""
    server = Server(program, here / "projects", "--open")
    check(server.call("GET", "/api/projects").status == 200, "no studio without a desktop")
    check(until(lambda: any(said in line and "open the address above" in line for line in server.log)), f"{said} is not said: {server.log}")
    check(not children(server.process), "the opener is not waited for")
    check(not list(here.glob("evencount-*.html")), "a file with a key is left")
    server.end()


def main():
    program = sys.argv[1]
    with folder() as name:
        here = pathlib.Path(name)
        (here / "bin").mkdir()
        opener, record = here / "bin" / "xdg-open", here / "record"
        opener.touch(0o755)
        os.environ.update(PATH=f"{here}/bin:{os.environ['PATH']}", RECORD=str(record), XDG_RUNTIME_DIR=str(here))
        shows_it_in_a_browser(program, here, opener, record)
        takes_its_file_along(program, here, opener, record)

        opener.write_text("#!/bin/sh\nexit 3\n")
        says_that_nothing_opened(program, here, "xdg-open: found an end with status 3")
        opener.unlink()
        os.environ["PATH"] = f"{here}/bin"
        says_that_nothing_opened(program, here, "xdg-open: found No such file or directory")
        opener.write_text(RECORD)
        opener.chmod(0o755)
        os.environ.update(XDG_RUNTIME_DIR="", TMPDIR=f"{here}/nowhere")
        says_that_nothing_opened(program, here, "a folder for the browser's file")
        check(not list(pathlib.Path.cwd().glob("evencount-*.html")), "a file with a key lies in the current folder")


main()
