#pragma once
/// The texts of alphabets/, built in. Internal to the room.

#include <string_view>

namespace evencount::picture {

extern const std::string_view five_column_drawings, five_column_turned_drawings, three_column_drawings;

}  // namespace evencount::picture
