#!/usr/bin/env python3
"""Every writer where it may not write, and every reader where it may not read: folders and files without permission, folders and links where a
file should be. What stood there still stands there, nothing is left beside it, and the message names the file.

As root permissions mean nothing, so that the program is then run without root's powers (`setpriv`); it still owns the files."""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from disks import NO_POWERS
from faults import (DONE, EXAMPLES, FAILURE, PROGRAM, SKIPPED, Inputs, Server, check, check_all_writers_are_known, contents, long_run, run, same, tell, tried, writers)

DENIED = ("Permission denied", "readonly database", "unable to open database file")


def denied(command):
    return run(NO_POWERS + [str(word) for word in command])


def permissions_count():
    with tempfile.TemporaryDirectory() as place:
        os.chmod(place, 0o555)
        tried = subprocess.run(NO_POWERS + ["sh", "-c", f"echo x > {place}/x"], capture_output=True)
        os.chmod(place, 0o755)
        return tried.returncode != 0


def folder(writer):
    place = pathlib.Path(tempfile.mkdtemp(prefix="evencount-refused-"))
    writer.prepare(place)
    return place


def refused(writer, place, why, before):
    ran = denied(writer.command(place))
    said = f"{writer}, {why}: status {ran.returncode}: {ran.words}"
    check(ran.returncode == FAILURE, said)
    check(writer.makes[0] in ran.words, said)
    check(any(words in ran.words for words in DENIED), said)
    check(contents(place) == before, f"{writer}, {why}: something changed")


def read_only_folder(writer):
    place = folder(writer)
    before = contents(place)
    place.chmod(0o555)
    refused(writer, place, "a folder that may not be written", before)
    place.chmod(0o755)
    run(NO_POWERS + writer.command(place), DONE)
    shutil.rmtree(place)


def read_only_file(writer):
    if writer.new:
        return
    place = folder(writer)
    before = contents(place)
    for name in writer.makes:
        (place / name).chmod(0o444)
    refused(writer, place, "a file that may not be written", before)
    shutil.rmtree(place)


def folder_in_its_place(writer):
    if writer.begins:
        return
    place = folder(writer)
    for name in writer.makes:
        (place / name).unlink(missing_ok=True)
        (place / name).mkdir()
    ran = denied(writer.command(place))
    check(ran.returncode == FAILURE and writer.makes[0] in ran.words, f"{writer} over a folder: status {ran.returncode}: {ran.words}")
    check(all(now == "a folder" for now in contents(place).values()), f"{writer} over a folder: {list(contents(place))}")
    shutil.rmtree(place)


def links(writer):
    """A link stays one: what it leads to is written, also where that is not there yet. A ring of links is refused."""
    place, elsewhere = folder(writer), pathlib.Path(tempfile.mkdtemp(prefix="evencount-elsewhere-"))
    plain = folder(writer)
    run(writer.command(plain), DONE)
    new = contents(plain)
    for name in writer.makes:
        if (place / name).exists():
            shutil.move(place / name, elsewhere / name)
        (place / name).symlink_to(elsewhere / name)
    run(NO_POWERS + writer.command(place), DONE)
    for name in writer.makes:
        check((place / name).is_symlink(), f"{writer} put a file in a link's place")
        check(same(contents(elsewhere)[name], new[name]), f"{writer} wrote something else through a link")
        (place / name).unlink()
        (place / name).symlink_to(name)
    if not writer.stock:
        ran = denied(writer.command(place))
        check(ran.returncode == FAILURE and writer.makes[0] in ran.words, f"{writer}, a ring of links: status {ran.returncode}: {ran.words}")
        check(all((place / name).is_symlink() for name in writer.makes), f"{writer} put a file in a ring of links")
    for gone in (place, elsewhere, plain):
        shutil.rmtree(gone)


def missing_folder(writer):
    """Folders for what is made are not made; the stockroom's is (docs/stock.md)."""
    if writer.begins or writer.stock:
        return
    ran = denied(writer.command("/nowhere/at/all"))
    check(ran.returncode == FAILURE and writer.makes[0] in ran.words, f"{writer} into no folder: status {ran.returncode}: {ran.words}")


