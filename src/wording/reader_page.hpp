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
/// Where several columns of rows stand side by side, beads belong to the open row above them.
class PageReader {
 public:
  /// `letters` are the places of the legend's letters; empty when any letter will do.
  PageReader(Wanted wanted, std::vector<int> letters) : wanted_(wanted), letters_(std::move(letters)) {}

  Result<Done> take_line(std::string_view line, int number);

  [[nodiscard]] const std::vector<FoundBand>& bands() const { return bands_; }

  /// The first line that held beads outside any band, or 0.
  [[nodiscard]] int first_stray_line() const { return first_stray_line_; }

 private:
  struct OpenRow {
    FoundRow* row = nullptr;
    int column = 0;     ///< where its label stands
    int last_line = 0;  ///< where its last beads stand
    bool after_comma = false;
  };
  /// Runs and separators in a line, up to a label, a wide gap or the end.
  struct Stretch {
    std::size_t end = 0;
    bool only_runs = false;      ///< nothing else broke it off, and there is at least one
    bool first_counted = false;  ///< as in WrittenRun::counted
    bool all_counted = true;
    int beads = 0;  ///< at most `largest_value`
  };
  struct PendingLabel {
    Label label;
    int line;
    int column;
  };

  // What the current line holds.
  Result<Done> walk_line();
  Result<Done> take_pending_label();
  Result<bool> take_label();
  [[nodiscard]] bool may_be_beads(const Label& label) const;
  Result<bool> take_continuation();
  [[nodiscard]] Stretch stretch_at(std::size_t i) const;
  [[nodiscard]] bool label_in_list_at(std::size_t i) const;
  [[nodiscard]] bool placed_like_a_label() const;
  [[nodiscard]] bool begins_row(const Label& label) const;

  // Rows.
  Result<Done> begin_row(const Label& label, int line, int column);
  [[nodiscard]] Result<Done> check_number(const Label& label) const;
  void close_rows_above(int column);
  Result<Done> take_beads(OpenRow open);
  Result<Done> take_run(OpenRow& open, const WrittenRun& run);
  [[nodiscard]] bool is_prose_after(const OpenRow& open, const WrittenRun& run, bool only_runs) const;
  [[nodiscard]] bool ends_quietly(const OpenRow& open) const;
  [[nodiscard]] bool belongs_to_a_neighbour(const OpenRow& open) const;
  [[nodiscard]] std::string quoted_text_at() const;
  [[nodiscard]] std::string place_in(const FoundRow& row) const;
  Result<Done> leave_open(const OpenRow& open);
  void drop_complete_rows();
  [[nodiscard]] std::optional<int> needed(const FoundRow& row) const;
  [[nodiscard]] bool complete(const FoundRow& row) const;
  [[nodiscard]] std::size_t owner_of(int column) const;

  // What was skipped.
  void suspect(const Label& label, int line);
  void suspect_beads();

  Wanted wanted_;
  std::vector<int> letters_;
  std::vector<FoundBand> bands_;
  std::string name_;
  FactsReader facts_;
  std::vector<OpenRow> open_;
  std::optional<PendingLabel> pending_;

  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  int line_ = 0;
  bool row_ended_here_ = false;  ///< the token before `at_` belongs to a row's beads
  bool line_had_row_ = false;
  bool line_before_had_row_ = false;
  int first_stray_line_ = 0;
};

}  // namespace evencount::wording::reader
