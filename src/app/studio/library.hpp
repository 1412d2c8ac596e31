#pragma once
/// The projects of one folder: what there is, and which are open.
///
/// A project's id is its file's name without ".evencount.json". No id leads out of the folder: neither by its letters nor by a link.
/// All functions may be called from any thread.

#include <condition_variable>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "app/studio/session.hpp"

namespace evencount::app::studio {

struct Listed {
  std::string id;
  std::string title;         ///< empty for a file that can't be read
  std::int64_t changed = 0;  ///< milliseconds since 1970
  int bands = 0;
  std::string problem;  ///< why it can't be read
};

struct LibraryFolders {
  std::string projects;
  std::string examples;  ///< projects that new ones can be copied from; may be missing
};

inline constexpr std::size_t longest_id = 100;  ///< bytes
inline constexpr std::size_t most_open = 50;
inline constexpr std::int64_t save_after_ms = 700;

class Library {
 public:
  using Listener = std::function<void(const std::string& id,
                                      std::int64_t revision)>;  ///< revision 0: the list has changed

  /// Makes the folder when there is none. Errors: file_unwritable.
  [[nodiscard]] static Result<std::unique_ptr<Library>> open(LibraryFolders folders, Clock clock,
                                                             Listener listener);
  /// Saves what is open.
  ~Library();
  Library(const Library&) = delete;
  Library& operator=(const Library&) = delete;

  /// What a listed project was when it was read.
  using Marks = std::vector<std::int64_t>;

  /// By id.
  [[nodiscard]] std::vector<Listed> list();
  [[nodiscard]] std::vector<Listed> examples();
  /// The session of a project, opened when it isn't yet. One that is open goes on when its file is gone. Errors: not_found, too_many, those of Session::open.
  [[nodiscard]] Result<std::shared_ptr<Session>> session(const std::string& id);

  /// The id of a new project of this title. Errors: those of write_file, in_use (no free name).
  [[nodiscard]] Result<std::string> create(const project::Project& project);
  /// A project of the examples. Errors: not_found.
  [[nodiscard]] Result<project::Project> example(const std::string& id);
  /// Moves the project and its history to the folder's ".bin"; its name there. Errors: not_found, file_unwritable.
  [[nodiscard]] Result<std::string> remove(const std::string& id);
  /// Puts back what `remove` moved, with its history; its id, the one it had. Errors: not_found, in_use (there is a project of that name
  /// again), file_unwritable.
  [[nodiscard]] Result<std::string> restore(const std::string& binned);

  /// Open projects and their revisions.
  [[nodiscard]] std::vector<std::pair<std::string, std::int64_t>> revisions();
  [[nodiscard]] const std::string& folder() const { return folders_.projects; }
  /// The id of a file, if it lies in the folder.
  [[nodiscard]] std::optional<std::string> id_of(const std::string& file) const;

 private:
  Library(LibraryFolders folders, Clock clock, Listener listener);
  struct Known {
    Marks marks;
    Listed listed;
  };
  [[nodiscard]] Result<std::string> path_of(const std::string& folder, const std::string& id) const;
  [[nodiscard]] std::vector<Listed> list_folder(const std::string& folder);
  void tend();
  void tend_each(std::unique_lock<std::mutex>& lock);

  LibraryFolders folders_;
  Clock clock_;
  Listener listener_;
  std::mutex mutex_;
  std::condition_variable closing_changed_;
  bool closing_ = false;
  std::map<std::string, std::shared_ptr<Session>> open_;
  std::vector<std::string> recent_;     ///< ids, the one used last at the end
  std::map<std::string, Known> known_;  ///< by path
  std::thread tender_;
};

}  // namespace evencount::app::studio
