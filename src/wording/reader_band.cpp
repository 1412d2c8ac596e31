#include "wording/reader_band.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace evencount::wording::reader {
namespace {

using weave::Travel;

/// A row or rows that are worked again: what takes one place in the order of a band.
struct Piece {
  int first_row = 0;
  int last_row = 0;
  int line = 0;
  std::optional<Travel> travel;
  const FoundRow* row = nullptr;  ///< one of these two
  const FoundRepeat* repeat = nullptr;
};

std::vector<Piece> pieces_of(const FoundBand& band) {
  std::vector<Piece> pieces;
  pieces.reserve(band.rows.size() + band.repeats.size());
  for (const auto& [number, row] : band.rows)
    pieces.push_back({row.first_row, row.last_row, row.line, row.travel, &row, nullptr});
  for (const auto& [number, repeat] : band.repeats)
    pieces.push_back({repeat.first_row, repeat.last_row, repeat.line, repeat.travel, nullptr, &repeat});
  std::inplace_merge(pieces.begin(), pieces.begin() + static_cast<std::ptrdiff_t>(band.rows.size()),
                     pieces.end(), [](const Piece& a, const Piece& b) { return a.first_row < b.first_row; });
  return pieces;
}

std::string_view direction_letter(Travel travel) {
  switch (travel) {
    case Travel::left:
      return "L";
    case Travel::right:
      return "R";
    case Travel::forth:
      return "D";
    case Travel::back:
      return "U";
  }
  return "";
}

/// Puts the pieces of a band together, row after row, and finds what is missing or too much.
class Assembly {
 public:
  Assembly(const FoundBand& band, const Wanted& wanted)
      : band_(band),
        wanted_(wanted),
        rules_(*band.rules),
        first_(band.rows.at(1)),
        pieces_(pieces_of(band)),
        edge_(band.facts ? band.facts->edge : std::nullopt) {}

  Result<CheckedBand> run() {
    if (auto first = check_first(); !first) return first.problem();
    columns_ = rules_.columns_shown(first_.beads);
    if (!columns_) columns_ = stated_columns(band_, wanted_);
    if (auto rows = assemble(); !rows) return rows.problem();
    if (wanted_.rows && *wanted_.rows != whole_.count())
      return bad_words(whole_.place(whole_.count()), counted_rows(whole_.count()),
                       counted_rows(*wanted_.rows));
    if (auto directions = check_directions(); !directions) return directions.problem();
    const auto extent = rules_.extent(whole_);
    if (!extent) return extent.problem();
    if (wanted_.columns && *wanted_.columns != extent->columns)
      return bad_words(place_text(first_, ""), fmt::format("{} columns", extent->columns),
                       fmt::format("{} columns", *wanted_.columns));
    if (auto count = check_count(extent->columns); !count) return count.problem();
    if (auto facts = check_facts(*extent); !facts) return facts.problem();
    const bool odd = extent->columns % 2 == 1;
    return CheckedBand{band_.named ? &rules_ : &flat_rules(odd), std::move(whole_), *extent};
  }

 private:
  [[nodiscard]] std::string_view rows_word() const { return rules_.rounds ? "rounds" : "rows"; }
  [[nodiscard]] std::string counted_rows(int count) const { return fmt::format("{} {}", count, rows_word()); }
  [[nodiscard]] std::string text_of(const Piece& piece) const {
    return row_text(piece.first_row, piece.last_row, rules_.rounds);
  }
  [[nodiscard]] std::string place_of(const Piece& piece) const {
    return fmt::format("line {}, {}", piece.line, text_of(piece));
  }
  [[nodiscard]] std::string facts_place() const {
    return fmt::format("line {}, the facts", band_.facts->line);
  }

