#pragma once
/// What a designer owns, kept in one SQLite file: items, how much there is of each, and a journal of every movement.
///
/// Quantities are never written down: they come from movements, which are only ever added. Beads may be promised to a run of kits;
/// what is promised to one run can be neither used nor promised to another, by this process or any other.
///
/// Properties (tests/stockroom/stockroom_test.cpp, crash_test.cpp, two_processes_test.cpp, check_test.cpp):
///  (1) on_hand == the sum of the item's movements; reserved == the sum of what open runs hold of it; 0 <= reserved <= on_hand.
///      The file's own triggers refuse whatever would break this, and `check` looks again.
///  (2) every change is one transaction: killed at any moment, a process leaves a file that opens, with all of a change or none of it
///  (3) reserve then release leaves every level as it was; reserve then take leaves on_hand smaller by what was reserved
///  (4) however many processes reserve at once, they never get more than there is
///
/// A change waits for up to `patience` while another process writes. Errors of every function that reads or writes: file_unreadable (no
/// database, damaged), file_unwritable (no place, no permission, busy for too long), system_failure.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "materials/stock.hpp"
#include "stockroom/import.hpp"
#include "stockroom/time.hpp"

namespace evencount::stockroom {

inline constexpr std::chrono::milliseconds patience{10'000};

enum class Cause {
  counted_in,  ///< bought, found: amount above 0
  used,        ///< taken out: amount below 0
  corrected,   ///< counted, and the journal was off by this
};
/// "counted in", "used", "corrected".
[[nodiscard]] std::string_view cause_name(Cause cause);

struct Movement {
  std::int64_t number = 0;  ///< in the order they were written down
  Time at;
  std::string code;
  materials::StockKind kind = materials::StockKind::beads;
  Cause cause = Cause::counted_in;
  std::int64_t amount = 0;  ///< in the kind's unit, never 0
  std::string run;          ///< empty when it belongs to none
  std::string note;
  bool operator==(const Movement&) const = default;
};

struct RunItem {
  std::string code;
  std::int64_t amount = 0;  ///< in the kind's unit, above 0
  bool operator==(const RunItem&) const = default;
};

enum class RunState {
  open,      ///< its items are reserved
  taken,     ///< its items were used
  released,  ///< its items were given back
};
/// "open", "taken", "released".
[[nodiscard]] std::string_view state_name(RunState state);

/// A run of kits, and what is (or was) reserved for it, by code.
struct Run {
  std::string name;
  RunState state = RunState::open;
  Time opened;
  std::optional<Time> closed;
  std::vector<RunItem> items;
  std::string note;
  bool operator==(const Run&) const = default;
};

class Stockroom {
 public:
  /// Opens the file; a new one, and the folders it lies in, are made when there is none. An older format is brought up to date.
  /// Errors: newer_format (left as it is), file_unreadable (also a database of another program), file_unwritable.
  [[nodiscard]] static Result<Stockroom> open(const std::string& file);

  Stockroom(Stockroom&&) noexcept;
  Stockroom& operator=(Stockroom&&) noexcept;
  ~Stockroom();

  /// Every item, of one kind or all, by code in the order of its bytes.
  [[nodiscard]] Result<std::vector<materials::StockedItem>> items(
      std::optional<materials::StockKind> kind = std::nullopt) const;
  /// Errors: unknown_name.
  [[nodiscard]] Result<materials::StockedItem> item(const std::string& code) const;

  /// Adds an item, or writes one over that has its code; the quantities stay.
  /// Errors: those of item_check.hpp; wrong_type (the code is of another kind).
  [[nodiscard]] Result<Done> put(const materials::StockItem& item);

  /// Bought or found. Errors: unknown_name; out_of_range (the amount is from 1 to most_amount, as is all there is afterwards).
  [[nodiscard]] Result<Movement> count_in(const std::string& code, std::int64_t amount, Time at,
                                          const std::string& note = {});
  /// Taken out of what is free. Errors: unknown_name, out_of_range (from 1 to what is free).
  [[nodiscard]] Result<Movement> use(const std::string& code, std::int64_t amount, Time at,
                                     const std::string& note = {});
  /// There are `counted`: the movement is the difference, and none when there is none.
  /// Errors: unknown_name, out_of_range (below what is reserved, above most_amount).
  [[nodiscard]] Result<std::optional<Movement>> correct(const std::string& code, std::int64_t counted,
                                                        Time at, const std::string& note = {});

  /// Movements in the order they were written down, of one item, one run or all. Errors: unknown_name (the item, the run).
  [[nodiscard]] Result<std::vector<Movement>> journal(
      const std::optional<std::string>& code = std::nullopt,
      const std::optional<std::string>& run = std::nullopt) const;

  /// Promises all of these to a run, or none; to an open run of this name they are added. A code given twice counts twice.
  /// Errors: missing_field (nothing to reserve), unknown_name (a code), out_of_range (more than is free), duplicate_name (a run of
  /// this name is closed), those of check_key.
  [[nodiscard]] Result<Run> reserve(const std::string& run, const std::vector<RunItem>& items, Time at,
                                    const std::string& note = {});
  /// Gives everything back. Errors: unknown_name (no open run of this name).
  [[nodiscard]] Result<Run> release(const std::string& run, Time at);
  /// The kits are made: what was reserved is used, one movement an item. Errors: unknown_name (no open run of this name).
  [[nodiscard]] Result<Run> take(const std::string& run, Time at);
  /// Every run, in the order they were opened.
  [[nodiscard]] Result<std::vector<Run>> runs() const;

  /// Reads a table into the stock: see import.hpp.
  [[nodiscard]] Result<ImportReport> import_table(const CsvTable& table, const ImportOptions& options,
                                                  Time at);

  /// Whatever is wrong with the file, in words; nothing when all is well: SQLite's own integrity check, and property (1).
  [[nodiscard]] Result<std::vector<std::string>> check() const;

 private:
  struct Inside;
  explicit Stockroom(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace evencount::stockroom
