#include "app/studio/history.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "base/text.hpp"
#include "stockroom/database.hpp"

namespace evencount::app::studio {
namespace {

constexpr int patience_ms = 5'000;
constexpr int application_id = 0x45764348;  // "EvCH", at byte 68 of every history
constexpr int newest_version = 1;
constexpr std::string_view project_ending = ".evencount.json", history_ending = ".evencount.history";

constexpr const char* schema = R"(
  CREATE TABLE revisions (
    number INTEGER PRIMARY KEY,
    at INTEGER NOT NULL,
    doing TEXT NOT NULL CHECK (doing IN ('edit', 'undo', 'redo', 'outside')),
    sentence TEXT NOT NULL,
    target INTEGER NOT NULL,
    patch TEXT,
    CHECK ((patch IS NULL) = (doing IN ('undo', 'redo')))
  ) STRICT;
  CREATE TABLE files (revision INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;
)";

Problem problem_of(const SQLite::Exception& error, const std::string& file) {
  constexpr int primary = 0xFF;  // SQLite's extended codes keep the plain one in their lowest byte
  switch (error.getErrorCode() & primary) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {ProblemCode::in_use, file, "a file that another program holds", "a file that is free"};
    case SQLITE_NOTADB:
    case SQLITE_CORRUPT:
      return {ProblemCode::file_unreadable, file, error.what(), "a history of evencount"};
    default:
      return {ProblemCode::file_unwritable, file, stockroom::reason_of(error, file),
              "a file that can be written; nothing was changed"};
  }
}

Doing doing_of(const std::string& name) {
  for (const Doing doing : {Doing::edit, Doing::undo, Doing::redo})
    if (doing_name(doing) == name) return doing;
  return Doing::outside;
}

/// A locked file descriptor; the lock goes with it.
class Lock {
 public:
  Lock() = default;
  explicit Lock(int descriptor) : descriptor_(descriptor) {}
  Lock(Lock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}
  Lock& operator=(Lock&&) = delete;
  ~Lock() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  [[nodiscard]] int descriptor() const { return descriptor_; }

 private:
  int descriptor_ = -1;
};

Result<Lock> take_lock(const std::string& file) {
  const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (descriptor < 0)
    return Problem{ProblemCode::file_unwritable, file, std::strerror(errno), "a file that can be written"};
  Lock lock(descriptor);
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return lock;
  return Problem{ProblemCode::in_use, file, "a project that another studio has open", "one studio a project"};
}

/// The address of a file that nobody changes (sqlite.org/uri.html).
std::string unchanging(const std::string& file) {
  std::string address = "file:";
  for (const char c : std::filesystem::absolute(file).string())
    address += c == '%' || c == '?' || c == '#' ? fmt::format("%{:02X}", static_cast<unsigned>(c)) : std::string(1, c);
  return address + "?immutable=1";
}

}  // namespace

std::string_view doing_name(Doing doing) {
  switch (doing) {
    case Doing::edit:
      return "edit";
    case Doing::undo:
      return "undo";
    case Doing::redo:
      return "redo";
    case Doing::outside:
      return "outside";
  }
  return "";
}

/// The lock is taken first and given back last: closing any descriptor of a file ends SQLite's own locks on it.
struct History::Inside {
  std::string file;
  Lock lock;
  SQLite::Database database;
  std::int64_t newest = 0;
  std::vector<std::int64_t> done,
      undone;  ///< edits, oldest first; those that were undone, the next to redo last

  Inside(std::string path, Lock held, int flags, const std::string& address)
      : file(std::move(path)), lock(std::move(held)), database(address, flags, patience_ms) {}

  /// Room for one more, so that `count` after a commit never wants memory.
  void make_room() {
    for (auto* numbers : {&done, &undone})
      if (numbers->size() == numbers->capacity()) numbers->reserve(2 * numbers->size() + 16);
  }

  /// Whether the file is still the one that is open: what is written to one that was deleted is lost when it is closed.
  [[nodiscard]] bool is_in_place() const {
    struct stat here {}, open {};
    return ::stat(file.c_str(), &here) == 0 && ::fstat(lock.descriptor(), &open) == 0 && here.st_ino == open.st_ino &&
           here.st_dev == open.st_dev;
  }