def readers(inputs):
    """Every verb that reads a file, with the file in the place of FILE."""
    at = str(inputs.small)
    return [["words", "FILE"], ["thread", "FILE"], ["proof", "FILE"], ["supplies", "FILE"], ["string", "FILE"], ["palette", "FILE", at], ["read", "FILE"],
            ["read", at, "--against", "FILE"], ["draw", "FILE", "-o", "/dev/null"], ["booklet", "FILE", "-o", "/dev/null"], ["along", "FILE", "-o", "/dev/null"],
            ["labels", "FILE", "-o", "/dev/null"], ["render", "FILE", "-o", "/tmp/none.png"], ["resize", "FILE", "-o", "/dev/null", "--overwrite"],
            ["band", "FILE", "--columns", "6", "--edge", "24"], ["band", at, "--columns", "6", "--edge", "24", "--motif", "FILE"], ["band", at, "--words", "FILE"],
            ["picture", "FILE", at, "--stock", str(inputs.beads), "--columns", "6", "--edge", "9"], ["picture", str(EXAMPLES / "pictures" / "moon.png"), at, "--stock", "FILE", "--columns", "6", "--edge", "9"],
            ["series", "FILE", "--template", at, "-o", "/tmp/none.evencount.json"], ["series", str(inputs.phases), "--template", "FILE", "--onto", at],
            ["fit", "lens:17x5x9", "--bead", "cylinder-11", "--from", "FILE"], ["fit", "outline:FILE,length=9", "--bead", "cylinder-11"],
            ["booklet", at, "-o", "/dev/null", "--cover", "FILE"], ["supplies", at, "--costing", "FILE"], ["string", str(inputs.strung), "--layout", "FILE"],
            ["stock", "import", "FILE", "--stock", str(inputs.stock)], ["stock", "list", "--stock", "FILE"], ["stock", "check", "--stock", "FILE"],
            ["stock", "import", str(inputs.beads), "--map-file", "FILE", "--stock", str(inputs.stock)],
            ["stock", "measure", "FILE", "--card", "0,0,9,9", "--bead", "20,20,9,9"], ["studio", "FILE"]]


def unreadable(inputs):
    place = pathlib.Path(tempfile.mkdtemp(prefix="evencount-unreadable-"))
    before = inputs.small.read_bytes()
    locked, missing, a_folder = place / "locked.evencount.json", place / "missing.evencount.json", place / "folder.evencount.json"
    locked.write_bytes(before)
    locked.chmod(0)
    a_folder.mkdir()
    count = 0
    for reader in readers(inputs):
        for path, words in ((locked, ("Permission denied", "unable to open")), (missing, ("No such file",)), (a_folder, ("Is a directory", "unable to open", "directory", "not a file"))):
            if path is missing and (reader[:2] == ["band", "FILE"] or reader[0] == "stock" and reader[-1] == "FILE"):
                continue  # these begin a new one
            ran = denied([PROGRAM] + [word.replace("FILE", str(path)) for word in reader])
            what = f"{' '.join(reader)} with {path.name}: status {ran.returncode}: {ran.words}"
            check(ran.returncode == FAILURE, what)
            check(path.name in ran.words and any(each in ran.words for each in words), what)
            count += 1
    check(inputs.small.read_bytes() == before, "a refused reader changed its project")
    locked.chmod(0o600)
    shutil.rmtree(place)
    tell(f"unreadable: {count} readers refused")


def history_in_a_read_only_folder(inputs):
    """A project that the studio once had open is read from where nothing may be written, with what only its history holds: also after a kill, when
    that still waits beside the history."""
    for end in ("end", "kill"):
        place = pathlib.Path(tempfile.mkdtemp(prefix="evencount-history-"))
        shutil.copyfile(inputs.small, place / "p.evencount.json")
        server = Server(PROGRAM, place)
        answer = server.call("POST", "/api/projects/p/operations?revision=0", {"do": "change_texts", "title": "Renamed"})
        check(answer.status == 200, answer.body)
        getattr(server, end)()
        for path in place.iterdir():
            path.chmod(0o444)
        place.chmod(0o555)
        ran = denied([PROGRAM, "supplies", place / "p.evencount.json"])
        place.chmod(0o755)
        check(ran.returncode == DONE and b"Renamed" in ran.stdout, f"a project with a history in a read-only folder, {end}: {ran.words}")
        shutil.rmtree(place)


def main():
    if not permissions_count():
        tell("skipped: nothing is ever denied to this user, and setpriv can't change that")
        sys.exit(SKIPPED)
    inputs = Inputs()
    try:
        table = writers(inputs)
        check_all_writers_are_known(table)
        table = tried(table)
        for writer in table:
            for fault in (read_only_folder, read_only_file, folder_in_its_place, links, missing_folder):
                if writer.heavy and fault is not read_only_folder and not long_run():
                    continue
                fault(writer)
        tell(f"refused: {len(table)} writers")
        unreadable(inputs)
        history_in_a_read_only_folder(inputs)
    finally:
        inputs.remove()


main()
