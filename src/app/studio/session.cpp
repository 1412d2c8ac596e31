#include "app/studio/session.hpp"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>

#include "app/files.hpp"
#include "app/studio/recover.hpp"
#include "project/json.hpp"
#include "project/operation.hpp"

namespace evencount::app::studio {
namespace {

constexpr std::string_view outside_sentence = "changed by another program";

Problem out_of_date(std::int64_t made_on, std::int64_t now) {
  return {ProblemCode::out_of_date, "revision", fmt::format("revision {}", made_on),
          fmt::format("revision {}: the project has changed since", now)};
}

}  // namespace

Session::Session(std::string file, History history, Clock clock)
    : file_(std::move(file)), history_(std::move(history)), clock_(std::move(clock)) {}

Session::~Session() {
  try {
    // Not `save`: a file that was deleted and has not changed since stays deleted.
    take_in_outside();
    if (unreadable_.empty()) (void)save_locked();
  } catch (const std::exception&) {  // no memory: what isn't in the file is in the history
  }
}

Session::Stamp Session::stamp_of(const std::string& file) {
  struct stat status {};
  if (::stat(file.c_str(), &status) != 0) return {};
  return {status.st_mtim.tv_sec, status.st_mtim.tv_nsec, status.st_size,
          status.st_ctim.tv_sec, status.st_ctim.tv_nsec, status.st_ino};
}

Result<std::unique_ptr<Session>> Session::open(const std::string& file, Clock clock) {
  const Stamp stamp = stamp_of(file);
  auto text = read_file(file);
  if (!text) return text.problem();
  // A file that can't be opened leaves no history behind.
  if (auto readable = project::parse_project(*text); !readable) return readable.problem().within(file);
  auto history = History::open(history_file(file), History::Access::write);
  if (!history) return history.problem();
  auto recovered = recover(*history, *text);
  if (!recovered) return recovered.problem().within(file);
  std::unique_ptr<Session> session(new Session(file, std::move(*history), std::move(clock)));
  session->stamp_ = stamp;
  session->project_ = std::make_shared<const project::Project>(std::move(recovered->project));
  if (recovered->outside) {
    const auto added = session->history_.add(
        {0, session->clock_(), Doing::outside, std::string(outside_sentence), 0}, recovered->outside);
    if (!added) return added.problem();
  }
  session->written_ = std::move(*text);
  if (recovered->file_lags) {
    (void)session->save_locked();  // it is in the history in any case
    return session;
  }
  session->written_revision_ = session->history_.newest();
  if (auto kept = session->history_.keep_file({*session->written_revision_, session->written_}); !kept)
    return kept.problem();
  if (auto forgot = session->history_.forget_older_files(); !forgot) return forgot.problem();
  return session;
}

void Session::on_change(std::function<void(std::int64_t)> listener) {
  const std::lock_guard lock(mutex_);
  listener_ = std::move(listener);
}

std::int64_t Session::revision() const {
  const std::lock_guard lock(mutex_);
  return history_.newest();
}

bool Session::is_saved() const {
  const std::lock_guard lock(mutex_);
  return written_revision_ == history_.newest();
}

std::string Session::undo_sentence() const {
  const auto target = history_.undo_target();
  return target ? target->sentence : "";
}

std::string Session::redo_sentence() const {
  const auto target = history_.redo_target();
  return target ? target->sentence : "";
}

State Session::state() {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  return {project_, history_.newest(), undo_sentence(), redo_sentence(),
          unreadable_.empty() ? unwritten_ : unreadable_};
}

/// The change is made; whoever can't be told of it for want of memory hears of the next.
void Session::tell(std::int64_t revision) const {
  try {
    if (listener_) listener_(revision);
  } catch (const std::bad_alloc&) {
  }
}

Result<Accepted> Session::accept(Revision revision, const project::Patch& patch, project::Project next) {
  const bool own_patch = revision.doing == Doing::edit || revision.doing == Doing::outside;
  revision.at = clock_();
  // Whatever may want memory comes before the change is in the history: state and history are of one revision also without any.
  auto changed = std::make_shared<const project::Project>(std::move(next));
  Accepted accepted{0, revision.sentence, project::to_json(patch), "", ""};
  auto added = history_.add(std::move(revision), own_patch ? std::optional(patch) : std::nullopt);
  if (!added) return added.problem();
  project_ = std::move(changed);
  tell(added->number);
  accepted.revision = added->number;
  accepted.undo = undo_sentence(), accepted.redo = redo_sentence();
  return accepted;
}

/// The operation's patch on the project as its maker saw it, when it can be put on top of all that came since.
Result<project::Patch> Session::on_top(std::int64_t made_on, std::string_view operation,
                                       std::string& sentence) {
  const std::int64_t now = history_.newest();
  if (made_on < 0 || made_on > now || now - made_on > most_steps) return out_of_date(made_on, now);
  project::Project seen = *project_;
  std::vector<project::Patch> since;
  for (std::int64_t number = now; number > made_on; --number) {
    auto patch = history_.patch(number);
    if (!patch) return patch.problem();
    auto before = project::apply(seen, project::inverse(*patch));
    if (!before) return before.problem();
    seen = std::move(*before);
    since.push_back(std::move(*patch));
  }
  auto applied = project::apply_operation(seen, operation);
  if (!applied) return applied.problem();
  sentence = std::move(applied->sentence);
  project::Patch patch = project::diff(seen, applied->project);
  for (const project::Patch& other : since)
    if (!project::independent(patch, other)) return out_of_date(made_on, now);
  return patch;
}

Result<Session::Prepared> Session::prepare(std::int64_t made_on, std::string_view operation) {
  Prepared made;
  if (made_on == history_.newest()) {
    auto applied = project::apply_operation(*project_, operation);
    if (!applied) return applied.problem();
    made.sentence = std::move(applied->sentence);
    made.patch = project::diff(*project_, applied->project);
    made.next = std::move(applied->project);
    return made;
  }
  auto patch = on_top(made_on, operation, made.sentence);
  if (!patch) return patch.problem();
  made.patch = std::move(*patch);
  auto applied = project::apply(*project_, made.patch);
  if (!applied) return out_of_date(made_on, history_.newest());
  made.next = std::move(*applied);
  return made;
}

Result<Accepted> Session::operate(std::int64_t made_on, std::string_view operation) {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  auto made = prepare(made_on, operation);
  if (!made) return made.problem();
  if (made->patch.empty())
    return Accepted{history_.newest(), std::move(made->sentence), project::to_json(made->patch),
                    undo_sentence(), redo_sentence()};
  return accept({0, 0, Doing::edit, std::move(made->sentence), 0}, made->patch, std::move(made->next));
}

Result<Previewed> Session::preview(std::int64_t made_on, std::string_view operation) {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  auto made = prepare(made_on, operation);
  if (!made) return made.problem();
  return Previewed{history_.newest(), std::move(made->sentence), project::to_json(made->patch)};
}

Result<Accepted> Session::go_back_or_forth(std::int64_t made_on, Doing doing) {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  if (made_on != history_.newest()) return out_of_date(made_on, history_.newest());
  const auto target = doing == Doing::undo ? history_.undo_target() : history_.redo_target();
  if (!target)
    return Problem{ProblemCode::not_found, std::string(doing_name(doing)),
                   fmt::format("nothing to {}", doing_name(doing)), "a change"};
  auto patch = history_.patch(target->number);
  if (!patch) return patch.problem();
  if (doing == Doing::undo) patch = project::inverse(*patch);
  auto next = project::apply(*project_, *patch);
  if (!next) return next.problem();
  return accept({0, 0, doing, target->sentence, target->number}, *patch, std::move(*next));
}

Result<Accepted> Session::undo(std::int64_t made_on) {
  return go_back_or_forth(made_on, Doing::undo);
}

Result<Accepted> Session::redo(std::int64_t made_on) {
  return go_back_or_forth(made_on, Doing::redo);
}

Result<std::vector<Step>> Session::steps_after(std::int64_t revision) {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  const std::int64_t last = std::min(history_.newest(), revision + most_steps);
  if (revision < 0 || revision > history_.newest())
    return Problem{ProblemCode::not_found, "after", fmt::format("revision {}", revision),
                   fmt::format("0 to {}", history_.newest())};
  auto revisions = history_.list(last + 1, static_cast<int>(last - revision));
  if (!revisions) return revisions.problem();
  std::vector<Step> steps;
  for (auto there = revisions->rbegin(); there != revisions->rend(); ++there) {
    const auto patch = history_.patch(there->number);
    if (!patch) return patch.problem();
    steps.push_back({*there, project::to_json(*patch)});
  }
  return steps;
}

Result<std::vector<Revision>> Session::list(std::int64_t before, int count) {
  const std::lock_guard lock(mutex_);
  return history_.list(before, count);
}

/// Looks whether the file is still the one that we know; what another program wrote becomes a change.
void Session::take_in_outside() {
  const Stamp stamp = stamp_of(file_);
  if (stamp == stamp_) return;
  auto text = read_file(file_);
  gone_ = !text && text.problem().code == ProblemCode::file_not_found;
  if (gone_) {
    unreadable_.clear();
    unwritten_ = message(text.problem());
    return;
  }
  const Result<Done> taken = text ? take_in(std::move(*text)) : Result<Done>(text.problem());
  unreadable_ = taken ? "" : message(taken.problem());
  if (taken) stamp_ = stamp;
}

Result<Done> Session::take_in(std::string text) {
  if (text == written_) return Done{};
  auto theirs = project::parse_project(text);
  if (!theirs) return theirs.problem().within(file_);
  const auto base = project::parse_project(written_);
  if (!base) return base.problem().within(file_);
  Recovered both = merged(*base, *project_, std::move(*theirs));
  if (both.outside)
    if (auto accepted = accept({0, 0, Doing::outside, std::string(outside_sentence), 0}, *both.outside,
                               std::move(both.project));
        !accepted)
      return accepted.problem();
  // Written again at once: the history must know the file's text, and the file what it lacks of ours.
  written_ = std::move(text), written_revision_.reset();
  return save_locked();
}

Result<Done> Session::save() {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  if (!unreadable_.empty())
    return Problem{ProblemCode::file_unwritable, file_,
                   "a file that another program wrote and that can't be read", unreadable_};
  if (gone_) written_revision_.reset();
  return save_locked();
}

void Session::tend(std::int64_t now_ms, std::int64_t patience_ms) {
  const std::lock_guard lock(mutex_);
  take_in_outside();
  if (seen_revision_ != history_.newest()) seen_revision_ = history_.newest(), seen_at_ = now_ms;
  if (unreadable_.empty() && now_ms - seen_at_ >= patience_ms) (void)save_locked();
}

Result<Done> Session::save_locked() {
  const std::int64_t revision = history_.newest();
  if (written_revision_ == revision) return Done{};
  const auto written = write_out(revision, project::to_json(*project_));
  unwritten_ = written ? "" : message(written.problem());
  return written;
}

Result<Done> Session::write_out(std::int64_t revision, std::string text) {
  // First what is about to be there, so that whatever the file holds after a kill is known for ours.
  if (auto kept = history_.keep_file({revision, text}); !kept) return kept;
  if (auto written = write_file(file_, text); !written) return written;
  const Stamp stamp = stamp_of(file_);
  const auto there = read_file(file_);
  // Another program may have been quicker than the look at the file: then it is looked at again.
  stamp_ = there && *there == text ? stamp : Stamp{};
  written_ = std::move(text), written_revision_ = revision, gone_ = false;
  return history_.forget_older_files();
}

}  // namespace evencount::app::studio
