#pragma once
/// A picture into the cells of a project's band, in beads that can be had.
///
/// Properties (tests/project/picture_band_test.cpp):
///  (1) only cells of the window that held a bead have changed, and the band's plan can be made
///  (2) every changed cell holds a legend entry of the band's bead with an offered colour; no more than `colours` of them
///  (3) `mean` and `percentile_95` are those of the chart as it is now
///  (4) the legend's old entries keep their places; new ones take the first free letters, the most used colour first

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "form/faces.hpp"
#include "picture/diffusion.hpp"
#include "picture/image.hpp"
#include "picture/sample.hpp"
#include "picture/smoothing.hpp"
#include "picture/stock_choice.hpp"
#include "project/project.hpp"

namespace evencount::project {

/// A colour of beads that can be had.
struct OfferedBead {
  std::string name;
  picture::StockColour stock;
  bead::Finish finish = bead::Finish::opaque;
  bool operator==(const OfferedBead&) const = default;
};

/// What is done to the cells once their colours are chosen.
enum class AfterChoice { nothing, mix, smooth };

struct PictureOptions {
  picture::Placement placement;
  int colours = 8;
  AfterChoice after = AfterChoice::nothing;
  picture::DiffusionOptions mixing;
  picture::SmoothingOptions smoothing;
  picture::ChoiceOptions choice;
};

struct PictureBand {
  Band band;
  std::vector<LegendEntry> legend;  ///< the project's, with what the picture adds
  picture::StockChoice choice;      ///< of the window's cells that hold beads; indices are those of the offer
  std::optional<picture::Diffusion> mixed;
  std::optional<picture::Smoothing> smoothed;
  double mean = 0, percentile_95 = 0;  ///< CIEDE2000 between the picture and the beads, as it came out
};

/// All cells of a band's chart.
[[nodiscard]] picture::CellWindow whole_window(const chart::Chart& chart);

/// The cells of one side of a band that goes round a form, whole steps, as large as the side has room for.
/// Errors: missing_field (the band has no form, or is not closed round it); unknown_name (a side that has no room); those of form::faces.
[[nodiscard]] Result<picture::CellWindow> face_window(const Project& project, const Band& band, form::Side side);

/// The picture's colour in every cell of the window that holds a bead, step after step.
/// Errors: those of picture::sample; unknown_name (technique, bead); wrong_size (a window that is not all of the chart's columns, or
/// lies beyond it; a technique whose beads do not fill the piece).
[[nodiscard]] Result<std::vector<colour::Rgb>> picture_cells(const Project& project, const Band& band,
                                                             const picture::CellWindow& window,
                                                             const picture::Image& image,
                                                             const picture::Placement& placement);

/// `band` need not be in the project yet; its chart must have its size.
/// Errors: those of picture_cells, choose_stock, diffuse, smooth, plan_of; wrong_size (mixing or smoothing a window with empty
/// cells); out_of_range (a legend that gets too long).
[[nodiscard]] Result<PictureBand> picture_band(const Project& project, const Band& band,
                                               const picture::CellWindow& window, const picture::Image& image,
                                               std::span<const OfferedBead> offer, const PictureOptions& options);

/// The project with the band in place of the one of its name, or as a new one, and the legend.
[[nodiscard]] Project with_band(Project project, PictureBand made);

}  // namespace evencount::project
