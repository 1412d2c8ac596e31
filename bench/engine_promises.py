"""Promises of the engine, by the benchmark programs."""

import pathlib
import re
import shutil
import subprocess
import tempfile

from measuring import BUILD, HOME, benchmarks, timed
from promise import Promise

PANELS = [(100, 150), (200, 300), (400, 600)]
BEADS = [columns * edge for columns, edge in PANELS]
LINEAR = 1.15  # of an exponent: what caches cost on the way to larger pieces is in it


def at(found, name, sizes):
    """Seconds of a benchmark at each of its sizes."""
    return [found[f"{name}/{size if isinstance(size, (int, str)) else '/'.join(map(str, size))}"]["seconds"] for size in sizes]


def fits(rounds):
    found = benchmarks("form_bench", "fit_one|chord_by_oracle|chords_of_a_circle", rounds)
    oracle = found["chord_by_oracle"]["seconds"]
    slowest = max((one for name, one in found.items() if name.startswith("fit_one")), key=lambda one: one["seconds"])
    round_form = found["fit_one/1"]
    yield Promise("a fit, the slowest of eight kinds of forms", "1 ms", "bench/form_bench", took=[slowest["seconds"]], limit=1e-3,
                  beside="one chord by brute force", reference=[oracle], other=slowest["label"])
    yield Promise("a fit of a round form", "1 ms", "bench/form_bench", took=[round_form["seconds"]], limit=1e-3,
                  beside="nine chords by the closed form", reference=[found["chords_of_a_circle"]["seconds"]])
    forms = [100, 1000, 10_000]
    found = benchmarks("form_bench", "fit_forms_in_twelve_beads", min(rounds, 2))
    yield Promise("forms of five kinds, each in 12 beads", "5 s, linear", "bench/form_bench", forms, "forms",
                  at(found, "fit_forms_in_twelve_beads", forms), "one chord a fit by brute force", [12 * n * oracle for n in forms], 5, LINEAR)


def panels(rounds):
    found = benchmarks("weave_bench", "copy_cells|panel_of/peyote|panel_of/square|read_words_of", rounds)
    copy = at(found, "copy_cells", PANELS)
    for name, what in (("peyote", "flat peyote"), ("square", "square stitch")):
        yield Promise(f"plan, replay, words, thread, counts: {what}", "1 µs a bead, linear", "bench/weave_bench", BEADS, "beads",
                      at(found, f"panel_of/{name}", PANELS), "a copy of the cells", copy, 1e-6 * BEADS[-1], LINEAR)
    yield Promise("words read back", "1 µs a bead, linear", "bench/weave_bench", BEADS, "beads", at(found, "read_words_of", PANELS),
                  "a copy of the cells", copy, 1e-6 * BEADS[-1], LINEAR)


def projects(rounds):
    found = benchmarks("project_bench", ".", rounds)
    for ours, what, theirs, beside, limit, promised in (
            ("read_project", "a project read, every bead another", "json_alone", "the JSON library alone", 0.5, "0.5 s, linear"),
            ("write_project", "a project as JSON", "copy_text", "a copy of the text", 0.1, "0.1 s, linear"),
            ("resize_project", "a design in other beads, lines kept", "plan_alone", "its plan", 3, "3 s, linear")):
        yield Promise(what, promised, "bench/project_bench", BEADS, "beads", at(found, ours, PANELS), beside, at(found, theirs, PANELS),
                      limit, LINEAR)


def supplies(rounds):
    bands = [6, 12, 24]
    found = benchmarks("supplies_bench", "list_of_bands|plans_of_bands|packs_of_a_dozen", rounds)
    yield Promise("supplies of a collection, 500 kits", "100 ms, linear", "bench/supplies_bench", bands, "bands",
                  at(found, "list_of_bands", [(n, 500) for n in bands]), "its plans alone", at(found, "plans_of_bands", bands), 0.1, LINEAR)
    needs = [300_000, 30_000_000, 500_000_000]
    yield Promise("the cheapest packs of a dozen offers", "5 ms, whatever is needed", "bench/supplies_bench", needs, "mg",
                  at(found, "packs_of_a_dozen", needs), limit=5e-3, growth_limit=0.4)


