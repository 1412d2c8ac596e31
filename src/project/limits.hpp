#pragma once
/// What a project file's numbers may be: wide enough for anything that is strung, narrow enough that no sum overflows.
/// schema/project.schema.json repeats them. Internal to the room.

#include <cstdint>

namespace evencount::project::limits {

inline constexpr double least_bead_mm = 0.1, most_bead_mm = 100;
inline constexpr double least_beads_per_gram = 0.001, most_beads_per_gram = 100'000;
inline constexpr double least_thread_mm = 0.01, most_thread_mm = 10;
inline constexpr double most_tail_mm = 10'000;
inline constexpr double least_working_length_mm = 1, most_working_length_mm = 1'000'000;
inline constexpr double least_pack_grams = 0.001, most_pack_grams = 1'000'000;
inline constexpr std::int64_t most_price_minor = 1'000'000'000'000;
inline constexpr double most_outline_mm = 10'000;
inline constexpr double most_findings = 1'000'000;
inline constexpr double least_measure_mm = 50, most_measure_mm = 2000;
inline constexpr double most_ease_mm = 200;
inline constexpr double most_lean = 90;
inline constexpr double most_tolerance_mm = 100;

}  // namespace evencount::project::limits
