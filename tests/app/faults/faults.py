"""What the fault tests share: every writer of the command line as a table, and how one is run in a folder of old files.

A writer is a verb, with options, that leaves something on disk. The table is checked against what the program itself declares
(`evencount describe bash`) and against the sources, so that a writer without a line here fails `check_all_writers_are_known`."""

import json
import os
import pathlib
import re
import shutil
import sqlite3
import struct
import subprocess
import sys
import tempfile
import zlib

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "studio"))
from studio_server import Server, cells_of, check, folder, long_run, project, put_project  # noqa: E402,F401

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
EXAMPLES = SOURCE / "examples"
DONE, FINDINGS, BAD_INPUT, FAILURE = 0, 1, 2, 3
SKIPPED = 77
OLD = b"what stood here before\n"
PART = re.compile(r"^\.(.+)\.[A-Za-z0-9]{6}\.part$")


class Writer:
    """`makes` are the files that one run writes into its folder, in their order; `begins` says what is there before and must be read, not only written over."""

    def __init__(self, name, arguments, makes, begins=None, heavy=False, new=False, threads=False):
        self.name, self.arguments, self.makes, self.begins, self.heavy, self.new = name, arguments, makes, begins or {}, heavy, new
        self.threads = threads

    def __repr__(self):
        return self.name

    @property
    def stock(self):
        return "stock.sqlite" in self.begins or "stock.sqlite" in self.makes

    def command(self, folder):
        return [PROGRAM] + [word.replace("OUT", str(folder)) for word in self.arguments]

    def prepare(self, folder, old=True):
        """The files as they are before: those that are read, and something old under each name that is written."""
        for name, begin in self.begins.items():
            shutil.copyfile(begin(), pathlib.Path(folder) / name)
        if old and not self.new:
            for name in self.makes:
                if name not in self.begins:
                    (pathlib.Path(folder) / name).write_bytes(OLD)


class Inputs:
    """Files that writers read, made once in a roomy folder."""

    def __init__(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="evencount-faults-"))
        self.folder.chmod(0o755)
        self.small = self.folder / "small.evencount.json"
        self.small.write_text(json.dumps(project(columns=6, edge=24, bands=1)))
        self.other = self.folder / "other.evencount.json"
        self.other.write_text(json.dumps(project(columns=8, edge=24, bands=1, title="Other")))
        self.strung = EXAMPLES / "moonwatch.evencount.json"
        self.phases = self.folder / "series.csv"
        self.phases.write_text("name,front\nOne,1\nTwo,2\n")
        self.counted = self.folder / "counted.csv"
        self.photo = self.folder / "photo.png"
        self.photo.write_bytes(photograph())
        self.beads = EXAMPLES / "stock" / "beads.csv"
        self.findings = EXAMPLES / "stock" / "findings.csv"
        self.stock = self.folder / "stock.sqlite"
        self.stock_held = self.folder / "held.sqlite"
        self.from_stock = self.folder / "from-stock.evencount.json"
        self.blank = self.folder / "blank.sqlite"
        run([PROGRAM, "stock", "import", self.beads, "--stock", self.stock], DONE)
        run([PROGRAM, "stock", "import", self.findings, "--stock", self.stock], DONE)
        self.bead, finding = first_code(self.beads, "C11-"), first_code(self.findings, "")
        codes = [line.split(",")[0] for line in self.beads.read_text().splitlines()[1:]]
        self.counted.write_text("code,counted_g\n" + "".join(f"{code},77\n" for code in dict.fromkeys(codes)))
        shutil.copyfile(self.stock, self.stock_held)
        self.finding = finding
        run([PROGRAM, "stock", "reserve", "spring", f"{finding}=1", "--stock", self.stock_held], DONE)
        run([PROGRAM, "picture", EXAMPLES / "pictures" / "moon.png", self.from_stock, "--stock", self.stock, "--columns", "8", "--edge", "10",
             "--colours", "3", "--open", "--quick"], DONE)

    def remove(self):
        shutil.rmtree(self.folder, ignore_errors=True)


def photograph():
    """A PNG of a white card and a bead on grey, side by side."""
    def pixel(column, row):
        inside = 15 <= row < 85
        return b"\xe6\xe6\xe6" if inside and 15 <= column < 85 else b"\x46\x82\x84" if inside and 115 <= column < 185 else b"\x80\x80\x80"

    def chunk(name, data):
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    rows = b"".join(b"\0" + b"".join(pixel(column, row) for column in range(200)) for row in range(100))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", 200, 100, 8, 2, 0, 0, 0)) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def first_code(table, prefix):
    for line in table.read_text().splitlines()[1:]:
        code, *fields = line.split(",")
        if code.startswith(prefix) and any(re.fullmatch(r"[1-9][0-9]+(\.\d+)?", field) for field in fields):
            return code
    raise SystemExit(f"no item of {table}")


