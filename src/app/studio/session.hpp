#pragma once
/// One open project: its state, its revisions, and its file.
///
/// A change is on disk (in the history) before it is answered. The project's JSON file follows a moment later, written whole or not at
/// all. A change names the revision that it was made on; if others came in between it is put on top where it touches nothing that they
/// touched, else it is refused (out_of_date). A file that another program changed becomes a change of its own, which can be undone.
///
/// Properties (tests/app/studio/session_test.cpp, kill_test.cpp):
///  (1) an acknowledged change is there after a kill at any moment, and can be undone
///  (2) two clients that change and catch up see the same project, and it is the one on disk
///  (3) undo to the first revision gives the first project; redo all the way gives the last
///  (4) nothing another program wrote is overwritten without being in the history
///  (5) a change that the history can't keep is an error, and the project is as it was
///  (6) a file that is gone is written again with the next change or `save`; one that can't be read, or is a folder now, is left alone and
///      `file_problem` says so, until it can be read again. Whether a file changed doesn't hang on its time getting later.
///
/// All functions may be called from any thread.

#include <functional>
#include <memory>
#include <mutex>

#include "app/studio/history.hpp"

namespace evencount::app::studio {

/// Milliseconds since 1970, as the wall clock has it: for what people read. It may be set back.
using Clock = std::function<std::int64_t()>;

struct State {
  std::shared_ptr<const project::Project> project;
  std::int64_t revision = 0;
  std::string undo, redo;  ///< the sentences of what they would be of; empty where there is nothing
  std::string
      file_problem;  ///< why the JSON file is not being written, if it isn't: what stands there can't be read, say
};

struct Accepted {
  std::int64_t revision = 0;
  std::string sentence;
  std::string patch;  ///< JSON, from the revision before
  std::string undo, redo;
};

/// What a change would do.
struct Previewed {
  std::int64_t on = 0;  ///< the revision that the patch would be put on
  std::string sentence;
  std::string patch;  ///< JSON
};

/// What a client lacks.
struct Step {
  Revision revision;
  std::string patch;  ///< JSON
};

class Session {
 public:
  /// Errors: those of read_file, parse_project and History::open (in_use: another studio has it open).
  [[nodiscard]] static Result<std::unique_ptr<Session>> open(const std::string& file, Clock clock);
  /// Saves what is not saved yet.
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  /// Another program's change of the file is taken in first.
  [[nodiscard]] State state();
  /// Errors: out_of_date, those of project::apply_operation and of the history.
  [[nodiscard]] Result<Accepted> operate(std::int64_t made_on, std::string_view operation);
  /// The same without doing it. Errors: as operate.
  [[nodiscard]] Result<Previewed> preview(std::int64_t made_on, std::string_view operation);
  /// Errors: out_of_date (undo means what the person saw last), not_found (nothing to undo).
  [[nodiscard]] Result<Accepted> undo(std::int64_t made_on);
  [[nodiscard]] Result<Accepted> redo(std::int64_t made_on);

  /// The revisions after one, oldest first, at most `most_steps` of them. Errors: not_found.
  [[nodiscard]] Result<std::vector<Step>> steps_after(std::int64_t revision);
  static constexpr std::int64_t most_steps = 200;
  [[nodiscard]] Result<std::vector<Revision>> list(std::int64_t before, int count);

  /// Writes the JSON file, unless it is up to date. Errors: those of write_file; also kept in State::file_problem.
  [[nodiscard]] Result<Done> save();
  /// Takes in what another program wrote, and writes what was there at a look `patience_ms` ago and has not changed since. `now_ms` is
  /// of a clock that nobody sets: with one that is set back, nothing would be written for as long.
  void tend(std::int64_t now_ms, std::int64_t patience_ms);
  [[nodiscard]] bool is_saved() const;
  [[nodiscard]] std::int64_t revision() const;
  [[nodiscard]] const std::string& file() const { return file_; }

  /// Called with the new revision after each change, from the thread that made it; it must not call the session.
  void on_change(std::function<void(std::int64_t)> listener);

 private:
  /// What tells one version of a file from another without reading it.
  struct Stamp {
    std::int64_t seconds = 0, nanoseconds = 0, size = -1;
    std::int64_t touched_seconds = 0, touched_nanoseconds = 0;  ///< also when its time was set back, or its permissions changed
    std::uint64_t inode = 0;
    bool operator==(const Stamp&) const = default;
  };
  [[nodiscard]] static Stamp stamp_of(const std::string& file);
  void tell(std::int64_t revision) const;

  Session(std::string file, History history, Clock clock);
  [[nodiscard]] Result<Accepted> accept(Revision revision, const project::Patch& patch,
                                        project::Project next);
  [[nodiscard]] Result<Accepted> go_back_or_forth(std::int64_t made_on, Doing doing);
  /// A change worked out, not yet made.
  struct Prepared {
    std::string sentence;
    project::Patch patch;
    project::Project next;
  };
  [[nodiscard]] Result<Prepared> prepare(std::int64_t made_on, std::string_view operation);
  [[nodiscard]] Result<project::Patch> on_top(std::int64_t made_on, std::string_view operation,
                                              std::string& sentence);
  void take_in_outside();
  [[nodiscard]] Result<Done> take_in(std::string text);
  [[nodiscard]] Result<Done> save_locked();
  [[nodiscard]] Result<Done> write_out(std::int64_t revision, std::string text);
  [[nodiscard]] std::string undo_sentence() const;
  [[nodiscard]] std::string redo_sentence() const;

  mutable std::mutex mutex_;
  const std::string file_;
  History history_;
  Clock clock_;
  std::shared_ptr<const project::Project> project_;
  std::string written_;                           ///< the file's text as we know it
  std::optional<std::int64_t> written_revision_;  ///< none when the file is at no revision
  Stamp stamp_;
  std::string unreadable_, unwritten_;  ///< why the file can't be taken in, why it couldn't be written
  bool gone_ = false;                   ///< there is no file
  std::int64_t seen_revision_ = 0, seen_at_ = 0;  ///< what `tend` saw last, and when it was new to it
  std::function<void(std::int64_t)> listener_;
};

}  // namespace evencount::app::studio
