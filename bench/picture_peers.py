#!/usr/bin/env python3
"""Compares choosing beads with two colour quantisers, whole process against whole process, in one run:

    picture_peers.py CHOOSE_PICTURE [--count 12] [--repeats 5]

A quantiser picks free colours; each is changed for the nearest of the stock (CIEDE2000) and every cell given the nearest of
those. Its time is the quantiser's alone, without that. Needs Debian's imagemagick and pngquant; they are no part of the product.
Prints, for each picture and method, the mean CIEDE2000, our bound where there is one, and the median time of a process.
"""

import argparse
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

CASES = pathlib.Path(__file__).resolve().parent.parent / "tests" / "cases" / "picture"
CONVERT = "/usr/bin/convert"
STOCK = str(CASES / "stock2000.txt")


def timed(command, repeats):
    """Output and median seconds of a whole process."""
    seconds = []
    for _ in range(repeats):
        start = time.perf_counter()
        run = subprocess.run(command, capture_output=True, text=True, check=True)
        seconds.append(time.perf_counter() - start)
    return run.stdout, statistics.median(seconds)


def snapped(choose, picture, palette):
    mean, colours = subprocess.run([choose, "snap", picture, STOCK, palette],
                                   capture_output=True, text=True, check=True).stdout.split()
    return float(mean), f"{colours} colours after snapping"


def by_imagemagick(choose, picture, count, repeats, folder):
    result = f"{folder}/imagemagick.ppm"
    _, seconds = timed([CONVERT, picture, "+dither", "-colors", str(count), result], repeats)
    return *snapped(choose, picture, result), seconds


def by_pngquant(choose, picture, count, repeats, folder):
    png, quantised, result = f"{folder}/in.png", f"{folder}/out.png", f"{folder}/pngquant.ppm"
    subprocess.run([CONVERT, picture, png], check=True)
    _, seconds = timed(["pngquant", "--nofs", "--speed", "1", "--force", "--output", quantised, str(count), png], repeats)
    # 8 bits and no alpha, whatever kind of PNG it became.
    subprocess.run([CONVERT, quantised, "-alpha", "off", "-depth", "8", "-type", "TrueColor", result], check=True)
    return *snapped(choose, picture, result), seconds


def ours(quick):
    def choose_beads(choose, picture, count, repeats, _folder):
        command = [choose, "choose", picture, STOCK, str(count)] + (["quick"] if quick else [])
        output, seconds = timed(command, repeats)
        mean, _, bound = map(float, output.split())
        return mean, f"bound {bound:.4f}, gap {100 * (mean - bound) / mean:.3f} %", seconds
    return choose_beads


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("choose")
    parser.add_argument("--count", type=int, default=12)
    parser.add_argument("--repeats", type=int, default=5)
    arguments = parser.parse_args()
    methods = [("choice, proved", ours(False)), ("choice, quick", ours(True))]
    if pathlib.Path(CONVERT).exists():
        methods.append(("imagemagick", by_imagemagick))
        if shutil.which("pngquant"):
            methods.append(("pngquant", by_pngquant))
    if len(methods) < 4:
        print("imagemagick or pngquant is not installed: left out", file=sys.stderr)
    with tempfile.TemporaryDirectory() as folder:
        for picture in sorted(CASES.glob("*.ppm")):
            for name, method in methods:
                mean, note, seconds = method(arguments.choose, str(picture), arguments.count, arguments.repeats, folder)
                print(f"{picture.stem:18} {name:15} mean {mean:.4f}  {1000 * seconds:7.0f} ms  {note}")


main()
