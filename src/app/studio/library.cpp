#include "app/studio/library.hpp"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "app/files.hpp"
#include "app/project_file.hpp"
#include "base/text.hpp"
#include "project/json.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".evencount.json";
constexpr std::chrono::milliseconds between_looks{250};
constexpr std::chrono::milliseconds between_tries{10};
constexpr int most_looks = 100;
constexpr std::string_view bin_name = ".bin";
/// What SQLite may have beside the file itself.
constexpr const char* history_parts[] = {"", "-wal", "-shm"};

/// Whether an id could be a file's name here: no folders, nothing hidden, no control characters.
bool is_plain(const std::string& id) {
  if (id.empty() || id.size() > longest_id || id.front() == '.' || !is_utf8(id)) return false;
  return std::none_of(id.begin(), id.end(), [](char c) {
    return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
  });
}

/// A file's name for a title: small letters and digits, what else there is becomes a dash.
std::string id_for(const std::string& title) {
  constexpr std::size_t longest = 60;
  std::string id;
  for (const char c : lower_ascii(title)) {
    const bool kept =
        (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
    if (kept)
      id += c;
    else if (!id.empty() && id.back() != '-')
      id += '-';
  }
  while (id.size() > longest) {
    do id.pop_back();
    while (!id.empty() && (static_cast<unsigned char>(id.back()) & 0xC0) == 0x80);
    if (!is_utf8(id)) id.pop_back();
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return is_plain(id) ? id : "project";
}

/// A file that isn't there is no error.
void move_into(const fs::path& folder, const fs::path& file, std::error_code& error) {
  std::error_code missing;
  if (fs::exists(file, missing)) fs::rename(file, folder / file.filename(), error);
}

std::int64_t changed_at(const fs::path& path) {
  std::error_code error;
  const auto time = fs::last_write_time(path, error);
  if (error) return 0;
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::file_clock::to_sys(time).time_since_epoch())
      .count();
}

std::int64_t steady_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// What shows that a project's file or its history was changed; times may also have gone back.
Library::Marks marks_of(const std::string& path) {
  Library::Marks marks;
  for (const std::string& file : {path, history_file(path)}) {
    struct stat status {};
    if (::stat(file.c_str(), &status) != 0) status = {};
    for (const timespec& time : {status.st_mtim, status.st_ctim}) marks.push_back(time.tv_sec), marks.push_back(time.tv_nsec);
    marks.push_back(status.st_size), marks.push_back(static_cast<std::int64_t>(status.st_ino));
  }
  return marks;
}

Problem unknown(const std::string& id) {
  return {ProblemCode::not_found, "project", quote(id), "a project of this folder"};
}

}  // namespace

Library::Library(LibraryFolders folders, Clock clock, Listener listener)
    : folders_(std::move(folders)),
      clock_(std::move(clock)),
      listener_(std::move(listener)),
      tender_([this] { tend(); }) {}

Result<std::unique_ptr<Library>> Library::open(LibraryFolders folders, Clock clock, Listener listener) {
  std::error_code error;
  fs::create_directories(folders.projects, error);
  const fs::path real = fs::canonical(folders.projects, error);
  if (error)
    return Problem{ProblemCode::file_unwritable, folders.projects, error.message(), "a folder for projects"};
  folders.projects = real.string();
  return std::unique_ptr<Library>(new Library(std::move(folders), std::move(clock), std::move(listener)));
}

Library::~Library() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
  }
  closing_changed_.notify_all();
  tender_.join();
}

void Library::tend() {
  std::unique_lock lock(mutex_);
  while (!closing_changed_.wait_for(lock, between_looks, [this] { return closing_; })) {
    try {
      tend_each(lock);
    } catch (const std::exception&) {  // no memory: it is tried again soon
      if (!lock.owns_lock()) lock.lock();
    }
  }
}

/// One after the other, so that no more than one is held.
void Library::tend_each(std::unique_lock<std::mutex>& lock) {
  std::vector<std::string> ids;
  for (const auto& [id, session] : open_) ids.push_back(id);
  for (const std::string& id : ids) {
    const auto found = open_.find(id);
    if (found == open_.end()) continue;
    const std::shared_ptr<Session> session = found->second;
    lock.unlock();
    session->tend(steady_ms(), save_after_ms);
    lock.lock();
  }
}

