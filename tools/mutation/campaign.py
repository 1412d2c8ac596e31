"""Chooses mutants, runs the tests against each, and keeps what came of it."""

import concurrent.futures
import fcntl
import hashlib
import json
import os
import random
import re
import resource
import signal
import subprocess
import sys
import time

import build
import sites

# Whose tests are asked when a room's own notice nothing, the nearest first.
DEPENDANTS = {
    "form": ["strand", "project", "proof"],
    "weave": ["wording", "project", "proof"],
    "wording": ["project", "proof"],
    "materials": ["project", "proof"],
    "strand": ["project", "proof"],
}
QUICK_SECONDS = 3.0     # tests that together take this long are tried before the others
ALONE_SECONDS = 40.0    # how long another room's tests are given for a mutant that is in a program of its own
MOST_SHORT_TESTS = 30   # a suite of more tests is run as one
MOST_MEMORY = 3 << 30   # a mutant that asks for everything is stopped
SLOW_TESTS = {"Limits.HostileTextsAreReadInOneGo"}  # a minute each: asked only with --slow
SEED = {"RC_PARAMS": "seed=1"}


class Program:
    """One test program with mutants in it, and which of its tests reach which mutant."""

    def __init__(self, tree, room, path, slow):
        self.slow = slow
        self.tree, self.room, self.path = tree, room, path
        self.tests = {}  # name: (seconds, numbers reached)

    def names(self):
        suites, suite = {}, ""
        for line in self._start(["--gtest_list_tests"], {}, 60, 60)[1].splitlines():
            if not line.startswith(" "):
                suite = line.split("#")[0].strip()
            elif "DISABLED_" not in suite + line:
                suites.setdefault(suite, []).append(suite + line.split("#")[0].strip())
        suites = {suite: tests for suite, tests in suites.items() if suite.endswith(".")}
        names = [name for suite, tests in suites.items() for name in ([suite + "*"] if len(tests) > MOST_SHORT_TESTS else tests)]
        return [name for name in names if self.slow or name not in SLOW_TESTS]

    def trace(self):
        """Runs every test alone with no mutant on. Fails when one does not pass."""
        def one(name):
            reached = self.path.with_name(f"{self.path.name}.reached.{abs(hash(name))}")
            begun = time.monotonic()
            code, said = self._start([f"--gtest_filter={name}"], {"MUTANT_REACHED": str(reached)}, 900, 3600)
            seconds = time.monotonic() - begun
            if code:
                raise SystemExit(f"{self.room}: {name} does not pass without a mutant:\n{said[-3000:]}")
            numbers = {int(n) for n in reached.read_text().split()} if reached.exists() else set()
            reached.unlink(missing_ok=True)
            return name, (seconds, numbers)

        with concurrent.futures.ThreadPoolExecutor(self.tree.jobs) as pool:
            self.tests = dict(pool.map(one, self.names()))

    def try_mutant(self, path, number, names):
        """None when these tests notice nothing, else (the test, how)."""
        names = sorted(names, key=lambda n: self.tests[n][0])
        quick, total = [], 0.0
        while names and total + self.tests[names[0]][0] <= QUICK_SECONDS:
            total += self.tests[names[0]][0]
            quick.append(names.pop(0))
        for group in [quick, *([n] for n in names)]:
            if not group:
                continue
            seconds = sum(self.tests[n][0] for n in group)
            code, said = self._start([f"--gtest_filter={':'.join(group)}", "--gtest_fail_fast"], {"MUTANT": str(number)}, 3 + 3 * seconds,
                                        60 + 20 * seconds, path)
            if code:
                failed = re.search(r"\[  FAILED  \] (\S+?)(?:,| \(|$)", said, re.MULTILINE)
                running = re.findall(r"\[ RUN      \] (\S+)", said)
                how = {-signal.SIGXCPU: "does not end", -signal.SIGKILL: "does not end"}.get(code, "fails" if code > 0 else "crashes")
                return (failed.group(1) if failed else running[-1] if running else "before the first test"), how
        return None

    def _start(self, arguments, environment, cpu_seconds, wall_seconds, path=None):
        def limit():
            resource.setrlimit(resource.RLIMIT_CPU, (int(cpu_seconds) + 1, int(cpu_seconds) + 3))
            resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
            resource.setrlimit(resource.RLIMIT_FSIZE, (1 << 30, 1 << 30))
        out = self.tree.work / f"said.{os.getpid()}.{id(arguments)}"
        with open(out, "w+b") as said:
            child = subprocess.Popen([str(path or self.path), *arguments], cwd=self.tree.work, stdin=subprocess.DEVNULL, stdout=said, stderr=said,
                                     env={**SEED, **os.environ, **environment}, preexec_fn=limit, start_new_session=True)
            try:
                code = child.wait(wall_seconds)
            except subprocess.TimeoutExpired:
                os.killpg(child.pid, signal.SIGKILL)
                child.wait()
                code = None
            said.seek(max(0, said.seek(0, 2) - (1 << 20)))
            text = said.read().decode("utf-8", "replace")
        out.unlink()
        return (code if code is not None else -signal.SIGKILL), text


