"""Promises that a test measures: it is run in full, and its figures are read off what it prints."""

import os
import re
import subprocess
import sys

from measuring import EVENCOUNT, HOME
from promise import Promise


def said(*command, **environment):
    """What a test prints. One that is skipped, or fails, can't be read."""
    run = subprocess.run([str(word) for word in command], capture_output=True, text=True, check=False,
                         env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1", **environment})
    if run.returncode != 0:
        raise RuntimeError(f"{command[-1]}: {run.stdout[-300:]} {run.stderr[-300:]}")
    return run.stdout


def figures(pattern, text):
    found = re.search(pattern, text)
    if not found:
        raise RuntimeError(f"nothing like {pattern} in {text[-500:]}")
    return [float(one) for one in found.groups()]


def in_browser(_rounds):
    """A stroke on a band of 200 x 300 in a browser; beside it the same operation without one."""
    text = said(HOME / "tests/studio/with_node", EVENCOUNT, "node", "tests/measure.mjs")
    screen, late = figures(r"stroke to screen: median ([\d.]+) ms, 95th ([\d.]+) ms", text)
    bare, _ = figures(r"answer, without a browser: median ([\d.]+) ms, 95th ([\d.]+) ms", text)
    calls, frame = figures(r"beads in (\d+) draw calls, (\d+) ms a frame", text)
    command = "studio/tests/measure.mjs"
    yield Promise("a stroke on 200 x 300 beads, from lifting the pen to the screen (median)", "60 ms", command, took=[screen / 1000], limit=0.06,
                  beside="its answer without a browser", reference=[bare / 1000], other=f"95 % below {late:.0f} ms")
    yield Promise("60,000 beads in the round", "12 draw calls", command, other=f"{calls:.0f} draw calls, {frame:.0f} ms a frame in software",
                  met=calls <= 12)


def many_edits(_rounds):
    text = said(sys.executable, HOME / "tests/app/studio/two_clients_test.py", EVENCOUNT, HOME, EVENCOUNT_LONG="1")
    edits, before, after = figures(r"(\d+) more edits: ([\d.]+) MB before, ([\d.]+) MB after", text)
    yield Promise(f"the server's memory over {edits:,.0f} edits", "20 MB more", "EVENCOUNT_LONG=1 tests/app/studio/two_clients_test.py",
                  other=f"{before:.1f} MB before, {after:.1f} after", met=after < before + 20)


def many_edits_in_browser(_rounds):
    text = said(HOME / "tests/studio/with_node", EVENCOUNT, "node", "tests/memory.mjs", EVENCOUNT_LONG="1")
    before, after, edits, _ = figures(r"page: ([\d.]+) MiB before, ([\d.]+) MiB after (\d+) edits and (\d+) changes", text)
    yield Promise(f"the page's memory over {edits:,.0f} edits and changes of view", "4 MiB more",
                  "EVENCOUNT_LONG=1 studio/tests/memory.mjs", other=f"{before:.1f} MiB before, {after:.1f} after", met=after - before < 4)


GROUPS = [in_browser, many_edits, many_edits_in_browser]
