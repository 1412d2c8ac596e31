#pragma once
/// Projects of every shape that a booklet must cope with.

#include <cstdint>

#include "project/project.hpp"

namespace evencount::page {

/// The same seed gives the same project, on every machine. Bands are open or zipped, even or odd count, short or
/// long, narrow or wide; texts are long or missing, with letters beyond ASCII.
[[nodiscard]] project::Project random_project(std::uint32_t seed);

/// A project of one band, filled at random from `colours` beads.
[[nodiscard]] project::Project one_band_project(int columns, int edge, weave::Closure closure, int colours,
                                                std::uint32_t seed);

}  // namespace evencount::page