Result<std::string> Library::path_of(const std::string& folder, const std::string& id) const {
  if (!is_plain(id)) return unknown(id);
  std::error_code error;
  const fs::path root = fs::canonical(folder, error);
  const fs::path real = fs::canonical(root / (id + std::string(ending)), error);
  // A link's target, too, must be a project's file by its name: the name is its id.
  if (error || real.parent_path() != root || !fs::is_regular_file(real, error) || !real.filename().string().ends_with(ending))
    return unknown(id);
  return real.string();
}

std::optional<std::string> Library::id_of(const std::string& file) const {
  std::error_code error;
  const fs::path real = fs::weakly_canonical(file, error);
  const std::string name = real.filename().string();
  if (error || real.parent_path() != folders_.projects || !name.ends_with(ending)) return std::nullopt;
  return name.substr(0, name.size() - ending.size());
}

std::vector<Listed> Library::list_folder(const std::string& folder) {
  std::vector<Listed> listed;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(ending)) continue;
    const std::string id = name.substr(0, name.size() - ending.size());
    const auto path = path_of(folder, id);
    if (!path) continue;
    const std::int64_t changed = std::max(changed_at(*path), changed_at(history_file(*path)));
    Marks marks = marks_of(*path);
    {
      const std::lock_guard lock(mutex_);
      if (const auto known = known_.find(*path); known != known_.end() && known->second.marks == marks) {
        listed.push_back(known->second.listed);
        continue;
      }
    }
    Listed now{id, "", changed, 0, ""};
    if (const auto project = load_project(*path))
      now.title = project->title, now.bands = static_cast<int>(project->bands.size());
    else
      now.problem = message(project.problem());
    const std::lock_guard lock(mutex_);
    known_[*path] = {std::move(marks), now};
    listed.push_back(std::move(now));
  }
  std::sort(listed.begin(), listed.end(), [](const Listed& a, const Listed& b) { return a.id < b.id; });
  return listed;
}

std::vector<Listed> Library::list() {
  return list_folder(folders_.projects);
}

std::vector<Listed> Library::examples() {
  return folders_.examples.empty() ? std::vector<Listed>{} : list_folder(folders_.examples);
}

Result<std::shared_ptr<Session>> Library::session(const std::string& asked) {
  const auto path = path_of(folders_.projects, asked);
  const std::lock_guard lock(mutex_);
  if (!path) {
    // An open one goes on when its file is gone: it is written again.
    const auto still = open_.find(asked);
    return still == open_.end() ? Result<std::shared_ptr<Session>>(path.problem()) : still->second;
  }
  const std::string id = *id_of(*path);  // a link's target
  std::erase(recent_, id);
  recent_.push_back(id);
  if (const auto found = open_.find(id); found != open_.end()) return found->second;
  if (open_.size() >= most_open) {
    // Those that nobody uses just now are saved and closed, the longest unused first.
    const auto idle = std::find_if(recent_.begin(), recent_.end(), [this](const std::string& other) {
      const auto there = open_.find(other);
      return there != open_.end() && there->second.use_count() == 1;
    });
    if (idle == recent_.end())
      return Problem{ProblemCode::too_many, "project", fmt::format("{} open projects", open_.size()),
                     "fewer at once"};
    open_.erase(*idle), recent_.erase(idle);
  }
  auto opened = Session::open(*path, clock_);
  if (!opened) return opened.problem();
  std::shared_ptr<Session> session = std::move(*opened);
  session->on_change([this, id](std::int64_t revision) { listener_(id, revision); });
  open_[id] = session;
  return session;
}

