/// libFuzzer entry: no text crashes the reader, and what it reads is written and read back the same.
/// What it finds (docs/fuzzing.md) goes to fuzz/crashers/project/, which tests/project/broken_test.cpp reads in every run.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "project/json.hpp"
#include "project/supply_list.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  using namespace evencount::project;
  const auto project = parse_project({reinterpret_cast<const char*>(bytes), size});
  if (!project) return 0;
  const auto again = parse_project(to_json(*project));
  if (!again || *again != *project) std::abort();
  const auto supplies = supply_list(*project);
  (void)supplies;
  return 0;
}
