#!/usr/bin/env python3
"""tools/mutation on a small source of which every mutant is known.

Properties:
 (1) comments, strings, includes, template brackets, references, assertions and tolerances bear no mutants
 (2) with no mutant chosen, a source with switches in it does what the source does
 (3) with one chosen, it does what the source with that one mistake does
 (4) the tests that reach a mutant are known by its number
 (5) a source that can't hold a mutant behind a switch gives that one up, and only that one
"""

import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True
MUTATION = pathlib.Path(__file__).resolve().parents[2] / "tools/mutation"
sys.path.insert(0, str(MUTATION))
import build  # noqa: E402
import sites  # noqa: E402

COMPILER = sys.argv.pop(1) if len(sys.argv) > 1 else "c++"
INCLUDES = "#include <algorithm>\n#include <cassert>\n#include <cstdio>\n#include <string>\n#include <vector>\n"

TOY = """\
// a < b && true
using Whole = std::vector<int>;  /* 1 + 1 */
int calls = 0;
void touch() { ++calls; }
bool within(const int& x, int low, int high) {
  assert(low <= high && 1 + 1 == 2);
  return x >= low && x < high;
}
template <typename T>
T nearest(T a, T b) {
  if (!within(a, -4, 90)) return b;
  return std::min(a, b) * 3;
}
bool differs(const std::string& text) {
  constexpr double close = 1e-9;
  touch();
  return text != "x == y" || close > 0.5;
}
int summed(const Whole& all) {
  int sum = 0;
  for (int i = 0; i < static_cast<int>(all.size()); i++) sum += all[i];
  if (all.front() - sum / 7 == 2 && sum > 0 || differs("x == y")) return sum;
  return -1;
}
"""

KNOWN = [
    (3, "0 to 1"), (4, "++ to --"),
    (7, "returned bool negated"), (7, ">= to >"), (7, "&& to ||"), (7, "< to <="),
    (11, "! left out"), (11, "4 to 5"), (11, "90 to 91"), (11, "returned bool negated"),
    (12, "returned bool negated"), (12, "min to max"), (12, "* to /"), (12, "3 to 4"),
    (16, "statement left out"),
    (17, "returned bool negated"), (17, "!= to =="), (17, "|| to &&"), (17, "> to >="), (17, "0.5 to 1.0"),
    (20, "0 to 1"),
    (21, "0 to 1"), (21, "< to <="), (21, "++ to --"), (21, "+= to -="),
    (22, "front to back"), (22, "- to +"), (22, "/ to *"), (22, "7 to 8"), (22, "== to !="), (22, "2 to 3"), (22, "&& to ||"), (22, "> to >="),
    (22, "0 to 1"), (22, "|| to &&"), (22, "returned bool negated"),
    (23, "returned bool negated"), (23, "1 to 2"),
]
NO_BOOL = {(11, "returned bool negated"), (12, "returned bool negated"), (22, "returned bool negated"), (23, "returned bool negated")}
# Past the end of a vector, or round and round: fine to ask of a program of its own, not of one that is compared.
UNDEFINED = {(21, "< to <="), (21, "++ to --")}

SAID = """\
void said_%(n)s() {
  using namespace %(space)s;
  std::printf("%%d%%d%%d%%d", within(3, 3, 5), within(5, 3, 5), within(4, 3, 5), within(9, 3, 5));
  std::printf(" %%d %%d %%d %%d", nearest(-4, 8), nearest(90, 8), nearest(-5, 8), nearest(8, 2));
  std::printf(" %%d%%d", differs("x"), differs("x == y"));
  std::printf(" %%d %%d %%d %%d\\n", summed({2, 0, 1}), summed({3, 4, 5}), summed({0}), calls);
}
"""


class Toy(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.path = pathlib.Path(self.folder.name)

    def compiled(self, text, name, flags=()):
        (self.path / f"{name}.cpp").write_text(text)
        done = subprocess.run([COMPILER, "-std=c++20", "-w", *flags, "-o", self.path / name, self.path / f"{name}.cpp"], capture_output=True, text=True)
        self.assertEqual(done.returncode, 0, done.stderr)
        return self.path / name

    def test_finds_what_is_there_and_nothing_else(self):
        self.assertEqual(sorted((m.line, m.name()) for m in sites.find(INCLUDES + TOY)), sorted((line + 5, change) for line, change in KNOWN))

    def test_a_switch_does_what_the_mistake_does(self):
        mutants = [m for m in sites.find(TOY) if (m.line, m.name()) not in NO_BOOL | UNDEFINED]
        plain = "".join(f"namespace n{n} {{\n{text}}}\n{SAID % {'n': n, 'space': f'n{n}'}}" for n, text in enumerate(
            [TOY] + [sites.edited(TOY, m.plain) for m in mutants]))
        main = "int main() {\n" + "".join(f"  said_{n}();\n" for n in range(len(mutants) + 1)) + "}\n"
        expected = subprocess.run([self.compiled(INCLUDES + plain + main, "plain", ["-DNDEBUG", f"-include{MUTATION / 'switch.hpp'}"])],
                                  capture_output=True, text=True, check=True).stdout.splitlines()
        numbered = [(n, m) for n, m in enumerate(mutants, 1) if m.switched]
        self.assertEqual([m.name() for m in mutants if not m.switched], ["front to back"])
        switched = f"namespace toy {{\n{sites.with_switches(TOY, numbered)}}}\n{SAID % {'n': 0, 'space': 'toy'}}int main() {{ said_0(); }}\n"
        program = self.compiled(INCLUDES + switched, "switched", ["-DNDEBUG", f"-include{MUTATION / 'switch.hpp'}"])
        reached = self.path / "reached"
        for n in [0] + [n for n, _ in numbered]:
            said = subprocess.run([program], capture_output=True, text=True, env={"MUTANT": str(n), "MUTANT_REACHED": f"{reached}{n}"}).stdout.strip()
            self.assertEqual(said, expected[n], mutants[n - 1].name() if n else "no mutant")
        self.assertEqual({int(n) for n in (self.path / "reached0").read_text().split()}, {n for n, _ in numbered})
        self.assertGreater(len(set(expected)), len(mutants) // 2)  # most mistakes show: what is compared is no constant

    def test_what_holds_no_switch_is_given_up_alone(self):
        class Tree:
            source = self.path

            def compile(self, file, text, name):
                to = self.source / f"{name}.cpp"
                to.write_text(text)
                done = subprocess.run([COMPILER, "-std=c++20", *build.SWITCHED_FLAGS, "-c", to, "-o", to.with_suffix(".o")], capture_output=True, text=True)
                return (to.with_suffix(".o"), "") if done.returncode == 0 else (None, done.stderr)

        text = "enum Kind { first = 3 };\nbool odd(int x) {\n  return x + 1 > first;\n}\nint half(int x) { return x / 2; }\n"
        (self.path / "toy.cpp").write_text(text)
        object_file, inside, alone, broken = build.compile_switched(Tree(), "toy.cpp", list(enumerate(sites.find(text), 1)))
        self.assertIsNotNone(object_file)
        self.assertEqual([m.change for _, m in alone], ["3 to 4"])
        self.assertEqual([(m.line, m.change) for _, m in broken], [(5, "returned bool negated")])
        self.assertEqual(sorted(m.change for _, m in inside), ["+ to -", "/ to *", "1 to 2", "2 to 3", "> to >=", "returned bool negated"])


if __name__ == "__main__":
    unittest.main()
