#pragma once
/// 3 x 3 matrices, worked out when compiling: what turns one set of three primaries into another.

#include <array>

namespace evencount::colour {

/// Rows of three. `m[row][column]`.
using Matrix = std::array<std::array<double, 3>, 3>;
using Triple = std::array<double, 3>;

[[nodiscard]] constexpr Triple operator*(const Matrix& m, const Triple& v) {
  Triple product{};
  for (std::size_t row = 0; row < 3; ++row)
    product[row] = m[row][0] * v[0] + m[row][1] * v[1] + m[row][2] * v[2];
  return product;
}

[[nodiscard]] constexpr Matrix operator*(const Matrix& a, const Matrix& b) {
  Matrix product{};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t column = 0; column < 3; ++column)
      product[row][column] = a[row][0] * b[0][column] + a[row][1] * b[1][column] + a[row][2] * b[2][column];
  return product;
}

[[nodiscard]] constexpr Matrix diagonal(const Triple& d) {
  return {{{d[0], 0, 0}, {0, d[1], 0}, {0, 0, d[2]}}};
}

/// By cofactors: the matrices here are well conditioned, and the order of the sums is fixed. The determinant must not be 0.
[[nodiscard]] constexpr Matrix inverse(const Matrix& m) {
  Matrix cofactors{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t column = 0; column < 3; ++column) {
      const std::size_t r1 = (row + 1) % 3, r2 = (row + 2) % 3, c1 = (column + 1) % 3, c2 = (column + 2) % 3;
      cofactors[row][column] = m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1];
    }
  }
  const double determinant =
      m[0][0] * cofactors[0][0] + m[0][1] * cofactors[0][1] + m[0][2] * cofactors[0][2];
  Matrix inverted{};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t column = 0; column < 3; ++column)
      inverted[row][column] = cofactors[column][row] / determinant;
  return inverted;
}

}  // namespace evencount::colour
