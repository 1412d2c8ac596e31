#include "app/studio/proofs.hpp"

namespace evencount::app::studio {

Proofs::Proof Proofs::of(const std::string& id, Session& session, const Make& make) {
  std::shared_ptr<Entry> entry;
  {
    const std::lock_guard lock(mutex_);
    std::shared_ptr<Entry>& there = entries_[id];
    if (!there) there = std::make_shared<Entry>();
    entry = there;
  }
  const std::lock_guard lock(entry->making);
  // Asked after the waiting, so that nobody makes what is out of date already.
  const State state = session.state();
  if (entry->project != state.project) {
    entry->text = make(*state.project);
    entry->project = state.project;  // held, so that no other project can come to lie at its address
  }
  return {entry->text, state.revision};
}

}  // namespace evencount::app::studio
