#pragma once
/// Step diagrams set in columns, with their titles and sentences. Private to this room.

#include <span>

#include "drawing/step_drawing.hpp"
#include "page/flow.hpp"

namespace evencount::page {

/// A diagram with what stands above and below it, for one column.
struct StepBlock {
  std::string title;               ///< "3  The zip"
  std::vector<std::string> lines;  ///< of its sentences
  drawing::Drawing picture;
  std::string alt;  ///< what the picture shows
};

/// The band, its plan and the hand it is worked with.
struct StepsOf {
  const project::Project& project;
  const project::Band& band;
  const weave::Plan& plan;
  bool in_mirror = false;
  const language::Language& language;
};

inline constexpr double step_gutter_mm = 8;

/// Blocks for columns of this width, numbered from `first_number`.
[[nodiscard]] std::vector<StepBlock> step_blocks(const Typesetter& typesetter,
                                                 const StepsOf& of, std::span<const weave::Moment> moments,
                                                 double column_mm, int first_number = 1);

/// The height of blocks side by side, and blocks put side by side with their upper left corner at `at`.
[[nodiscard]] double height_of(std::span<const StepBlock> row);
void put_blocks(drawing::Drawing& sheet, std::span<const StepBlock> row, drawing::Point at, double column_mm);

/// What the numbers mean, in one line of `key_height_mm`.
inline constexpr double key_height_mm = 5;
void put_step_key(drawing::Drawing& sheet, const Typesetter& typesetter, const language::Language& language,
                  drawing::Point at);

}  // namespace evencount::page
