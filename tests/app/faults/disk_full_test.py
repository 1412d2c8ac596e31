#!/usr/bin/env python3
"""Every writer on a disk that is full from the beginning, in the middle and at the very end: what stood there still stands there, nothing is left
beside it, the message names the file and says why, and with room again the same command succeeds. Then a disk that is mounted read-only.

The disk is a small one in memory, in a mount name space of its own that goes with this process. Where none can be made this is skipped."""

import os
import subprocess
import sys

import disks
from faults import DONE, FAILURE, SKIPPED, Inputs, check, check_all_writers_are_known, contents, long_run, run, same, tell, tried, writers

DISK = 8 << 20
PAGE = os.sysconf("SC_PAGESIZE")
WORDS_OF_A_FULL_DISK = ("No space left on device", "database or disk is full")


def rooms(writer, new):
    """How many pages are left: none, the first few, half of what is wanted, all but the last, and enough for all."""
    if writer.stock:
        return (0, 1, 4, 10, 13, 21, 55) if not long_run() else range(0, 120)
    sizes = [-(-len(data) // PAGE) for name, data in new.items() if name in writer.makes]
    wanted = {0, 1, 10}
    for size in sizes:
        wanted |= {size // 2, size - 1, size}
    wanted |= {sum(sizes) - 1}
    if writer.heavy and not long_run():
        wanted = {0, sizes[0] // 2, sum(sizes) - 1}
    if long_run():
        wanted |= set(range(0, sum(sizes) + 2, max(1, sum(sizes) // 60)))
    return sorted(pages for pages in wanted if pages >= 0)


def try_once(writer, disk, pages, before, new):
    """Whether it succeeded."""
    disk.leave(pages)
    ran = run(writer.command(disk.folder))
    after, said = contents(disk.folder), ran.words + ran.stdout.decode()
    what = f"{writer} with {pages} pages left: "
    check(set(after) <= set(before) | set(writer.makes), what + f"left {sorted(set(after) - set(before))}")
    if ran.returncode == DONE:
        check(all(same(after[name], new[name]) for name in writer.makes), what + "said it was done, and wasn't")
        return True
    check(ran.returncode == FAILURE, what + f"status {ran.returncode}: {said}")
    check(any(words in ran.words for words in WORDS_OF_A_FULL_DISK), what + f"said {said}")
    written = [name for name in writer.makes if not same(after.get(name), before.get(name))]
    unwritten = [name for name in writer.makes if name not in written]
    check(unwritten, what + "failed, and wrote everything")
    check(unwritten[0] in ran.words, what + f"did not name {unwritten[0]}: {said}")
    for name in written:
        check(same(after[name], new[name]), what + f"{name} is neither the old nor the new file")
        check(name in said, what + f"wrote {name} and did not say so: {said}")
    return False


def full_disk(table, disk):
    tries = failed = 0
    for writer in table:
        disk.clear()
        writer.prepare(disk.folder)
        run(writer.command(disk.folder), DONE)
        new, recovered = contents(disk.folder), False
        for pages in rooms(writer, new):
            disk.clear()
            writer.prepare(disk.folder)
            before = contents(disk.folder)
            done = try_once(writer, disk, pages, before, new)
            tries, failed = tries + 1, failed + (not done)
            check(not (done and pages == 0), f"{writer} wrote to a disk without room")
            disk.make_room()
            if not done and (long_run() or not recovered):
                recovered = True
                run(writer.command(disk.folder), DONE)
                check(all(same(contents(disk.folder)[name], new[name]) for name in writer.makes), f"{writer}: with room again something else was written")
    tell(f"full disk: {len(table)} writers, {tries} runs, {failed} of them without room enough")


def read_only_disk(table, disk):
    for writer in table:
        disk.clear()
        writer.prepare(disk.folder)
        before = contents(disk.folder)
        disk.read_only(True)
        ran = run(writer.command(disk.folder))
        check(ran.returncode == FAILURE and writer.makes[0] in ran.words, f"{writer} on a read-only disk: status {ran.returncode}: {ran.words}")
        check(any(words in ran.words for words in ("Read-only file system", "readonly database", "unable to open database file")), f"{writer}: {ran.words}")
        disk.read_only(False)
        check(contents(disk.folder) == before, f"{writer} changed something on a read-only disk")
        if not writer.heavy or long_run():
            run(writer.command(disk.folder), DONE)
    tell(f"read-only disk: {len(table)} writers refused")


def full_output():
    """A result that is printed goes nowhere: that is an error, too."""
    with open("/dev/full", "wb") as full:
        ran = subprocess.run([sys.argv[1], "describe", "man"], stdout=full, stderr=subprocess.PIPE)
    check(ran.returncode == FAILURE and b"standard output can't be written" in ran.stderr, f"status {ran.returncode}: {ran.stderr}")


def main():
    if not disks.in_a_mount_name_space():
        tell("skipped: no small disk can be mounted here, neither by this user nor in a name space of its own")
        sys.exit(SKIPPED)
    inputs, disk = Inputs(), disks.Disk(DISK)
    try:
        table = writers(inputs)
        check_all_writers_are_known(table)
        table = tried(table)
        full_disk(table, disk)
        read_only_disk(table, disk)
        full_output()
    finally:
        disk.make_room()
        disk.remove()
        inputs.remove()


main()
