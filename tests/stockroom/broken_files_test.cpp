/// Files as they come: each kind of damage is told by its line, and nothing is imported.

#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using evencount::testing::noon;

struct Broken {
  const char* why;
  std::string text;
  const char* message;
};

const std::string header = "code,name,size,finish,colour,counted_g,pack_g,price,currency\n";
const std::string good = "N,night,cylinder-11,opaque,#22304f,1,5,3.40,EUR\n";

/// The first message of an import.
std::string first_message(Stockroom& stock, const std::string& text) {
  const auto table = read_csv(text);
  if (!table) return message(table.problem());
  const auto report = stock.import_table(*table, {}, noon);
  if (!report) return message(report.problem());
  return report->faults.empty() ? "imported" : message(report->faults.front());
}

std::vector<Broken> broken_files() {
  const auto second = [](const std::string& line) { return header + good + line; };
  return {
      {"unknown columns", "code,name,size,shade,weight\n" + good,
       "line 1: found the column 'shade', 'weight', expected columns of the beads: code, name, size, finish, "
       "colour, beads_per_gram, "
       "thousand_g, counted_g, note, pack_g, price, currency, supplier, order_code, address"},
      {"no code", "name,size\nnight,cylinder-11\n",
       "line 1: found no column code, expected a column with each item's code"},
      {"a column missing", "code,size\n\nN,cylinder-11\n",
       "line 1: found no column name, expected what new items need, such as 'N' on line 3"},
      {"a column twice", "code,name,size,name\n",
       "line 1: found the column 'name' twice, expected each column once"},
      {"a column without a name", "code,name,,size\n",
       "line 1: found no name for column 3, expected a name for each column"},
      {"both weights", "code,name,size,beads_per_gram,thousand_g\n",
       "line 1: found both beads_per_gram and thousand_g, expected one of them"},
      {"empty", "", "line 1: found nothing, expected the names of the columns"},
      {"a code twice", second("N,night again,cylinder-11,,,,,,\n"),
       "line 3: code: found 'N' again, as on line 2, expected each code once; a line that holds nothing but "
       "a code and a pack adds the pack"},
      {"a code twice, with nothing", second("N,,,,,,,,\n"),
       "line 3: code: found 'N' again, as on line 2, expected each code once; a line that holds nothing but "
       "a code and a pack adds the pack"},
      {"no code on a line", second(",moon,cylinder-11,,,,,,\n"),
       "line 3: code: found nothing, expected what every item has"},
      {"no name on a line", second("M,,cylinder-11,,,,,,\n"),
       "line 3: name: found nothing, expected what every item has"},
      {"a quote left open", second("M,\"moon,cylinder-11,,,,,,\nS,sand,cylinder-11,,,,,,\n"),
       "line 3: found a quotation mark out of place, one that is never closed, or a row without end, expected "
       "marks round a whole field, closed again, and doubled within it"},
      {"a quote within a field", second("M,mo\"on,cylinder-11,,,,,,\n"),
       "line 3: found a quotation mark out of place, one that is never closed, or a row without end, expected "
       "marks round a whole field, closed again, and doubled within it"},
      {"a NUL byte", second(std::string("M,mo\0on,cylinder-11,,,,,,\n", 26)),
       "line 3: found a NUL byte, expected text"},
      {"not UTF-8", second("M,mo\xF6n,cylinder-11,,,,,,\n"),
       "line 3: found bytes that are no UTF-8, expected a file saved as UTF-8"},
      {"UTF-16",
       std::string("\xFF\xFE"
                   "c\0o\0d\0e\0",
                   10),
       "line 1: found UTF-16, expected a file saved as UTF-8"},
      {"too few fields", second("M,moon,cylinder-11\n"),
       "line 3: found 3 fields, expected 9, as in the first line"},
      {"too many fields", second("M,moon,cylinder-11,,,,,,,\n"),
       "line 3: found 10 fields, expected 9, as in the first line"},
      {"a number too large", second("M,moon,cylinder-11,,,1000000000.001,,,\n"),
       "line 3: counted_g: found '1000000000.001', expected from 0 to 1000000000"},
      {"a number larger than any", second("M,moon,cylinder-11,,,99999999999999999999999,,,\n"),
       "line 3: counted_g: found '99999999999999999999999', expected from 0 to 1000000000"},
      {"a negative price", second("M,moon,cylinder-11,,,,5,-3.40,\n"),
       "line 3: price: found '-3.40', expected from 0 to 1000000"},
      {"a price of three decimals", second("M,moon,cylinder-11,,,,5,3.405,\n"),
       "line 3: price: found '3.405', expected a number with at most 2 digits after the point"},
      {"a price in words", second("M,moon,cylinder-11,,,,5,cheap,\n"),
       "line 3: price: found 'cheap', expected a number with at most 2 digits after the point"},
      {"a mark between thousands", second("M,moon,cylinder-11,,,,5,\"1,234.00\",\n"),
       "line 3: price: found '1,234.00', expected one decimal sign and none between thousands"},
      {"another decimal sign", second("M,moon,cylinder-11,,,,5,\"1,234\",\n"),
       "line 3: price: found '1,234', expected a decimal point, as on line 2, and nothing between thousands"},
      {"a wrong currency", second("M,moon,cylinder-11,,,,5,3.40,Euro\n"),
       "line 3: currency: found 'Euro', expected three capital letters, such as EUR"},
      {"a price without a pack", second("M,moon,cylinder-11,,,,,3.40,\n"),
       "line 3: pack_g: found '', expected a number with at most 3 digits after the point"},
      {"an empty pack", second("M,moon,cylinder-11,,,,0,3.40,\n"),
       "line 3: pack_g: found 0 g, expected above 0, at most 1000000000 g"},
      {"an unknown size", second("M,moon,cylinder-12,,,,,,\n"),
       "line 3: size: found 'cylinder-12', expected one of cylinder-15, cylinder-11, cylinder-10, "
       "cylinder-8, round-15, round-11, round-8, "
       "round-6"},
      {"an unknown finish", second("M,moon,cylinder-11,shiny,,,,,\n"),
       "line 3: finish: found 'shiny', expected one of opaque, transparent, lined, metallic, galvanised, "
       "matte, lustre, pearl, rainbow"},
      {"no colour", second("M,moon,cylinder-11,,blue,,,,\n"),
       "line 3: colour: found 'blue', expected a colour, #rrggbb"},
      {"a control character", second("M,mo\x01on,cylinder-11,,,,,,\n"),
       "line 3: name: found control characters, expected text"},
      {"a code over lines", second("\"M\nM\",moon,cylinder-11,,,,,,\n"),
       "line 3: code: found 'M?M', expected one line without tabs"},
  };
}

