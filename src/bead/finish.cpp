#include "bead/finish.hpp"

#include "base/text.hpp"

namespace evencount::bead {

std::string_view finish_name(Finish finish) {
  switch (finish) {
    case Finish::opaque:
      return "opaque";
    case Finish::transparent:
      return "transparent";
    case Finish::lined:
      return "lined";
    case Finish::metallic:
      return "metallic";
    case Finish::galvanised:
      return "galvanised";
    case Finish::matte:
      return "matte";
    case Finish::lustre:
      return "lustre";
    case Finish::pearl:
      return "pearl";
    case Finish::rainbow:
      return "rainbow";
  }
  return "opaque";
}

Result<Finish> parse_finish(std::string_view name) {
  std::string known;
  for (const Finish finish : finishes) {
    if (name == finish_name(finish)) return finish;
    known += (known.empty() ? "one of " : ", ") + std::string(finish_name(finish));
  }
  return Problem{ProblemCode::unknown_name, "", quote(name), known};
}

}  // namespace evencount::bead
