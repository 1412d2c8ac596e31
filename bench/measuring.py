"""Times things: benchmark programs, whole processes, and how time grows with size. Everything is the best of several rounds, in which the thing
and its reference take turns: what else the machine does then strikes both. While it does much else, the processor's time is taken instead of the
clock's wherever there is one thread."""

import json
import math
import os
import pathlib
import subprocess
import tempfile
import time

HOME = pathlib.Path(__file__).resolve().parent.parent
BUILD = HOME / "build/bench"
EVENCOUNT = str(BUILD / "src/app/evencount")
BUSY = os.getloadavg()[0] > 1  # as it was at the start


def benchmarks(program, wanted, rounds=3, least_seconds=0.05):
    """The benchmarks of bench/PROGRAM.cpp that match `wanted`: name to {"seconds": the best round's, and its counters}."""
    with tempfile.NamedTemporaryFile(suffix=".json") as file:
        subprocess.run([BUILD / "bench" / program, f"--benchmark_filter={wanted}", f"--benchmark_repetitions={rounds}",
                        "--benchmark_enable_random_interleaving=true", f"--benchmark_min_time={least_seconds}",
                        f"--benchmark_out={file.name}", "--benchmark_out_format=json"], check=True, stdout=subprocess.DEVNULL,
                       stderr=subprocess.DEVNULL)
        found = {}
        for one in json.load(open(file.name, encoding="utf-8"))["benchmarks"]:
            if one["run_type"] != "iteration":
                continue
            if one.get("error_occurred"):
                raise RuntimeError(f"{program} {one['name']}: {one['error_message']}")
            name = one["run_name"].split("/iterations:")[0].removesuffix("/process_time/real_time").removesuffix("/real_time")
            one_thread = "real_time" not in one["run_name"]
            seconds = one["cpu_time" if BUSY and one_thread else "real_time"] * {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1}[one["time_unit"]]
            if name not in found or seconds < found[name]["seconds"]:
                found[name] = {**one, "seconds": seconds}
    if not found:
        raise RuntimeError(f"{program} has nothing like {wanted}")
    return found


def process(command, folder=None):
    """Seconds and peak memory (MB) of a whole process, from its start to its end."""
    begin = time.perf_counter()
    running = subprocess.Popen([str(word) for word in command], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    said = running.stdout.read()
    _, status, usage = os.wait4(running.pid, 0)
    seconds = time.perf_counter() - begin
    running.returncode = os.waitstatus_to_exitcode(status)
    if running.returncode != 0:
        raise RuntimeError(f"{' '.join(map(str, command))}: {said.decode(errors='replace')}")
    return usage.ru_utime + usage.ru_stime if BUSY else seconds, usage.ru_maxrss / 1024


def best_of(rounds, *actions):
    """The least that each action returns (numbers, or tuples by their first), the actions taking turns."""
    results = [[] for _ in actions]
    for _ in range(rounds):
        for action, those in zip(actions, results):
            those.append(action())
    return [min(those) for those in results]


def timed(action):
    begin = time.perf_counter()
    action()
    return time.perf_counter() - begin


def write_to_disk(data, path):
    """The least that saving can take: the bytes written and synced."""
    with open(path, "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def copy_to_disk(source, target):
    write_to_disk(pathlib.Path(source).read_bytes(), target)


def growth(sizes, seconds):
    """The slope of log time over log size: 1 is linear."""
    x, y = [math.log(size) for size in sizes], [math.log(one) for one in seconds]
    mean_x, mean_y = sum(x) / len(x), sum(y) / len(y)
    return sum((a - mean_x) * (b - mean_y) for a, b in zip(x, y)) / sum((a - mean_x) ** 2 for a in x)


def project_text(bands, columns, edge, colours, **more):
    """A project of so many bands of flat peyote in blocks of colour, as bench/samples.hpp makes them."""
    letters = [chr(ord("A") + i) for i in range(colours)]

    def step(band, at):
        row, runs = [(column // 3 + at // 2 + band) % colours for column in range(columns)], []
        for colour in row:
            if runs and runs[-1][1] == colour:
                runs[-1][0] += 1
            else:
                runs.append([1, colour])
        return " ".join(f"{count}{letters[colour]}" for count, colour in runs)

    return json.dumps({
        "format": 1, "title": "Bench", "beads": [{"id": "cylinder-11"}],
        "legend": [{"letter": letter, "name": f"colour {i}", "colour": f"#{(i * 1234567 + 0x203040) % 0xffffff:06x}", "bead": "cylinder-11"}
                   for i, letter in enumerate(letters)],
        "bands": [{"name": f"Band {i + 1}", "technique": "peyote-even-count", "bead": "cylinder-11", "closure": "open", "columns": columns,
                   "edge": edge, "cells": [step(i, at) for at in range(edge)], **more} for i in range(bands)]})
