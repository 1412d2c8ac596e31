#include "page/pdf_text.hpp"

#define POINTERHOLDER_TRANSITION 4  // qpdf 11: std::shared_ptr only
#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <map>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <vector>

#include "base/text.hpp"
#include "page/sign_writer.hpp"

namespace evencount::page {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}

/// Operands and operators of a content stream, or of a table of characters. ISO 32000-1, 7.2.
struct Lexeme {
  enum class Kind { end, number, name, string, word, open, close };
  Kind kind = Kind::end;
  double number = 0;
  std::string text;  ///< a name without its slash, a string's bytes, a word
};

class Lexer {
 public:
  explicit Lexer(std::string_view stream) : rest_(stream) {}

  Lexeme next() {
    skip_blanks();
    if (rest_.empty()) return {};
    const char first = rest_.front();
    if (first == '[' || first == ']') {
      rest_.remove_prefix(1);
      return {first == '[' ? Lexeme::Kind::open : Lexeme::Kind::close, 0, {}};
    }
    if (first == '(') return literal();
    if (first == '<' && !rest_.starts_with("<<")) return hexadecimal();
    if (first == '/') {
      rest_.remove_prefix(1);
      return {Lexeme::Kind::name, 0, std::string(word())};
    }
    if (rest_.starts_with("<<") || rest_.starts_with(">>")) {
      const std::string both(rest_.substr(0, 2));
      rest_.remove_prefix(2);
      return {Lexeme::Kind::word, 0, both};
    }
    const std::string_view found = word();
    if (const auto number = parse_number(found)) return {Lexeme::Kind::number, *number, {}};
    if (found.empty()) rest_.remove_prefix(1);
    return {Lexeme::Kind::word, 0, std::string(found)};
  }

 private:
  void skip_blanks() {
    while (!rest_.empty() && (is_blank(rest_.front()) || rest_.front() == '%')) {
      if (rest_.front() == '%')
        rest_.remove_prefix(std::min(rest_.find('\n'), rest_.size()));
      else
        rest_.remove_prefix(1);
    }
  }

  std::string_view word() {
    std::size_t size = 0;
    while (size < rest_.size() && !is_blank(rest_[size]) && std::string_view("[]<>()/%").find(rest_[size]) == std::string_view::npos)
      ++size;
    const std::string_view found = rest_.substr(0, size);
    rest_.remove_prefix(size);
    return found;
  }

  Lexeme literal() {
    Lexeme lexeme{Lexeme::Kind::string, 0, {}};
    int depth = 0;
    std::size_t i = 0;
    for (; i < rest_.size(); ++i) {
      char c = rest_[i];
      if (c == '\\' && i + 1 < rest_.size()) {
        c = rest_[++i];
        if (c >= '0' && c <= '7') {
          int code = 0;
          for (int digits = 0; digits < 3 && i < rest_.size() && rest_[i] >= '0' && rest_[i] <= '7'; ++digits, ++i)
            code = 8 * code + (rest_[i] - '0');
          --i;
          lexeme.text += static_cast<char>(code);
        } else {
          lexeme.text += c == 'n' ? '\n' : c == 'r' ? '\r' : c == 't' ? '\t' : c == 'b' ? '\b' : c == 'f' ? '\f' : c;
        }
        continue;
      }
      if (c == '(' && depth++ == 0) continue;
      if (c == ')' && --depth == 0) break;
      lexeme.text += c;
    }
    rest_.remove_prefix(std::min(i + 1, rest_.size()));
    return lexeme;
  }

  Lexeme hexadecimal() {
    Lexeme lexeme{Lexeme::Kind::string, 0, {}};
    const std::size_t end = std::min(rest_.find('>'), rest_.size());
    int half = -1;
    for (const char c : rest_.substr(1, end - 1)) {
      const int digit = c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
      if (digit < 0) continue;
      if (half < 0) {
        half = digit;
      } else {
        lexeme.text += static_cast<char>(16 * half + digit);
        half = -1;
      }
    }
    if (half >= 0) lexeme.text += static_cast<char>(16 * half);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    return lexeme;
  }

