#pragma once
/// What `string` says: a strand in its sizes.

#include <string>

#include "app/console.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::app {

void print_string(const std::string& title, const project::StrungSizes& sizes, bool json, const Console& console);

}  // namespace evencount::app
