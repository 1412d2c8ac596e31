#pragma once
/// Collections drawn from a seed: projects that share beads under different letters, and a stock that holds some of them. The same on
/// every machine.

#include <fmt/format.h>

#include <random>

#include "chart/letters.hpp"
#include "project/supply_list_collection.hpp"
#include "weave/technique.hpp"

namespace evencount::testing {

class CollectionDraw {
 public:
  explicit CollectionDraw(std::uint64_t seed) : random_(seed) {}

  int below(int n) { return static_cast<int>(random_() % static_cast<std::uint64_t>(n)); }

  project::Project project(int number, int bands = 3) {
    project::Project made;
    made.title = fmt::format("Design {}", number);
    made.beads = {*bead::find_size("cylinder-11"), *bead::find_size("round-11")};
    made.beads[0].beads_per_gram = 190 + below(11);
    made.thread = bead::threads()[static_cast<std::size_t>(below(2))];
    made.allowance = below(20) / 100.0;
    // 8 beads that any project may use, each once, under letters of its own.
    const int first = below(8), count = 2 + below(5);
    for (int i = 0; i < count; ++i) made.legend.push_back(entry((first + i) % 8, chart::letter_name(i)));
    made.forms = {{"carrier", "carrier bead", *form::parse_form("lens:17x5x9"), {}}};
    for (int i = 0; i < bands; ++i) made.bands.push_back(band(i, count));
    made.findings = {{"clasp", 1, "", {}}, {"elastic cord", 0.5 * (1 + below(4)), "m", {}}};
    made.tools = {"scissors", fmt::format("tool {}", below(3))};
    return made;
  }

  std::vector<project::Project> collection(int projects) {
    std::vector<project::Project> made;
    for (int i = 0; i < projects; ++i) made.push_back(project(i));
    return made;
  }

  std::vector<materials::StockedItem> stock() {
    std::vector<materials::StockedItem> made;
    for (int i = 0; i < 8; ++i) {
      if (below(4) == 0) continue;
      const project::LegendEntry like = entry(i, "A");
      materials::StockedItem stocked;
      stocked.item.code = fmt::format("b{}", i);
      stocked.item.name = like.name;
      stocked.item.what = materials::BeadStock{like.bead, like.finish, like.colour, {}};
      stocked.item.packs = {{5'000, Money{300 + below(100)}, "", "", ""},
                            {50'000, Money{2'000 + below(500)}, "", "", ""}};
      stocked.level = {below(60'000), below(10'000)};
      made.push_back(std::move(stocked));
    }
    made.push_back(
        {{"clasp-1", "Clasp", materials::FindingStock{"clasp"}, {{10, Money{900}, "", "", ""}}, ""}, {7, 2}});
    made.push_back({{"cord-1",
                     "elastic cord",
                     materials::CordStock{"elastic", millimetres(0.8), {}},
                     {{25'000, Money{450}, "", "", ""}},
                     ""},
                    {3'000, 0}});
    made.push_back({{"thread-1",
                     "thread",
                     materials::ThreadStock{"braided-6lb", {}},
                     {{114'000, Money{990}, "", "", ""}},
                     ""},
                    {1'000, 0}});
    return made;
  }

 private:
  project::LegendEntry entry(int bead, const std::string& letter) {
    project::LegendEntry made;
    made.letter = letter;
    made.name = fmt::format("bead {}", bead);
    made.colour = {static_cast<std::uint8_t>(30 * bead), static_cast<std::uint8_t>(255 - 20 * bead), 128};
    made.finish = bead % 2 == 0 ? bead::Finish::opaque : bead::Finish::matte;
    made.bead = bead < 6 ? "cylinder-11" : "round-11";
    made.pack = project::Pack{grams(10), Money{500 + 10 * bead}, {}};
    return made;
  }

  project::Band band(int number, int beads) {
    project::Band made;
    made.name = fmt::format("Band {}", number);
    made.chart = *chart::Chart::make(2 + below(9), 4 + below(20));
    made.technique = weave::flat_peyote_for(made.chart.columns()).id;
    made.closure = weave::Closure::open;
    made.bead = "cylinder-11";
    if (below(2) == 0) made.form = "carrier";
    made.copies = 1 + below(4);
    for (int step = 0; step < made.chart.edge(); ++step)
      for (int column = 0; column < made.chart.columns(); ++column)
        made.chart.set({column, step}, static_cast<chart::Bead>(below(beads)));
    return made;
  }

  std::mt19937_64 random_;
};

}  // namespace evencount::testing