  void count(std::int64_t number, Doing doing) {
    newest = number;
    if (doing == Doing::undo && !done.empty()) {
      undone.push_back(done.back()), done.pop_back();
    } else if (doing == Doing::redo && !undone.empty()) {
      done.push_back(undone.back()), undone.pop_back();
    } else if (doing == Doing::edit || doing == Doing::outside) {
      done.push_back(number), undone.clear();
    }
  }

  [[nodiscard]] Revision read(std::int64_t number) const {
    SQLite::Statement query(database,
                            "SELECT number, at, doing, sentence, target FROM revisions WHERE number = ?");
    query.bind(1, number);
    return query.executeStep() ? row(query) : Revision{};
  }

  [[nodiscard]] static Revision row(SQLite::Statement& query) {
    return {query.getColumn(0).getInt64(), query.getColumn(1).getInt64(),
            doing_of(query.getColumn(2).getString()), query.getColumn(3).getString(),
            query.getColumn(4).getInt64()};
  }

  Result<Done> prepare(Access access) {
    if (access == Access::write) {
      // A transaction is on disk when it ends (FULL), with a single sync; readers go on meanwhile.
      database.exec("PRAGMA journal_mode = WAL");
      database.exec("PRAGMA synchronous = FULL");
    }
    const int version = database.execAndGet("PRAGMA user_version").getInt();
    const int id = database.execAndGet("PRAGMA application_id").getInt();
    const bool blank =
        version == 0 && id == 0 && database.execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0;
    if (!blank && id != application_id)
      return Problem{ProblemCode::file_unreadable, file, "another program's database",
                     "a history of evencount"};
    if (version > newest_version)
      return Problem{ProblemCode::newer_format, file, fmt::format("version {}", version),
                     fmt::format("version {} or older", newest_version)};
    if (blank && access == Access::write) {
      SQLite::Transaction transaction(database);
      database.exec(schema);
      database.exec(fmt::format("PRAGMA application_id = {}", application_id));
      database.exec(fmt::format("PRAGMA user_version = {}", newest_version));
      transaction.commit();
    }
    if (blank && access == Access::read) return Done{};
    SQLite::Statement query(database, "SELECT number, doing FROM revisions ORDER BY number");
    while (query.executeStep()) {
      make_room();
      count(query.getColumn(0).getInt64(), doing_of(query.getColumn(1).getString()));
    }
    return Done{};
  }

  /// work(), or the problem it threw.
  template <typename Work>
  auto guarded(Work work) const -> decltype(work()) {
    try {
      return work();
    } catch (const SQLite::Exception& error) {
      return problem_of(error, file);
    }
  }
};

