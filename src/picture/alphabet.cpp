#include "picture/alphabet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "picture/alphabet_drawings.hpp"
#include "picture/alphabet_text.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view no_break_space = "\u00A0";

/// The drawings that are built in can be read: a fault of ours if not.
Alphabet built_in(std::string_view name, std::string_view text) {
  auto alphabet = parse_alphabet(name, text);
  assert(alphabet.ok());
  return std::move(alphabet).value();
}

std::uint32_t code_of(std::string_view character) {
  const auto lead = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return lead;
  std::uint32_t code = lead & (0x7Fu >> character.size());
  for (const char c : character.substr(1)) code = code << 6 | (static_cast<unsigned char>(c) & 0x3F);
  return code;
}

bool is_accent(std::string_view character) {
  const std::uint32_t code = code_of(character);
  return code >= 0x300 && code <= 0x36F;  // Unicode block Combining Diacritical Marks
}

std::string_view drawn_as(const Alphabet& alphabet, std::string_view character) {
  const auto substitute = std::find_if(alphabet.substitutes.begin(), alphabet.substitutes.end(),
                                       [&](const Substitute& s) { return s.character == character; });
  return substitute == alphabet.substitutes.end() ? character : substitute->drawn_as;
}

/// The letter and its accent as one character, or nothing.
std::string_view composed(const Alphabet& alphabet, std::string_view letter, std::string_view accent) {
  const std::string_view plain = drawn_as(alphabet, letter);
  const auto found =
      std::find_if(alphabet.compositions.begin(), alphabet.compositions.end(),
                   [&](const Composition& c) { return c.letter == plain && c.accent == accent; });
  return found == alphabet.compositions.end() ? std::string_view() : found->whole;
}

Problem lacking(const Alphabet& alphabet, std::string_view line, std::size_t at, std::string_view character,
                std::string_view accent) {
  const std::uint32_t code = code_of(accent.empty() ? character : accent);
  const std::string shown =
      code < 0x20 || code == 0x7F ? "" : std::string(character) + std::string(accent) + " ";
  return {ProblemCode::unknown_name, fmt::format("text {}, character {}", quote(line), at + 1),
          fmt::format("{}({}U+{:04X})", shown, accent.empty() ? "" : "with ", code),
          "a character of " + alphabet.name};
}

std::size_t first_bad_byte(std::string_view text) {
  std::size_t byte = 0;
  for (const std::string_view character : code_points(text)) {
    if (!is_utf8(character)) return byte + (static_cast<unsigned char>(character[0]) < 0x80 ? 1 : 0);
    byte += character.size();
  }
  return byte;
}

}  // namespace

std::string_view alphabet_id(AlphabetName name) {
  return name == AlphabetName::five_columns ? "five" : "three";
}

const Alphabet* find_alphabet(AlphabetName name, Running running) {
  static const Alphabet five = built_in("the five-column alphabet", five_column_drawings);
  static const Alphabet turned =
      built_in("the five-column alphabet on its side", five_column_turned_drawings);
  static const Alphabet three = built_in("the three-column alphabet", three_column_drawings);
  if (name == AlphabetName::five_columns) return running == Running::across ? &five : &turned;
  return running == Running::across ? &three : nullptr;
}

const LetterDrawing* find_letter(const Alphabet& alphabet, std::string_view character, bool narrow) {
  const auto same = [&](const LetterDrawing& drawing) { return drawing.character == character; };
  if (narrow)
    if (const auto form = std::find_if(alphabet.narrow.begin(), alphabet.narrow.end(), same);
        form != alphabet.narrow.end())
      return &*form;
  const auto letter = std::find_if(alphabet.letters.begin(), alphabet.letters.end(), same);
  return letter == alphabet.letters.end() ? nullptr : &*letter;
}

bool is_letter(const LetterDrawing& drawing) {
  const std::uint32_t code = code_of(drawing.character);
  const bool ascii =
      (code >= '0' && code <= '9') || (code >= 'A' && code <= 'Z') || (code >= 'a' && code <= 'z');
  // Letters of Latin-1 and Latin Extended-A.
  return ascii || (code >= 0xC0 && code <= 0x17F && code != 0xD7 && code != 0xF7);
}

bool has_accent(const Alphabet& alphabet, const LetterDrawing& drawing) {
  return std::any_of(alphabet.compositions.begin(), alphabet.compositions.end(),
                     [&](const Composition& c) { return c.whole == drawing.character; });
}

std::vector<std::string_view> code_points(std::string_view text) {
  std::vector<std::string_view> characters;
  while (!text.empty()) {
    std::size_t size = 1;
    while (size < text.size() && (static_cast<unsigned char>(text[size]) & 0xC0) == 0x80) ++size;
    characters.push_back(text.substr(0, size));
    text.remove_prefix(size);
  }
  return characters;
}

Result<std::vector<const LetterDrawing*>> letters_of(const Alphabet& alphabet, std::string_view line,
                                                     bool narrow) {
  if (!is_utf8(line))
    return Problem{ProblemCode::bad_text, "text",
                   fmt::format("a byte that is not UTF-8 at byte {}", first_bad_byte(line) + 1), "UTF-8"};
  std::vector<const LetterDrawing*> letters;
  const std::vector<std::string_view> characters = code_points(line);
  for (std::size_t i = 0; i < characters.size(); ++i) {
    if (characters[i] == " " || characters[i] == no_break_space) {
      letters.push_back(nullptr);
      continue;
    }
    const bool accented = i + 1 < characters.size() && is_accent(characters[i + 1]);
    const std::string_view accent = accented ? characters[i + 1] : std::string_view();
    const std::string_view character = accented ? composed(alphabet, characters[i], accent) : characters[i];
    for (const std::string_view drawn : code_points(drawn_as(alphabet, character)))
      letters.push_back(find_letter(alphabet, drawn, narrow));
    if (character.empty() || !letters.back()) return lacking(alphabet, line, i, characters[i], accent);
    if (accented) ++i;
  }
  return letters;
}

}  // namespace evencount::picture