  std::string_view rest_;
};

/// UTF-16 with the larger byte first, as tables of characters have it.
std::string utf8_of(std::string_view utf16) {
  std::string text;
  const auto unit = [&](std::size_t i) {
    return static_cast<unsigned>(static_cast<unsigned char>(utf16[i]) << 8 | static_cast<unsigned char>(utf16[i + 1]));
  };
  for (std::size_t i = 0; i + 1 < utf16.size(); i += 2) {
    unsigned code = unit(i);
    if (code >= 0xD800 && code < 0xDC00 && i + 3 < utf16.size()) {
      code = 0x10000 + ((code - 0xD800) << 10) + (unit(i + 2) - 0xDC00);
      i += 2;
    }
    if (code < 0x80) {
      text += static_cast<char>(code);
    } else if (code < 0x800) {
      text += static_cast<char>(0xC0 | code >> 6);
      text += static_cast<char>(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
      text += static_cast<char>(0xE0 | code >> 12);
      text += static_cast<char>(0x80 | (code >> 6 & 0x3F));
      text += static_cast<char>(0x80 | (code & 0x3F));
    } else {
      text += static_cast<char>(0xF0 | code >> 18);
      text += static_cast<char>(0x80 | (code >> 12 & 0x3F));
      text += static_cast<char>(0x80 | (code >> 6 & 0x3F));
      text += static_cast<char>(0x80 | (code & 0x3F));
    }
  }
  return text;
}

unsigned code_of(std::string_view bytes) {
  unsigned code = 0;
  for (const char c : bytes) code = code << 8 | static_cast<unsigned char>(c);
  return code;
}

/// A font's codes with their characters and their widths, in thousandths of its size.
struct Font {
  std::size_t code_bytes = 1;
  std::map<unsigned, std::string> characters;
  std::map<unsigned, double> widths;
  double usual_width = 0;
};

std::string bytes_of(QPDFObjectHandle stream) {
  const std::shared_ptr<Buffer> data = stream.getStreamData(qpdf_dl_generalized);
  return {reinterpret_cast<const char*>(data->getBuffer()), data->getSize()};
}

/// The table that leads from codes to characters: 9.10.3.
void read_characters(std::string_view table, Font& font) {
  Lexer lexer(table);
  std::vector<Lexeme> operands;
  for (Lexeme lexeme = lexer.next(); lexeme.kind != Lexeme::Kind::end; lexeme = lexer.next()) {
    if (lexeme.kind != Lexeme::Kind::word) {
      operands.push_back(std::move(lexeme));
      continue;
    }
    if (lexeme.text == "endcodespacerange" && !operands.empty()) font.code_bytes = std::max<std::size_t>(1, operands.back().text.size());
    if (lexeme.text == "endbfchar")
      for (std::size_t i = 0; i + 1 < operands.size(); i += 2)
        font.characters[code_of(operands[i].text)] = utf8_of(operands[i + 1].text);
    if (lexeme.text == "endbfrange")
      for (std::size_t i = 0; i + 2 < operands.size();) {
        const unsigned first = code_of(operands[i].text), last = code_of(operands[i + 1].text);
        i += 2;
        if (operands[i].kind == Lexeme::Kind::open) {
          unsigned code = first;
          for (++i; i < operands.size() && operands[i].kind == Lexeme::Kind::string; ++i, ++code)
            font.characters[code] = utf8_of(operands[i].text);
          ++i;
          continue;
        }
        std::string target = operands[i++].text;
        for (unsigned code = first; code <= last && code - first < 0x10000; ++code) {
          font.characters[code] = utf8_of(target);
          for (std::size_t place = target.size(); place-- > 0;)
            if (++target[place] != '\0') break;
        }
      }
    operands.clear();
  }
}

/// Widths of a simple font and of a composite one: 9.2.4, 9.7.4.3.
void read_widths(QPDFObjectHandle object, Font& font) {
  if (object.hasKey("/Widths")) {
    const int first = object.getKey("/FirstChar").getIntValueAsInt();
    QPDFObjectHandle widths = object.getKey("/Widths");
    for (int i = 0; i < widths.getArrayNItems(); ++i)
      font.widths[static_cast<unsigned>(first + i)] = widths.getArrayItem(i).getNumericValue();
    return;
  }
  if (!object.hasKey("/DescendantFonts")) return;
  QPDFObjectHandle inner = object.getKey("/DescendantFonts").getArrayItem(0);
  font.usual_width = inner.hasKey("/DW") ? inner.getKey("/DW").getNumericValue() : 1000;
  QPDFObjectHandle widths = inner.getKey("/W");
  if (!widths.isArray()) return;
  for (int i = 0; i + 1 < widths.getArrayNItems();) {
    const auto first = static_cast<unsigned>(widths.getArrayItem(i).getIntValueAsInt());
    QPDFObjectHandle second = widths.getArrayItem(i + 1);
    if (second.isArray()) {
      for (int k = 0; k < second.getArrayNItems(); ++k)
        font.widths[first + static_cast<unsigned>(k)] = second.getArrayItem(k).getNumericValue();
      i += 2;
    } else {
      for (unsigned code = first; i + 2 < widths.getArrayNItems() && code <= static_cast<unsigned>(second.getIntValueAsInt()); ++code)
        font.widths[code] = widths.getArrayItem(i + 2).getNumericValue();
      i += 3;
    }
  }
}

using Matrix = std::array<double, 6>;

Matrix times(const Matrix& a, const Matrix& b) {
  return {a[0] * b[0] + a[1] * b[2],        a[0] * b[1] + a[1] * b[3],
          a[2] * b[0] + a[3] * b[2],        a[2] * b[1] + a[3] * b[3],
          a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5]};
}

