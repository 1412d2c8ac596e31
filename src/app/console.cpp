#include "app/console.hpp"

namespace evencount::app {

int Console::fail(const Problem& problem) const {
  err << "evencount: " << message(problem) << '\n';
  return problem_kind(problem.code).exit_status;
}

}  // namespace evencount::app
