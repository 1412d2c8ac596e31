#pragma once
/// Alphabets as text that shows their letters (alphabets/*.txt). Internal to the room.
///
///   # …                 a comment
///   height 12           the line that capitals stand on
///   from -8             a block of drawings follows, whose first line is this one
///   |A    |B    |       the characters of a block, then its lines:
///   |. o .|o o .|       o a bead, . a bead of the ground; a blank where no bead lies
///   accents             the blocks that follow are accents, each named, for letters as wide as its drawing. One drawn above line 0
///                       moves down with the top of its letter; one below stays
///   narrow              the blocks that follow are narrow forms
///   compose NAME Á=A …  letters with an accent; `dotless` is the i to put one on
///   same ’=' …          characters that are drawn as others

#include "picture/alphabet.hpp"

namespace evencount::picture {

/// Errors: bad_text, naming the line but for bytes that are no UTF-8: a bead where none lies, an even width, a name without a drawing.
[[nodiscard]] Result<Alphabet> parse_alphabet(std::string_view name, std::string_view text);

}  // namespace evencount::picture
