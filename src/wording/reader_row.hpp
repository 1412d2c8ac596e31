#pragma once
/// One row as it was found in a text, and its beads one by one.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "chart/chart.hpp"
#include "weave/plan.hpp"

namespace evencount::wording::reader {

/// Stands in a run for a letter where no bead is strung: a decrease.
inline constexpr int no_letter = -1;

struct FoundRun {
  int count = 1;
  int letter = 0;  ///< its place in A, B … Z, AA …, or `no_letter`
};

/// Runs that are worked several times: what stands between two stars. Kept folded, so that a text holds no more than it
/// spells out.
struct Fold {
  std::size_t first_run = 0;
  std::size_t end_run = 0;  ///< one past the last; at least one run
  int times = 1;            ///< at least 1
};

struct FoundRow {
  int first_row = 1;
  int last_row = 1;
  int line = 0;
  bool round = false;  ///< it is called a round
  std::optional<weave::Travel> travel;
  weave::RowEnd begins = weave::RowEnd::plain;
  weave::RowEnd ends = weave::RowEnd::plain;
  bool on_back = false;
  std::vector<FoundRun> runs;
  std::vector<Fold> folds;             ///< in order; they do not overlap
  std::vector<std::size_t> unit_ends;  ///< the runs before which a semicolon stands, in order
  int places = 0;                      ///< beads and decreases, folds unfolded
  int beads = 0;                       ///< of these, the beads

  /// Where the list between stars that is not closed yet begins, in `runs`.
  std::optional<std::size_t> open_list;
  bool list_ended = false;  ///< that list has its second star, and lacks only how often it is worked
};

/// For each letter its bead.
using BeadOfLetter = std::map<int, chart::Bead>;

/// The runs of a row in the order of stringing, folds unfolded.
class RunWalk {
 public:
  explicit RunWalk(const FoundRow& row) : row_(&row) {}

  /// The next run, or nothing after the last.
  const FoundRun* next();

  /// Whether a semicolon stands before the run that `next` gave last.
  [[nodiscard]] bool began_unit() const { return began_unit_; }

 private:
  /// Back to the beginning of a fold whose end has been reached and that is worked again.
  bool again();

  const FoundRow* row_;
  std::size_t at_ = 0, fold_ = 0, unit_end_ = 0;
  int done_ = 0;  ///< how often the current fold has been gone through
  bool began_unit_ = false;
};

/// The beads of a row in the order of stringing, one by one.
class BeadWalk {
 public:
  BeadWalk(const FoundRow& row, const BeadOfLetter& beads) : runs_(row), beads_(&beads) {}

  /// The next bead, or `chart::no_bead` for a decrease. To be asked `row.places` times at most.
  chart::Bead next();

  /// Whether a semicolon stands before the bead that `next` gave last.
  [[nodiscard]] bool began_unit() const { return began_unit_; }

 private:
  RunWalk runs_;
  const BeadOfLetter* beads_;
  int left_ = 0;
  chart::Bead bead_ = chart::no_bead;
  bool began_unit_ = false;
};

/// "row 14", "rows 1-2", "round 3".
[[nodiscard]] std::string row_text(int first_row, int last_row, bool round = false);
[[nodiscard]] std::string row_text(const FoundRow& row);

/// "1 bead", "12 beads".
[[nodiscard]] std::string beads_text(int beads);

/// "2A", as runs are shown in messages.
[[nodiscard]] std::string run_text(const FoundRun& run);

/// "line 12, row 14, after 2A"; `after` may be empty.
[[nodiscard]] std::string place_text(const FoundRow& row, std::string_view after);

/// The last run before the row would have more than `places`, as in "2A"; empty when there is none.
[[nodiscard]] std::string last_run_within(const FoundRow& row, int places);

/// The finished complaint about a row of the wrong length.
[[nodiscard]] Problem wrong_length(const FoundRow& row, int places, int needed);

/// The same where only the most that it can have is known.
[[nodiscard]] Problem too_long(const FoundRow& row, int places, int most);

[[nodiscard]] Problem bad_words(std::string where, std::string found, std::string expected);

}  // namespace evencount::wording::reader
