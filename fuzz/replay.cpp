/// Runs a target on files, for compilers that can't fuzz: replay FILE|FOLDER ...

#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "target.hpp"

namespace fs = std::filesystem;

namespace {

int run(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) {
    std::fprintf(stderr, "%s: can't be read\n", file.c_str());
    return -1;
  }
  const std::vector<char> bytes{std::istreambuf_iterator<char>(in), {}};
  return LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

}  // namespace

int main(int count, char** arguments) {
  int ran = 0;
  for (int i = 1; i < count; ++i) {
    const fs::path path = arguments[i];
    if (!fs::is_directory(path)) {
      if (run(path) != 0) return 1;
      ++ran;
      continue;
    }
    for (const fs::directory_entry& entry : fs::directory_iterator(path)) {
      if (!entry.is_regular_file()) continue;
      if (run(entry.path()) != 0) return 1;
      ++ran;
    }
  }
  std::printf("%d inputs\n", ran);
  return ran > 0 ? 0 : 1;
}
