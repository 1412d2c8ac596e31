#pragma once
/// Making a band from a picture, for the `picture` verb and the studio.

#include <functional>
#include <utility>
#include <vector>

#include "app/json_text.hpp"
#include "app/verbs.hpp"
#include "materials/stock.hpp"
#include "project/picture_band.hpp"

namespace evencount::app {

/// What project::picture_band is asked for.
struct PictureJob {
  project::Project project;
  project::Band band;
  picture::CellWindow window;
  picture::Image image;
  std::vector<project::OfferedBead> offer;
  project::PictureOptions options;
};

/// Where the picture and the beads to choose from come from; `size` is the id of the band's bead.
struct PictureSources {
  std::function<Result<picture::Image>()> image;
  std::function<Result<std::vector<materials::StockedItem>>(const std::string& size)> stock;
};

/// Of the arguments, those that name files or say what is printed are not looked at.
/// Errors: those of the sources, of project::find_band and face_window; bad_usage, bad_text, unknown_name, out_of_range, missing_field
/// (no bead of the size with a colour).
[[nodiscard]] Result<PictureJob> picture_job(const PictureArguments& arguments, project::Project project,
                                             const PictureSources& sources);

/// How many cells each chosen bead of the offer has in the end; the chosen in the order of the offer.
[[nodiscard]] std::vector<std::pair<const project::OfferedBead*, std::int64_t>> uses_of(
    const PictureJob& job, const project::PictureBand& made);

/// `picture --json`.
[[nodiscard]] Json picture_json(const PictureJob& job, const project::PictureBand& made);

}  // namespace evencount::app
