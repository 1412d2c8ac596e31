#include "picture/alphabet_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <span>

#include "base/text.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view dotless = "dotless";

struct AccentName {
  std::string_view name, combining;
};
/// Code points: The Unicode Standard, block Combining Diacritical Marks.
constexpr std::array<AccentName, 7> accent_names{{{"grave", "\u0300"},
                                                  {"acute", "\u0301"},
                                                  {"circumflex", "\u0302"},
                                                  {"tilde", "\u0303"},
                                                  {"diaeresis", "\u0308"},
                                                  {"ring", "\u030A"},
                                                  {"cedilla", "\u0327"}}};

void finish(LetterDrawing& drawing) {
  std::sort(drawing.beads.begin(), drawing.beads.end());
  const auto lower = [](Dot a, Dot b) { return a.down < b.down; };
  const auto [first, last] = std::minmax_element(drawing.beads.begin(), drawing.beads.end(), lower);
  drawing.top = first->down;
  drawing.bottom = last->down;
}

/// The parts between bars of "|a|b|".
std::vector<std::string_view> cells_of(std::string_view line) {
  line = trim(line);
  if (line.size() < 2 || line.back() != '|') return {};
  return split(line.substr(1, line.size() - 2), '|');
}

class Reader {
 public:
  explicit Reader(std::string_view name) { alphabet_.name = name; }

  Result<Alphabet> read(std::string_view text) {
    for (const std::string_view line : split(text, '\n')) {
      ++line_;
      if (auto good = line.starts_with('|') ? drawing_line(line) : directive(line); !good)
        return good.problem();
    }
    if (auto good = end_block(); !good) return good.problem();
    for (const Pending& pending : pending_)
      if (auto good = compose(pending); !good) return good.problem();
    std::erase_if(alphabet_.letters, [](const LetterDrawing& d) { return d.character == dotless; });
    return std::move(alphabet_);
  }

 private:
  struct Pending {
    int line;
    std::string_view accent, whole, letter;
  };

  Problem wrong(int line, std::string found, std::string expected) const {
    return {ProblemCode::bad_text, fmt::format("{}, line {}", alphabet_.name, line), std::move(found),
            std::move(expected)};
  }

  Result<Done> directive(std::string_view line) {
    if (auto good = end_block(); !good) return good.problem();
    line = trim(line);
    if (line.empty() || line.starts_with('#')) return Done{};
    const std::vector<std::string_view> words = split(line, ' ');
    const auto number = words.size() == 2 ? parse_integer(words[1]) : std::nullopt;
    if (words[0] == "height" && number)
      alphabet_.height = static_cast<int>(*number);
    else if (words[0] == "from" && number)
      from_ = static_cast<int>(*number);
    else if (words[0] == "accents" || words[0] == "narrow")
      drawn_ = words[0] == "narrow" ? &alphabet_.narrow : &accents_;
    else if (words[0] == "compose" || words[0] == "same")
      return pairs(words);
    else
      return wrong(line_, quote(line), "height, from, accents, narrow, compose or same");
    return Done{};
  }

  Result<Done> pairs(std::span<const std::string_view> words) {
    const std::size_t first = words[0] == "compose" ? 2 : 1;
    for (std::size_t i = first; i < words.size(); ++i) {
      const std::size_t equals = words[i].find('=', 1);
      if (equals == std::string_view::npos) return wrong(line_, quote(words[i]), "CHARACTER=LETTERS");
      const std::string_view left = words[i].substr(0, equals), right = words[i].substr(equals + 1);
      if (words[0] == "same")
        alphabet_.substitutes.push_back({std::string(left), std::string(right)});
      else
        pending_.push_back({line_, words[1], left, right});
    }
    return Done{};
  }

  Result<Done> drawing_line(std::string_view line) {
    const std::vector<std::string_view> cells = cells_of(line);
    if (block_.empty()) {
      for (const std::string_view cell : cells)
        block_.push_back({.character = std::string(trim(cell)), .width = 0});
      next_ = from_;
      return Done{};
    }
    if (cells.size() != block_.size())
      return wrong(line_, fmt::format("{} drawings", cells.size()),
                   fmt::format("{} drawings", block_.size()));
    for (std::size_t i = 0; i < cells.size(); ++i)
      for (int across = 0; const char sign : cells[i]) {
        const bool free = (across + next_) % 2 == 0;
        if (sign != ' ' && (!free || (sign != 'o' && sign != '.')))
          return wrong(line_, fmt::format("{} in {}", quote({&sign, 1}), block_[i].character),
                       free ? "o, . or a blank" : "a blank where no bead lies");
        if (sign == 'o') block_[i].beads.push_back({across, next_});
        ++across;
        if (sign != ' ') block_[i].width = std::max(block_[i].width, across);
      }
    ++next_;
    return Done{};
  }

  Result<Done> end_block() {
    for (LetterDrawing& drawing : block_) {
      if (drawing.width % 2 == 0 || drawing.beads.empty())
        return wrong(line_, drawing.character + " of " + std::to_string(drawing.width) + " places",
                     "an odd number of places, and beads");
      finish(drawing);
      drawn_->push_back(std::move(drawing));
    }
    block_.clear();
    return Done{};
  }

  Result<Done> compose(const Pending& pending) {
    const auto* letter = find_letter(alphabet_, pending.letter);
    const auto accent = std::find_if(accents_.begin(), accents_.end(), [&](const LetterDrawing& d) {
      return d.character == pending.accent && letter && d.width == letter->width;
    });
    const auto* name = std::find_if(accent_names.begin(), accent_names.end(),
                                    [&](const AccentName& a) { return a.name == pending.accent; });
    if (!letter || accent == accents_.end() || name == accent_names.end())
      return wrong(pending.line, fmt::format("{} with {}", pending.letter, pending.accent),
                   "a letter and an accent of its width");
    LetterDrawing whole = *letter;
    whole.character = pending.whole;
    // Down by whole beads, so that the accent stays on the lattice.
    const int by = accent->bottom < 0 ? letter->top - letter->top % 2 : 0;
    for (const Dot dot : accent->beads) whole.beads.push_back({dot.across, dot.down + by});
    finish(whole);
    alphabet_.letters.push_back(std::move(whole));
    const std::string_view plain = pending.letter == dotless ? "i" : pending.letter;
    alphabet_.compositions.push_back(
        {std::string(pending.whole), std::string(plain), std::string(name->combining)});
    return Done{};
  }

  Alphabet alphabet_;
  std::vector<LetterDrawing> accents_, block_;
  std::vector<LetterDrawing>* drawn_ = &alphabet_.letters;  ///< where the blocks go
  std::vector<Pending> pending_;
  int line_ = 0, from_ = 0, next_ = 0;
};

}  // namespace

Result<Alphabet> parse_alphabet(std::string_view name, std::string_view text) {
  if (!is_utf8(text)) return Problem{ProblemCode::bad_text, std::string(name), "bytes that are no UTF-8", "text in UTF-8"};
  return Reader(name).read(text);
}

}  // namespace evencount::picture
