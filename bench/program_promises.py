"""Promises of the program as a person starts it: whole processes, what they write and the memory they take; and the studio over HTTP."""

import csv
import functools
import os
import pathlib
import random
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

from measuring import BUSY, EVENCOUNT, HOME, benchmarks, best_of, copy_to_disk, process, project_text, timed, write_to_disk
from promise import Promise

LINEAR = 1.15
DEMO = HOME / "examples/moonwatch.evencount.json"


def in_folder(group):
    """Runs a group in a folder of its own."""
    @functools.wraps(group)
    def run(rounds):
        with tempfile.TemporaryDirectory(prefix="evencount-promises-") as folder:
            yield from group(pathlib.Path(folder), rounds)
    return run


def start(rounds):
    """What a person waits for after each line that they type."""
    asked = [("`fit`", 20, ["fit", "lens:17x5x9", "--bead", "cylinder-11"]), ("`fit --table`", 20, ["fit", "lens:17x5x9", "--table"]),
             ("`words` of the demo", 50, ["words", DEMO]), ("`supplies` of the demo, its strand counted", 100, ["supplies", DEMO, "--kits", "10"]),
             ("`proof` of the demo, in five wearers' sizes", 500, ["proof", DEMO])]
    *ours, nothing = best_of(3 * rounds, *(lambda words=words: process([EVENCOUNT, *words]) for words in [one[2] for one in asked] + [["--version"]]))
    for (what, milliseconds, _), (seconds, memory) in zip(asked, ours):
        yield Promise(f"{what}, a whole process", f"{milliseconds} ms", "bench/promises", took=[seconds], limit=milliseconds / 1000,
                      beside="`--version`", reference=[nothing[0]], other=f"{memory:.0f} MB")


