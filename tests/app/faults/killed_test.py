#!/usr/bin/env python3
"""Writers are killed (SIGKILL), at random moments and, where strace can be used, at the calls that change a disk; where it can, the calls also
fail as on a broken or full disk, to the very last. Each file is then the old one or the new one. The only thing that may be left is the new file
under its own passing name (.NAME.XXXXXX.part), and the next run of the same writer removes it.

40 kills at random; 500 with EVENCOUNT_LONG=1."""

import pathlib
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from faults import (DONE, FAILURE, PART, SANITIZED, Inputs, check, check_all_writers_are_known, contents, environment, is_old_or_new, long_run, run,
                    same, tell, tried, writers)

# What writing a file is made of, and what SQLite does.
FILE_CALLS = ("write", "fchmod", "fsync", "dup", "rename")
STOCK_CALLS = ("pwrite64", "fdatasync", "fsync", "ftruncate", "unlink")
ERRORS = {"write": ("ENOSPC", "EIO"), "fchmod": ("EPERM",), "fsync": ("ENOSPC", "EIO"), "dup": ("EMFILE",), "rename": ("EIO", "ENOSPC"),
          "pwrite64": ("ENOSPC", "EIO"), "fdatasync": ("EIO",), "ftruncate": ("EIO",)}
# Of these strace finds one file: the others are written by the same function (faults.py checks who writes).
TRACED = ("words -o", "band", "stock count-in", "stock import", "stock import into a new file", "along --folder")


def place_for(writer):
    place = pathlib.Path(tempfile.mkdtemp(prefix="evencount-killed-"))
    writer.prepare(place)
    return place


def result_of(writer):
    place = place_for(writer)
    before, begin = contents(place), time.monotonic()
    run(writer.command(place), DONE)
    took, new = time.monotonic() - begin, contents(place)
    shutil.rmtree(place)
    return before, new, took


def leftovers(place):
    return [path.name for path in place.iterdir() if PART.match(path.name)]


def check_after(writer, place, before, new, what):
    """Old or new, and the next run puts everything right. Returns how many passing files were left."""
    left = leftovers(place)
    there = {name: data for name, data in contents(place).items() if name not in left}
    check(all(PART.match(name)[1] in writer.makes for name in left), f"{what}: left {left}")
    check(is_old_or_new(there, before, new), f"{what}: neither old nor new: {[(name, len(data or b'')) for name, data in there.items()]}")
    again = run(writer.command(place))
    # A killed run may have done its work: a run of kits that is taken can't be taken again.
    check(again.returncode == DONE or (writer.stock and not same(there.get("stock.sqlite"), before.get("stock.sqlite"))),
          f"{what}, then again: status {again.returncode}: {again.words}")
    check(not leftovers(place), f"{what}: the next run left {leftovers(place)}")
    if not writer.stock and not writer.begins:
        check(all(contents(place)[name] == new[name] for name in writer.makes), f"{what}: the next run wrote something else")
    shutil.rmtree(place)
    return len(left)


def at_random(table, kills):
    chance = random.Random(5)
    light = [writer for writer in table if not writer.heavy or long_run()]
    known, killed, left = {}, 0, 0
    for turn in range(kills):
        writer = light[turn % len(light)]
        if writer.name not in known:
            known[writer.name] = result_of(writer)
        before, new, took = known[writer.name]
        place = place_for(writer)
        process = subprocess.Popen(writer.command(place), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment())
        # Most of the time is spent before anything is written: later moments are likelier.
        time.sleep(took * chance.uniform(0, 1.1) ** 0.5)
        process.kill()
        killed += process.wait() == -signal.SIGKILL
        left += check_after(writer, place, before, new, f"{writer}, killed in turn {turn}")
    tell(f"killed at random: {kills} runs, {killed} before their end; {left} left a passing file, which the next run removed")


def traced(command, place, *inject):
    return subprocess.run(["strace", "-f", "-qq", "-o", f"{place}/../{place.name}.trace", *inject, *command], capture_output=True, env=environment())


