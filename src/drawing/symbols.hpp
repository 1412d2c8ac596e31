#pragma once
/// Signs for beads that need no colour: black on white, for a page that is printed without it.
///
/// Property (tests/drawing/symbols_test.cpp): any two differ in at least 8 % of their square, however it is laid on paper as dots of
/// a twenty-fourth of its side, and each lies within its square.

#include <vector>

#include "drawing/marks.hpp"

namespace evencount::drawing {

/// How many there are; a bead beyond them shows its letter.
inline constexpr int symbol_count = 32;

/// The marks of a symbol, from 0, in a square of this side about `centre`.
[[nodiscard]] std::vector<Mark> symbol_marks(int symbol, Point centre, double side_mm, colour::Rgb ink = {});

}  // namespace evencount::drawing