def environment():
    return {**os.environ, "SOURCE_DATE_EPOCH": "1700000000", "LC_ALL": "C.UTF-8"}


def run(command, *wanted, timeout=300, **more):
    ran = subprocess.run([str(word) for word in command], capture_output=True, timeout=timeout, env=environment(), **more)
    ran.words = ran.stderr.decode(errors="replace")
    if wanted:
        check(ran.returncode in wanted, f"{' '.join(map(str, command))}: status {ran.returncode}: {ran.words}")
    return ran


def writers(inputs):
    stock = ["--stock", "OUT/stock.sqlite"]
    at = ["--at", "2024-03-01"]
    own = {"p.evencount.json": lambda: inputs.small}
    held, reserved = {"stock.sqlite": lambda: inputs.stock}, {"stock.sqlite": lambda: inputs.stock_held}
    small, other, strung = str(inputs.small), str(inputs.other), str(inputs.strung)
    mine = "OUT/p.evencount.json"
    return [
        Writer("fit --draw", ["fit", "lens:17x5x9", "--bead", "cylinder-11", "--draw", "OUT/section.svg"], ["section.svg"]),
        Writer("fit --keep", ["fit", "lens:17x5x9", "--bead", "cylinder-11", "--gauge", "1.35x1.66", "--keep", mine], ["p.evencount.json"], own),
        Writer("band", ["band", mine, "--name", "More", "--columns", "6", "--edge", "400"], ["p.evencount.json"], own),
        Writer("band into a new project", ["band", "OUT/new.evencount.json", "--name", "One", "--columns", "6", "--edge", "400"], ["new.evencount.json"], new=True),
        Writer("picture", ["picture", str(EXAMPLES / "pictures" / "moon.png"), mine, "--stock", str(inputs.beads), "--columns", "40", "--edge", "60",
                           "--open", "--quick"], ["p.evencount.json"], own, threads=True),
        Writer("resize -o", ["resize", small, "-o", "OUT/r.evencount.json", "--bead", "round-8", "--overwrite"], ["r.evencount.json"]),
        Writer("series -o", ["series", str(inputs.phases), "--template", small, "--front", "2-10", "-o", "OUT/s.evencount.json", "--overwrite"],
               ["s.evencount.json"]),
        Writer("series --onto", ["series", str(inputs.phases), "--template", small, "--front", "2-10", "--onto", mine], ["p.evencount.json"], own),
        Writer("words -o", ["words", small, "-o", "OUT/words.txt"], ["words.txt"]),
        Writer("string", ["string", mine, "--ease", "2.5cm"], ["p.evencount.json"], {"p.evencount.json": lambda: inputs.strung}),
        Writer("string --flat --as-worn", ["string", strung, "--flat", "OUT/flat.svg", "--as-worn", "OUT/worn.svg"], ["flat.svg", "worn.svg"],
               heavy=True),
        Writer("draw -o .svg", ["draw", small, "-o", "OUT/chart.svg"], ["chart.svg"]),
        Writer("draw -o .png", ["draw", small, "-o", "OUT/chart.png"], ["chart.png"]),
        Writer("draw -o .pdf", ["draw", small, "-o", "OUT/chart.pdf"], ["chart.pdf"]),
        Writer("booklet -o", ["booklet", small, "-o", "OUT/booklet.pdf", "--no-steps"], ["booklet.pdf"], heavy=True),
        Writer("booklet --folder", ["booklet", small, other, "--folder", "OUT", "--no-steps"], ["small.pdf", "other.pdf"], heavy=True),
        Writer("along -o", ["along", small, "-o", "OUT/along.html"], ["along.html"]),
        Writer("along --folder", ["along", small, other, "--folder", "OUT"], ["small.html", "other.html"]),
        Writer("labels -o", ["labels", small, "-o", "OUT/labels.pdf"], ["labels.pdf"]),
        Writer("render -o", ["render", small, "-o", "OUT/picture.png", "--size", "64x48", "--samples", "1", "--threads", "2", "--preview"],
               ["picture.png"], heavy=True, threads=True),
        Writer("render --frames", ["render", small, "-o", "OUT/picture.png", "--size", "64x48", "--samples", "1", "--threads", "2", "--frames", "2"],
               ["picture-001.png", "picture-002.png"], heavy=True, threads=True),
        Writer("stock import", ["stock", "import", str(inputs.counted), "--kind", "beads", *stock, *at], ["stock.sqlite"], held),
        Writer("stock import into a new file", ["stock", "import", str(inputs.beads), *stock, *at], ["stock.sqlite"], new=True),
        Writer("stock export -o", ["stock", "export", "--kind", "beads", "--stock", str(inputs.stock), "-o", "OUT/beads.csv"], ["beads.csv"]),
        Writer("stock count-in", ["stock", "count-in", inputs.bead, "1.5g", *stock, *at], ["stock.sqlite"], held),
        Writer("stock use", ["stock", "use", inputs.finding, "1", *stock, *at], ["stock.sqlite"], held),
        Writer("stock correct", ["stock", "correct", inputs.bead, "3g", *stock, *at], ["stock.sqlite"], held),
        Writer("stock reserve", ["stock", "reserve", "summer", f"{inputs.bead}=0.5g", *stock, *at], ["stock.sqlite"], held),
        Writer("stock take", ["stock", "take", "spring", *stock, *at], ["stock.sqlite"], reserved),
        Writer("stock release", ["stock", "release", "spring", *stock, *at], ["stock.sqlite"], reserved),
        Writer("stock measure --for", ["stock", "measure", str(inputs.photo), "--card", "15,15,70,70", "--bead", "115,15,70,70",
                                       "--for", inputs.bead, *stock], ["stock.sqlite"], held),
        Writer("supplies --reserve", ["supplies", str(inputs.from_stock), "--reserve", "kits", *stock], ["stock.sqlite"], held),
    ]


