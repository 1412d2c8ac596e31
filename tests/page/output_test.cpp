#include "page/output.hpp"

#include <gtest/gtest.h>
#include <png.h>

#include <cmath>
#include <cstring>
#include <map>
#include <regex>

#include "drawing/band_drawing.hpp"
#include "random_project.hpp"

namespace evencount::page {
namespace {

drawing::Drawing sample_chart() {
  const auto project = one_band_project(6, 12, weave::Closure::zip, 3, 7);
  return *drawing::chart_drawing(project, project.bands[0], *project::plan_of(project.bands[0]),
                                 {.signs = drawing::CellSigns::letters});
}

drawing::Drawing with_text(std::string text) {
  return {millimetres(60),
          millimetres(20),
          {drawing::Text{.at = {5, 10}, .size_pt = 10, .text = std::move(text)}}};
}

struct DecodedPng {
  unsigned width = 0, height = 0, dots_per_metre_x = 0, dots_per_metre_y = 0;
  std::vector<unsigned char> pixels;
};

/// Reads the header and pHYs by hand, the pixels by libpng's simplified interface.
DecodedPng decode(const std::string& bytes) {
  DecodedPng decoded;
  const auto number_at = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t i = at; i < at + 4; ++i) value = value << 8 | static_cast<unsigned char>(bytes[i]);
    return value;
  };
  decoded.width = number_at(16);
  decoded.height = number_at(20);
  if (const auto at = bytes.find("pHYs"); at != std::string::npos) {
    decoded.dots_per_metre_x = number_at(at + 4);
    decoded.dots_per_metre_y = number_at(at + 8);
    EXPECT_EQ(bytes[at + 12], 1) << "the unit is the metre";
  }
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  EXPECT_TRUE(png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()));
  image.format = PNG_FORMAT_RGB;
  decoded.pixels.resize(PNG_IMAGE_SIZE(image));
  EXPECT_TRUE(png_image_finish_read(&image, nullptr, decoded.pixels.data(), 0, nullptr));
  return decoded;
}

TEST(Png, HasItsSizeAndResolution) {
  const drawing::Drawing sheet{millimetres(25.4), millimetres(12.7), {}};
  const auto png = to_png(sheet, 300);
  ASSERT_TRUE(png.ok()) << message(png.problem());
  const DecodedPng decoded = decode(*png);
  EXPECT_EQ(decoded.width, 300u);
  EXPECT_EQ(decoded.height, 150u);
  EXPECT_EQ(decoded.dots_per_metre_x, 11811u);  // 300 / 0.0254
  EXPECT_EQ(decoded.dots_per_metre_y, 11811u);
}

TEST(Png, ShowsColoursWhereTheyAre) {
  drawing::Drawing sheet{millimetres(20), millimetres(10), {}};
  sheet.marks.push_back(drawing::Rectangle{
      .corner = {10, 0}, .width_mm = 10, .height_mm = 10, .fill = colour::Rgb{200, 30, 60}});
  const DecodedPng decoded = decode(*to_png(sheet, 127));
  const auto pixel = [&](unsigned x, unsigned y) {
    const std::size_t at = 3 * (y * decoded.width + x);
    return colour::Rgb{decoded.pixels[at], decoded.pixels[at + 1], decoded.pixels[at + 2]};
  };
  EXPECT_EQ(pixel(10, 25), (colour::Rgb{255, 255, 255}));
  EXPECT_EQ(pixel(80, 25), (colour::Rgb{200, 30, 60}));
}

TEST(Png, RefusesSizesBeyondReason) {
  const drawing::Drawing sheet{millimetres(2000), millimetres(2000), {}};
  for (const double dots : {0.0, 9.0, 1200.0, 5000.0, std::nan("")}) {
    const auto png = to_png(sheet, dots);
    ASSERT_FALSE(png.ok()) << dots;
    EXPECT_EQ(png.problem().code, ProblemCode::out_of_range);
  }
}

TEST(Sheets, HoldOnlySoManyMarks) {
  constexpr std::size_t most_marks = 500'000;  // painter.hpp, which is private to its room
  drawing::Drawing sheet{millimetres(10), millimetres(10), {}};
  sheet.marks.assign(most_marks + 1, drawing::Rectangle{.corner = {1, 1}, .width_mm = 1, .height_mm = 1, .fill = colour::Rgb{1, 2, 3}});
  for (const auto& refused : {to_png(sheet, 100), to_svg(sheet)}) {
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.problem().code, ProblemCode::out_of_range);
    EXPECT_EQ(refused.problem().where, "drawing");
  }
  sheet.marks.pop_back();
  EXPECT_TRUE(to_png(sheet, 100).ok());
}

