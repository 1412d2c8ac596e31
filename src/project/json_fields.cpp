#include "project/json_fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace evencount::project::json {
namespace {

std::optional<double> value_of(const Node& node) {
  const auto* number = node.as<Number>();
  return number ? parse_number(number->digits) : std::nullopt;
}

double read_number(const Node& node, const Place& place, Report& report, double least, double most) {
  const std::string expected = fmt::format("a number from {} to {}", least, most);
  const auto value = value_of(node);
  if (!value) {
    report.add(ProblemCode::wrong_type, place, describe(node), expected);
    return least;
  }
  if (*value < least || *value > most) {
    report.add(ProblemCode::out_of_range, place, node.as<Number>()->digits, expected);
    return least;
  }
  return *value;
}

std::int64_t read_whole(const Node& node, const Place& place, Report& report, std::int64_t least,
                        std::int64_t most) {
  const std::string expected = fmt::format("a whole number from {} to {}", least, most);
  const auto value = value_of(node);
  if (!value || *value != std::floor(*value)) {
    report.add(ProblemCode::wrong_type, place, describe(node), expected);
    return least;
  }
  if (*value < static_cast<double>(least) || *value > static_cast<double>(most)) {
    report.add(ProblemCode::out_of_range, place, node.as<Number>()->digits, expected);
    return least;
  }
  return static_cast<std::int64_t>(*value);
}

/// The first control character that text for people can't hold.
std::optional<int> control_character(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if ((c < 0x20 && c != '\n' && c != '\t') || c == 0x7F) return c;
    // U+0080 to U+009F, the second set of controls, is C2 80 to C2 9F in UTF-8.
    if (c == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0)
      return static_cast<unsigned char>(text[i + 1]);
  }
  return std::nullopt;
}

}  // namespace

std::string Place::pointer() const {
  if (!outer_) return "";
  return outer_->pointer() + (name_.empty() ? fmt::format("/{}", index_) : pointer_step(name_));
}

void Report::add(ProblemCode code, const Place& place, std::string found, std::string expected) {
  if (!failed()) problem_ = Problem{code, place.pointer(), std::move(found), std::move(expected)};
}

void Report::add(const Problem& problem, const Place& place) {
  if (failed()) return;
  problem_ = problem;
  problem_->where = place.pointer();
  // Which part of a notation it was stays with what was found, so that the place remains a plain pointer.
  std::string_view part = problem.where;
  const auto named = [&](std::string_view prefix) { return part.substr(0, prefix.size()) == prefix; };
  if (named("form")) part.remove_prefix(named("form: ") ? 6 : 4);
  if (!part.empty() && part != place.name()) problem_->found += fmt::format(" ({})", part);
}

std::string describe(const Node& node) {
  if (const auto* text = node.as<std::string>()) {
    std::string marked = quote(*text);
    marked.front() = marked.back() = '"';
    return marked + " (text)";
  }
  if (const auto* number = node.as<Number>()) {
    constexpr std::size_t longest = 30;
    return number->digits.substr(0, longest) + (number->digits.size() > longest ? "…" : "") + " (a number)";
  }
  if (const auto* truth = node.as<bool>()) return *truth ? "true" : "false";
  if (node.as<Array>()) return "a list";
  return node.as<Object>() ? "an object" : "null";
}

std::string read_text(const Node& node, const Place& place, Report& report) {
  const auto* text = node.as<std::string>();
  if (!text) {
    report.add(ProblemCode::wrong_type, place, describe(node), "text");
    return {};
  }
  if (text->size() > longest_text) {
    report.add(ProblemCode::out_of_range, place, fmt::format("a text of {} bytes", text->size()),
               fmt::format("at most {}", longest_text));
    return {};
  }
  if (const auto control = control_character(*text)) {
    report.add(ProblemCode::bad_text, place, fmt::format("the control character U+{:04X}", *control),
               "text with no control characters but line feeds and tabs");
    return {};
  }
  return *text;
}

Fields::Fields(const Node& node, const Place& place, Report& report)
    : object_(node.as<Object>()), place_(place), report_(report) {
  if (!object_) report_.add(ProblemCode::wrong_type, place_, describe(node), "an object");
}

const Node* Fields::find(std::string_view name) {
  known_.push_back(name);
  if (!object_ || report_.failed()) return nullptr;
  const auto member =
      std::find_if(object_->begin(), object_->end(), [&](const Member& m) { return m.first == name; });
  return member == object_->end() ? nullptr : &member->second;
}

const Node* Fields::require(std::string_view name) {
  const Node* node = find(name);
  if (!node) report_.add(ProblemCode::missing_field, place_of(name), "nothing", "this field");
  return node;
}

bool Fields::has(std::string_view name) {
  return find(name) != nullptr;
}

std::string Fields::text(std::string_view name) {
  const Node* node = require(name);
  return node ? read_text(*node, place_of(name), report_) : std::string();
}

double Fields::number(std::string_view name, double least, double most) {
  const Node* node = require(name);
  return node ? read_number(*node, place_of(name), report_, least, most) : least;
}

std::int64_t Fields::whole(std::string_view name, std::int64_t least, std::int64_t most) {
  const Node* node = require(name);
  return node ? read_whole(*node, place_of(name), report_, least, most) : least;
}

std::string Fields::text_or(std::string_view name, std::string_view otherwise) {
  const Node* node = find(name);
  return node ? read_text(*node, place_of(name), report_) : std::string(otherwise);
}

double Fields::number_or(std::string_view name, double least, double most, double otherwise) {
  const Node* node = find(name);
  return node ? read_number(*node, place_of(name), report_, least, most) : otherwise;
}

std::int64_t Fields::whole_or(std::string_view name, std::int64_t least, std::int64_t most,
                              std::int64_t otherwise) {
  const Node* node = find(name);
  return node ? read_whole(*node, place_of(name), report_, least, most) : otherwise;
}

void Fields::each(std::string_view name, std::size_t most, bool required,
                  const std::function<void(const Node&, const Place&)>& read) {
  const Node* node = required ? require(name) : find(name);
  if (!node) return;
  const Place place = place_of(name);
  const auto* items = node->as<Array>();
  if (!items) return report_.add(ProblemCode::wrong_type, place, describe(*node), "a list");
  if (items->size() > most)
    return report_.add(ProblemCode::out_of_range, place, fmt::format("{} items", items->size()),
                       fmt::format("at most {}", most));
  for (std::size_t i = 0; i < items->size() && !report_.failed(); ++i) read((*items)[i], place.item(i));
}

std::vector<std::string> Fields::texts(std::string_view name, std::size_t most) {
  std::vector<std::string> all;
  each(name, most, false,
       [&](const Node& item, const Place& place) { all.push_back(read_text(item, place, report_)); });
  return all;
}

UnknownFields Fields::unknown() const {
  UnknownFields fields;
  if (!object_ || report_.failed()) return fields;
  for (const Member& member : *object_)
    if (std::find(known_.begin(), known_.end(), member.first) == known_.end())
      fields.emplace(member.first, to_compact_text(member.second));
  return fields;
}

std::string one_of(const std::vector<std::string>& names) {
  if (names.empty()) return "one of the project's (it has none)";
  constexpr std::size_t most_listed = 30;
  std::string list = "one of ";
  for (std::size_t i = 0; i < std::min(names.size(), most_listed); ++i)
    list += (i > 0 ? ", " : "") + names[i];
  return list + (names.size() > most_listed ? ", …" : "");
}

}  // namespace evencount::project::json
