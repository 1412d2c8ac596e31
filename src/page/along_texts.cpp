#include <nlohmann/json.hpp>

#include "language/texts.hpp"
#include "page/along_parts.hpp"

namespace evencount::page {
namespace {

using language::Texts;

struct ScriptText {
  const char* name;
  language::Text text;
};

// What along/*.js says; tests/page/stitch_along_test.cpp compares the names with the scripts.
constexpr ScriptText texts[] = {
    {"row", &Texts::row_one},
    {"rows", &Texts::row_range},
    {"round", &Texts::round_one},
    {"rounds", &Texts::round_range},
    {"to_the_left", &Texts::to_the_left},
    {"to_the_right", &Texts::to_the_right},
    {"downwards", &Texts::downwards},
    {"upwards", &Texts::upwards},
    {"on_the_back", &Texts::on_the_back},
    {"begins_increase", &Texts::begins_increase},
    {"begins_decrease", &Texts::begins_decrease},
    {"ends_increase", &Texts::ends_increase},
    {"ends_decrease", &Texts::ends_decrease},
    {"left_out_short", &Texts::decrease_sign},
    {"left_out", &Texts::left_out},
    {"counts", &Texts::spoken_counts},
    {"copy_of", &Texts::copy_of},
    {"place", &Texts::place},
    {"counter", &Texts::counter},
    {"run", &Texts::run},
    {"bead_of_run", &Texts::bead_of_run},
    {"unit", &Texts::unit},
    {"spoken_row", &Texts::spoken_row},
    {"way_comma", &Texts::list_comma},
    {"thread_first", &Texts::thread_first},
    {"thread_new", &Texts::thread_new},
    {"all_done", &Texts::all_done},
    {"all_done_way", &Texts::all_done_way},
    {"all_done_open", &Texts::all_done_open},
    {"nothing_next", &Texts::nothing_next},
    {"awake_on", &Texts::awake_on},
    {"awake_off", &Texts::awake_off},
    {"awake_never", &Texts::awake_never},
    {"speech_never", &Texts::speech_never},
    {"chart_at", &Texts::chart_at},
    {"chart_done", &Texts::chart_done},
    {"begin_again_sure", &Texts::begin_again_sure},
};

}  // namespace

nlohmann::json script_texts(const language::Language& language) {
  nlohmann::json json{{"language", language.tag}};
  for (const ScriptText& one : texts) json[one.name] = language.text(one.text);
  return json;
}

}  // namespace evencount::page
