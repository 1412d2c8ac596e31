#pragma once
/// Every fixed text that is printed, in one language: a catalogue.
///
/// One file a language (texts_de.cpp, …), all with the names of texts.inc; the compiler refuses a name that is not there or
/// stands out of order, tests/language/language_test.cpp a text that is missing or lacks a value.
///
/// In a text `{name}` stands for a value and `{name|one|other}` for a choice: by the language's plural form of a number, or, of a
/// yes or no, first what stands for no. No-break spaces are written as such.

#include <span>
#include <string_view>

#include "language/text.hpp"

namespace evencount::language {

struct Texts {
#define TEXT(name) std::string_view name;
#include "language/texts.inc"
#undef TEXT
};

struct NamedText {
  std::string_view name;
  Text text;
};

/// Every text by its name, in the order of texts.inc.
[[nodiscard]] std::span<const NamedText> named_texts();

[[nodiscard]] const Texts& english_texts();
[[nodiscard]] const Texts& german_texts();
[[nodiscard]] const Texts& spanish_texts();
[[nodiscard]] const Texts& french_texts();
[[nodiscard]] const Texts& japanese_texts();

}  // namespace evencount::language
