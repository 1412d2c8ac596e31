#pragma once
/// The printed instructions of a project.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "drawing/band_drawing.hpp"
#include "language/language.hpp"
#include "page/output.hpp"
#include "project/project.hpp"

namespace evencount::page {

enum class Paper { a4, letter };

/// Errors: unknown_name.
[[nodiscard]] Result<Paper> parse_paper(std::string_view name);

struct BookletOptions {
  Paper paper = Paper::a4;
  drawing::CellSigns signs = drawing::CellSigns::letters;  ///< what stands in the charts' cells
  bool steps = true;                         ///< step diagrams after a band's rows
  const language::Language* language = &language::english();  ///< of all fixed texts
  bool left_handed = false;  ///< every row goes the other way; the charts look as the piece does
  std::optional<std::int64_t> created_unix;  ///< as in DocumentInfo
  std::shared_ptr<const drawing::Pixels> cover;  ///< a picture of the piece; its bands as they are drawn, if there is none
};

struct Booklet {
  std::vector<drawing::Drawing> pages;
  DocumentInfo info;
};

/// 100,000 beads of many runs take 2 s and 103 MB, measured: a million is what a machine of 2 GB can print.
inline constexpr std::int64_t most_printed_cells = 1'000'000;

struct PrintedBooklet {
  Booklet booklet;
  std::string pdf;
};

/// A project as printed instructions: cover, supplies, each band's chart and word chart with the zip and the steps that no band before
/// it of its technique shows, mounting, stringing, finishing, cautions and terms. The PDF has been read again: its text makes every chart, and
/// its counts are those of the supplies. The last page says so. Errors: out_of_range (more than most_printed_cells in all
/// charts); proof_failed while the project has errors; missing_font;
/// missing_glyph; bad_plan when what was read differs (a fault of ours: there is no file then).
[[nodiscard]] Result<PrintedBooklet> print_booklet(const project::Project& project,
                                                   const BookletOptions& options = {});

/// Its PDF alone. The same project and options give the same bytes.
[[nodiscard]] Result<std::string> booklet_pdf(const project::Project& project,
                                              const BookletOptions& options = {});

}  // namespace evencount::page