def strace_works(place):
    if not shutil.which("strace"):
        return False
    ran = traced(["true"], place, "-e", "trace=fsync", "-e", "inject=fsync:error=EIO")
    return ran.returncode == 0


def calls_of(writer, calls):
    """How often each call is made in one run."""
    place = place_for(writer)
    trace = place.parent / f"{place.name}.trace"
    ran = traced(writer.command(place), place, "-e", "trace=" + ",".join(calls))
    check(ran.returncode == DONE, f"{writer} under strace: {ran.stderr}")
    lines = trace.read_text().splitlines()
    trace.unlink()
    shutil.rmtree(place)
    return {call: sum(bool(re.match(rf"\d+ +{call}\(", line)) for line in lines) for call in calls}


def at_each_call(table):
    if SANITIZED:
        tell("a sanitizer makes calls of its own: not call by call")
        return
    with tempfile.TemporaryDirectory() as place:
        if not strace_works(pathlib.Path(place)):
            tell("strace can't be used here: calls are neither failed nor killed one by one")
            return
    kills = failures = left = 0
    for writer in table:
        if writer.name not in TRACED and not long_run():
            continue
        calls = STOCK_CALLS if writer.stock else FILE_CALLS
        before, new, _ = result_of(writer)
        for call, count in calls_of(writer, calls).items():
            most = min(count, 12 if long_run() else 3)
            numbers = sorted({1 + (count - 1) * i // max(1, most - 1) for i in range(most)})
            for number in numbers:
                place = place_for(writer)
                traced(writer.command(place), place, "-e", f"trace={call}", "-e", f"inject={call}:signal=SIGKILL:when={number}")
                (place.parent / f"{place.name}.trace").unlink(missing_ok=True)
                left += check_after(writer, place, before, new, f"{writer}, killed at {call} {number} of {count}")
                kills += 1
                for error in ERRORS.get(call, ())[:None if long_run() else 1]:
                    failures += fails_well(writer, before, new, call, number, error)
    tell(f"call by call: {kills} kills, {left} of which left a passing file; {failures} failing calls")


def fails_well(writer, before, new, call, number, error):
    place = place_for(writer)
    ran = traced(writer.command(place), place, "-e", f"trace={call}", "-e", f"inject={call}:error={error}:when={number}")
    (place.parent / f"{place.name}.trace").unlink(missing_ok=True)
    what = f"{writer}, {call} {number} fails with {error}: status {ran.returncode}: {ran.stderr.decode()}"
    check(ran.returncode in (DONE, FAILURE), what)
    check(not leftovers(place), what + f": left {leftovers(place)}")
    check(is_old_or_new(contents(place), before, new), what + ": neither old nor new")
    if ran.returncode == DONE and not writer.stock:
        # The call was about something else than the file, printing say.
        check(all(contents(place)[name] == new[name] for name in writer.makes), what)
    shutil.rmtree(place)
    return 1


def a_running_writer_is_left_alone():
    """A passing file that a process still holds is not taken for a leftover."""
    import fcntl
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder)
        held, dead, others = place / ".words.txt.AAAAAA.part", place / ".words.txt.BBBBBB.part", place / ".other.txt.CCCCCC.part"
        for path in (held, dead, others):
            path.write_bytes(b"half a fi")
        with open(held, "rb+") as holder:
            fcntl.flock(holder, fcntl.LOCK_EX)
            run([sys.argv[1], "words", INPUTS.small, "-o", place / "words.txt"], DONE)
            check(held.exists() and others.exists() and not dead.exists(), f"there are {sorted(path.name for path in place.iterdir())}")
        run([sys.argv[1], "words", INPUTS.small, "-o", place / "words.txt"], DONE)
        check(not held.exists() and others.exists(), "a passing file that nobody holds any more stayed")


INPUTS = Inputs()
try:
    TABLE = writers(INPUTS)
    check_all_writers_are_known(TABLE)
    a_running_writer_is_left_alone()
    at_each_call(tried(TABLE))
    at_random(tried(TABLE), 500 if long_run() else 12 if SANITIZED else 40)
finally:
    INPUTS.remove()
