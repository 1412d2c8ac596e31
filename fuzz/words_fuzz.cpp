// What any text must satisfy: reading it never crashes, and a chart that is read, planned and written in words
// reads back as the same chart.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace {

using namespace evencount;

[[noreturn]] void broken(std::string_view promise, const std::string& detail) {
  std::fprintf(stderr, "words: %.*s: %s\n", static_cast<int>(promise.size()), promise.data(), detail.c_str());
  std::abort();
}

void check_band(const wording::ReadBand& band) {
  const auto plan = weave::make_plan(band.technique, band.chart, {band.closure.value_or(weave::Closure::open)});
  // Two beads along the edge are too short to zip; whether words or a project may say so is not the reader's
  // to judge.
  if (!plan && plan.problem().code == ProblemCode::too_few_beads) return;
  if (!plan) broken("a chart that was read can be planned", message(plan.problem()));
  const auto words = wording::write_words(*plan, band.letters, band.name);
  const auto again = wording::read_words(wording::to_text(words), {.legend = band.letters});
  if (!again) broken("our own words can be read", message(again.problem()));
  if (again->size() != 1 || again->front().chart != band.chart ||
      again->front().name != words.heading.substr(12))
    broken("our own words give the same chart", words.heading);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto bands = wording::read_words({reinterpret_cast<const char*>(data), size});
  if (!bands) {
    if (message(bands.problem()).empty()) broken("a failure says what is wrong", "empty message");
    return 0;
  }
  for (const wording::ReadBand& band : *bands) check_band(band);
  return 0;
}
