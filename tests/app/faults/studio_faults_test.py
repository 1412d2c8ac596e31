#!/usr/bin/env python3
"""The studio's server under faults: its disk full, its files changed under it in every way, a second server, no descriptors, no threads.
What was answered with success is never lost, what wasn't is not in the state, and the server lives on.

The full disk is a small one in a mount name space of its own; where none can be made that part is skipped and said so."""

import json
import os
import pathlib
import resource
import shutil
import subprocess
import time

import disks
from editor import COLUMNS, EDGE, Editor, limit
from faults import FAILURE, PROGRAM, SANITIZED, Server, check, folder, long_run, put_project, run, tell


def full(disk, pages):
    disk.clear()
    path = put_project(disk.folder, columns=COLUMNS, edge=EDGE)
    server = Server(PROGRAM, disk.folder)
    editor = Editor(server)
    editor.must_edit(3)
    check(server.call("POST", "/api/projects/test/save").status == 200, "save")
    saved = path.read_text()
    disk.leave(pages)
    for _ in range(3000):
        answer = editor.edit()
        if answer.status != 200:
            break
    check(answer.status == 500 and ("full" in answer.json()["message"] or "No space" in answer.json()["message"]), f"{pages} pages left: {answer.body}")
    check(b"test.evencount" in answer.body, f"which file is full isn't said: {answer.body}")
    editor.nothing_is_lost("a full disk")
    # It wants less room than a change does, and may still be kept.
    answer = server.call("POST", f"/api/projects/test/undo?revision={editor.revision}")
    check(answer.status in (200, 500), f"undo on a full disk: {answer.status} {answer.body}")
    if answer.status == 200:
        editor.undone(answer)
    answer = server.call("POST", "/api/projects/test/save")
    check(answer.status in (200, 500), f"save on a full disk: {answer.status} {answer.body}")
    check(json.loads(path.read_text()), "the file is torn")
    made = server.call("POST", "/api/projects", {"title": "New"})
    check(made.status in (201, 500), made.body)
    if made.status == 500:
        check(not list(disk.folder.glob("*new*")) and not list(disk.folder.glob(".new*")), f"left {list(disk.folder.iterdir())}")
        check(b"No space left on device" in made.body, made.body)
    check(server.lives(), "the server is gone")
    # What is only kept in memory needs no disk.
    job = server.call("POST", "/api/projects/test/along").json()["id"]
    wait_for(server, job)
    disk.make_room()
    editor.must_edit(5)
    check(server.call("POST", "/api/projects/test/save").status == 200, "save, with room again")
    state = editor.nothing_is_lost("with room again")
    check(json.loads(path.read_text()) == state["project"], "with room again the file is not what the server has")
    check(not list(disk.folder.glob(".*.part")), "a passing file is left")
    server.kill()
    editor.connect(Server(PROGRAM, disk.folder))
    editor.nothing_is_lost("after a kill")
    editor.server.end()


def wait_for(server, job):
    for _ in range(600):
        state = server.call("GET", f"/api/jobs/{job}").json()
        if state["state"] in ("done", "failed", "cancelled"):
            check(state["state"] == "done", state)
            return
        time.sleep(0.1)
    raise SystemExit("FAILED: the work is not done after a minute")


def full_for_readers(disk):
    """What the studio had open can be read from a full disk, where SQLite has no room for its files, also after a kill."""
    for end in ("end", "kill"):
        disk.clear()
        path = put_project(disk.folder, columns=COLUMNS, edge=EDGE)
        server = Server(PROGRAM, disk.folder)
        answer = server.call("POST", "/api/projects/test/operations?revision=0", {"do": "change_texts", "title": "Renamed"})
        check(answer.status == 200, answer.body)
        getattr(server, end)()
        disk.leave(0)
        ran = run([PROGRAM, "supplies", path])
        check(ran.returncode == 0 and b"Renamed" in ran.stdout, f"read from a full disk after {end}: status {ran.returncode}: {ran.words}")
        disk.make_room()


