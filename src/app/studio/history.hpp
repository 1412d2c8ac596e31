#pragma once
/// What was done to a project, kept in one SQLite file beside it: NAME.evencount.history.
///
/// Every change is a revision with its patch, in a transaction of its own that is on disk when `add` returns. Undo and redo are
/// revisions too, so that numbers only grow. The file also keeps the text of the project's JSON file as it was last written, so that a
/// file that lags behind, or that another program changed, is told from one that is up to date.
///
/// Properties (tests/app/studio/history_test.cpp, kill_test.cpp):
///  (1) what `add` returned is there when the file is opened again, also after a kill at any moment
///  (2) the undo and redo targets are the same when the file is opened again
///
/// Errors of every function: in_use (another program writes for longer than `patience`), file_unwritable, file_unreadable (damaged, or
/// another program's file), newer_format.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.hpp"
#include "project/patch.hpp"

namespace evencount::app::studio {

/// What a revision is.
enum class Doing {
  edit,
  undo,     ///< of the edit `target`
  redo,     ///< of the edit `target`
  outside,  ///< another program changed the project's file; it is undone as an edit is
};
[[nodiscard]] std::string_view doing_name(Doing doing);

struct Revision {
  std::int64_t number = 0;  ///< from 1 on
  std::int64_t at = 0;      ///< milliseconds since 1970, UTC
  Doing doing = Doing::edit;
  std::string sentence;     ///< of an undo or redo: its target's
  std::int64_t target = 0;  ///< of an undo or redo
  bool operator==(const Revision&) const = default;
};

/// The project's file as it was written, or is about to be.
struct KeptFile {
  std::int64_t revision = 0;
  std::string text;
};

class History {
 public:
  enum class Access { write, read };

  /// With Access::write a new file is made when there is none, and locked: a second writer is refused (in_use) until this one goes.
  [[nodiscard]] static Result<History> open(const std::string& file, Access access);
  History(History&&) noexcept;
  History& operator=(History&&) noexcept;
  ~History();

  [[nodiscard]] std::int64_t newest() const;
  /// The edit that an undo or a redo would be of.
  [[nodiscard]] std::optional<Revision> undo_target() const;
  [[nodiscard]] std::optional<Revision> redo_target() const;

  /// The next revision. Errors: also file_unwritable where the file was deleted or replaced since it was opened. `patch` is empty for undo and redo: theirs is their target's, turned for an undo.
  [[nodiscard]] Result<Revision> add(Revision revision, const std::optional<project::Patch>& patch);

  /// What leads from the revision before to this one.
  [[nodiscard]] Result<project::Patch> patch(std::int64_t number) const;
  /// Newest first, those below `before`, at most `count`.
  [[nodiscard]] Result<std::vector<Revision>> list(std::int64_t before, int count) const;

  /// Newest first: one, or two while the project's file is being written.
  [[nodiscard]] Result<std::vector<KeptFile>> kept_files() const;
  /// Says what is about to be written; the older texts stay until `forget_older`.
  [[nodiscard]] Result<Done> keep_file(const KeptFile& file);
  [[nodiscard]] Result<Done> forget_older_files();

 private:
  struct Inside;
  [[nodiscard]] static Result<History> open_to_read(const std::string& file, int flags, const std::string& address);
  explicit History(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// "moonwatch.evencount.history" for "moonwatch.evencount.json"; links are followed.
[[nodiscard]] std::string history_file(const std::string& project_file);

}  // namespace evencount::app::studio