  Result<Done> check_first() const {
    const auto columns = stated_columns(band_, wanted_);
    const auto places =
        rules_.places({.row = first_, .number = first_.last_row, .columns = columns, .edge = edge_});
    if (places && *places != first_.places) return wrong_length(first_, first_.places, *places);
    if (const auto expected = rules_.expected_first(first_.beads); !expected.empty())
      return bad_words(place_text(first_, ""), beads_text(first_.beads), std::string(expected));
    const auto shown = rules_.columns_shown(first_.beads);
    const auto& facts = band_.facts;
    if (shown && facts && facts->columns && *facts->columns != *shown)
      return bad_words(facts_place(), fmt::format("{} columns", *facts->columns),
                       fmt::format("{}, as {} have", *shown, row_text(first_)));
    return Done{};
  }

  // Rows

  [[nodiscard]] int stated_rows() const {
    int total = 0;
    if (band_.facts && band_.facts->rows) total = std::min(*band_.facts->rows, rules_.most_rows);
    if (wanted_.rows) total = std::max(total, std::min(*wanted_.rows, rules_.most_rows));
    return total;
  }

  Result<Done> assemble() {
    const Piece* before = nullptr;
    int last = 0;
    for (const Piece& piece : pieces_) {
      if (piece.first_row > last + 1) return missing_row(last + 1, *before, &piece);
      if (piece.first_row <= last)
        return bad_words(fmt::format("line {}", piece.line),
                         fmt::format("{} again, as in line {}", text_of(piece), before->line),
                         "each row once");
      if (auto added = piece.row != nullptr ? add(*piece.row) : add(piece, *piece.repeat); !added)
        return added;
      last = piece.last_row;
      before = &piece;
    }
    if (last < stated_rows()) return missing_row(last + 1, *before, nullptr);
    return Done{};
  }

  Result<Done> add(const FoundRow& row) {
    if (row.open_list)
      return bad_words(place_text(row, row.runs.empty() ? "" : run_text(row.runs.back())),
                       row.list_ended ? "a list between stars" : "a list after a star",
                       row.list_ended ? "how often it is worked, such as × 6"
                                      : "a second star and how often it is worked");
    if (auto length = check_length(row, row.last_row); !length) return length;
    for (int number = row.first_row; number <= row.last_row; ++number)
      whole_.rows.push_back({&row, row.line});
    return Done{};
  }

  Result<Done> add(const Piece& piece, const FoundRepeat& repeat) {
    if (auto sound = check_repeat(piece, repeat); !sound) return sound;
    const int sources = repeat.last_source - repeat.first_source + 1;
    for (int number = repeat.first_row; number <= repeat.last_row; ++number) {
      const FoundRow& row = whole_.row(repeat.first_source + (number - repeat.first_row) % sources);
      if (repeat.on_back && !row.on_back)
        return bad_words(place_of(piece), row_text(row) + ", which does not lie on the back",
                         "rounds on the back");
      whole_.rows.push_back({&row, repeat.line});
      if (auto length = check_length(row, number); !length) return length;
    }
    return Done{};
  }

  [[nodiscard]] Result<Done> check_repeat(const Piece& piece, const FoundRepeat& repeat) const {
    const int lowest = rules_.first_two_together ? 3 : 1;
    const std::string sources = row_text(repeat.first_source, repeat.last_source, rules_.rounds);
    if (repeat.first_source < lowest || repeat.last_source >= repeat.first_row ||
        repeat.first_source > repeat.last_source)
      return bad_words(place_of(piece), sources + " again",
                       repeat.first_row - 1 < lowest
                           ? fmt::format("{} of its own", rules_.rounds ? "a round" : "a row")
                           : fmt::format("{} from {} to {}, which come before", rows_word(), lowest,
                                         repeat.first_row - 1));
    if (repeat.times == 0) return bad_words(place_of(piece), sources + " 0 times", "a number from 1");
    const std::int64_t each = repeat.last_source - repeat.first_source + 1;
    const std::int64_t rows = repeat.last_row - repeat.first_row + 1;
    if (repeat.times ? *repeat.times * each != rows : rows % each != 0)
      return bad_words(place_of(piece), counted_rows(static_cast<int>(rows)),
                       repeat.times
                           ? fmt::format("{}: {} {} times", *repeat.times * each, sources, *repeat.times)
                           : fmt::format("{} some number of times", sources));
    return Done{};
  }

