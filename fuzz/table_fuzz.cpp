#include "project/series_table.hpp"
#include "stockroom/csv_table.hpp"
#include "target.hpp"

using namespace evencount;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzzing::text_of(data, size);
  const auto table = stockroom::read_csv(text);
  fuzzing::require_told(table);
  if (table)
    for (const stockroom::TableRow& row : table->rows)
      fuzzing::require(row.fault || row.fields.size() == table->header.fields.size(), "a row has the header's fields, or a fault");
  fuzzing::require_told(project::parse_series_table(text));
  return 0;
}
