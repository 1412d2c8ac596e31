#pragma once
/// Threads, needles, and how often a bead lets them through.

#include <span>
#include <string>
#include <string_view>

#include "base/units.hpp"
#include "bead/bead_size.hpp"

namespace evencount::bead {

struct Thread {
  std::string id;    ///< as written on the command line and in a project: "braided-6lb"
  std::string name;  ///< as printed: "6 lb braided beading thread"
  Length diameter;
  std::string source;
  bool operator==(const Thread&) const = default;
};

/// Every thread that is known. The first is the default.
[[nodiscard]] std::span<const Thread> threads();

/// Errors: unknown_name (the message lists the ids).
[[nodiscard]] Result<Thread> find_thread(std::string_view id);

struct Needle {
  std::string name;  ///< "#12"
  Length diameter;
  bool operator==(const Needle&) const = default;
};

/// The thickest beading needle that the trade uses with a bead of this hole: #13 below 0.65 mm, #12 below 0.9
/// mm, #11 below 1.1 mm, else #10. Source: needle by bead "10/0 #11, 11/0 #12, 15/0 #13-15" (published, and
/// common practice); diameters from memory.
[[nodiscard]] Needle needle_for(Length hole);

/// How many times a needle can be taken through a hole in all, each pass leaving one thread behind.
///
/// The last pass must find room for the needle beside the threads that lie there already: with k threads in
/// place it fits while k t^2 + n^2 <= f h^2 (areas of thread t, needle n, hole h; f the share of the hole
/// that round things lying side by side can fill, 0.7, from memory). At least 0, at most 100. Check: fewer
/// than 5 passes for small beads is the published advice; 11/0 with a 0.28 mm thread gives 4.
[[nodiscard]] int passes_that_fit(Length hole, Length thread, Length needle);

}  // namespace evencount::bead
