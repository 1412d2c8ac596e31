#pragma once
/// What labels, lists and cards share. Private to this room.

#include "page/labels.hpp"
#include "page/sections.hpp"
#include "project/supply_list_kits.hpp"

namespace evencount::page {

/// The kit of a project whose proof is free of errors. Errors: as labels.hpp says.
[[nodiscard]] Result<project::Kit> checked_kit(const project::Project& project, const KitOptions& options);
/// The sheets of bag_labels before they are written.
[[nodiscard]] Result<std::vector<drawing::Drawing>> label_pages(const project::Project& project, const LabelSheet& label,
                                                                int first, const KitOptions& options,
                                                                const Typesetter& typesetter);
/// The pages as a PDF, every text shown.
[[nodiscard]] Result<std::string> kit_pdf(const std::vector<drawing::Drawing>& pages, const project::Project& project,
                                          const KitOptions& options, const Typesetter& typesetter);

}  // namespace evencount::page
