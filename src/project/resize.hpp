#pragma once
/// A project in other beads or round other forms.
///
/// A band that closes round a form is fitted again. A width that was the form's own choice is so again, another keeps its share of the
/// form's length; of the candidates along the edge the best is taken that sits as the old one did (snug, easy, …), else the best.
/// Tubes take the ring that fits, bezels keep their rounds. What closes round nothing keeps its size in millimetres, or its
/// counts. A technique stays; sizes are the nearest it can make. Then the charts are carried over (carry.hpp).
///
/// Bands whose bead and form stay are not touched. A legend entry whose bead changes loses its pack, a band its measured gauge: both
/// were of the old bead. Beads that nothing uses any more go.
///
/// Properties (tests/project/resize_test.cpp):
///  (1) an empty request gives the project
///  (2) every band of the result can be stitched, has the size that is reported, and closes round its form unless its edge was asked for
///  (3) what is reported of a band is all that changed in it, and what is noted all that changed besides
///  (4) there and back to the old beads with the counts kept gives the old charts

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "project/carry.hpp"
#include "project/project.hpp"

namespace evencount::project {

/// What a band keeps that closes round nothing.
enum class FlatKeeps { size, counts };
/// Errors: unknown_name.
[[nodiscard]] Result<FlatKeeps> parse_flat_keeps(std::string_view name);

/// For one band; what is left out is as for all.
struct BandWish {
  std::optional<Carry> carry;
  std::optional<FlatKeeps> flat;
  std::optional<int> columns, edge;  ///< units in right-angle weave
};

struct ResizeRequest {
  std::map<std::string, std::string>
      beads;  ///< an id of the project, "" for the only one, to an id of bead::sizes
  std::map<std::string, form::Form> forms;  ///< an id of the project, "" for the only one, to its new shape
  FlatKeeps flat = FlatKeeps::size;
  std::optional<Carry> carry;
  bool keep_lines = true;
  std::optional<std::string> border;      ///< a letter
  std::map<std::string, BandWish> bands;  ///< by name
};

/// A band's size and what it is made of.
struct BandMeasure {
  std::string bead;                 ///< id
  std::optional<std::string> form;  ///< notation
  bead::Gauge gauge;
  int columns = 0, edge = 0;  ///< cells of the chart
  Length width, length;       ///< across, and along the edge
  bool operator==(const BandMeasure&) const = default;
};

struct BandResize {
  std::string name;
  BandMeasure before, after;
  std::optional<form::Fit> fit;  ///< of a band that closes round a form: all candidates, `edge` of the best
  /// How much wider for its length the drawing has become: 1 for as before.
  double proportion = 1;
  bool gauge_dropped = false;
  Carried carried;
  bool operator==(const BandResize&) const = default;
};

struct Resized {
  Project project;
  std::vector<BandResize> bands;       ///< those that were resized, in order
  std::vector<std::string> untouched;  ///< the names of the others
  std::vector<std::string> notes;      ///< what else changed or should be looked at, in sentences
};

/// Errors: unknown_name (a bead, form, band or letter that there is not, or a new bead that is not known), bad_usage ("" where there
/// is more than one), cannot_close, those of form::fit, form::ring_start, carry and plan_of, each with the band's name.
[[nodiscard]] Result<Resized> resize(const Project& project, const ResizeRequest& request);

}  // namespace evencount::project
