#!/usr/bin/env python3
"""Programs that get too little: of memory (RLIMIT_AS at many sizes), of open files, of threads. A verb is then done, or it says what it lacks and
ends with status 3; it never dies of a signal, what stood there still stands there, and nothing is left beside it. The studio's server answers
what it has no memory for with an error and goes on; where a library under the pages can't, it ends with status 3, and all that was acknowledged
is on disk.

Not under sanitizers, which want an address space of their own size."""

import os
import pathlib
import re
import resource
import shutil
import subprocess
import tempfile

import disks
from editor import Editor, limit
from faults import DONE, EXAMPLES, FAILURE, PROGRAM, Inputs, Server, check, folder, long_run, put_project, run, tell

MEGABYTE = 1_000_000
LOADER = "error while loading shared libraries"


def starved(command, kind, number, before=()):
    def limits():
        resource.setrlimit(kind, (number, number))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    return run([*before, *command], preexec_fn=limits)


def least_memory():
    """What the program needs to begin at all, in megabytes."""
    for size in range(20, 1000, 5):
        ran = subprocess.run(["prlimit", f"--as={size * MEGABYTE}", PROGRAM, "--version"], capture_output=True)
        if ran.returncode == DONE:
            return size
    raise SystemExit("FAILED: it never begins")


def heavy_verbs(inputs):
    """With the one file that each writes; empty where it prints."""
    large = str(EXAMPLES / "moonwatch.evencount.json")
    return [
        (["booklet", str(inputs.small), "-o", "OUT/o.pdf"], "o.pdf"),
        (["render", str(inputs.small), "-o", "OUT/o.png", "--size", "320x240", "--samples", "2", "--threads", "2"], "o.png"),
        (["picture", str(EXAMPLES / "pictures" / "fern.png"), "OUT/o.evencount.json", "--stock", str(inputs.beads), "--columns", "40", "--edge", "40",
          "--open", "--quick"], "o.evencount.json"),
        (["fit", "lens:17x5x9", "--table"], ""),
        (["series", str(inputs.phases), "--template", str(inputs.small), "--front", "2-10", "-o", "OUT/o.evencount.json", "--overwrite"], "o.evencount.json"),
        (["draw", large, "-o", "OUT/o.png", "--dpi", "600"], "o.png"),
        (["stock", "list", "--stock", str(inputs.stock)], ""),
    ]


def try_starved(words, name, kind, number, what, before=()):
    with tempfile.TemporaryDirectory() as place:
        old = b"" if name.endswith(".json") else b"what stood here before"
        if old:
            (pathlib.Path(place) / name).write_bytes(old) if name else None
        ran = starved([PROGRAM] + [word.replace("OUT", place) for word in words], kind, number, before)
        said = f"{' '.join(words)} with {what}: status {ran.returncode}: {ran.words}"
        check(ran.returncode in (DONE, FAILURE) or (ran.returncode == 127 and LOADER in ran.words), said)
        names = {path.name for path in pathlib.Path(place).iterdir()}
        check(names <= {name}, f"{said}: left {names}")
        if ran.returncode == FAILURE:
            check(re.search(r"^evencount: \S", ran.words, re.M), said)
            if name and old:
                check((pathlib.Path(place) / name).read_bytes() == old, f"{said}: and wrote")
            check(name == "" or old or not names, f"{said}: and wrote")
        elif ran.returncode == DONE and name:
            check((pathlib.Path(place) / name).read_bytes() not in (b"", old), f"{said}: and wrote nothing")
        return ran.returncode == DONE


def little_memory(inputs):
    least, tries, done = least_memory(), 0, 0
    steps = (0, 5, 15, 30, 50, 75, 110, 150, 220) if not long_run() else range(0, 400, 4)
    for words, name in heavy_verbs(inputs):
        for step in steps:
            done += try_starved(words, name, resource.RLIMIT_AS, (least + step) * MEGABYTE, f"{least + step} MB")
            tries += 1
    check(0 < done < tries, f"{done} of {tries}: the sizes don't try anything")
    tell(f"little memory: {tries} runs from {least} MB on, {done} of them had enough, the others said so")


def few_descriptors(inputs):
    tries = done = 0
    for words, name in heavy_verbs(inputs):
        for number in (3, 4, 5, 6, 8) if not long_run() else range(3, 24):
            done += try_starved(words, name, resource.RLIMIT_NOFILE, number, f"{number} open files")
            tries += 1
    tell(f"few open files: {tries} runs, {done} of them had enough, the others said so")