constexpr Matrix identity{1, 0, 0, 1, 0, 0};

/// The texts of pages as lines.
class Reader {
 public:
  void read_page(QPDFPageObjectHelper page) {
    QPDFObjectHandle contents = page.getObjectHandle().getKey("/Contents");
    std::string stream;
    if (contents.isArray())
      for (int i = 0; i < contents.getArrayNItems(); ++i) stream += bytes_of(contents.getArrayItem(i)) + "\n";
    else
      stream = bytes_of(contents);
    read_stream(stream, page.getAttribute("/Resources", false), identity, 0);
    if (!text_.empty() && text_.back() != '\n') text_ += '\n';
    text_ += '\f';
    end_x_ = baseline_ = -1e9;
  }

  [[nodiscard]] std::string text() && { return std::move(text_); }

 private:
  void read_stream(std::string_view stream, QPDFObjectHandle resources, Matrix base, int depth) {
    constexpr int deepest = 8;
    if (depth > deepest) return;
    Matrix current = base;
    std::vector<Matrix> kept;
    Lexer lexer(stream);
    std::vector<Lexeme> operands;
    const auto number = [&](std::size_t i) { return i < operands.size() ? operands[i].number : 0.0; };
    for (Lexeme lexeme = lexer.next(); lexeme.kind != Lexeme::Kind::end; lexeme = lexer.next()) {
      if (lexeme.kind != Lexeme::Kind::word) {
        operands.push_back(std::move(lexeme));
        continue;
      }
      const std::string& op = lexeme.text;
      const Matrix given{number(0), number(1), number(2), number(3), number(4), number(5)};
      if (op == "q") kept.push_back(current);
      if (op == "Q" && !kept.empty()) {
        current = kept.back();
        kept.pop_back();
      }
      if (op == "cm") current = times(given, current);
      if (op == "BT") at_ = line_ = identity;
      if (op == "Tm") at_ = line_ = given;
      if (op == "Td" || op == "TD") at_ = line_ = times({1, 0, 0, 1, number(0), number(1)}, line_);
      if (op == "Tf" && operands.size() > 1) {
        font_ = &font_named(operands[0].text, resources);
        size_ = number(1);
      }
      if (op == "Tj" || op == "TJ") show(operands, current);
      if (op == "Do" && !operands.empty()) read_form(operands[0].text, resources, current, depth);
      operands.clear();
    }
  }

