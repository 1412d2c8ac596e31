#include "stockroom/random_stock.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.hpp"
#include "bead/bead_size.hpp"
#include "bead/thread.hpp"
#include "form/form.hpp"

namespace evencount::testing {
namespace {

using namespace evencount::materials;

class Draw {
 public:
  explicit Draw(std::mt19937& random) : random_(random) {}
  std::int64_t whole(std::int64_t from, std::int64_t to) {
    return std::uniform_int_distribution<std::int64_t>(from, to)(random_);
  }
  bool one_in(int n) { return whole(1, n) == 1; }
  std::optional<colour::Rgb> colour() {
    if (one_in(4)) return std::nullopt;
    const auto channel = [&] { return static_cast<std::uint8_t>(whole(0, 255)); };
    return colour::Rgb{channel(), channel(), channel()};
  }
  std::string text_or_none() { return one_in(3) ? std::string() : random_text(random_); }
  /// From small amounts to the most there may be.
  std::int64_t amount(std::int64_t least) {
    const std::array<std::int64_t, 3> limits{9, 99'999, 1'000'000'000'000};
    return whole(least, limits[static_cast<std::size_t>(whole(0, 2))]);
  }
  PackOffer pack() {
    PackOffer pack{.amount = amount(1),
                   .price = {},
                   .supplier = text_or_none(),
                   .order_code = text_or_none(),
                   .address = text_or_none()};
    if (!one_in(3)) pack.price = Money{whole(0, 100'000'000), one_in(2) ? "EUR" : "DKK"};
    return pack;
  }
  template <typename Span>
  const auto& among(const Span& span) {
    return span[static_cast<std::size_t>(whole(0, static_cast<std::int64_t>(std::size(span)) - 1))];
  }

 private:
  std::mt19937& random_;
};

void fill(Draw& draw, StockItem& item, StockKind kind, std::mt19937& random) {
  switch (kind) {
    case StockKind::beads: {
      BeadStock beads{draw.among(bead::sizes()).id, draw.among(bead::finishes), draw.colour(), {}};
      if (draw.one_in(2)) beads.beads_per_gram = 1000.0 / static_cast<double>(draw.whole(1, 90'000));
      item.what = beads;
      return;
    }
    case StockKind::forms: {
      const std::array notations{"lens:17x5x9", "lens:16x5x9,holes=6.8,hole=2", "round:12.25x20",
                                 "bar:20x4x10", "dome:20x6x10,edge=0.5",        "ring:54"};
      item.what = FormStock{form::to_notation(*form::parse_form(draw.among(notations))), draw.colour()};
      return;
    }
    case StockKind::thread:
      item.what = ThreadStock{draw.among(bead::threads()).id, draw.colour()};
      return;
    case StockKind::cord:
      item.what = CordStock{random_text(random),
                            millimetres(static_cast<double>(draw.whole(1, 49'999)) / 997), draw.colour()};
      return;
    case StockKind::findings:
      item.what = FindingStock{random_text(random)};
      return;
  }
}

}  // namespace

std::string random_text(std::mt19937& random) {
  static const std::array<std::string, 24> pieces{
      "\"",  "\"\"", ",",  ";", "\n", "ä", "ö", "ß", "Å",     "💎", "🧵",   "night",
      "sea", " ",    "\t", "'", "0",  ".", "=", "#", "éclat", "-", "\u00a0", "code"};
  Draw draw(random);
  while (true) {
    std::string text;
    for (std::int64_t left = draw.whole(1, 8); left > 0; --left) text += draw.among(pieces);
    text = std::string(trim(text));
    if (!text.empty()) return text;
  }
}

std::vector<materials::StockedItem> random_stock(std::mt19937& random, StockKind kind, int count) {
  Draw draw(random);
  std::vector<materials::StockedItem> items;
  for (int i = 0; i < count; ++i) {
    materials::StockedItem held;
    std::string code = random_text(random);
    std::replace_if(
        code.begin(), code.end(), [](char c) { return c == '\n' || c == '\t'; }, '-');
    held.item.code = std::string(kind_name(kind)) + std::to_string(i) + code;
    held.item.name = random_text(random);
    held.item.note = draw.text_or_none();
    fill(draw, held.item, kind, random);
    for (std::int64_t packs = draw.whole(0, 3); packs > 0; --packs) held.item.packs.push_back(draw.pack());
    held.level.on_hand = draw.one_in(4) ? 0 : draw.amount(0);
    items.push_back(std::move(held));
  }
  return items;
}

}  // namespace evencount::testing