# What each option that names a file is for. A new one must be put on one of these lists, and one that writes gets a writer above.
READS = {
    "fit": {"--from"}, "band": {"--motif", "--words"}, "picture": {"--stock"}, "series": {"--template"}, "read": {"--against"},
    "string": {"--layout"}, "supplies": {"--costing"}, "proof": {"--stock"}, "booklet": {"--cover"}, "stock import": {"--map-file"},
    "studio": {"--studio-files"}, "doctor": {"--studio-files"},
}
WRITES = {
    "fit": {"--keep", "--draw"}, "resize": {"--output"}, "series": {"--output", "--onto"}, "words": {"--output"},
    "string": {"--flat", "--as-worn"}, "supplies": {"--stock"}, "draw": {"--output"}, "booklet": {"--output", "--folder"},
    "along": {"--output", "--folder"}, "render": {"--output"}, "stock export": {"--stock", "--output"}, "labels": {"--output"},
    "stock import": {"--stock"}, "stock count-in": {"--stock"}, "stock use": {"--stock"}, "stock correct": {"--stock"},
    "stock reserve": {"--stock"}, "stock take": {"--stock"}, "stock release": {"--stock"}, "stock measure": {"--stock"},
}
# These open the stockroom to look at it; studio and doctor have tests of their own.
LOOKS = {"stock list": {"--stock"}, "stock journal": {"--stock"}, "stock check": {"--stock"}, "stock runs": {"--stock"}, "studio": {"--projects"},
         "doctor": {"--projects"}}
WRITE_THEIR_PROJECT = {"band", "picture", "string"}
ONLY_READ = {"palette", "read", "thread", "proof", "stock"}
# Where files are opened to be written, and who calls those that do.
MAKERS = {"app/files.cpp", "app/doctor.cpp", "app/studio/history.cpp", "app/studio/browser.cpp", "stockroom/stockroom.cpp"}
CALLERS = {"app/drawing_file.cpp", "app/project_file.cpp", "app/files.cpp", "app/files.hpp", "app/project_file.hpp", "app/drawing_file.hpp",
           "app/studio/session.cpp", "app/studio/session.hpp", "app/studio/library.cpp", "app/studio/library.hpp"}
CALLING_VERBS = {"along", "band", "booklet", "draw", "fit", "labels", "picture", "render", "resize", "series", "string", "words", "stock_view"}


def declared():
    """verb -> the options whose value is a file's name, by their long names."""
    script = run([PROGRAM, "describe", "bash"], DONE).stdout.decode()
    found = {}
    for verb, files in re.findall(r"^    '([^']+)'\) verbs=.* file_options='([^']*)' value_options=", script, re.M):
        found[verb] = {name for name in files.split() if name.startswith("--")}
    check(len(found) > 30, "the completions have another shape now")
    return found


