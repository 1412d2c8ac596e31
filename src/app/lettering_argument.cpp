#include "app/lettering_argument.hpp"

#include "base/text.hpp"

namespace evencount::app {

Result<picture::LetteringStyle> lettering_style(const std::string& alphabet, const std::string& running) {
  using picture::AlphabetName, picture::Running;
  picture::LetteringStyle style;
  if (alphabet == "three")
    style.alphabet = AlphabetName::three_columns;
  else if (alphabet != "five")
    return Problem{ProblemCode::bad_usage, "alphabet", quote(alphabet), "five or three"};
  if (running == "down")
    style.running = Running::down;
  else if (running == "up")
    style.running = Running::up;
  else if (running != "across")
    return Problem{ProblemCode::bad_usage, "running", quote(running), "across, down or up"};
  return style;
}

std::string with_line_breaks(std::string text) {
  for (auto at = text.find("\\n"); at != std::string::npos; at = text.find("\\n", at + 1))
    text.replace(at, 2, "\n");
  return text;
}

}  // namespace evencount::app