def beside_solver(what, program, options):
    """50 random problems, solved and written out by one process of ours; by a process of the solver each, without its start."""
    if not shutil.which("glpsol"):
        return
    solve = lambda *words: subprocess.run(["glpsol", *words], check=True, stdout=subprocess.DEVNULL)
    with tempfile.TemporaryDirectory() as folder:
        ours = timed(lambda: subprocess.run([BUILD / "bench" / program, folder, "50"], check=True, stdout=subprocess.DEVNULL))
        files = sorted(pathlib.Path(folder).glob("*.lp"))
        theirs = timed(lambda: [solve("--lp", file, *options) for file in files]) - timed(lambda: [solve("--version") for _ in files])
    yield Promise(what, "a third of a general solver's time", "bench/promises", took=[ours], beside="glpsol", reference=[theirs],
                  met=ours <= theirs / 3)


def strands(rounds):
    runs = [3, 6, 12]
    found = benchmarks("strand_bench", "count_runs/1/1", rounds)
    took = at(found, "count_runs/1/1", runs)
    elements = int(found["count_runs/1/1/12"]["elements"])
    yield Promise("counts of a strand's runs, each its own spacer, few on hand", f"50 ms for {elements} elements and their runs", "bench/strand_bench", runs, "runs",
                  took, limit=0.05)
    things = [100, 1000, 10_000]
    found = benchmarks("strand_bench", "resting_on_a_table|copy_of_things", rounds)
    yield Promise("how high a strand lies on a table", "linear", "bench/strand_bench", things, "things", at(found, "resting_on_a_table", things),
                  "a copy of them", at(found, "copy_of_things", things), growth_limit=LINEAR)
    yield from beside_solver("50 random strands counted", "run_programs", ["--cuts"])


def colours(rounds):
    found = benchmarks("colour_bench", "ciede2000_textbook|ciede2000_matrix", rounds)
    textbook = found["ciede2000_textbook"]["seconds"] / 2000 * 10_000_000
    yield Promise("10 million colour differences (CIEDE2000)", "0.2 s", "bench/colour_bench", took=[found["ciede2000_matrix"]["seconds"]],
                  limit=0.2, beside="the textbook's form", reference=[textbook])


def pictures(rounds):
    found = benchmarks("picture_bench", "(proved|quickly)/[0-2]/[01]/threads:2|all_differences", rounds)
    cells = [4800, 19_200]
    matrix = [found[f"all_differences/0/{i}"]["seconds"] for i in (0, 1)]
    for name, what, limit, promised in (("proved", "12 of 2,000 beads for a picture, proved best", 3, "3 s; 0.1 % above the bound"),
                                        ("quickly", "the same without the proof", 0.6, "0.6 s")):
        worst = lambda size: max((found[f"{name}/{which}/{size}/threads:2"] for which in range(3)), key=lambda one: one["seconds"])
        gap = max(one["gap_percent"] for key, one in found.items() if key.startswith(name))
        yield Promise(what, promised, "bench/picture_bench", cells, "beads", [worst(0)["seconds"], worst(1)["seconds"]],
                      "all differences, one core", matrix, limit, other=f"{gap:.3f} % above the bound" if name == "proved" else "",
                      met=name == "quickly" or gap <= 0.1)
    yield from beside_solver("50 small choices of beads", "choice_programs", [])


def quantisers(rounds):
    """Against programs that pick free colours: the nearest beads of those."""
    said = subprocess.run([HOME / "bench/picture_peers.py", BUILD / "bench/choose_picture", "--repeats", str(rounds)], capture_output=True,
                          text=True, check=True).stdout
    lines = re.findall(r"^(\S+)\s+(choice, proved|imagemagick|pngquant)\s+mean ([\d.]+)\s+(\d+) ms", said, re.M)
    for theirs in ("imagemagick", "pngquant"):
        mean = {(picture, name): float(error) for picture, name, error, _ in lines}
        worst = max((mean[picture, "choice, proved"] / error for (picture, name), error in mean.items() if name == theirs), default=None)
        if worst is None:
            continue
        milliseconds = {(picture, name): int(time) for picture, name, _, time in lines}
        slowest = max((picture for picture, name in milliseconds if name == theirs), key=lambda one: milliseconds[one, "choice, proved"])
        yield Promise("12 beads for a picture, a whole process", "a smaller error", "bench/picture_peers.py",
                      took=[milliseconds[slowest, "choice, proved"] / 1000], beside=theirs, reference=[milliseconds[slowest, theirs] / 1000],
                      other=f"at most {worst:.2f} times its error", met=worst < 1)


