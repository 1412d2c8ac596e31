#pragma once
/// Finding the rows in a text's lines: which words are a row's beads, and which are prose.

#include <string>
#include <string_view>
#include <vector>

#include "wording/reader_band.hpp"
#include "wording/reader_labels.hpp"
#include "wording/reader_runs.hpp"

namespace evencount::wording::reader {

/// Takes a text line by line and collects its bands.
///
/// A row begins at its label when beads follow it. A label stands at the beginning of a line, after a wide
/// gap or right after another row's beads; elsewhere it must have its word, its direction and its colon. A row
/// that is not complete stays open: it goes on in a later line that begins with beads and nothing but beads.
/// Where several columns of rows stand side by side, beads belong to the open row above them. What a row's label
/// may say and how many beads complete the row are asked of the technique's rules.
class PageReader {
 public:
  /// `letters` are the places of the legend's letters; empty when any letter will do.
  PageReader(Wanted wanted, std::vector<int> letters) : wanted_(wanted), letters_(std::move(letters)) {}

  Result<Done> take_line(std::string_view line, int number);

  [[nodiscard]] const std::vector<FoundBand>& bands() const { return bands_; }

  /// The first line that held beads outside any band, or 0.
  [[nodiscard]] int first_stray_line() const { return first_stray_line_; }

  /// The first line that held rounds of a technique that isn't known to be worked in rounds, or 0.
  [[nodiscard]] int first_stray_round() const { return first_stray_round_; }

 private:
  /// How far to the left of its row's label a continued line may begin and still lie below it.
  static constexpr int column_slack = 2;
  /// How far to the left of the label above it a label may begin and still be of the same column of the page.
  static constexpr int label_slack = 8;

  struct OpenRow {
    FoundRow* row = nullptr;
    int column = 0;     ///< where its label stands
    int last_line = 0;  ///< where its last beads stand
    bool after_comma = false;
    std::size_t first_token = 0;  ///< where its beads begin in that line
  };
  /// Runs and separators in a line, up to a label, a wide gap or the end.
  struct Stretch {
    std::size_t end = 0;
    bool only_runs = false;      ///< nothing else broke it off, and there is at least one
    bool first_counted = false;  ///< as in WrittenRun::counted
    bool all_counted = true;
    int beads = 0;  ///< at most `largest_value`
  };
  /// A label, and what rows are worked again if that is what it says.
  struct Head {
    Label label;
    std::optional<Again> again;
    std::size_t next = 0;  ///< the token after both

    [[nodiscard]] bool broken_off() const { return label.broken_off || (again && again->broken_off); }
  };
  struct Place {
    int line = 0;
    int column = 0;
  };
  /// A head whose beads or whose own end must stand in the next line.
  struct PendingHead {
    Head head;
    Place place;
    std::string text;         ///< as written so far
    bool ended_line = false;  ///< nothing stood after it
    bool taken = false;  ///< it lacks only how often its rows are worked again, which may also be left out
  };

  // What the current line holds.
  Result<Done> walk_line();
  [[nodiscard]] static std::optional<Head> head_at(const std::vector<Token>& tokens, std::size_t i);
  Result<bool> take_pending_head();
  [[nodiscard]] std::optional<std::size_t> pending_above() const;
  Result<bool> resume(const PendingHead& pending);
  Result<bool> take_label();
  Result<bool> take_head(const Head& head, Place place);
  [[nodiscard]] bool goes_on_below(const Head& head, bool taken) const;
  void leave_pending(const Head& head, Place place, std::size_t first, const std::string& before, bool taken);
  [[nodiscard]] bool may_be_beads(const Label& label) const;
  Result<bool> take_continuation();
  [[nodiscard]] Stretch stretch_at(std::size_t i) const;
  [[nodiscard]] bool label_in_list_at(std::size_t i) const;
  [[nodiscard]] bool placed_like_a_label() const;
  [[nodiscard]] bool begins_row(const Label& label) const;
  [[nodiscard]] bool list_begins_at(std::size_t i) const;
  [[nodiscard]] bool list_ends_ahead(std::size_t i) const;

  // Rows.
  [[nodiscard]] const RowRules& rules_of(const Label& label) const;
  [[nodiscard]] bool is_stray_round(const Label& label) const;
  Result<Done> begin_row(const Label& label, Place place);
  Result<Done> take_repeat(const Head& head, Place place);
  [[nodiscard]] Result<Done> check_number(const Label& label, const RowRules& rules) const;
  [[nodiscard]] Result<Done> check_free(const Label& label) const;
  [[nodiscard]] Result<Done> check_label(const Label& label, const RowRules& rules) const;
  void close_rows_above(int column);
  Result<Done> take_beads(OpenRow open);
  Result<bool> take_bead_token(OpenRow& open, bool only_runs);
  Result<Done> take_run(OpenRow& open, const WrittenRun& run);
  [[nodiscard]] Result<Done> check_length(const FoundRow& row) const;
  [[nodiscard]] bool is_prose_after(const OpenRow& open, const WrittenRun& run, bool only_runs) const;
  [[nodiscard]] bool ends_quietly(const OpenRow& open) const;
  [[nodiscard]] bool belongs_to_a_neighbour(int column, std::size_t i) const;
  [[nodiscard]] bool awaited_elsewhere(int column, std::size_t i) const;
  [[nodiscard]] std::string quoted_text_at() const;
  [[nodiscard]] std::string place_in(const FoundRow& row) const;
  Result<Done> leave_open(const OpenRow& open);
  void drop_complete_rows();
  [[nodiscard]] bool is_open(const FoundRow& row) const;
  [[nodiscard]] const FoundRow* row_before(const FoundRow& row) const;
  [[nodiscard]] RowQuestion question(const FoundRow& row) const;
  [[nodiscard]] std::optional<int> needed(const FoundRow& row) const;
  [[nodiscard]] bool complete(const FoundRow& row) const;
  [[nodiscard]] std::size_t owner_of(int column) const;

  // Lists between stars.
  Result<Done> take_star(OpenRow& open);
  Result<Done> take_times(OpenRow& open);

  // What was skipped.
  void suspect(const Label& label, int line);
  void suspect_beads();

  Wanted wanted_;
  std::vector<int> letters_;
  std::vector<FoundBand> bands_;
  std::string name_;
  FactsReader facts_;
  std::vector<OpenRow> open_;
  std::vector<PendingHead> pending_;    ///< for the line that comes
  std::vector<PendingHead> resumable_;  ///< from the line before

  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  int line_ = 0;
  bool row_ended_here_ = false;  ///< the token before `at_` belongs to a row's beads
  bool line_had_row_ = false;
  bool line_before_had_row_ = false;
  int first_stray_line_ = 0;
  int first_stray_round_ = 0;
};

}  // namespace evencount::wording::reader
