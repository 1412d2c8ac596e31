#pragma once
/// Which item of a stock a thing of a project is. All find a position in the stock, or nothing; of several the first.
///
/// Names are compared without regard to the case of ASCII letters and to blanks at their ends.

#include <optional>
#include <span>

#include "materials/purchase.hpp"
#include "project/project.hpp"

namespace evencount::project {

using Stock = std::span<const materials::StockedItem>;

/// The same size and finish, and the same name and colour; failing that the same name; failing that the same colour.
[[nodiscard]] std::optional<std::size_t> find_bead_item(Stock stock, const LegendEntry& entry);

/// The same shape, and the same name where the project gives one.
[[nodiscard]] std::optional<std::size_t> find_form_item(Stock stock, const FormEntry& entry);

/// The same thread.
[[nodiscard]] std::optional<std::size_t> find_thread_item(Stock stock, const bead::Thread& thread);

/// A finding or a cord of the same name.
[[nodiscard]] std::optional<std::size_t> find_other_item(Stock stock, const OtherSupply& supply);

/// By its code.
[[nodiscard]] std::optional<std::size_t> find_code(Stock stock, std::string_view code);

}  // namespace evencount::project
