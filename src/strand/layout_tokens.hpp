#pragma once
/// A layout's text as words, sizes, names and brackets. Internal to the room.

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"

namespace evencount::strand {

struct Token {
  enum class Kind {
    word,    ///< letters, digits, '-' and '_', a letter first
    number,  ///< a count or a size: begins with a digit or a point
    quoted,  ///< "…", its quotes taken off
    sign,    ///< ( ) ,
    end,
  };
  Kind kind = Kind::end;
  std::string text;
  int line = 1, column = 1;  ///< both from 1; columns are bytes
};

/// "line 3, column 9".
[[nodiscard]] std::string place_of(const Token& token);
/// What stands there, for a message.
[[nodiscard]] std::string shown(const Token& token);

/// A quote within quotes is written twice. The last token is the end. Errors: bad_text (an unknown sign, a
/// quote left open, a control
/// character in quotes, text that is not UTF-8 or longer than longest_layout_text).
[[nodiscard]] Result<std::vector<Token>> tokens_of(std::string_view text);

/// Words of the language, which name nothing unless they are quoted.
[[nodiscard]] bool is_reserved(std::string_view word);

/// A name as it is written: bare where it can be, else in quotes.
[[nodiscard]] std::string written_name(std::string_view name);
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace evencount::strand
