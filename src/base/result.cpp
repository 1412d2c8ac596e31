#include "base/result.hpp"

#include <algorithm>
#include <array>

namespace evencount {
namespace {

constexpr int findings = 1, bad_input = 2, file_failure = 3;

constexpr std::array<ProblemKind, 32> kinds{{
    {ProblemCode::bad_usage, "bad_usage", bad_input, 400},
    {ProblemCode::bad_text, "bad_text", bad_input, 400},
    {ProblemCode::bad_json, "bad_json", bad_input, 400},
    {ProblemCode::wrong_type, "wrong_type", bad_input, 422},
    {ProblemCode::missing_field, "missing_field", bad_input, 422},
    {ProblemCode::out_of_range, "out_of_range", bad_input, 422},
    {ProblemCode::unknown_name, "unknown_name", bad_input, 422},
    {ProblemCode::duplicate_name, "duplicate_name", bad_input, 422},
    {ProblemCode::newer_format, "newer_format", bad_input, 422},
    {ProblemCode::not_convex, "not_convex", bad_input, 422},
    {ProblemCode::too_few_beads, "too_few_beads", bad_input, 422},
    {ProblemCode::cannot_close, "cannot_close", findings, 422},
    {ProblemCode::wrong_size, "wrong_size", bad_input, 422},
    {ProblemCode::needs_even_rows, "needs_even_rows", bad_input, 422},
    {ProblemCode::bad_words, "bad_words", bad_input, 422},
    {ProblemCode::bad_plan, "bad_plan", bad_input, 422},
    {ProblemCode::bad_picture, "bad_picture", bad_input, 422},
    {ProblemCode::missing_glyph, "missing_glyph", findings, 422},
    {ProblemCode::missing_font, "missing_font", file_failure, 500},
    {ProblemCode::proof_failed, "proof_failed", findings, 422},
    {ProblemCode::out_of_date, "out_of_date", bad_input, 409},
    {ProblemCode::in_use, "in_use", file_failure, 409},
    {ProblemCode::not_allowed, "not_allowed", bad_input, 403},
    {ProblemCode::not_found, "not_found", bad_input, 404},
    {ProblemCode::too_large, "too_large", bad_input, 413},
    {ProblemCode::too_many, "too_many", bad_input, 429},
    {ProblemCode::too_slow, "too_slow", bad_input, 408},
    {ProblemCode::cancelled, "cancelled", findings, 409},
    {ProblemCode::file_not_found, "file_not_found", file_failure, 404},
    {ProblemCode::file_unreadable, "file_unreadable", file_failure, 500},
    {ProblemCode::file_unwritable, "file_unwritable", file_failure, 500},
    {ProblemCode::system_failure, "system_failure", file_failure, 500},
}};

}  // namespace

const ProblemKind& problem_kind(ProblemCode code) {
  const auto* row =
      std::find_if(kinds.begin(), kinds.end(), [&](const ProblemKind& k) { return k.code == code; });
  assert(row != kinds.end());
  return *row;
}

Problem Problem::within(std::string_view outer) const {
  Problem wider = *this;
  wider.where = where.empty() ? std::string(outer) : std::string(outer) + ": " + where;
  return wider;
}

Problem out_of_range(std::string_view where, std::string found, std::string expected) {
  return {ProblemCode::out_of_range, std::string(where), std::move(found), std::move(expected)};
}

std::string message(const Problem& problem) {
  std::string text = problem.where;
  if (!problem.found.empty()) text += (text.empty() ? "found " : ": found ") + problem.found;
  if (!problem.expected.empty()) {
    text += problem.found.empty() ? (text.empty() ? "expected " : ": expected ") : ", expected ";
    text += problem.expected;
  }
  return text;
}

}  // namespace evencount
