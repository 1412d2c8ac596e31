#pragma once
/// What goes with kits: sheets of labels for the bags, a pick list, a packing slip, price cards. Read off project::kit_of and the plans,
/// like everything printed.
///
/// Properties (tests/page/labels_test.cpp):
///  (1) there is one label a bag and kit, and none stands over the edge of its label
///  (2) the pick list's sums are kits times the packing slip's counts
///  (3) the same project and options give the same bytes

#include <span>

#include "page/booklet.hpp"

namespace evencount::page {

/// How labels stand on a sheet, in millimetres.
struct LabelSheet {
  std::string_view name;  ///< "a4-63.5x38.1"
  Paper paper = Paper::a4;
  double width_mm = 0, height_mm = 0;
  int columns = 1, rows = 1;
  double left_mm = 0, top_mm = 0;        ///< of the first label
  double across_mm = 0, down_mm = 0;     ///< from one label to the next
};

/// The common sizes of A4 and Letter sheets; every measure from memory: print on plain paper first and hold it to a sheet.
[[nodiscard]] std::span<const LabelSheet> label_sheets();
/// Errors: unknown_name (the message lists them).
[[nodiscard]] Result<LabelSheet> find_label_sheet(std::string_view name);

struct KitOptions {
  int kits = 1;
  std::string size;  ///< the wearer's that is packed; the middle one where left out
  Paper paper = Paper::a4;  ///< of lists and cards
  drawing::CellSigns signs = drawing::CellSigns::letters;
  const language::Language* language = &language::english();
  std::optional<std::int64_t> created_unix;
  std::string price;  ///< on cards, as it is to be printed
};

inline constexpr int most_kits_printed = 500;

/// Everything here gives a PDF. Errors: proof_failed while the project has errors; those of project::kit_of; out_of_range (kits not from 1
/// to most_kits_printed, a first label beyond the sheet); missing_font; missing_glyph.

/// One label for each bag of beads of each kit, kit by kit, from the sheet's label `first` on (from 0; those before it are used already).
[[nodiscard]] Result<std::string> bag_labels(const project::Project& project, const LabelSheet& sheet, int first,
                                             const KitOptions& options);
/// What to take from the shelves for all kits together, with boxes to tick.
[[nodiscard]] Result<std::string> pick_list(const project::Project& project, const KitOptions& options);
/// What lies in one kit, for the maker: the same slip serves every kit.
[[nodiscard]] Result<std::string> packing_slip(const project::Project& project, const KitOptions& options);
/// Cards of 90 by 55 mm with the piece's picture and its price, a sheet full.
[[nodiscard]] Result<std::string> price_cards(const project::Project& project, const KitOptions& options);

}  // namespace evencount::page