def full_for_the_browser(disk):
    disk.clear()
    with folder() as place:
        disk.leave(0)
        os.environ["XDG_RUNTIME_DIR"] = str(disk.folder)
        server = Server(PROGRAM, place, "--open")
        for _ in range(100):
            if any("file for the browser" in line for line in server.log):
                break
            time.sleep(0.05)
        log = "".join(server.log)
        check("a file for the browser" in log and "No space left on device" in log, f"it said {log}")
        check(server.lives(), "no browser, no server")
        check([path.name for path in disk.folder.iterdir()] == ["filler"], "the browser's file is left")
        server.end()
        del os.environ["XDG_RUNTIME_DIR"]
        disk.make_room()


def full_disk():
    disk = disks.Disk(2 << 20)
    try:
        for pages in (0, 1, 4, 10, 25) if not long_run() else range(0, 60):
            full(disk, pages)
        full_for_readers(disk)
        full_for_the_browser(disk)
    finally:
        disk.make_room()
        disk.remove()
    tell("full disk: nothing acknowledged was lost, nothing else was in the state")


def changed_under_it():
    """Deleted, a folder, cut short, emptied, unreadable, unwritable, a link, a link to nothing: edits go on, and with the file as it was so does saving."""
    powerless = disks.without_powers(PROGRAM)
    with folder() as place:
        path = put_project(place, columns=COLUMNS, edge=EDGE)
        server = Server(powerless, place)
        editor = Editor(server)
        editor.must_edit(2)
        away = pathlib.Path(place) / "away"

        def restored():
            if path.is_symlink() or path.is_file():
                path.unlink()
            elif path.is_dir():
                path.rmdir()
            shutil.copyfile(away, path)

        faults = {
            "deleted": lambda: path.unlink(),
            "a folder": lambda: (path.unlink(), path.mkdir()),
            "cut short": lambda: os.truncate(path, 100),
            "emptied": lambda: os.truncate(path, 0),
            "unreadable": lambda: path.chmod(0),
            "another text": lambda: path.write_text("{}"),
            "a link to nothing": lambda: (path.unlink(), path.symlink_to("nowhere/x.evencount.json")),
        }
        for name, fault in faults.items():
            check(server.call("POST", "/api/projects/test/save").status == 200, f"save before: {name}")
            shutil.copyfile(path, away)
            fault()
            there = path.read_bytes() if path.is_file() and os.access(path, os.R_OK) else None
            state = editor.state()
            check(state["file_problem"], f"{name}: nothing is said")
            editor.must_edit(3)
            time.sleep(1.3)  # longer than the studio waits before it saves
            editor.nothing_is_lost(name)
            check(server.lives(), name)
            if name == "deleted":
                check(json.loads(path.read_text()) == editor.state()["project"], "a deleted file is written again with the next change")
            elif there is not None and name != "unreadable":
                check(path.read_bytes() == there, f"{name}: what another program wrote was written over")
            path.is_file() and not path.is_symlink() and path.chmod(0o644)
            if name != "deleted":
                restored()
            answer = server.call("POST", "/api/projects/test/save")
            check(answer.status == 200, f"{name}, then as it was: {answer.body}")
            state = editor.nothing_is_lost(f"{name}, then as it was")
            check(json.loads(path.read_text()) == state["project"] and not state["file_problem"], f"{name}, then as it was: {state['file_problem']}")
        # A link to a file with another title: a change by another program.
        other = json.loads(path.read_text())
        other["title"] = "Elsewhere"
        (pathlib.Path(place) / "elsewhere.json").write_text(json.dumps(other))
        path.unlink()
        path.symlink_to("elsewhere.json")
        editor.revision = editor.state()["revision"]
        check(editor.state()["project"]["title"] == "Elsewhere", "what a link leads to is not taken in")
        server.end()
        check(not [each for each in pathlib.Path(place).iterdir() if each.name.endswith(".part")], "a passing file is left")
    tell(f"changed under it: {len(faults) + 1} ways, nothing acknowledged was lost")