@in_folder
def printed(folder, rounds):
    for name, what, sizes, unit, text, limit, megabytes in (
            ("bands", "`booklet` of a collection", [6, 12, 24], "bands", lambda n: project_text(n, 12, 60, 10), 1, 150),
            ("panel", "`booklet` of a panel", [15_000, 30_000, 60_000], "beads", lambda n: project_text(1, 200, n // 200, 12), 2, 150)):
        took, beside, memory = [], [], 0
        for size in sizes:
            source, pdf = folder / f"{name}-{size}.evencount.json", folder / f"{name}-{size}.pdf"
            source.write_text(text(size))
            ours, theirs = best_of(rounds, lambda: process([EVENCOUNT, "booklet", source, "-o", pdf]),
                                   lambda: process(["pdftotext", pdf, folder / "text"]))
            took.append(ours[0]), beside.append(theirs[0])
            memory = ours[1]
        yield Promise(what, f"{limit} s, {megabytes} MB, linear", "bench/promises", sizes, unit, took, "pdftotext of it", beside, limit, LINEAR,
                      f"{memory:.0f} MB", memory <= megabytes)


@in_folder
def stitch_along(folder, rounds):
    page = folder / "along.html"
    ours, theirs = best_of(rounds, lambda: process([EVENCOUNT, "along", DEMO, "-o", page]),
                           lambda: timed(lambda: write_to_disk(page.read_bytes(), folder / "copy")))
    size = page.stat().st_size / 1e6
    yield Promise("`along` of the demo's eight bands", "1 s, 1 MB written", "bench/promises", took=[ours[0]], beside="those bytes to disk",
                  reference=[theirs], limit=1, other=f"{size:.2f} MB written", met=size <= 1)


def stock_table(items, file):
    """As bench/stockroom_bench.cpp has it: every fourth item has a second pack on a line of its own, so lines are 5/4 of the items."""
    any_of = random.Random(1)
    with open(file, "w", newline="", encoding="utf-8") as out:
        table = csv.writer(out)
        table.writerow(["code", "name", "size", "finish", "colour", "beads_per_gram", "counted_g", "note", "pack_g", "price", "currency",
                        "supplier", "order_code", "address"])
        for i in range(items):
            table.writerow([f"B-{i:05}", f"night, deep {i}", "cylinder-11", "matte", f"#{any_of.randrange(1 << 24):06x}", 195,
                            f"{any_of.randrange(50)}.{any_of.randrange(1000):03}", f"row {i}", 5, "3.40", "EUR", "harbour shop", f"hs{i}",
                            f"https://harbour-shop.example/{i}"])
            if i % 4 == 0:
                table.writerow([f"B-{i:05}", *[""] * 7, 50, f"{any_of.randrange(100)}.95", "EUR", "market stall", "", ""])


@in_folder
def stock(folder, rounds):
    items, took, beside, memory = [12_500, 25_000, 50_000], [], [], 0
    for size in items:
        table = folder / f"{size}.csv"
        stock_table(size, table)
        ours_file, theirs_file = folder / "ours.sqlite", folder / "theirs.sqlite"

        def anew(file, command):
            for old in folder.glob(file.name + "*"):
                old.unlink()
            return process(command)

        ours, theirs = best_of(rounds, lambda: anew(ours_file, [EVENCOUNT, "stock", "import", table, "--stock", ours_file]),
                               lambda: anew(theirs_file, ["sqlite3", theirs_file, ".mode csv", f".import {table} stock"]))
        took.append(ours[0]), beside.append(theirs[0])
        memory = ours[1]
    yield Promise("`stock import` of a table into an empty stockroom", "3 s, linear", "bench/promises", items, "items", took,
                  "sqlite3's import, no rules", beside, 3, LINEAR, f"{memory:.0f} MB")


@in_folder
def series(folder, rounds):
    source = HOME / "examples/series"
    shutil.copytree(source / "phases", folder / "phases")
    with open(source / "moon.csv", encoding="utf-8") as file:
        heads, *lines = list(csv.reader(file))
    lines, sizes, took, beside = [line for line in lines if line][:30], [30, 60, 120], [], []
    for size in sizes:
        table, made = folder / f"{size}.csv", folder / f"{size}.evencount.json"
        with open(table, "w", newline="", encoding="utf-8") as file:
            csv.writer(file).writerows([heads] + [[f"{line[0]} of {i // 30}", *line[1:]] for i, line in enumerate(lines * (size // 30))])
        ours, theirs = best_of(rounds, lambda: process([EVENCOUNT, "series", table, "--template", source / "moon-template.evencount.json",
                                                        "--letter", "D", "--running", "down", "--overwrite", "-o", made]),
                               lambda: timed(lambda: copy_to_disk(made, folder / "copy")))
        took.append(ours[0]), beside.append(theirs)
    yield Promise("`series` of bands", "0.5 s, linear", "bench/promises", sizes, "bands", took, "those bytes to disk", beside, 0.5, LINEAR)


@in_folder
def resized(folder, rounds):
    sizes, took, beside = [(60, 80), (120, 160), (240, 320)], [], []
    for columns, edge in sizes:
        old, new = folder / f"{columns}.evencount.json", folder / f"{columns}-new.evencount.json"
        old.write_text(project_text(1, columns, edge, 12))
        ours, theirs = best_of(rounds, lambda: process([EVENCOUNT, "resize", old, "--bead", "cylinder-10", "--overwrite", "--brief", "-o", new]),
                               lambda: timed(lambda: copy_to_disk(new, folder / "copy")))
        took.append(ours[0]), beside.append(theirs)
    yield Promise("`resize` to other beads, lines kept", "2 s, linear", "bench/promises", [a * b for a, b in sizes], "beads", took,
                  "those bytes to disk", beside, 2, LINEAR)


@in_folder
def photographs(folder, rounds):
    convert, sizes, took, beside, memory = "/usr/bin/convert", [(1500, 1000), (3000, 2000), (6000, 4000)], [], [], 0
    if not pathlib.Path(convert).exists():
        return
    stock_file = folder / "stock.csv"
    stock_table(200, stock_file)
    for width, height in sizes:
        photograph = folder / f"{width}.jpg"
        subprocess.run([convert, "-size", f"{width}x{height}", "plasma:tomato-steelblue", "-seed", "1", "-quality", "90", photograph], check=True)
        made = folder / f"{width}.evencount.json"
        command = [EVENCOUNT, "picture", photograph, made, "--columns", "60", "--edge", "80", "--colours", "12", "--name", "One", "--stock",
                   stock_file, "--quick", "--open"]
        ours, theirs = best_of(min(rounds, 2), lambda: process(command), lambda: process(["djpeg" if shutil.which("djpeg") else convert,
                               *([photograph] if shutil.which("djpeg") else [photograph, "ppm:/dev/null"])]))
        took.append(ours[0]), beside.append(theirs[0])
        memory = ours[1]
    yield Promise("`picture` of a photograph on 60 x 80 beads", "3 s, 700 MB, linear", "bench/promises", [w * h for w, h in sizes], "pixels",
                  took, "another program's decoding alone", beside, 3, LINEAR, f"{memory:.0f} MB", memory <= 700)


@in_folder
def pictures_of_the_piece(folder, rounds):
    png = folder / "demo.png"
    preview, nothing = best_of(rounds, lambda: process([EVENCOUNT, "render", DEMO, "--preview", "-o", png]),
                               lambda: timed(lambda: copy_to_disk(png, folder / "copy")) if png.exists() else 1)
    found = benchmarks("render_bench", "bare_rays|scene_of_the_demo", min(rounds, 2))
    yield Promise("`render --preview` of the demo, 1600 x 1200", "1 s", "bench/promises", took=[preview[0]], limit=1,
                  beside="the demo as a scene, no rays", reference=[found["scene_of_the_demo"]["seconds"]], other=f"{preview[1]:.0f} MB")
    one = next(iter(benchmarks("render_bench", "whole_picture", 1).values()))
    bare = 1 / found["bare_rays/1"]["seconds"]
    all_rays = one["rays/s"] * one["seconds"]
    rays = all_rays / one["cpu_time"]  # a second of one core: its processor time is that of both threads
    yield Promise("the demo's finished picture, 1600 x 1200, 24 samples", "60 s on two cores; a quarter of Embree's bare rate", "bench/render_bench",
                  took=[one["cpu_time"] / 2 if BUSY else one["seconds"]], limit=60, beside="as many bare rays on two cores",
                  reference=[all_rays / bare / 2], other=f"{rays / 1e6:.2f} of {bare / 1e6:.2f} million rays a second and core",
                  met=rays >= bare / 4)
    sizes, took, memory = [15_000, 30_000, 60_000], [], []
    for beads in sizes:
        source = folder / f"{beads}.evencount.json"
        source.write_text(project_text(1, 200, beads // 200, 12).replace("peyote-even-count", "loom"))
        seconds, megabytes = process([EVENCOUNT, "render", source, "--samples", "2", "-o", folder / "large.png"])
        took.append(seconds), memory.append(megabytes)
    yield Promise("`render` of loom work, 2 samples", "15 s, 500 MB", "bench/promises", sizes, "beads", took, limit=15, growth_limit=LINEAR,
                  other=f"{memory[-1]:.0f} MB", met=memory[-1] <= 500)


@in_folder
def over_http(folder, rounds):
    """An edit of a band through the studio's server, by a plain client; on disk before its answer."""
    sys.path.insert(0, str(HOME / "tests/app/studio"))
    from studio_server import Server  # the tests' own client
    panels = [(50, 75), (100, 150), (200, 300)]
    took, beside = [], []
    projects = folder / "projects"
    projects.mkdir()
    for columns, edge in panels:
        (projects / f"p{columns}.evencount.json").write_text(project_text(1, columns, edge, 3))
    server = Server(EVENCOUNT, projects)
    for columns, edge in panels:
        connection, times, written = server.connect(), [], []
        revision = server.call("GET", f"/api/projects/p{columns}").json()["revision"]
        log = open(folder / "log", "ab")
        for i in range(60 * rounds):
            begin = time.perf_counter()
            answer = server.call("POST", f"/api/projects/p{columns}/operations?revision={revision}",
                                 {"do": "set", "band": 0, "cells": [[i % columns, i % edge]], "letter": "B" if i % 2 else "C"}, connection)
            times.append(time.perf_counter() - begin)
            if answer.status != 200:
                raise RuntimeError(answer.body)
            revision = answer.json()["revision"]
            written.append(timed(lambda: append(log, answer.body)))
        log.close()
        took.append(statistics.median(times)), beside.append(statistics.median(written))
    server.end()
    yield Promise("an edit over HTTP, on disk before its answer (median)", "8 ms", "bench/promises", [a * b for a, b in panels], "beads", took,
                  "its bytes written and synced", beside, 8e-3)


def append(log, data):
    log.write(data)
    log.flush()
    os.fsync(log.fileno())


GROUPS = [start, printed, stitch_along, stock, series, resized, photographs, pictures_of_the_piece, over_http]
