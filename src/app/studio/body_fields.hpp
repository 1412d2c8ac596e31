#pragma once
/// Reading a request's JSON object field by field; the first problem sticks, and fields that nobody asked for are refused.

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "app/json_text.hpp"
#include "base/result.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {

class BodyFields {
 public:
  explicit BodyFields(const Json& body) : body_(body) {
    if (!body.is_object()) refuse("", "an object");
  }

  [[nodiscard]] const Json* find(const std::string& name) {
    known_.push_back(name);
    if (problem_ || !body_.is_object()) return nullptr;
    const auto found = body_.find(name);
    return found == body_.end() ? nullptr : &*found;
  }
  [[nodiscard]] std::string text(const std::string& name, const std::string& otherwise = "") {
    const Json* value = find(name);
    if (!value) return otherwise;
    if (value->is_string()) return value->get<std::string>();
    refuse(name, "text");
    return otherwise;
  }
  [[nodiscard]] bool flag(const std::string& name) {
    const Json* value = find(name);
    if (value && !value->is_boolean()) refuse(name, "true or false");
    return value && value->is_boolean() && value->get<bool>();
  }
  [[nodiscard]] double real(const std::string& name, double least, double most, double otherwise) {
    const Json* value = find(name);
    if (!value) return otherwise;
    if (value->is_number() && value->get<double>() >= least && value->get<double>() <= most)
      return value->get<double>();
    refuse(name, fmt::format("a number from {} to {}", least, most));
    return otherwise;
  }
  [[nodiscard]] std::optional<int> whole(const std::string& name, int least, int most) {
    const Json* value = find(name);
    if (!value) return std::nullopt;
    if (value->is_number_integer() && value->get<double>() >= least && value->get<double>() <= most)
      return value->get<int>();
    refuse(name, fmt::format("a whole number from {} to {}", least, most));
    return std::nullopt;
  }
  [[nodiscard]] std::vector<std::string> texts(const std::string& name) {
    std::vector<std::string> list;
    const Json* value = find(name);
    if (value && !value->is_array()) refuse(name, "a list of texts");
    if (!value || !value->is_array()) return list;
    for (const Json& item : *value) {
      if (!item.is_string()) return refuse(name, "a list of texts"), list;
      list.push_back(item.get<std::string>());
    }
    return list;
  }

  void refuse(const std::string& name, std::string expected) {
    if (problem_) return;
    const Json* value = name.empty()                                ? &body_
                        : body_.is_object() && body_.contains(name) ? &body_[name]
                                                                    : nullptr;
    const ProblemCode code = value ? ProblemCode::wrong_type : ProblemCode::missing_field;
    problem_ = Problem{code, name.empty() ? "body" : "/" + name, value ? quote(value->dump()) : "nothing",
                       std::move(expected)};
  }
  /// Whether all is well so far, and nothing else is in it.
  [[nodiscard]] Result<Done> finish() {
    if (!problem_)
      for (const auto& [name, value] : body_.items())
        if (std::find(known_.begin(), known_.end(), name) == known_.end())
          return Problem{ProblemCode::unknown_name, "/" + name, "a field that is not known here",
                         "the fields of docs/openapi.yaml"};
    return problem_ ? Result<Done>(*problem_) : Done{};
  }

 private:
  const Json& body_;
  std::vector<std::string> known_;
  std::optional<Problem> problem_;
};

}  // namespace evencount::app::studio
