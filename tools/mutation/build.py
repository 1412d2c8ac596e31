"""A copy of the tree, built once as the tests are; sources with mutants in them compiled beside it and put in front of the room's library."""

import concurrent.futures
import json
import os
import pathlib
import re
import shlex
import shutil
import subprocess

import sites

HERE = pathlib.Path(__file__).resolve().parent
COPIED = ("src/", "tests/", "cmake/", "fuzz/", "examples/", "schema/", "docs/", "tools/build", "bench/", "CMakeLists.txt", "CMakePresets.json", "desktop/",
          "README.md", "ARCHITECTURE.md", "CONTRIBUTING.md", "LICENSE")
SWITCHED_FLAGS = ["-include", str(HERE / "switch.hpp"), "-w", "-Wno-error", "-Wno-narrowing", "-D_GLIBCXX_ASSERTIONS", "-g0", "-O1", "-fno-diagnostics-show-caret"]


def run(command, where, **more):
    return subprocess.run(command, cwd=where, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, errors="replace", **more)


class Tree:
    """The copy under build/mutation; the checkout's own sources are only read."""

    def __init__(self, home, jobs):
        self.home, self.jobs = home, jobs
        self.folder = home / "build/mutation"
        self.source, self.build = self.folder / "tree", self.folder / "tree/build/dev"
        self.work = self.folder / "work"
        shutil.rmtree(self.work, ignore_errors=True)
        self.work.mkdir(parents=True)
        self._copy()
        self.compiled = None
        self.built = {}

    def _copy(self):
        listed = run(["git", "ls-files", "-co", "--exclude-standard", "-z"], self.home).stdout.split("\0")
        wanted = {name for name in listed if name.startswith(COPIED) and (self.home / name).is_file()}
        for name in wanted:
            to, content = self.source / name, (self.home / name).read_bytes()
            if not to.exists() or to.read_bytes() != content:  # what is the same keeps its time, and is not built again
                to.parent.mkdir(parents=True, exist_ok=True)
                shutil.copy(self.home / name, to)
        for old in [p for p in self.source.rglob("*") if p.is_file()]:
            if self.build not in old.parents and str(old.relative_to(self.source)) not in wanted:
                old.unlink()

    def program(self, name):
        """Builds the test program of a room, and gives the words of its link command."""
        if name not in self.built:
            done = run(["tools/build", "dev", "-j", str(self.jobs), f"{name}_tests"], self.source)
            if done.returncode:
                raise SystemExit(done.stdout[-4000:])
            last = run(["ninja", "-C", str(self.build), "-t", "commands", f"{name}_tests"], self.folder).stdout.strip().splitlines()[-1]
            link = next(part for part in last.split("&&") if f"-o tests/{name}/{name}_tests" in part)
            self.built[name] = shlex.split(link)
        return self.built[name]

    def compile_command(self, file):
        if self.compiled is None:
            entries = json.loads((self.build / "compile_commands.json").read_text())
            self.compiled = {entry["file"]: shlex.split(entry["command"]) for entry in entries}
        words = list(self.compiled[str(self.source / file)])
        if "ccache" in words[0]:
            words = words[1:]
        del words[words.index("-o"):]  # -o X -c Y stand last
        return [w for w in words if w != "-Werror"]

    def compile(self, file, text, name):
        """(object, "") or (None, what the compiler said)."""
        mutated, object_file = self.work / f"{name}.cpp", self.work / f"{name}.o"
        mutated.write_text(text)
        done = run([*self.compile_command(file), *SWITCHED_FLAGS, "-o", str(object_file), "-c", str(mutated)], self.build)
        return (object_file, "") if done.returncode == 0 else (None, done.stdout)

    def link(self, program, objects, name):
        words = self.program(program)
        at = words.index("-o")
        out = self.work / name
        linker = ["-fuse-ld=lld"] if shutil.which("ld.lld") else []
        done = run([*words[:at], *map(str, objects), "-o", str(out), *linker, *words[at + 2:]], self.build)
        if done.returncode:
            raise SystemExit(f"can't link: {done.stdout[-3000:]}")
        return out


def blamed(said, text, mutants):
    """The numbers of the mutants that the compiler complains about: by number where it names one, else by line."""
    numbers = {n for n, _ in mutants}
    named, lines = set(), set()
    for stretch in re.split(r"\n(?=[^\n]*: In )", said):  # one function or instantiation each
        numbered = {int(n) for found in re.findall(r"\bint N = (\d+)|(?:At|Left|Right|Not|both|either|constant|twin|step_\w+|negated)<(\d+)", stretch)
                    for n in found if n} & numbers
        if "error: " in stretch:
            named |= numbered
            if not numbered:
                lines |= {int(n) for n in re.findall(r"\.cpp:(\d+):\d+: (?:fatal )?error", stretch)}
    of_line = {n for n, m in mutants if m.line in lines}
    if named | of_line:
        return named | of_line
    near = {n for n, m in mutants if any(abs(m.line - line) <= 8 for line in lines)}
    return near or numbers


def compile_switched(tree, file, numbered):
    """Compiles a source with as many of its mutants as one object can hold: (object or None, what is in it, what must be tried alone, what
    can't be compiled)."""
    text = (tree.source / file).read_text()
    inside, alone, broken = [(n, m) for n, m in numbered if m.switched], [(n, m) for n, m in numbered if not m.switched], []
    name = "switched_" + file.replace("/", "_").removesuffix(".cpp")
    while inside:
        object_file, said = tree.compile(file, sites.with_switches(text, inside), name)
        if object_file:
            return object_file, inside, alone, broken
        out = blamed(said, text, inside)
        # What is no bool by one way is none by the other.
        alone += [(n, m) for n, m in inside if n in out and m.kind != "truth"]
        broken += [(n, m) for n, m in inside if n in out and m.kind == "truth"]
        inside = [(n, m) for n, m in inside if n not in out]
    return None, [], alone, broken


def compile_all(tree, by_file):
    """Objects with switches, the mutants in them, objects with one mutant each, and the mutants that don't compile. `by_file` maps a file to its
    numbered mutants."""
    with concurrent.futures.ThreadPoolExecutor(tree.jobs) as pool:
        switched = list(pool.map(lambda item: (item[0], *compile_switched(tree, *item)), by_file.items()))

        def single(task):
            file, number, mutant = task
            object_file, _ = tree.compile(file, sites.edited((tree.source / file).read_text(), mutant.plain), f"single_{number}")
            return number, object_file

        singles = list(pool.map(single, [(file, n, m) for file, _, _, alone, _ in switched for n, m in alone]))
    objects = [o for _, o, *_ in switched if o]
    inside = [n for _, _, held, *_ in switched for n, _ in held]
    return objects, inside, {n: o for n, o in singles if o}, [n for n, o in singles if not o] + [n for *_, broken in switched for n, _ in broken]
