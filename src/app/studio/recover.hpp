#pragma once
/// A project as its file and its history have it together.
///
/// Properties (tests/app/studio/session_test.cpp):
///  (1) a file that lags behind its history is brought up to it
///  (2) a file that another program changed keeps that change; edits that are only in the history stay where the change leaves room

#include "app/studio/history.hpp"

namespace evencount::app::studio {

struct Recovered {
  project::Project project;
  /// What the history has not: another program's change of the file, from the history's newest revision on.
  std::optional<project::Patch> outside;
  bool file_lags = false;  ///< the file holds less than the history
};

/// `text` is the file's. Errors: those of parse_project and the history's.
[[nodiscard]] Result<Recovered> recover(const History& history, const std::string& text);

/// The project at the history's newest revision, and what another program's file makes of it.
[[nodiscard]] Recovered merged(const project::Project& base, const project::Project& now,
                               project::Project theirs);

}  // namespace evencount::app::studio
