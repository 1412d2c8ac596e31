#include "project/pointer.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace evencount::project::json {
namespace {

std::string unescaped(std::string_view step) {
  std::string name;
  for (std::size_t i = 0; i < step.size(); ++i) {
    if (step[i] == '~' && i + 1 < step.size() && (step[i + 1] == '0' || step[i + 1] == '1'))
      name += step[++i] == '0' ? '~' : '/';
    else
      name += step[i];
  }
  return name;
}

auto find_member(Object& object, const std::string& name) {
  return std::find_if(object.begin(), object.end(),
                      [&](const Member& member) { return member.first == name; });
}

/// The value at one step, or nullptr.
Node* step_into(Node& node, std::string_view step) {
  if (auto* object = std::get_if<Object>(&node.value)) {
    const auto member = find_member(*object, unescaped(step));
    return member == object->end() ? nullptr : &member->second;
  }
  auto* array = std::get_if<Array>(&node.value);
  const auto index = parse_integer(step);
  if (!array || !index || *index < 0 || static_cast<std::size_t>(*index) >= array->size()) return nullptr;
  return &(*array)[static_cast<std::size_t>(*index)];
}

}  // namespace

Result<Done> put(Node& tree, std::string_view pointer, const std::optional<std::string>& before,
                 const std::optional<std::string>& after) {
  const Problem stale{ProblemCode::out_of_date, std::string(pointer), "something else than what was changed",
                      "the project as it was before"};
  if (!pointer.starts_with('/')) return stale;
  Node* outer = &tree;
  const auto steps = split(pointer.substr(1), '/');
  for (std::size_t i = 0; i + 1 < steps.size(); ++i)
    if (outer = step_into(*outer, steps[i]); !outer) return stale;
  Node* there = step_into(*outer, steps.back());
  if (static_cast<bool>(there) != before.has_value() || (there && to_compact_text(*there) != *before))
    return stale;
  auto* object = std::get_if<Object>(&outer->value);
  if ((!before || !after) && !object) return stale;
  if (!after) {
    if (there) object->erase(find_member(*object, unescaped(steps.back())));
    return Done{};
  }
  auto value = parse(*after);
  if (!value) return value.problem().within(pointer);
  if (there)
    *there = std::move(*value);
  else
    object->emplace_back(unescaped(steps.back()), std::move(*value));
  return Done{};
}

bool pointers_meet(std::string_view one, std::string_view other) {
  if (one.size() > other.size()) std::swap(one, other);
  return other.starts_with(one) && (other.size() == one.size() || other[one.size()] == '/');
}

}  // namespace evencount::project::json
