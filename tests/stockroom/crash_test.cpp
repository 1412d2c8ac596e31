/// A process is killed at random while it imports and reserves: the file opens, is whole, and holds no change by half.

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <thread>

#include "stockroom/other_process.hpp"
#include "stockroom/random_stock.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::testing;
using materials::StockKind;

constexpr int item_count = 40;

std::string code(int i) {
  return "bead " + std::to_string(i);
}

/// Every item with this generation in its note and quantity, and one pack more or less.
CsvTable generation(int number) {
  std::string text = "code,name,size,counted_g,note,pack_g,price\n";
  for (int i = 0; i < item_count; ++i) {
    text += code(i) + ",night,cylinder-11," + std::to_string(1000 + number % 1000) + ",generation " +
            std::to_string(number) + ",5,3.40\n";
    if (number % 2 == 1) text += code(i) + ",,,,,25,14\n";
  }
  return *read_csv(text);
}

struct Progress {
  std::atomic<int> begun{0}, done{0};  ///< changes
};

/// Changes the stock until killed: generations of imports, and runs reserved, then taken or released. Never returns.
int change_for_ever(const std::string& file, int first, Progress& progress) {
  auto opened = Stockroom::open(file);
  if (!opened) return 3;
  std::vector<RunItem> items;
  for (int i = 0; i < item_count; ++i) items.push_back({code(i), 2 + i});
  for (int step = first;; ++step) {
    const std::string run = "run " + std::to_string(step);
    const auto change = [&](const auto& work) {
      ++progress.begun;
      const bool good = work();
      ++progress.done;
      return good;
    };
    const bool good =
        change([&] { return opened->import_table(generation(step), {}, noon).value().written; }) &&
        change([&] { return opened->reserve(run, items, noon).ok(); }) && change([&] {
          return step % 2 == 0 ? opened->take(run, noon).ok() : opened->release(run, noon).ok();
        });
    if (!good) return 4;
  }
}

/// Looks at what a killed process left behind. The newest generation.
int look_at(const std::string& file) {
  {
    SQLite::Database database(file, SQLite::OPEN_READWRITE);
    EXPECT_EQ(database.execAndGet("PRAGMA integrity_check").getString(), "ok");
  }
  const auto stock = Stockroom::open(file);
  EXPECT_TRUE(stock) << message(stock.problem());
  EXPECT_EQ(*stock->check(), std::vector<std::string>{});
  const auto items = *stock->items();
  EXPECT_EQ(items.size(), static_cast<std::size_t>(item_count));
  std::set<std::string> notes;
  std::set<std::size_t> packs;
  for (const materials::StockedItem& held : items) {
    notes.insert(held.item.note);
    packs.insert(held.item.packs.size());
  }
  EXPECT_EQ(notes.size(), 1u) << "an import is seen whole or not at all";
  EXPECT_EQ(packs.size(), 1u);
  const auto movements = *stock->journal();
  std::map<std::string, int> movements_of;
  for (const Movement& movement : movements)
    if (!movement.run.empty()) ++movements_of[movement.run];
  const auto runs = *stock->runs();
  int open = 0;
  for (const Run& run : runs) {
    EXPECT_EQ(run.items.size(), static_cast<std::size_t>(item_count)) << run.name;
    EXPECT_EQ(movements_of[run.name], run.state == RunState::taken ? item_count : 0) << run.name;
    open += run.state == RunState::open;
  }
  EXPECT_LE(open, 1);
  return std::stoi(notes.begin()->substr(std::string("generation ").size()));
}

/// What is open is closed, so that the next process finds a calm stock.
void close_open_run(const std::string& file) {
  Stockroom stock = *Stockroom::open(file);
  const auto runs = *stock.runs();
  for (const Run& run : runs) {
    if (run.state == RunState::open) {
      EXPECT_TRUE(stock.release(run.name, noon));
    }
  }
}

TEST(Crash, AKilledProcessLeavesAllOfAChangeOrNone) {
  const char* thorough = std::getenv("EVENCOUNT_LONG");
  const int kills = thorough != nullptr && *thorough != '\0' ? 300 : 40;
  const TemporaryFolder folder;
  const std::string file = folder / "stock.sqlite";
  ASSERT_TRUE(Stockroom::open(file)->import_table(generation(0), {}, noon)->written);
  std::mt19937 random(31);
  std::uniform_int_distribution<int> changes_first(0, 4), microseconds(0, 12'000);
  int next = 1, within_a_change = 0;
  for (int kill = 0; kill < kills; ++kill) {
    Shared<Progress> progress;
    OtherProcess child([&] { return change_for_ever(file, next, *progress); });
    ASSERT_TRUE(child.started());
    const int first = changes_first(random);
    while ((progress->begun == 0 || progress->done < first) && child.running())
      std::this_thread::sleep_for(std::chrono::microseconds{100});
    std::this_thread::sleep_for(std::chrono::microseconds{microseconds(random)});
    ASSERT_TRUE(child.running()) << "it ended by itself";
    child.kill();
    within_a_change += progress->begun != progress->done;
    next = std::max(next, look_at(file)) + 2;
    close_open_run(file);
    if (HasFailure()) break;
  }
  EXPECT_GT(within_a_change, kills / 2)
      << "most kills must hit a change under way, or this test shows nothing";
}

/// Killed while the file is being made: the next process makes it.
TEST(Crash, AFileThatWasBegunIsFinishedByTheNext) {
  std::mt19937 random(32);
  std::uniform_int_distribution<int> microseconds(0, 6'000);
  for (int kill = 0; kill < 30; ++kill) {
    const TemporaryFolder folder;
    const std::string file = folder / "stock.sqlite";
    OtherProcess child([&] { return Stockroom::open(file).ok() ? 0 : 1; });
    ASSERT_TRUE(child.started());
    std::this_thread::sleep_for(std::chrono::microseconds{microseconds(random)});
    child.kill();
    const auto stock = Stockroom::open(file);
    ASSERT_TRUE(stock) << message(stock.problem());
    EXPECT_EQ(*stock->check(), std::vector<std::string>{});
  }
}

}  // namespace
}  // namespace evencount::stockroom
