#pragma once
/// The proof of each open project, made once for each state of it and by one thread at a time.
///
/// A proof takes longer than an edit. A page that asks anew with every change calls the question before off, but what was begun here goes
/// on; without this, a row of quick edits would leave a row of proofs in the making and none done.

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "app/studio/session.hpp"

namespace evencount::app::studio {

class Proofs {
 public:
  using Make = std::function<std::string(const project::Project&)>;

  struct Proof {
    std::string text;
    std::int64_t revision = 0;
  };

  /// What `make` says of the newest state: of those who wait for a proof that is being made, the first makes the next one for all.
  [[nodiscard]] Proof of(const std::string& id, Session& session, const Make& make);

 private:
  struct Entry {
    std::mutex making;
    std::shared_ptr<const project::Project> project;
    std::string text;
  };

  std::mutex mutex_;
  std::map<std::string, std::shared_ptr<Entry>> entries_;  ///< by project
};

}  // namespace evencount::app::studio
