#pragma once
/// What the verbs of the stockroom share: opening it, times, and how its things are shown.

#include <string>
#include <vector>

#include "app/json_text.hpp"
#include "stockroom/stockroom.hpp"

namespace evencount::app {

/// `file`, or stock.sqlite in the user's data folder. Errors: those of data_folder and of Stockroom::open.
[[nodiscard]] Result<stockroom::Stockroom> open_stock(const std::string& file);

/// Now, if the text is empty. Errors: those of stockroom::parse_time.
[[nodiscard]] Result<stockroom::Time> time_argument(const std::string& text);

/// All kinds, if the text is empty. Errors: unknown_name.
[[nodiscard]] Result<std::optional<materials::StockKind>> kind_argument(const std::string& text);

/// "cylinder-11, opaque"; a form's notation; "elastic, 0.8 mm"; "clasp".
[[nodiscard]] std::string describe(const materials::StockItem& item);

/// A text on one line.
[[nodiscard]] std::string one_line(std::string text);

/// Rows with columns as wide as their widest text, two blanks between them; `right` lists the columns that are set to the right.
void print_rows(std::ostream& out, const std::vector<std::vector<std::string>>& rows,
                const std::vector<std::size_t>& right);

[[nodiscard]] Json to_json(const materials::StockedItem& held);
[[nodiscard]] Json to_json(const stockroom::Movement& movement);
[[nodiscard]] Json to_json(const stockroom::Run& run);

}  // namespace evencount::app