def mutants_of(home, room):
    """(key, file, mutant) for every mutant of a room's sources. The key outlives lines that move."""
    found = []
    for path in sorted((home / "src" / room).glob("*.cpp")):
        file, seen = str(path.relative_to(home)), {}
        for mutant in sites.find(path.read_text()):
            same = (mutant.code, mutant.change, mutant.ordinal)
            seen[same] = seen.get(same, 0) + 1
            key = f"{file}\n{mutant.code}\n{mutant.name()}" + (f"\nline {seen[same]} of these" if seen[same] > 1 else "")
            found.append((key, file, mutant))
    return found


def equivalents(home):
    """Keys of the mutants that nobody can tell apart from outside, with the reason."""
    path, known = home / "tools/mutate.equivalent", {}
    for record in path.read_text().split("\n\n") if path.exists() else []:
        lines = [line.strip() for line in record.strip().splitlines() if not line.startswith("#")]
        if len(lines) >= 4 and lines[-1].startswith("why: "):
            known["\n".join(lines[:-1])] = lines[-1][5:]
        elif lines:
            raise SystemExit(f"{path}: a record is a file, a line of code, a change and why:\n{record}")
    return known


def digest(*folders):
    held = hashlib.sha256()
    for path in sorted(p for folder in folders for p in folder.rglob("*") if p.is_file()):
        held.update(str(path).encode() + b"\0" + path.read_bytes())
    return held.hexdigest()[:16]