/// Boxes that look alike are painted as one, so many at a time; whatever lies between ends it.
TEST(Png, EveryBoxKeepsItsLookAmongOthers) {
  constexpr int columns = 40, rows = 40;
  const auto ink = [](int column, int row) {
    return row < 20 ? colour::Rgb{10, 60, 120} : colour::Rgb{static_cast<std::uint8_t>(6 * column), static_cast<std::uint8_t>(6 * row), 90};
  };
  drawing::Drawing sheet{millimetres(columns), millimetres(rows), {}};
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column)
      sheet.marks.push_back(drawing::Rectangle{.corner = {1.0 * column, 1.0 * row}, .width_mm = 1, .height_mm = 1, .fill = ink(column, row)});
  // A circle over the last of a batch, and a box over the circle.
  sheet.marks.push_back(drawing::Circle{.centre = {20, 20}, .radius_mm = 5, .fill = colour::Rgb{255, 255, 255}});
  sheet.marks.push_back(drawing::Rectangle{.corner = {19, 19}, .width_mm = 2, .height_mm = 2, .fill = colour::Rgb{200, 0, 0}});
  const DecodedPng decoded = decode(*to_png(sheet, 254));  // ten pixels a millimetre
  const auto pixel = [&](int x, int y) {
    const std::size_t at = 3 * (static_cast<std::size_t>(y) * decoded.width + static_cast<std::size_t>(x));
    return colour::Rgb{decoded.pixels[at], decoded.pixels[at + 1], decoded.pixels[at + 2]};
  };
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const double off = std::hypot(column + 0.5 - 20, row + 0.5 - 20);
      const colour::Rgb seen = pixel(10 * column + 5, 10 * row + 5);
      if (off > 6) {
        EXPECT_EQ(seen, ink(column, row)) << column << ", " << row;
      } else if (off < 1) {
        EXPECT_EQ(seen, (colour::Rgb{200, 0, 0}));
      } else if (off > 2 && off < 4) {
        EXPECT_EQ(seen, (colour::Rgb{255, 255, 255})) << column << ", " << row;
      }
    }
}

TEST(Png, PixelsComeBack) {
  std::vector<std::uint8_t> rgb;
  for (int i = 0; i < 3 * 7 * 5; ++i) rgb.push_back(static_cast<std::uint8_t>(i * 37));
  const auto png = to_png(drawing::Pixels{7, 5, rgb}, 200);
  ASSERT_TRUE(png.ok()) << message(png.problem());
  const DecodedPng decoded = decode(*png);
  EXPECT_EQ(decoded.width, 7u);
  EXPECT_EQ(decoded.height, 5u);
  EXPECT_EQ(decoded.dots_per_metre_x, 7874u);  // 200 / 0.0254
  EXPECT_EQ(decoded.pixels, std::vector<unsigned char>(rgb.begin(), rgb.end()));
  for (const drawing::Pixels& bad :
       {drawing::Pixels{7, 4, rgb}, drawing::Pixels{0, 5, rgb}, drawing::Pixels{-7, -5, rgb}})
    EXPECT_EQ(to_png(bad).problem().code, ProblemCode::out_of_range);
}

/// A small reading of XML: every element that is opened is closed, attributes are quoted, ids are single.
void expect_well_formed(const std::string& xml) {
  std::vector<std::string> open;
  std::map<std::string, int> ids;
  const std::regex tag(R"re(<(/?)([A-Za-z][A-Za-z0-9:]*)((?:\s+[A-Za-z:_-]+="[^"<]*")*)\s*(/?)>)re");
  std::size_t covered = 0;
  for (std::sregex_iterator it(xml.begin(), xml.end(), tag), end; it != end; ++it, ++covered) {
    const std::smatch& match = *it;
    const std::string attributes = match[3];
    std::smatch id;
    if (std::regex_search(attributes, id, std::regex(R"re(\sid="([^"]*)")re"))) {
      EXPECT_EQ(++ids[id[1]], 1) << id[1];
    }
    if (match[1].length() > 0) {
      ASSERT_FALSE(open.empty());
      EXPECT_EQ(open.back(), match[2]);
      open.pop_back();
    } else if (match[4].length() == 0) {
      open.push_back(match[2]);
    }
  }
  EXPECT_TRUE(open.empty());
  const auto less_than = static_cast<std::size_t>(std::count(xml.begin(), xml.end(), '<'));
  EXPECT_EQ(covered + 1, less_than) << "all but the XML declaration are elements";
}

TEST(Svg, IsWellFormed) {
  const auto svg = to_svg(sample_chart());
  ASSERT_TRUE(svg.ok()) << message(svg.problem());
  EXPECT_TRUE(svg->starts_with("<?xml"));
  EXPECT_NE(svg->find("<svg"), std::string::npos);
  expect_well_formed(*svg);
}

TEST(Output, SameMarksGiveTheSameBytes) {
  const drawing::Drawing chart = sample_chart();
  EXPECT_EQ(*to_svg(chart), *to_svg(chart));
  EXPECT_EQ(*to_png(chart), *to_png(chart));
  for (const std::optional<std::int64_t> date :
       {std::optional<std::int64_t>(), std::optional<std::int64_t>(1)}) {
    const DocumentInfo info{.title = "Chart", .created_unix = date};
    EXPECT_EQ(*to_pdf({chart}, info), *to_pdf({chart}, info));
  }
}

TEST(Output, AMissingGlyphNamesTheText) {
  const drawing::Drawing sheet = with_text("gem \U0001F48E");
  for (const auto& made : {to_svg(sheet), to_png(sheet), to_pdf({sheet}, {})}) {
    ASSERT_FALSE(made.ok());
    EXPECT_EQ(made.problem().code, ProblemCode::missing_glyph);
    EXPECT_NE(made.problem().where.find("gem"), std::string::npos);
  }
}

TEST(Pdf, RefusesADateBeyondTheCalendar) {
  const auto pdf = to_pdf({with_text("x")}, {.created_unix = -1});
  ASSERT_FALSE(pdf.ok());
  EXPECT_EQ(pdf.problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::page
