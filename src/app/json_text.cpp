#include "app/json_text.hpp"

template class nlohmann::basic_json<nlohmann::ordered_map>;