  /// Whether the row `number` is as long as it must be; the rows before it are there.
  [[nodiscard]] Result<Done> check_length(const FoundRow& row, int number) const {
    const bool again = number != row.last_row;
    const std::size_t rows_before = static_cast<std::size_t>(again ? number : row.first_row) - 1;
    const FoundRow* before = rows_before == 0 ? nullptr : whole_.rows[rows_before - 1].row;
    const RowQuestion asked{row, number, columns_, edge_, before};
    const auto needed = rules_.places(asked);
    const auto most = rules_.most(asked);
    if (!needed && most && row.places > *most) return too_long(row, row.places, *most);
    if (!needed || row.places == *needed) return Done{};
    if (*needed < 1 && before != nullptr)
      return bad_words(
          again ? whole_.place(number) : place_text(row, ""),
          row.begins == weave::RowEnd::decrease ? "a decrease at the beginning" : beads_text(row.beads),
          fmt::format("more than {} in {}", beads_text(before->beads), row_text(*before)));
    if (!again) return wrong_length(row, row.places, *needed);
    return bad_words(whole_.place(number), beads_text(row.places), beads_text(*needed));
  }

  /// The skipped line that row `number` was most likely written in: one with its label, or a line of runs
  /// between its neighbours.
  [[nodiscard]] std::optional<Suspect> suspect_for(int number, int line_before, const Piece* after) const {
    if (const auto found = band_.labelled_lines.find(number); found != band_.labelled_lines.end())
      return found->second;
    const auto line = std::upper_bound(band_.run_lines.begin(), band_.run_lines.end(), line_before);
    if (line == band_.run_lines.end()) return std::nullopt;
    if (after != nullptr && after->line > line_before && *line > after->line) return std::nullopt;
    return Suspect{*line, false};
  }

  [[nodiscard]] Problem missing_row(int number, const Piece& before, const Piece* after) const {
    std::string expected = row_text(number, number, rules_.rounds);
    if (const auto suspect = suspect_for(number, before.line, after))
      expected += fmt::format(" (line {} {})", suspect->line,
                              suspect->by_label ? "speaks of it, but what follows is not a row's beads"
                                                : "holds beads, but can't be read as a row");
    if (after == nullptr)
      return bad_words(fmt::format("line {}, after {}", before.line, text_of(before)), "the end of the band",
                       expected + fmt::format(", of {}", counted_rows(stated_rows())));
    return bad_words(fmt::format("line {}", after->line),
                     fmt::format("{} after {}", row_text(after->first_row, after->first_row, rules_.rounds),
                                 text_of(before)),
                     expected);
  }

  [[nodiscard]] Result<Done> check_directions() const {
    const Piece* first = nullptr;
    const auto number_of = [](const Piece& piece) {
      return piece.row != nullptr ? piece.last_row : piece.first_row;
    };
    for (const Piece& piece : pieces_) {
      if (!piece.travel) continue;
      if (first == nullptr) first = &piece;
      const bool same = !rules_.alternates || (number_of(piece) - number_of(*first)) % 2 == 0;
      const Travel right_way = same ? *first->travel : weave::opposite(*first->travel);
      if (*piece.travel == right_way) continue;
      return bad_words(place_of(piece), fmt::format("direction {}", direction_letter(*piece.travel)),
                       fmt::format("{}: {} {} ({})", direction_letter(right_way),
                                   rules_.alternates ? "directions alternate from" : "all go the way of",
                                   text_of(*first), direction_letter(*first->travel)));
    }
    return Done{};
  }

  // Facts

  /// For flat peyote whose count has been named.
  [[nodiscard]] Result<Done> check_count(int columns) const {
    const bool odd = columns % 2 == 1;
    if (!band_.named || !rules_.odd_count || *rules_.odd_count == odd) return Done{};
    if (!band_.facts)
      return bad_words(place_text(first_, ""), beads_text(first_.beads),
                       fmt::format("an {} number of beads", *rules_.odd_count ? "odd" : "even"));
    return bad_words(facts_place(), *rules_.odd_count ? "odd count" : "even count",
                     fmt::format("{} count for {} columns", odd ? "odd" : "even", columns));
  }