Result<std::string> Library::create(const project::Project& project) {
  constexpr int most_tries = 1'000;
  const std::string wanted = id_for(project.title);
  const std::lock_guard lock(mutex_);
  for (int i = 1; i <= most_tries; ++i) {
    std::string id = i == 1 ? wanted : fmt::format("{}-{}", wanted, i);
    const std::string path = folders_.projects + "/" + id + std::string(ending);
    std::error_code error;
    if (fs::exists(fs::symlink_status(path, error)) || fs::exists(history_file(path), error)) continue;
    if (auto saved = save_project(path, project); !saved) return saved.problem();
    listener_(id, 0);
    return id;
  }
  return Problem{ProblemCode::in_use, "project", quote(wanted), "a title with a free file name"};
}

Result<project::Project> Library::example(const std::string& id) {
  const auto path = path_of(folders_.examples, id);
  if (!path) return Problem{ProblemCode::not_found, "example", quote(id), "one of the examples"};
  return load_project(*path);
}

Result<std::string> Library::remove(const std::string& asked) {
  const auto path = path_of(folders_.projects, asked);
  if (!path) return path.problem();
  const std::string id = *id_of(*path);
  std::unique_lock lock(mutex_);
  if (const auto found = open_.find(id); found != open_.end()) {
    // A moment's patience: it may just be looked after.
    const auto unused = [this, &id] {
      const auto there = open_.find(id);
      return there == open_.end() || there->second.use_count() == 1;
    };
    for (int look = 0; look < most_looks && !unused(); ++look) {
      lock.unlock();
      std::this_thread::sleep_for(between_tries);
      lock.lock();
    }
    if (!unused())
      return Problem{ProblemCode::in_use, "project", quote(id),
                     "a project that nothing is being done to"};
    open_.erase(id);  // saves and closes it
  }
  const fs::path bins = fs::path(folders_.projects) / bin_name;
  std::error_code error;
  fs::create_directories(bins, error);
  // A name of its own: a clock that was set back may show the same time twice.
  std::int64_t time = clock_();
  while (!error && !fs::create_directory(bins / fmt::format("{}-{}", id, time), error)) ++time;
  const std::string binned = fmt::format("{}-{}", id, time);
  const fs::path bin = bins / binned;
  if (!error) fs::rename(*path, bin / fs::path(*path).filename(), error);
  if (error) {
    std::error_code ignored;
    fs::remove(bin, ignored);
    return Problem{ProblemCode::file_unwritable, *path, error.message(),
                   "a project that can be moved; nothing was changed"};
  }
  for (const char* part : history_parts) move_into(bin, history_file(*path) + part, error);
  listener_(id, 0);
  return binned;
}

Result<std::string> Library::restore(const std::string& binned) {
  const auto end = binned.rfind('-');
  const fs::path bin = fs::path(folders_.projects) / bin_name / binned;
  const Problem none{ProblemCode::not_found, "bin", quote(binned),
                     "a project that was moved to the bin"};
  std::error_code error;
  if (end == std::string::npos || !is_plain(binned) || !fs::is_directory(fs::symlink_status(bin, error)))
    return none;
  const std::string id = binned.substr(0, end);
  const fs::path file = bin / (id + std::string(ending)),
                 back = fs::path(folders_.projects) / file.filename();
  if (!fs::is_regular_file(fs::symlink_status(file, error))) return none;
  const std::lock_guard lock(mutex_);
  if (fs::exists(fs::symlink_status(back, error)) || fs::exists(history_file(back.string()), error))
    return Problem{ProblemCode::in_use, "project", quote(id), "a name that no project has"};
  // The history first: a project without it would begin another one.
  for (const char* part : history_parts)
    if (!error) move_into(folders_.projects, history_file(file.string()) + part, error);
  if (!error) fs::rename(file, back, error);
  if (error)
    return Problem{ProblemCode::file_unwritable, back.string(), error.message(),
                   "a folder that can be written"};
  fs::remove(bin, error);
  listener_(id, 0);
  return id;
}

std::vector<std::pair<std::string, std::int64_t>> Library::revisions() {
  std::map<std::string, std::shared_ptr<Session>> open;
  {
    const std::lock_guard lock(mutex_);
    open = open_;
  }
  std::vector<std::pair<std::string, std::int64_t>> revisions;
  for (const auto& [id, session] : open) revisions.emplace_back(id, session->revision());
  return revisions;
}

}  // namespace evencount::app::studio
