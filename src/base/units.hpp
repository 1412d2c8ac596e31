#pragma once
/// Lengths, masses and money that can't be mistaken for one another.
///
/// Values are made by factories that name the unit (`millimetres(1.6)`, `inches(0.5)`, `grams(2)`) and read
/// the same way (`length.mm()`). There are no conversions to and from plain numbers. Inside one function
/// plain `double` with the unit in its name (`pitch_mm`) is fine.

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount {

/// A length, kept in millimetres. May be negative (a slack can be); never NaN when read from text.
class Length {
 public:
  constexpr Length() = default;
  [[nodiscard]] constexpr double mm() const { return mm_; }
  [[nodiscard]] constexpr double inches() const {
    return mm_ / 25.4;
  }  // exact by definition, international inch 1959
  constexpr auto operator<=>(const Length&) const = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
  friend constexpr Length operator-(Length a) { return Length(-a.mm_); }
  friend constexpr Length operator*(double k, Length a) { return Length(k * a.mm_); }
  friend constexpr Length operator*(Length a, double k) { return Length(k * a.mm_); }
  friend constexpr Length operator/(Length a, double k) { return Length(a.mm_ / k); }
  friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }

 private:
  friend constexpr Length millimetres(double);
  constexpr explicit Length(double mm) : mm_(mm) {}
  double mm_ = 0;
};

[[nodiscard]] constexpr Length millimetres(double mm) {
  return Length(mm);
}
[[nodiscard]] constexpr Length centimetres(double cm) {
  return millimetres(10 * cm);
}
[[nodiscard]] constexpr Length metres(double m) {
  return millimetres(1000 * m);
}
[[nodiscard]] constexpr Length inches(double in) {
  return millimetres(25.4 * in);
}

/// A mass, kept in grams.
class Mass {
 public:
  constexpr Mass() = default;
  [[nodiscard]] constexpr double grams() const { return grams_; }
  constexpr auto operator<=>(const Mass&) const = default;
  friend constexpr Mass operator+(Mass a, Mass b) { return Mass(a.grams_ + b.grams_); }
  friend constexpr Mass operator*(double k, Mass a) { return Mass(k * a.grams_); }
  friend constexpr double operator/(Mass a, Mass b) { return a.grams_ / b.grams_; }

 private:
  friend constexpr Mass grams(double);
  constexpr explicit Mass(double g) : grams_(g) {}
  double grams_ = 0;
};

[[nodiscard]] constexpr Mass grams(double g) {
  return Mass(g);
}

/// An amount in the minor unit of a currency (cents), so that sums are exact.
/// `currency` is an ISO 4217 code; its minor unit is taken as 1/100.
struct Money {
  std::int64_t minor = 0;
  std::string currency = "EUR";
  bool operator==(const Money&) const = default;
};

/// "12.34 EUR".
[[nodiscard]] std::string to_text(const Money& money);

/// A length as a person writes it: `17`, `17mm`, `1.7 cm`, `0.67in`, `3/4in`, `2 m`. No unit means
/// millimetres. Errors: bad_text (not a number, an unknown unit, NaN, infinity, trailing letters).
[[nodiscard]] Result<Length> parse_length(std::string_view text);

}  // namespace evencount
