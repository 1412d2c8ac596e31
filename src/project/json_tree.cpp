#include "project/json_tree.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <unordered_set>
#include <utility>

#include "base/text.hpp"

namespace evencount::project::json {
namespace {

std::string line_and_column(std::string_view text, std::size_t byte) {
  std::size_t line = 1, column = 1;
  for (std::size_t i = 0; i < std::min(byte, text.size()); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c == '\n') {
      ++line;
      column = 1;
    } else if ((c & 0xC0) != 0x80) {
      ++column;
    }
  }
  return fmt::format("line {}, column {}", line, column);
}

/// Builds the tree from the parser's events; stops at the first thing that this project's files can't hold.
class TreeBuilder : public nlohmann::json::json_sax_t {
 public:
  explicit TreeBuilder(std::string_view text) : text_(text) {}

  bool null() override { return add(Node(Null{})); }
  bool boolean(bool value) override { return add(Node(value)); }
  bool number_integer(number_integer_t value) override { return add(Node(Number{fmt::to_string(value)})); }
  bool number_unsigned(number_unsigned_t value) override { return add(Node(Number{fmt::to_string(value)})); }
  bool number_float(number_float_t, const string_t& digits) override { return add(Node(Number{digits})); }
  bool string(string_t& value) override { return add(Node(std::move(value))); }
  bool binary(binary_t&) override { return false; }  // not a part of JSON text
  bool start_array(std::size_t) override { return open(Node(Array{})); }
  bool start_object(std::size_t) override { return open(Node(Object{})); }
  bool end_array() override { return close(); }
  bool end_object() override { return close(); }

  bool key(string_t& name) override {
    if (!open_.back().names.insert(name).second)
      return refuse({ProblemCode::bad_json, pointer(), fmt::format("the name {} twice", quote(name)),
                     "each name once in one object"});
    open_.back().name = std::move(name);
    return true;
  }

  bool parse_error(std::size_t bytes_read, const std::string& token,
                   const nlohmann::json::exception& error) override {
    const std::size_t last = bytes_read > 0 ? bytes_read - 1 : 0;
    if (last >= text_.size())
      return refuse({ProblemCode::bad_json, line_and_column(text_, text_.size()), "the end of the text",
                     "the rest of the document"});
    if (!is_utf8(token))
      return refuse(
          {ProblemCode::bad_json, line_and_column(text_, last), "bytes that are not UTF-8", "text in UTF-8"});
    const std::string reason = reason_of(error.what());
    const bool inside_text = reason.starts_with("invalid string");
    const std::string_view word = inside_text ? text_.substr(last, 1) : word_at(last);
    const std::string where = line_and_column(text_, static_cast<std::size_t>(word.data() - text_.data()));
    constexpr int number_too_large = 406;  // nlohmann-json's documentation, "Exceptions"
    if (error.id == number_too_large)
      return refuse({ProblemCode::out_of_range, where, quote(word), "a number below 1.8e308"});
    return refuse({ProblemCode::bad_json, where, quote(word), fmt::format("JSON ({})", reason)});
  }

  Result<Node> result() && {
    if (problem_) return *problem_;
    return std::move(root_);
  }

 private:
  struct Open {
    Node node;
    std::string name;  ///< of the member being read, in an object
    std::unordered_set<std::string> names;
  };

  bool refuse(Problem problem) {
    problem_ = std::move(problem);
    return false;
  }

  bool add(Node node) {
    if (++values_ > most_values)
      return refuse({ProblemCode::out_of_range, pointer(), fmt::format("more than {} values", most_values),
                     "a smaller document"});
    if (open_.empty()) {
      root_ = std::move(node);
      return true;
    }
    Open& outer = open_.back();
    if (auto* array = std::get_if<Array>(&outer.node.value))
      array->push_back(std::move(node));
    else
      std::get_if<Object>(&outer.node.value)->emplace_back(std::exchange(outer.name, {}), std::move(node));
    return true;
  }

  bool open(Node node) {
    if (open_.size() >= static_cast<std::size_t>(deepest_nesting))
      return refuse({ProblemCode::bad_json, pointer(), "brackets nested deeper than that",
                     fmt::format("at most {} levels", deepest_nesting)});
    open_.push_back({std::move(node), {}, {}});
    return true;
  }

  bool close() {
    Node node = std::move(open_.back().node);
    open_.pop_back();
    return add(std::move(node));
  }