def finishing(rounds):
    mixed = "diffusion/{}/{}/drop:1/closeness_percent:30/rounds:8"
    smoothed = "smoothing/{}/{}/drop:1/strength_percent:25/loss_in_10000:100"
    found = benchmarks("picture_finish_bench", "viewing|diffusion/./[01]/drop:1/closeness_percent:30/rounds:8|"
                       "smoothing/./[01]/drop:1/strength_percent:25/loss_in_10000:100", min(rounds, 2))
    cells = [4800, 19_200]
    viewing = [found[f"viewing/0/{i}/drop:1"]["seconds"] for i in (0, 1)]
    every = lambda pattern, size: [found[pattern.format(which, size)] for which in range(3)]
    slowest = lambda pattern: [max(one["seconds"] for one in every(pattern, size)) for size in (0, 1)]
    seen = [one["view_after"] for one in every(mixed, 0)]
    yield Promise("beads mixed for a viewing distance", "2 s; seen CIEDE2000 below 3.69 (coffee), 2.61 (flat)", "bench/picture_finish_bench",
                  cells, "beads", slowest(mixed), "one comparison at that distance", viewing, 2,
                  other="{:.2f}, {:.2f} seen".format(*seen[1:]), met=seen[1] < 3.69 and seen[2] < 2.61)
    joined = min(one["joined_percent"] for size in (0, 1) for one in every(smoothed, size))
    more = max(one["own_more_percent"] for size in (0, 1) for one in every(smoothed, size))
    yield Promise("beads that stand alone joined", "2 s; 70 % of them for 1 % more", "bench/picture_finish_bench", cells, "beads",
                  slowest(smoothed), "one comparison at that distance", viewing, 2, other=f"{joined:.0f} % for {more:.2f} % at worst",
                  met=joined >= 70 and more <= 1.0001)


def fabrics(rounds):
    found = benchmarks("fabric_bench", "settle_flat_piece|relax_shaken_flat_piece|draw_a_bezel", rounds)
    wide = [20, 40, 80]
    beads = [n * (3 * n // 2) for n in wide]
    flat, shaken = at(found, "settle_flat_piece", wide), at(found, "relax_shaken_flat_piece", wide)
    yield Promise("a flat piece laid in space", "2 µs a bead, n log n", "bench/fabric_bench", beads, "beads", flat, limit=2e-6 * beads[-1],
                  growth_limit=1.25)
    yield Promise("600 shaken beads settled", "50 ms", "bench/fabric_bench", took=shaken[:1], beside="laid in space", reference=flat[:1], limit=0.05)
    yield Promise("shaken beads settled", "more rounds the larger: size^1.4", "bench/fabric_bench", beads, "beads", shaken, "laid in space",
                  flat, growth_limit=1.4)
    yield Promise("a bezel of 126 beads drawn over its stone", "300 ms", "bench/fabric_bench",
                  took=[found["draw_a_bezel_over_its_stone"]["seconds"]], limit=0.3)


def booklets(rounds):
    found = benchmarks("page_bench", "collection_of/|panel/", rounds)
    bands, beads = [6, 12, 24], [15_000, 30_000, 60_000]
    yield Promise("a booklet laid out, written, read back", "1 s, linear", "bench/page_bench", bands, "bands",
                  at(found, "collection_of", bands), "its pages to PDF alone", at(found, "bare_collection_of", bands), 1, LINEAR)
    yield Promise("the booklet of a panel", "2 s, linear", "bench/page_bench", beads, "beads", at(found, "panel", beads),
                  "its pages to PDF alone", at(found, "bare_panel", beads), 2, LINEAR)


GROUPS = [fits, panels, projects, supplies, strands, colours, pictures, quantisers, finishing, fabrics, booklets]
