#pragma once
/// A language in which things are printed: its texts (texts.hpp), its plural forms, its numbers and dates.
///
/// Properties (tests/language/language_test.cpp):
///  (1) every language has every text, with the values that the English one has (but those that only choose a form)
///  (2) every choice by a number has as many forms as the language has plurals
///  (3) say() leaves no brace when it is given every value of the text; what is filled in is never looked at again
///  (4) number(count(n)) without its group marks is n

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "base/units.hpp"
#include "language/text.hpp"

namespace evencount::language {

/// A value for a text. A number chooses plural forms, a bool the first or second of two.
struct Value {
  std::string_view name;
  std::string shown;
  std::optional<std::int64_t> number;
  std::optional<bool> choice;

  Value(std::string_view value_name, std::string text) : name(value_name), shown(std::move(text)) {}
  Value(std::string_view value_name, std::string_view text) : name(value_name), shown(text) {}
  Value(std::string_view value_name, const char* text) : name(value_name), shown(text) {}
  /// As it is, without group marks.
  Value(std::string_view value_name, std::int64_t value);
  Value(std::string_view value_name, int value) : Value(value_name, static_cast<std::int64_t>(value)) {}
  Value(std::string_view value_name, std::size_t value) : Value(value_name, static_cast<std::int64_t>(value)) {}
  Value(std::string_view value_name, bool yes) : name(value_name), choice(yes) {}
  /// A number shown otherwise, such as with group marks.
  Value(std::string_view value_name, std::int64_t value, std::string text)
      : name(value_name), shown(std::move(text)), number(value) {}
};

struct Language {
  std::string_view tag;   ///< BCP 47: "de"
  std::string_view name;  ///< in the language itself
  const Texts* texts = nullptr;
  std::string_view decimal_mark, group_mark;
  int grouped_from = 4;  ///< digits that a whole number must have to be grouped
  int plurals = 2;
  std::size_t (*plural_of)(std::int64_t) = nullptr;  ///< below `plurals`
  bool right_to_left = false;

  [[nodiscard]] std::string_view text(Text which) const;
  /// The text with its values filled in.
  [[nodiscard]] std::string say(Text which, std::initializer_list<Value> values = {}) const;

  /// "1,152".
  [[nodiscard]] std::string count(std::int64_t value) const;
  [[nodiscard]] Value counted(std::string_view value_name, std::int64_t value) const {
    return {value_name, value, count(value)};
  }
  /// With at most, and with exactly, so many digits after the mark.
  [[nodiscard]] std::string number(double value, int decimals = 2) const;
  [[nodiscard]] std::string fixed(double value, int decimals) const;
  /// "8.1 mm (0.32 in)"; without inches where nobody uses them.
  [[nodiscard]] std::string both_units(Length length) const;
  /// "A, B and C".
  [[nodiscard]] std::string list(const std::vector<std::string>& items) const;
  /// The day in UTC. `seconds` since 1970.
  [[nodiscard]] std::string date(std::int64_t seconds) const;
};

[[nodiscard]] const Language& english();
/// English first.
[[nodiscard]] std::span<const Language> languages();
/// Errors: unknown_name (the message lists the tags).
[[nodiscard]] Result<const Language*> find_language(std::string_view tag);

/// The first letter in capitals, as at the beginning of a sentence: a to z and the accented letters of Latin-1.
[[nodiscard]] std::string capitalised(std::string text);

}  // namespace evencount::language