class Campaign:
    def __init__(self, home, jobs, near=False, slow=False):
        self.home, self.jobs, self.slow = home, jobs, slow
        self.dependants = {} if near else DEPENDANTS
        self.results_path = home / "build/mutation/results.json"
        self.results_path.parent.mkdir(parents=True, exist_ok=True)
        self.lock = open(self.results_path.parent / "lock", "w")
        try:
            fcntl.flock(self.lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            raise SystemExit("another run is at work in build/mutation") from None
        self.results = json.loads(self.results_path.read_text()) if self.results_path.exists() else {}
        self.alike = equivalents(home)
        self.tree = build.Tree(home, jobs)
        self.tests_digest = {room: digest(home / "tests" / room, home / "tests/cases" / room) for room in DEPENDANTS}

    def save(self):
        temporary = self.results_path.with_suffix(".new")
        temporary.write_text(json.dumps(self.results, indent=1, sort_keys=True, ensure_ascii=False))
        temporary.rename(self.results_path)

    def known(self, room, key):
        """What came of a mutant before, unless it survived other tests than today's."""
        result = self.results.get(key)
        if not result or result["verdict"] != "survived" or key in self.alike:
            return result
        return result if result["tests"] == self.tests_digest[room] and not (result.get("near") and self.dependants) else None

    def room(self, room, sample, seed, only=None, again=False):
        """Tries a sample, or all; gives the keys that count."""
        every = [m for m in mutants_of(self.home, room) if not only or re.search(only, m[0])]
        random.Random(f"{seed} {room}").shuffle(every)
        wanted, counted = sample or len(every), []
        while every and len(counted) < wanted:
            batch = every[:max(8, (wanted - len(counted)) * 13 // 10)][:1500]
            every = every[len(batch):]
            self._try(room, [m for m in batch if again or not self.known(room, m[0])])
            for key, file, mutant in batch:
                self.results[key]["line"] = mutant.line
                if self.results[key]["verdict"] != "does not compile" and len(counted) < wanted:
                    counted.append(key)
            self.save()
        return counted

    def _try(self, room, batch):
        if not batch:
            return
        numbered = {n: m for n, m in enumerate(batch, 1)}
        by_file = {}
        for n, (_, file, mutant) in numbered.items():
            by_file.setdefault(file, []).append((n, mutant))
        self.tree.program(room)
        print(f"{room}: compiling {len(batch)} mutants …", file=sys.stderr, flush=True)
        objects, inside, singles, broken = build.compile_all(self.tree, by_file)
        for n in broken:
            self._note(room, numbered[n], "does not compile")
        print(f"{room}: {len(inside)} behind switches, {len(singles)} alone, {len(broken)} do not compile", file=sys.stderr, flush=True)
        left, reached = set(inside) | set(singles), set()
        for program_room in [room, *self.dependants.get(room, [])]:
            if not left:
                break
            path = self.tree.link(program_room, objects, f"{program_room}_tests")
            program = Program(self.tree, program_room, path, self.slow)
            program.trace()
            begun = time.monotonic()
            with concurrent.futures.ThreadPoolExecutor(self.jobs) as pool:
                for n, seen, caught in pool.map(lambda n: self._ask(program, n, singles.get(n), program_room == room), sorted(left)):
                    if seen:
                        reached.add(n)
                    if caught:
                        self._note(room, numbered[n], "caught", by=f"{program_room}: {caught[0]}", how=caught[1])
                        left.discard(n)
            print(f"{room}: {len(left)} left after the tests of {program_room} ({time.monotonic() - begun:.0f} s)", file=sys.stderr, flush=True)
            self.save()
        for n in left:
            self._note(room, numbered[n], "survived", reached=n in reached, near=not self.dependants, tests=self.tests_digest[room])
        for path in self.tree.work.iterdir():
            path.unlink()
        self.save()

    def _ask(self, program, number, alone, near):
        if alone:
            path = self.tree.link(program.room, [alone], f"{program.room}_tests.{number}")
            names, left = [], float("inf") if near else ALONE_SECONDS
            for name, (seconds, _) in sorted(program.tests.items(), key=lambda t: t[1][0]):
                left -= seconds
                if left >= 0:
                    names.append(name)
            caught = program.try_mutant(path, 0, names)
            path.unlink()
            return number, True, caught
        names = [name for name, (_, reached) in program.tests.items() if number in reached]
        return number, bool(names), program.try_mutant(program.path, number, names) if names else None

    def _note(self, room, entry, verdict, **more):
        key, file, mutant = entry
        self.results[key] = {"room": room, "file": file, "line": mutant.line, "code": mutant.code, "change": mutant.name(), "verdict": verdict, **more}


def report(campaign, counted, out=sys.stdout):
    """The score of each room and the survivors."""
    known = campaign.alike
    survivors = []
    print(f"{'room':<10} {'mutants':>8} {'caught':>8} {'alike':>8} {'survived':>9}  {'score':>7}", file=out)
    for room, keys in counted.items():
        caught = [k for k in keys if campaign.results[k]["verdict"] == "caught"]
        alike = [k for k in keys if campaign.results[k]["verdict"] == "survived" and k in known]
        left = [k for k in keys if campaign.results[k]["verdict"] == "survived" and k not in known]
        survivors += left
        told_apart = len(keys) - len(alike)
        score = f"{100 * len(caught) / told_apart:.1f} %" if told_apart else "–"
        print(f"{room:<10} {len(keys):>8} {len(caught):>8} {len(alike):>8} {len(left):>9}  {score:>7}", file=out)
    for key in sorted(survivors, key=lambda k: (campaign.results[k]["file"], campaign.results[k]["line"])):
        result = campaign.results[key]
        print(f"\n{result['file']}:{result['line']}: {result['change']}{'' if result['reached'] else '  (no test gets there)'}\n    {result['code']}", file=out)
    return survivors