def few_threads(inputs):
    before = []
    if os.geteuid() == 0:  # root's threads are never counted
        user = 62_000 + os.getpid() % 1000
        before = disks.user_words(user)
        if not disks.can_be(user, PROGRAM):
            tell("few threads: skipped, since another user can't run the program here")
            return
    done = 0
    threaded = [(words, name) for words, name in heavy_verbs(inputs) if words[0] in ("booklet", "render", "picture", "draw")]
    for words, name in threaded:
        place = pathlib.Path(tempfile.mkdtemp())
        place.chmod(0o777)
        ran = starved([PROGRAM] + [word.replace("OUT", str(place)) for word in words], resource.RLIMIT_NPROC, 1, before)
        said = f"{' '.join(words)} without threads: status {ran.returncode}: {ran.words}"
        check(ran.returncode in (DONE, FAILURE), said)
        names = [path.name for path in place.iterdir()]
        check(names == ([name] if ran.returncode == DONE else []), f"{said}: left {names}")
        check(ran.returncode == DONE or "thread" in ran.words or "unavailable" in ran.words, said)
        done += ran.returncode == DONE
        shutil.rmtree(place)
    check(done > 0, "what only wants to be quicker with threads goes on without")
    tell(f"no further threads: {len(threaded)} verbs, {done} did without, the others said so")


def address_space(server):
    return int(re.search(r"VmSize:\s+(\d+)", pathlib.Path(f"/proc/{server.process.pid}/status").read_text())[1]) * 1024


def requests(server, editor, connection):
    """What wants memory, on a connection that has its thread."""
    yield lambda: server.call("POST", "/api/pictures", b"x" * (60 << 20), connection)
    yield lambda: server.call("GET", "/api/projects/large/bands/0/positions", None, connection)
    yield lambda: server.call("GET", "/api/projects/large/words", None, connection)
    yield lambda: server.call("GET", "/api/projects/large", None, connection)
    yield lambda: server.call("POST", f"/api/projects/large/operations?revision={editor.revision}",
                              {"do": "fill", "band": 0, "at": [0, 0], "letter": "B"}, connection)


def studio_with_little_memory():
    answers, ended = [], 0
    os.environ["MALLOC_ARENA_MAX"] = "1"  # else each thread has 64 MB in store, mallopt(3)
    with folder() as place:
        put_project(place, name="large", columns=200, edge=300, bands=1)
        server, editor = None, None
        for more in (1, 4, 16, 40) if not long_run() else (0, 1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64):
            if server is None:
                server = Server(PROGRAM, place)
                if editor is None:
                    editor = Editor(server, "large")
                editor.connect(server)
            editor.must_edit(2)
            connection = server.connect()
            check(server.call("GET", "/api/projects", None, connection).status == 200, "before")
            limit(server, resource.RLIMIT_AS, address_space(server) + more * MEGABYTE)
            for request in requests(server, editor, connection):
                try:
                    answer = request()
                    answers.append(answer.status)
                    check(answer.status in (200, 201, 202, 400, 409, 413, 422, 500, 503), answer.body)
                except OSError:
                    connection.close()
                except Exception:  # http.client's own: the connection ended without an answer
                    connection.close()
                if server.process.poll() is not None:
                    break
            if server.process.poll() is None:
                limit(server, resource.RLIMIT_AS, None)
                check(server.lives(), f"with {more} MB more: the server is gone")
                editor.revision = server.call("GET", "/api/projects/large").json()["revision"]
                editor.cells = {}
                editor.must_edit(2)
            else:
                check(server.process.returncode == FAILURE, f"with {more} MB more the server ended with {server.process.returncode}: {''.join(server.log)}")
                server, ended = None, ended + 1
        if server:
            editor.nothing_is_lost("after little memory")
            server.end()
    check(any(status == 503 for status in answers), f"nothing was ever refused: {answers}")
    tell(f"a studio with little memory: {len(answers)} answers, {sum(status == 503 for status in answers)} of them 503; it had to end {ended} times")


INPUTS = Inputs()
try:
    little_memory(INPUTS)
    few_descriptors(INPUTS)
    few_threads(INPUTS)
    studio_with_little_memory()
finally:
    INPUTS.remove()
