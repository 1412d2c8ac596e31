#pragma once
/// The studio's page: built files from a folder, or a plain page that says what to do when there are none.

#include "app/studio/http.hpp"

namespace evencount::app::studio {

/// `folder` may be empty. A file's .br or .gz is sent instead where it is there and taken. A path without a dot is the page itself.
[[nodiscard]] Response page_file(const std::string& folder, const Head& head);

/// Whether the folder holds a page.
[[nodiscard]] bool has_page(const std::string& folder);

}  // namespace evencount::app::studio