def check_all_writers_are_known(table):
    covered = {tuple(writer.arguments) for writer in table}
    verbs = declared()
    for verb, options in verbs.items():
        for option in options:
            lists = [name for name, each in (("reads", READS), ("writes", WRITES), ("looks", LOOKS)) if option in each.get(verb, ())]
            check(len(lists) == 1, f"evencount {verb} {option}: put it on one list of tests/app/faults/faults.py; it is on {lists or 'none'}")
            if lists == ["writes"]:
                short = {"--output": "-o"}.get(option, option)
                check(any(words[:len(verb.split())] == tuple(verb.split()) and short in words for words in covered),
                      f"evencount {verb} {option} writes, and has no writer in tests/app/faults/faults.py")
        known = verb in WRITES or verb in LOOKS or verb in ONLY_READ or verb in WRITE_THEIR_PROJECT
        check(known, f"evencount {verb}: say in tests/app/faults/faults.py whether it writes")
    for verb in WRITE_THEIR_PROJECT:
        check(any(words[0] == verb for words in covered), f"no writer for {verb}")
    for lists in (READS, WRITES, LOOKS):
        for verb, options in lists.items():
            check(options <= verbs.get(verb, set()), f"{verb} has no more {options - verbs.get(verb, set())}")
    opens = re.compile(r"O_CREAT|mks?temps?\(|mkostemps?\(|ofstream|fopen\(|OPEN_CREATE")
    calls = re.compile(r"\b(write_file|write_drawing|save_project)\(")
    for path in sorted((SOURCE / "src").rglob("*.[ch]pp")):
        text, name = path.read_text(), path.relative_to(SOURCE / "src").as_posix()
        check(not opens.search(text) or name in MAKERS, f"{name} opens a file to write it: test it here, and name it in MAKERS")
        verb = re.fullmatch(r"app/verbs/(\w+?)_verbs?\.cpp", name)
        check(not calls.search(text) or name in CALLERS or name == "app/verbs/fit_request.cpp" or (verb and verb[1] in CALLING_VERBS),
              f"{name} writes a file: test it here, and name it in CALLERS")


def contents(folder):
    """Every file's bytes; of a stockroom what it holds, since its pages may be written without anything changing."""
    found = {}
    for path in sorted(pathlib.Path(folder).iterdir()):
        if path.name.endswith((".sqlite-wal", ".sqlite-shm", ".sqlite-journal", "filler")):
            continue
        if path.is_symlink() and not path.exists():
            found[path.name] = "a link to nothing"
        elif path.is_dir():
            found[path.name] = "a folder"
        elif path.name.endswith(".sqlite"):
            found[path.name] = stock_state(path)
        else:
            found[path.name] = path.read_bytes()
    return found


def stock_state(path):
    """All tables of a copy; None for a file that nothing was ever put into."""
    with tempfile.TemporaryDirectory() as place:
        for part in ("", "-wal", "-journal"):
            if pathlib.Path(str(path) + part).exists():
                shutil.copyfile(str(path) + part, f"{place}/copy.sqlite{part}")
        database = sqlite3.connect(f"{place}/copy.sqlite")
        try:
            check(database.execute("PRAGMA integrity_check").fetchone()[0] == "ok", f"{path} is damaged")
            tables = [row[0] for row in database.execute("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")]
            state = {table: sorted(map(repr, database.execute(f"SELECT * FROM {table}"))) for table in tables}
        finally:
            database.close()
    return state if any(state.values()) else None


def without_times(state):
    """A stockroom's state without when it happened: `supplies --reserve` writes the present."""
    if not isinstance(state, dict):
        return state
    return {table: [re.sub(r"\b1[6-9]\d{8}\b", "T", row) for row in rows] for table, rows in state.items()}


def same(one, other):
    return without_times(one) == without_times(other)


def is_old_or_new(now, old, new):
    """Each file is its old self or its new one; a file that was not there may be missing, or be a stockroom with nothing in it."""
    names = set(now) | set(old)
    return all(same(now.get(name), old.get(name)) or same(now.get(name), new.get(name)) for name in names)


# Under a sanitizer every run takes ten times as long: one writer of each way of writing.
SANITIZED = os.environ.get("EVENCOUNT_SANITIZED") == "1"
A_FEW = ("fit --draw", "band", "picture", "resize -o", "words -o", "draw -o .png", "booklet -o", "along --folder", "render -o", "stock import", "stock count-in",
         "stock reserve")


def tried(table):
    """Those that are tried in this run."""
    return [writer for writer in table if writer.name in A_FEW] if SANITIZED and not long_run() else table


def tell(*words):
    print(*words, flush=True)