def two_servers():
    with folder() as place:
        path = put_project(place, columns=COLUMNS, edge=EDGE)
        first = Server(PROGRAM, place)
        editor = Editor(first)
        editor.must_edit()
        second = run([PROGRAM, "studio", path])
        check(second.returncode == FAILURE and "another studio has open" in second.words and "test.evencount.history" in second.words,
              f"a second studio: status {second.returncode}: {second.words}")
        beside = Server(PROGRAM, place)  # for the other projects of the folder
        answer = beside.call("GET", "/api/projects/test")
        check(answer.status == 409 and "another studio" in answer.json()["message"], answer.body)
        editor.must_edit()
        first.kill()
        check(beside.call("GET", "/api/projects/test").status == 200, "the other may have it as soon as the first is gone")
        editor.connect(beside)
        editor.nothing_is_lost("in the second studio")
        beside.kill()
        editor.connect(Server(PROGRAM, place))
        editor.nothing_is_lost("in the third")
        editor.server.end()
    tell("two servers: the second is refused, and begins as soon as the first is killed")


def few_descriptors():
    if SANITIZED:
        tell("few descriptors: skipped, since a sanitizer needs some to look at memory")
        return
    with folder() as place:
        put_project(place, columns=COLUMNS, edge=EDGE)
        put_project(place, name="other", columns=COLUMNS, edge=EDGE)
        server = Server(PROGRAM, place)
        editor = Editor(server)
        connection = server.connect()
        check(server.call("GET", "/api/projects", None, connection).status == 200, "before")
        used = max(int(name) for name in os.listdir(f"/proc/{server.process.pid}/fd")) + 1
        for more in range(5):
            limit(server, resource.RLIMIT_NOFILE, used + more)
            answer = server.call("GET", "/api/projects/other", None, connection)
            check(answer.status in (200, 404, 500), answer.body)
            check(answer.status != 500 or b"other.evencount" in answer.body, answer.body)
        limit(server, resource.RLIMIT_NOFILE, None)
        editor.must_edit()
        check(server.call("GET", "/api/projects/other").status == 200, "with descriptors again")
        check(server.lives(), "the server is gone")
        server.end()
    tell("few descriptors: answered with what was wrong, and went on")


def few_threads():
    with folder() as place:
        os.chmod(place, 0o755)
        put_project(place, columns=COLUMNS, edge=EDGE)
        program, as_them = PROGRAM, []
        if os.geteuid() == 0:  # root's threads are never counted
            user = 61_000 + os.getpid() % 1000
            if not disks.can_be(user, PROGRAM):
                tell("few threads: skipped, since another user can't run the program here")
                return
            program, as_them = disks.as_user(PROGRAM, user), disks.user_words(user)
            for path in (pathlib.Path(place), *pathlib.Path(place).iterdir()):
                os.chown(path, user, user)
        server = Server(program, place)

        def allow_threads(number):
            subprocess.run([*as_them, "prlimit", "--pid", str(server.process.pid), f"--nproc={number}:"], check=True)

        before = resource.getrlimit(resource.RLIMIT_NPROC)[0]
        editor = Editor(server)
        editor.must_edit()
        connection = server.connect()
        check(server.call("GET", "/api/projects", None, connection).status == 200, "before")
        allow_threads(1)
        answer = server.call("GET", "/api/projects")
        check(answer.status == 503 and b"threads" in answer.body, f"no more threads: {answer.status} {answer.body}")
        # One that has its thread goes on; long work says what is wrong.
        check(server.call("GET", "/api/projects/test", None, connection).status == 200, "a connection that is open")
        job = server.call("POST", "/api/projects/test/booklet", None, connection).json()["id"]
        for _ in range(100):
            state = server.call("GET", f"/api/jobs/{job}", None, connection).json()
            if state["state"] in ("failed", "done"):
                break
            time.sleep(0.05)
        check(state["state"] == "failed" and "unavailable" in state["problem"]["message"], state)
        allow_threads("unlimited" if before == resource.RLIM_INFINITY else before)
        editor.must_edit()
        check(server.lives(), "the server is gone")
        server.end()
    tell("few threads: 503, and went on")


def main():
    if disks.in_a_mount_name_space():
        full_disk()
    else:
        tell("full disk: skipped, since no small disk can be mounted here")
    changed_under_it()
    two_servers()
    few_descriptors()
    few_threads()


main()