  [[nodiscard]] Result<Done> check_facts(const Extent& extent) const {
    if (!band_.facts) return Done{};
    const Facts& facts = *band_.facts;
    const int rows = whole_.count();
    const auto disagree = [&](std::string found, std::string expected) {
      return bad_words(facts_place(), std::move(found), std::move(expected));
    };
    const auto as_read = [](int count) { return fmt::format("{}, as were read", count); };
    if (facts.columns && !rules_.units && *facts.columns != extent.columns)
      return disagree(fmt::format("{} columns", *facts.columns), as_read(extent.columns));
    if (rules_.units) {
      if (const int across = (extent.columns - 1) / 2; facts.units_across && *facts.units_across != across)
        return disagree(fmt::format("{} units across", *facts.units_across), as_read(across));
      if (const int along = (extent.edge - 1) / 2; facts.units_along && *facts.units_along != along)
        return disagree(fmt::format("{} units along", *facts.units_along), as_read(along));
    }
    if (facts.rows && *facts.rows != rows) return disagree(counted_rows(*facts.rows), as_read(rows));
    if (facts.edge && !rules_.units && *facts.edge != extent.edge)
      return disagree(
          fmt::format("{} along the edge", beads_text(*facts.edge)),
          rules_.marked ? as_read(extent.edge) : fmt::format("{} for {}", extent.edge, counted_rows(rows)));
    return check_closure();
  }

  [[nodiscard]] Result<Done> check_closure() const {
    const auto closure = band_.facts->closure;
    if (!closure) return Done{};
    const auto& closures = rules_.closures;
    if (std::find(closures.begin(), closures.end(), *closure) == closures.end()) {
      std::string expected;
      for (const weave::Closure one : closures)
        expected += (expected.empty() ? "" : " or ") + std::string(closure_words(one));
      return bad_words(facts_place(), std::string(closure_words(*closure)), expected);
    }
    if (closure == weave::Closure::zip && whole_.count() % 2 == 1)
      return bad_words(facts_place(), fmt::format("zipped, with {} rows", whole_.count()),
                       "an even number of rows");
    return Done{};
  }

  static std::string_view closure_words(weave::Closure closure) {
    switch (closure) {
      case weave::Closure::open:
        return "open";
      case weave::Closure::zip:
        return "zipped";
      case weave::Closure::sew:
        return "sewn together";
      case weave::Closure::round:
        return "worked in the round";
    }
    return "";
  }

  const FoundBand& band_;
  const Wanted& wanted_;
  const RowRules& rules_;
  const FoundRow& first_;
  const std::vector<Piece> pieces_;
  std::optional<int> columns_, edge_;
  WholeBand whole_;
};

}  // namespace

std::optional<int> stated_columns(const FoundBand& band, const Wanted& wanted) {
  if (wanted.columns) return wanted.columns;
  if (!band.facts) return std::nullopt;
  if (!band.rules->units) return band.facts->columns;
  if (!band.facts->units_across) return std::nullopt;
  return 2 * std::min(*band.facts->units_across, chart::most_columns) + 1;
}

std::optional<int> columns_for(const FoundBand& band, const Wanted& wanted, const FoundRow& row,
                               bool first_row_is_whole) {
  if (const auto columns = stated_columns(band, wanted)) return columns;
  if (row.first_row == 1 || !first_row_is_whole) return std::nullopt;
  return band.rules->columns_shown(band.rows.at(1).beads);
}

Result<CheckedBand> check_band(const FoundBand& band, const Wanted& wanted) {
  return Assembly(band, wanted).run();
}

Result<chart::Chart> chart_of(const CheckedBand& band, const BeadOfLetter& beads) {
  auto chart = chart::Chart::make(band.extent.columns, band.extent.edge, chart::no_bead);
  if (!chart) return chart.problem().within(place_text(band.whole.row(1), ""));
  if (auto laid = band.rules->lay(band.whole, band.extent, beads, *chart); !laid) return laid.problem();
  return chart;
}

}  // namespace evencount::wording::reader