  void read_form(const std::string& name, QPDFObjectHandle resources, const Matrix& current, int depth) {
    QPDFObjectHandle form = resources.getKey("/XObject").getKey("/" + name);
    if (!form.isStream() || !form.getDict().getKey("/Subtype").isNameAndEquals("/Form")) return;
    Matrix base = current;
    if (QPDFObjectHandle matrix = form.getDict().getKey("/Matrix"); matrix.isArray() && matrix.getArrayNItems() == 6) {
      Matrix own{};
      for (int i = 0; i < 6; ++i) own[static_cast<std::size_t>(i)] = matrix.getArrayItem(i).getNumericValue();
      base = times(own, base);
    }
    read_stream(bytes_of(form), form.getDict().getKey("/Resources"), base, depth + 1);
  }

  const Font& font_named(const std::string& name, QPDFObjectHandle resources) {
    QPDFObjectHandle object = resources.getKey("/Font").getKey("/" + name);
    const QPDFObjGen key = object.getObjGen();
    const auto found = fonts_.find(key);
    if (found != fonts_.end()) return found->second;
    Font font;
    if (object.getKey("/Subtype").isNameAndEquals("/Type0")) font.code_bytes = 2;
    if (object.hasKey("/ToUnicode")) read_characters(bytes_of(object.getKey("/ToUnicode")), font);
    read_widths(object, font);
    return fonts_.emplace(key, std::move(font)).first->second;
  }

  void show(const std::vector<Lexeme>& operands, const Matrix& current) {
    for (const Lexeme& lexeme : operands) {
      if (lexeme.kind == Lexeme::Kind::number) at_ = times({1, 0, 0, 1, -lexeme.number / 1000 * size_, 0}, at_);
      if (lexeme.kind != Lexeme::Kind::string || font_ == nullptr) continue;
      for (std::size_t i = 0; i + font_->code_bytes <= lexeme.text.size(); i += font_->code_bytes) {
        const unsigned code = code_of(std::string_view(lexeme.text).substr(i, font_->code_bytes));
        const auto character = font_->characters.find(code);
        const auto width = font_->widths.find(code);
        const double advance = (width == font_->widths.end() ? font_->usual_width : width->second) / 1000 * size_;
        const Matrix place = times(at_, current);
        const Matrix after = times({1, 0, 0, 1, advance, 0}, place);
        put(character == font_->characters.end() ? "\uFFFD" : character->second, place[4], place[5], after[4],
            std::abs(size_ * place[3]));
        at_ = times({1, 0, 0, 1, advance, 0}, at_);
      }
    }
  }

  void put(const std::string& character, double x, double y, double end_x, double size) {
    if (character == sign_reads_as) return;
    const double same_line = 0.3 * size, apart = 0.12 * size, back = 0.5 * size;
    const bool new_line = std::abs(y - baseline_) > same_line || x < end_x_ - back;
    if (new_line && !text_.empty() && text_.back() != '\n' && text_.back() != '\f') text_ += '\n';
    if (!new_line && x > end_x_ + apart && !text_.empty() && text_.back() != ' ' && character != " ") text_ += ' ';
    text_ += character;
    baseline_ = y;
    end_x_ = end_x;
  }

  std::string text_;
  std::map<QPDFObjGen, Font> fonts_;
  const Font* font_ = nullptr;
  double size_ = 0;
  Matrix at_ = identity, line_ = identity;
  double baseline_ = -1e9, end_x_ = -1e9;
};

}  // namespace

Result<std::string> pdf_text(std::string_view pdf) {
  try {
    QPDF document;
    document.setSuppressWarnings(true);
    document.processMemoryFile("booklet", pdf.data(), pdf.size());
    Reader reader;
    for (const QPDFPageObjectHelper& page : QPDFPageDocumentHelper(document).getAllPages()) reader.read_page(page);
    return std::move(reader).text();
  } catch (const std::exception& error) {
    return Problem{ProblemCode::bad_text, "PDF", error.what(), "a file that this program wrote"};
  }
}

}  // namespace evencount::page
