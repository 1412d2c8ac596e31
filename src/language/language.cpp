#include "language/language.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>

#include "base/text.hpp"
#include "language/texts.hpp"

namespace evencount::language {
namespace {

// Plural forms: Unicode CLDR, "Language Plural Rules", for whole numbers (from memory).
std::size_t one_and_other(std::int64_t n) {
  return n == 1 ? 0 : 1;
}
std::size_t up_to_one_and_other(std::int64_t n) {
  return n == 0 || n == 1 ? 0 : 1;
}
std::size_t only_other(std::int64_t) {
  return 0;
}

constexpr std::string_view no_break_space = "\u00A0";

/// The form of a choice: "one|other" for a number, "no|yes" for a yes or no.
std::string_view chosen(std::string_view forms, const Value& value, const Language& language) {
  const auto parts = split(forms, '|');
  const std::size_t place = value.choice   ? (*value.choice ? 1 : 0)
                            : value.number ? language.plural_of(*value.number)
                                           : 0;
  return parts[std::min(place, parts.size() - 1)];
}

const Value* find(std::initializer_list<Value> values, std::string_view name) {
  const auto* found = std::find_if(values.begin(), values.end(), [&](const Value& v) { return v.name == name; });
  return found == values.end() ? nullptr : found;
}

/// `{n}` within a form: the only thing that may stand in it.
std::string filled_form(std::string_view text, std::initializer_list<Value> values) {
  std::string result;
  while (!text.empty()) {
    const std::size_t open = text.find('{'), close = text.find('}');
    if (open == std::string_view::npos || close == std::string_view::npos) return result + std::string(text);
    result += text.substr(0, open);
    if (const Value* value = find(values, text.substr(open + 1, close - open - 1))) result += value->shown;
    text.remove_prefix(close + 1);
  }
  return result;
}

/// Days since 1970 as a date: Howard Hinnant, "chrono-Compatible Low-Level Date Algorithms", civil_from_days.
struct Day {
  std::int64_t year;
  int month, day;
};
Day day_of(std::int64_t seconds) {
  const std::int64_t days = (seconds >= 0 ? seconds : seconds - 86399) / 86400 + 719468;
  const std::int64_t era = (days >= 0 ? days : days - 146096) / 146097;
  const std::int64_t of_era = days - era * 146097;
  const std::int64_t year_of_era = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  const std::int64_t of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t shifted = (5 * of_year + 2) / 153;
  const int day = static_cast<int>(of_year - (153 * shifted + 2) / 5 + 1);
  const int month = static_cast<int>(shifted < 10 ? shifted + 3 : shifted - 9);
  return {year_of_era + era * 400 + (month <= 2 ? 1 : 0), month, day};
}

std::string with_mark(std::string number, std::string_view mark) {
  if (const auto point = number.find('.'); point != std::string::npos) number.replace(point, 1, mark);
  return number;
}

}  // namespace

Value::Value(std::string_view value_name, std::int64_t value)
    : name(value_name), shown(fmt::format("{}", value)), number(value) {}

std::span<const NamedText> named_texts() {
  static constexpr NamedText all[] = {
#define TEXT(name) {#name, &Texts::name},
#include "language/texts.inc"
#undef TEXT
  };
  return all;
}

std::string_view Language::text(Text which) const {
  return texts->*which;
}

std::string Language::say(Text which, std::initializer_list<Value> values) const {
  std::string_view rest = text(which);
  std::string said;
  while (!rest.empty()) {
    const std::size_t open = std::min(rest.find('{'), rest.size());
    said += rest.substr(0, open);
    rest.remove_prefix(open);
    if (rest.empty()) break;
    std::size_t close = 1;
    for (int depth = 1; close < rest.size(); ++close) {
      depth += rest[close] == '{' ? 1 : rest[close] == '}' ? -1 : 0;
      if (depth == 0) break;
    }
    const std::string_view inside = rest.substr(1, close - 1);
    const std::size_t bar = std::min(inside.find('|'), inside.size());
    const Value* value = find(values, inside.substr(0, bar));
    assert(value != nullptr);  // the tests see every text with its values
    if (value != nullptr)
      said += bar == inside.size() ? value->shown : filled_form(chosen(inside.substr(bar + 1), *value, *this), values);
    rest.remove_prefix(std::min(close + 1, rest.size()));
  }
  return said;
}

std::string Language::count(std::int64_t value) const {
  std::string digits = fmt::format("{}", value);
  const auto whole = static_cast<std::ptrdiff_t>(digits.size());
  if (whole - (value < 0 ? 1 : 0) < grouped_from) return digits;
  for (std::ptrdiff_t place = whole - 3; place > (value < 0 ? 1 : 0); place -= 3)
    digits.insert(static_cast<std::size_t>(place), group_mark);
  return digits;
}

std::string Language::number(double value, int decimals) const {
  return with_mark(plain_number(value, decimals), decimal_mark);
}

std::string Language::fixed(double value, int decimals) const {
  return with_mark(fixed_number(value, decimals), decimal_mark);
}

std::string Language::both_units(Length length) const {
  return say(&Texts::both_units, {{"mm", number(length.mm(), 1)}, {"in", number(length.inches(), 2)}});
}

std::string Language::list(const std::vector<std::string>& items) const {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += this->text(i + 1 == items.size() ? &Texts::list_and : &Texts::list_comma);
    text += items[i];
  }
  return text;
}

std::string Language::date(std::int64_t seconds) const {
  const Day day = day_of(seconds);
  const auto months = split(text(&Texts::months), ' ');
  return say(day.day == 1 ? &Texts::first_of_month : &Texts::date,
             {{"year", day.year}, {"month", months[static_cast<std::size_t>(day.month - 1)]}, {"day", day.day}});
}

// Marks: Unicode CLDR, number symbols (from memory). Spanish groups whole numbers from five digits on (Ortografía de la
// lengua española, 2010, from memory).
std::span<const Language> languages() {
  static const std::array<Language, 5> all{{
      {"en", "English", &english_texts(), ".", ",", 4, 2, one_and_other},
      {"de", "Deutsch", &german_texts(), ",", ".", 4, 2, one_and_other},
      {"es", "español", &spanish_texts(), ",", no_break_space, 5, 2, one_and_other},
      {"fr", "français", &french_texts(), ",", no_break_space, 4, 2, up_to_one_and_other},
      {"ja", "日本語", &japanese_texts(), ".", ",", 4, 1, only_other},
  }};
  return all;
}

const Language& english() {
  return languages().front();
}

Result<const Language*> find_language(std::string_view tag) {
  const std::string lower = lower_ascii(tag);
  std::string tags;
  for (const Language& language : languages()) {
    if (language.tag == lower) return &language;
    tags += (tags.empty() ? "" : ", ") + std::string(language.tag);
  }
  return Problem{ProblemCode::unknown_name, "language", quote(tag), "one of " + tags};
}

std::string capitalised(std::string text) {
  if (text.empty()) return text;
  auto& first = text[0];
  if (first >= 'a' && first <= 'z') first = static_cast<char>(first - 'a' + 'A');
  // Latin-1's small letters, U+00E0 to U+00FE, stand 0x20 beyond their capitals.
  if (first == '\xC3' && text.size() > 1 && static_cast<unsigned char>(text[1]) >= 0xA0)
    text[1] = static_cast<char>(text[1] - 0x20);
  return text;
}

}  // namespace evencount::language
