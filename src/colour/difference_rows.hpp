#pragma once
/// CIEDE2000 on plain numbers, one pair or a row of pairs, in every width that a processor may have. Only for this room's sources and
/// tests; `difference.hpp` is what others use.

#include <cstddef>
#include <span>
#include <string_view>

namespace evencount::colour {

/// A colour in CIELAB with its chroma, sqrt(a^2 + b^2).
struct LabPoint {
  double lightness, a, b, chroma;
};

/// Many of them in columns of one length.
struct LabRows {
  const double *lightness, *a, *b, *chroma;
};

[[nodiscard]] double ciede2000_of(const LabPoint& p, const LabPoint& q);

/// One way of filling a row: differences[i] = float(ciede2000_of(from, to[i])), i < size. All ways give the same bits.
struct RowFill {
  std::string_view name;
  bool (*runs_here)();
  void (*fill)(const LabPoint& from, const LabRows& to, float* differences, std::size_t size);
};

/// Widest first; the last one runs everywhere.
[[nodiscard]] std::span<const RowFill> row_fills();

}  // namespace evencount::colour