History::History(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
History::History(History&&) noexcept = default;
History& History::operator=(History&&) noexcept = default;
History::~History() = default;

Result<History> History::open(const std::string& file, Access access) {
  if (access == Access::write) {
    auto taken = take_lock(file);
    if (!taken) return taken.problem();
    Lock held = std::move(*taken);
    try {
      auto inside =
          std::make_unique<Inside>(file, std::move(held), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, file);
      if (auto ready = inside->prepare(access); !ready) return ready.problem();
      return History(std::move(inside));
    } catch (const SQLite::Exception& error) {
      return problem_of(error, file);
    }
  }
  // A reader may have to recover what a killed writer left, and so needs to write.
  const int flags = ::access(file.c_str(), W_OK) == 0 ? SQLite::OPEN_READWRITE : SQLite::OPEN_READONLY;
  std::error_code error;
  const bool nobody_has_it_open = !std::filesystem::exists(file + "-wal", error);
  auto opened = open_to_read(file, flags, file);
  if (opened || !nobody_has_it_open || opened.problem().code != ProblemCode::file_unwritable) return opened;
  // Where there is no room or no permission for SQLite's files beside it, it can still be read as one that doesn't change.
  auto unchanged = open_to_read(file, SQLite::OPEN_READONLY | SQLite::OPEN_URI, unchanging(file));
  return unchanged ? std::move(unchanged) : std::move(opened);
}

Result<History> History::open_to_read(const std::string& file, int flags, const std::string& address) {
  try {
    auto inside = std::make_unique<Inside>(file, Lock(), flags, address);
    if (auto ready = inside->prepare(Access::read); !ready) return ready.problem();
    return History(std::move(inside));
  } catch (const SQLite::Exception& error) {
    return problem_of(error, file);
  }
}

std::int64_t History::newest() const {
  return inside_->newest;
}

std::optional<Revision> History::undo_target() const {
  if (inside_->done.empty()) return std::nullopt;
  const auto found =
      inside_->guarded([&]() -> Result<Revision> { return inside_->read(inside_->done.back()); });
  return found ? std::optional(*found) : std::nullopt;
}

std::optional<Revision> History::redo_target() const {
  if (inside_->undone.empty()) return std::nullopt;
  const auto found =
      inside_->guarded([&]() -> Result<Revision> { return inside_->read(inside_->undone.back()); });
  return found ? std::optional(*found) : std::nullopt;
}

Result<Revision> History::add(Revision revision, const std::optional<project::Patch>& patch) {
  revision.number = inside_->newest + 1;
  if (!inside_->is_in_place())
    return Problem{ProblemCode::file_unwritable, inside_->file, "a history that another program deleted or replaced",
                   "it where it was, or the studio started again; nothing was changed"};
  inside_->make_room();
  return inside_->guarded([&]() -> Result<Revision> {
    SQLite::Statement insert(
        inside_->database,
        "INSERT INTO revisions (number, at, doing, sentence, target, patch) VALUES (?, ?, ?, ?, ?, ?)");
    insert.bind(1, revision.number);
    insert.bind(2, revision.at);
    insert.bind(3, std::string(doing_name(revision.doing)));
    insert.bind(4, revision.sentence);
    insert.bind(5, revision.target);
    if (patch)
      insert.bind(6, project::to_json(*patch));
    else
      insert.bind(6);
    insert.exec();  // a transaction of its own
    inside_->count(revision.number, revision.doing);
    return revision;
  });
}

Result<project::Patch> History::patch(std::int64_t number) const {
  return inside_->guarded([&]() -> Result<project::Patch> {
    const Revision revision = inside_->read(number);
    const bool turned = revision.doing == Doing::undo || revision.doing == Doing::redo;
    SQLite::Statement query(inside_->database,
                            "SELECT patch FROM revisions WHERE number = ? AND patch IS NOT NULL");
    query.bind(1, turned ? revision.target : number);
    if (!query.executeStep())
      return Problem{ProblemCode::not_found, inside_->file, fmt::format("revision {}", number),
                     "a revision of the history"};
    auto patch = project::parse_patch(query.getColumn(0).getString());
    if (!patch) return patch.problem().within(inside_->file);
    return revision.doing == Doing::undo ? project::inverse(*patch) : std::move(*patch);
  });
}

Result<std::vector<Revision>> History::list(std::int64_t before, int count) const {
  return inside_->guarded([&]() -> Result<std::vector<Revision>> {
    SQLite::Statement query(inside_->database,
                            "SELECT number, at, doing, sentence, target FROM revisions WHERE number < ? "
                            "ORDER BY number DESC LIMIT ?");
    query.bind(1, before);
    query.bind(2, count);
    std::vector<Revision> revisions;
    while (query.executeStep()) revisions.push_back(Inside::row(query));
    return revisions;
  });
}

Result<std::vector<KeptFile>> History::kept_files() const {
  return inside_->guarded([&]() -> Result<std::vector<KeptFile>> {
    std::vector<KeptFile> files;
    if (inside_->database.execAndGet("SELECT count(*) FROM sqlite_schema WHERE name = 'files'").getInt() == 0)
      return files;
    SQLite::Statement query(inside_->database, "SELECT revision, text FROM files ORDER BY revision DESC");
    while (query.executeStep())
      files.push_back({query.getColumn(0).getInt64(), query.getColumn(1).getString()});
    return files;
  });
}

Result<Done> History::keep_file(const KeptFile& file) {
  return inside_->guarded([&]() -> Result<Done> {
    SQLite::Statement insert(inside_->database,
                             "INSERT OR REPLACE INTO files (revision, text) VALUES (?, ?)");
    insert.bind(1, file.revision);
    insert.bindNoCopy(2, file.text);
    insert.exec();
    return Done{};
  });
}

Result<Done> History::forget_older_files() {
  return inside_->guarded([&]() -> Result<Done> {
    inside_->database.exec("DELETE FROM files WHERE revision < (SELECT max(revision) FROM files)");
    return Done{};
  });
}

std::string history_file(const std::string& project_file) {
  std::error_code error;
  const auto target = std::filesystem::weakly_canonical(project_file, error);
  std::string path = error ? project_file : target.string();
  if (path.ends_with(project_ending)) path.resize(path.size() - project_ending.size());
  return path + std::string(history_ending);
}

}  // namespace evencount::app::studio
