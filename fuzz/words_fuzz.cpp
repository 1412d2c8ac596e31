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

/// Whether a band that was read may still be one that can't be made. The reader knows what rows say, not what thread can hold: two
/// beads along the edge are too short to zip, a single bead has nothing to hang on. Of plain flat peyote nothing else is refused.
bool may_be_refused(const wording::ReadBand& band, const Problem& problem) {
  if (problem.code == ProblemCode::too_few_beads) return true;
  const bool plain = band.technique.starts_with("peyote-even") || band.technique.starts_with("peyote-odd");
  return problem.code == ProblemCode::wrong_size && !plain;
}

void check_band(const wording::ReadBand& band) {
  const auto plan = weave::make_plan(band.technique, band.chart,
                                     {band.closure.value_or(weave::Closure::open), band.begin_at});
  if (!plan && may_be_refused(band, plan.problem())) return;
  if (!plan) broken("a chart that was read can be planned", message(plan.problem()));
  for (const wording::WordStyle& style : {wording::WordStyle{}, wording::WordStyle{true, true}}) {
    const auto words = wording::write_words(*plan, band.letters, band.name, style);
    const auto again = wording::read_words(wording::to_text(words), {.legend = band.letters});
    if (!again) broken("our own words can be read", message(again.problem()));
    const bool same = again->size() == 1 && again->front().chart == band.chart &&
                      again->front().technique == band.technique &&
                      again->front().begin_at == band.begin_at &&
                      again->front().name == words.heading.substr(12);
    if (!same) broken("our own words give the same chart", words.heading);
  }
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
