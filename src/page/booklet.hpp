#pragma once
/// The printed instructions of a project.

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
};

struct Booklet {
  std::vector<drawing::Drawing> pages;
  DocumentInfo info;
};

/// Lays a project out on pages: title, finished size, supplies, tools, then each band's chart and word chart
/// with the zip and the steps that no band before it of its technique shows, then assembly, cautions and terms. Errors: proof_failed while the project has errors;
/// missing_font; missing_glyph.
[[nodiscard]] Result<Booklet> make_booklet(const project::Project& project,
                                           const BookletOptions& options = {});

struct PrintedBooklet {
  Booklet booklet;
  std::string pdf;
};

/// The booklet with its PDF, which has been read again: its text makes every chart, and its counts are those of the supplies. The last
/// page says so. Errors: those of make_booklet and to_pdf; bad_plan when what was read differs (a fault of ours: there is no file then).
[[nodiscard]] Result<PrintedBooklet> print_booklet(const project::Project& project,
                                                   const BookletOptions& options = {});

/// Its PDF alone. The same project and options give the same bytes.
[[nodiscard]] Result<std::string> booklet_pdf(const project::Project& project,
                                              const BookletOptions& options = {});

}  // namespace evencount::page
