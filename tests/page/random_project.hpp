#pragma once
/// Projects of every shape that a booklet must cope with.

#include <cstdint>

#include "project/project.hpp"

namespace evencount::page {

/// The same seed gives the same project, on every machine. Bands are open or zipped, even or odd count, short or
/// long, narrow or wide; texts are long or missing, with letters beyond ASCII.
[[nodiscard]] project::Project random_project(std::uint32_t seed);

/// random_project with more in it: often a band of another technique (every one comes), a band round a form where one fits, a strand in
/// several sizes. Its proof has no errors.
[[nodiscard]] project::Project varied_project(std::uint32_t seed);

/// A project of one band, filled at random from `colours` beads.
[[nodiscard]] project::Project one_band_project(int columns, int edge, weave::Closure closure, int colours,
                                                std::uint32_t seed);

/// A project whose rows are longer than a page of words.
[[nodiscard]] project::Project project_with_endless_rows();

}  // namespace evencount::page
