#pragma once
/// The parts of the stitch-along page that are written by hand, built in from along/. Private to this room.

#include <string_view>

namespace evencount::page {

extern const std::string_view along_page;      ///< along/page.html: the template
extern const std::string_view along_style;     ///< along/along.css
/// along/*.js one after another, within one function.
extern const std::string_view along_script;

}  // namespace evencount::page