TEST(BrokenFiles, AreRefusedByLine) {
  const evencount::testing::TemporaryFolder folder;
  Stockroom stock = *Stockroom::open(folder / "stock.sqlite");
  for (const Broken& file : broken_files()) {
    EXPECT_EQ(first_message(stock, file.text), file.message) << file.why;
    EXPECT_TRUE(stock.items()->empty()) << file.why;
  }
  EXPECT_EQ(first_message(stock, header + good), "imported");
}

TEST(BrokenFiles, AllBadLinesAreListedUpToALimit) {
  const evencount::testing::TemporaryFolder folder;
  Stockroom stock = *Stockroom::open(folder / "stock.sqlite");
  std::string text = header;
  for (int i = 0; i < 120; ++i) text += "N" + std::to_string(i) + ",night,cylinder-12,,,,,,\n";
  const auto report = stock.import_table(*read_csv(text), {}, noon);
  ASSERT_TRUE(report);
  EXPECT_EQ(report->fault_count, 120u);
  ASSERT_EQ(report->faults.size(), most_faults);
  for (std::size_t i = 0; i < most_faults; ++i) EXPECT_EQ(report->faults[i].line, static_cast<int>(i) + 2);
}

TEST(BrokenFiles, TooManyLinesAreToo) {
  std::string text = "code,name,size\n";
  for (int i = 0; i < most_lines; ++i) text += "a,b,c\n";
  EXPECT_TRUE(read_csv(text));
  EXPECT_EQ(message(read_csv(text + "a,b,c\n").problem()),
            "line 200002: found more than 200000 lines, expected several smaller files");
}

}  // namespace
}  // namespace evencount::stockroom