  /// Where the next value would stand.
  [[nodiscard]] std::string pointer() const {
    std::string path;
    for (const Open& level : open_) {
      if (const auto* array = level.node.as<Array>())
        path += fmt::format("/{}", array->size());
      else if (!level.name.empty())
        path += pointer_step(level.name);
    }
    return path;
  }

  /// The parser's reason without its own account of the place: "invalid literal".
  static std::string reason_of(std::string_view what) {
    const auto begin = what.find(" - ");
    if (begin != std::string_view::npos) what.remove_prefix(begin + 3);
    return std::string(what.substr(0, what.find("; last read")));
  }

  /// The word or number round a byte, or the byte itself.
  [[nodiscard]] std::string_view word_at(std::size_t byte) const {
    constexpr std::size_t longest = 40;
    const auto in_word = [&](std::size_t i) {
      const char c = text_[i];
      return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.' ||
             c == '-' || c == '+';
    };
    std::size_t begin = byte, end = byte + 1;
    while (in_word(byte) && begin > 0 && byte - begin < longest && in_word(begin - 1)) --begin;
    while (in_word(byte) && end < text_.size() && end - byte < longest && in_word(end)) ++end;
    return text_.substr(begin, end - begin);
  }

  std::string_view text_;
  std::vector<Open> open_;
  Node root_;
  std::size_t values_ = 0;
  std::optional<Problem> problem_;
};

/// Text of a tree. The library escapes the strings; here is only the layout.
class Writer {
 public:
  explicit Writer(bool compact) : compact_(compact) {}

  void write(const Node& node, int depth) {
    if (const auto* array = node.as<Array>()) {
      write_list('[', ']', *array, depth, [&](const Node& item) { write(item, depth + 1); });
    } else if (const auto* object = node.as<Object>()) {
      write_list('{', '}', *object, depth, [&](const Member& member) {
        write_string(member.first);
        text_ += compact_ ? ":" : ": ";
        write(member.second, depth + 1);
      });
    } else if (const auto* text = node.as<std::string>()) {
      write_string(*text);
    } else if (const auto* digits = node.as<Number>()) {
      text_ += digits->digits;
    } else if (const auto* truth = node.as<bool>()) {
      text_ += *truth ? "true" : "false";
    } else {
      text_ += "null";
    }
  }

  [[nodiscard]] std::string take() && { return std::move(text_); }

 private:
  template <typename List, typename WriteItem>
  void write_list(char opening, char closing, const List& list, int depth, WriteItem write_item) {
    text_ += opening;
    bool first = true;
    for (const auto& item : list) {
      if (!first) text_ += ',';
      first = false;
      break_line(depth + 1);
      write_item(item);
    }
    if (!list.empty()) break_line(depth);
    text_ += closing;
  }

  void break_line(int depth) {
    if (compact_) return;
    text_ += '\n';
    text_.append(2 * static_cast<std::size_t>(depth), ' ');
  }

  void write_string(const std::string& text) {
    // Text that is not UTF-8 can't come from a file; from code it loses the bad bytes rather than the document.
    text_ += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  }

  bool compact_;
  std::string text_;
};

}  // namespace

Result<Node> parse(std::string_view text) {
  if (text.size() > longest_document)
    return Problem{ProblemCode::out_of_range, "", fmt::format("a text of {} bytes", text.size()),
                   fmt::format("at most {}", longest_document)};
  // The parser takes it for the end, and would leave what follows unread.
  if (const auto zero = text.find('\0'); zero != std::string_view::npos)
    return Problem{ProblemCode::bad_json, line_and_column(text, zero), "a zero byte", "text"};
  TreeBuilder builder(text);
  nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  return std::move(builder).result();
}

std::string to_text(const Node& node) {
  Writer writer(false);
  writer.write(node, 0);
  return std::move(writer).take();
}

std::string to_compact_text(const Node& node) {
  Writer writer(true);
  writer.write(node, 0);
  return std::move(writer).take();
}

Number number(double value) {
  assert(std::isfinite(value));
  return {fmt::format("{}", value)};
}

std::string pointer_step(std::string_view name) {
  std::string step = "/";
  for (const char c : name) {
    if (c == '~')
      step += "~0";
    else if (c == '/')
      step += "~1";
    else
      step += c;
  }
  return step;
}

}  // namespace evencount::project::json
