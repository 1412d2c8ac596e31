#pragma once
/// The table of kinds and settings. Internal to the room: form.hpp is the way in.

#include <span>
#include <string_view>
#include <vector>

#include "form/form.hpp"

namespace evencount::form {

/// Decimals of a millimetre that a form's sizes are kept to and written with.
inline constexpr int size_decimals = 4;

/// A setting after the sizes: `tip=0.5`.
struct SettingRow {
  std::string_view name;
  std::string_view phrase;  ///< "tip radius"
  std::optional<Length> Form::*field;
};

/// Everything that sets one kind apart. `sizes` are read and written in this order.
struct KindRow {
  FormKind kind;
  std::string_view name;
  std::string_view example;
  std::string_view phrase;
  std::vector<std::string_view> sizes;
  double most_thickness;  ///< as a share of the width; 0: any
  std::vector<std::string_view> settings;
  Form (*make)(std::span<const Length> sizes);
  std::vector<Length> (*written)(const Form& form);
  Result<ConvexCurve> (*section)(const Form& form);
};

[[nodiscard]] std::span<const SettingRow> settings();
[[nodiscard]] std::span<const KindRow> kinds();
[[nodiscard]] const KindRow& row(FormKind kind);

/// To the nearest ten-thousandth of a millimetre, which is then the double that its notation reads back as.
[[nodiscard]] Length kept(Length length);

}  // namespace evencount::form
