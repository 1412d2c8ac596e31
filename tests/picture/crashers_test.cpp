// The fuzzer's property over every kept crasher and over seeded mutations of valid files.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "files.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace evencount::picture {
namespace {

using Random = std::mt19937;

void run_fuzz_entry(const std::string& bytes) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

TEST(PictureCrashers, AllPass) {
  int count = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(EVENCOUNT_SOURCE_DIR "/fuzz/crashers/picture")) {
    std::ifstream file(entry.path(), std::ios::binary);
    run_fuzz_entry({std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()});
    ++count;
  }
  EXPECT_GE(count, 1);
}

std::vector<std::string> valid_files(Random& random) {
  const Numbers rgb = random_numbers(random, 12, 9, 3, 8), clear = random_numbers(random, 9, 12, 4, 8),
                fine = random_numbers(random, 7, 7, 3, 16), grey = random_numbers(random, 20, 5, 1, 8);
  const std::string wide = wide_profile();
  Numbers few = grey;
  for (auto& index : few.values) index %= 4;
  return {png_file(rgb, {.profile = wide}),
          png_file(fine, {.interlaced = true, .file_gamma = 1, .orientation = 5}),
          png_palette_file(few, 2, {{1, 2, 3, 4}, {5, 6, 7, 8}, {9, 10, 11, 12}, {200, 0, 0, 255}}),
          jpeg_file(rgb, {.thin_colour = true, .profile = wide, .orientation = 6}),
          jpeg_file(rgb, {.progressive = true}),
          jpeg_file(clear, {.adobe = false}),
          webp_file(clear, {.profile = wide, .orientation = 8}),
          webp_file(rgb, {.lossless = false}),
          tiff_file(clear, {.associated = true, .orientation = 7}),
          tiff_file(clear, {.inks = true, .planes = true, .compression = 5}),
          tiff_file(grey, {.tiled = true, .big = true, .compression = 8}),
          tiff_file(rgb, {.compression = 7, .rows_a_strip = 16}),
          tiff_palette_file(few, 4, {{1, 2, 3}, {40, 50, 60}, {9, 9, 9}, {255, 0, 0}})};
}

/// Bits, numbers at the edges of their range, pieces left out, said twice or taken from another file.
std::string mutated(Random& random, std::string bytes, const std::string& other) {
  for (auto change = 1 + random() % 5; change > 0 && !bytes.empty(); --change) {
    // Headers are where most of the decisions are taken.
    const std::size_t at =
        random() % 2 == 0 ? random() % bytes.size() : random() % std::min<std::size_t>(bytes.size(), 120);
    switch (random() % 6) {
      case 0:
        bytes[at] = static_cast<char>(random());
        break;
      case 1:
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << random() % 8));
        break;
      case 2:
        bytes.replace(at, 1 + random() % 4, std::string(1 + random() % 4, random() % 2 == 0 ? '\xFF' : '\0'));
        break;
      case 3:
        bytes.erase(at, 1 + random() % 16);
        break;
      case 4:
        bytes.insert(at, bytes.substr(random() % bytes.size(), random() % 64));
        break;
      default:
        bytes.insert(at, other.substr(random() % other.size(), random() % 64));
    }
  }
  return bytes;
}

TEST(PictureCrashers, MutationsOfValidFiles) {
  Random random(21);
  const auto files = valid_files(random);
  for (const std::string& file : files) run_fuzz_entry(file);
  for (int i = 0; i < 3'000; ++i)
    run_fuzz_entry(mutated(random, files[random() % files.size()], files[random() % files.size()]));
}

TEST(PictureCrashers, RandomBytesBehindEveryBeginning) {
  Random random(22);
  const std::string beginnings[] = {"",
                                    "\x89PNG\r\n\x1A\n",
                                    "\xFF\xD8\xFF",
                                    "RIFF\x40\1\0\0WEBPVP8 ",
                                    std::string("II*\0\x08\0\0\0", 8),
                                    std::string("MM\0+\0\x08\0\0", 8)};
  for (int i = 0; i < 1'000; ++i) {
    std::string bytes = beginnings[random() % std::size(beginnings)];
    for (auto length = random() % 300; length > 0; --length) bytes += static_cast<char>(random());
    run_fuzz_entry(bytes);
  }
}

}  // namespace
}  // namespace evencount::picture
