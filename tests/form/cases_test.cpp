// Runs tests/cases/form/*.case. A file holds cases separated by blank lines, each of `key: value` lines:
//   name      what the case is called
//   why       what it shows
//   source    where the expected figures come from
//   input     a verb and its arguments (see `answer` below)
//   expected  words that the answer must all hold; `key=low..high` bounds a number

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "base/text.hpp"
#include "form/bezel.hpp"
#include "form/calibration.hpp"
#include "form/closure.hpp"
#include "form/fit.hpp"
#include "form/outline.hpp"
#include "form/ring_size.hpp"
#include "form/ring_start.hpp"

namespace evencount::form {
namespace {

using Answer = std::map<std::string, std::string>;
using Words = std::vector<std::string>;

struct TextCase {
  std::string file;
  std::map<std::string, std::string> keys;
};

std::vector<TextCase> read_cases() {
  std::vector<TextCase> cases;
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(EVENCOUNT_CASES_DIR "/form"))
    if (entry.path().extension() == ".case") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  for (const auto& path : files) {
    std::ifstream stream(path);
    TextCase current{path.filename().string(), {}};
    const auto flush = [&] {
      if (!current.keys.empty()) cases.push_back(current);
      current.keys.clear();
    };
    for (std::string line; std::getline(stream, line);) {
      if (trim(line).empty()) {
        flush();
      } else if (line.front() != '#') {
        const auto colon = line.find(':');
        current.keys[line.substr(0, colon)] = std::string(trim(std::string_view(line).substr(colon + 1)));
      }
    }
    flush();
  }
  return cases;
}

Answer refusal(const Problem& problem) {
  return {{"problem", std::string(problem_kind(problem.code).name)},
          {"where", problem.where},
          {"message", message(problem)}};
}

std::string number(double value) {
  return fmt::format("{:.6f}", value);
}

bead::Gauge gauge_for(const bead::Size& bead, std::string_view technique) {
  const auto& thread = bead::threads()[0];
  if (technique == "square") return bead::square_gauge(bead, thread);
  if (technique == "brick") return bead::brick_gauge(bead, thread);
  return bead::default_gauge(bead, thread);
}

// fit FORM BEAD USE [columns=N] [together=N] [odd] [any] [square] [brick]
Answer answer_fit(const Words& words) {
  const auto form = parse_form(words.at(1));
  if (!form) return refusal(form.problem());
  const auto bead = *bead::find_size(words.at(2));
  FitRequest request{*form, bead, bead::default_gauge(bead, bead::threads()[0]), *parse_use(words.at(3))};
  for (std::size_t i = 4; i < words.size(); ++i) {
    if (words[i].starts_with("columns=")) request.columns = std::stoi(words[i].substr(8));
    if (words[i].starts_with("together=")) request.forms_together = std::stoi(words[i].substr(9));
    if (words[i] == "odd") request.parity = Parity::odd;
    if (words[i] == "any") request.parity = Parity::any;
    if (words[i] == "square" || words[i] == "brick") {
      request.gauge = gauge_for(bead, words[i]);
      request.ends = Ends::sewn;
      request.parity = Parity::any;
    }
  }
  const auto fitted = fit(request);
  if (!fitted) return refusal(fitted.problem());
  Answer answer{{"columns", number(fitted->columns)},
                {"edge", number(fitted->edge)},
                {"rows", number(fitted->rows)},
                {"beads", number(fitted->beads)},
                {"verdict", std::string(verdict_name(fitted->verdict))}};
  if (fitted->reveal) answer["reveal"] = number(fitted->reveal->mm());
  std::vector<int> closing;
  for (const FitCandidate& c : fitted->candidates) {
    answer[fmt::format("strain{}", c.edge)] = number(100 * c.strain);
    answer[fmt::format("least{}", c.edge)] = number(100 * c.smallest_strain);
    if (closes(c.verdict)) closing.push_back(c.edge);
  }
  std::sort(closing.begin(), closing.end());
  for (const int edge : closing)
    answer["closes"] += (answer["closes"].empty() ? "" : ",") + std::to_string(edge);
  return answer;
}

Answer answer_ring_start(const Words& words) {
  const auto bead = *bead::find_size(words.at(2));
  const auto start =
      ring_start(*parse_form(words.at(1)), bead, bead::default_gauge(bead, bead::threads()[0]));
  if (!start) return refusal(start.problem());
  return {{"beads", number(start->beads)}, {"strain", number(100 * start->strain)}};
}

// bezel STONE BEAD DRAWN-IN-BEAD [wall=N] [front=N] [back=N] [fewer=N]
Answer answer_bezel(const Words& words) {
  const auto stone = parse_stone(words.at(1));
  if (!stone) return refusal(stone.problem());
  const auto wall = *bead::find_size(words.at(2)), inner = *bead::find_size(words.at(3));
  const auto gauge = [](const bead::Size& bead) { return bead::default_gauge(bead, bead::threads()[0]); };
  BezelRequest request{*stone, wall, gauge(wall), {{inner, gauge(inner)}}};
  for (std::size_t i = 4; i < words.size(); ++i) {
    const auto equals = words[i].find('=');
    const std::string key = words[i].substr(0, equals);
    const int value = std::stoi(words[i].substr(equals + 1));
    if (key == "wall") request.wall_rounds = value;
    if (key == "front") request.front_rounds = value;
    if (key == "back") request.back_rounds = value;
    if (key == "fewer") request.draw_in[0].fewer = value;
  }
  const auto made = bezel(request);
  if (!made) return refusal(made.problem());
  Answer answer{{"ring", number(made->ring_beads)},
                {"round", number(made->rounds.front().beads)},
                {"last", number(made->rounds.back().beads)},
                {"wall", number(made->wall_rounds)},
                {"front", number(made->front_rounds)},
                {"back", number(made->back_rounds)},
                {"beads", number(made->bead_count)},
                {"capture-front", number(made->capture_front.mm())},
                {"capture-back", number(made->capture_back.mm())},
                {"reason-front", made->reason_front},
                {"reason-back", made->reason_back}};
  if (made->play) answer["play"] = number(made->play->mm());
  answer["holds"] = holds(*made) ? "both" : made->holds_front ? "front" : made->holds_back ? "back" : "none";
  return answer;
}

Answer answer_stone(const Words& words) {
  const auto stone = parse_stone(words.at(1));
  if (!stone) return refusal(stone.problem());
  return {{"notation", to_notation(*stone)}, {"described", describe(*stone)}};
}

// outline "X,Y X,Y …": the points of a file, blanks for its line ends. "dents" before it accepts them.
Answer answer_outline(const Words& words) {
  const bool dents = words.at(1) == "dents";
  std::string text = words.at(dents ? 2 : 1);
  std::replace(text.begin(), text.end(), ' ', '\n');
  const auto points = parse_outline_csv(text);
  if (!points) return refusal(points.problem());
  const auto form =
      form_from_outline("stone", *points, millimetres(9), dents ? Dents::bridge : Dents::refuse);
  if (!form) return refusal(form.problem());
  return {{"width", number(form->width.mm())},
          {"thickness", number(form->thickness.mm())},
          {"bridged", number(form->outline->bridged.mm())},
          {"error", number(form->outline->smoothing_error.mm())},
          {"notation", to_notation(*form)}};
}

// finished BEAD "FORM took COUNT, VERDICT"
Answer answer_finished(const Words& words) {
  const auto piece = parse_finished(words.at(2), *bead::find_size(words.at(1)));
  if (!piece) return refusal(piece.problem());
  const auto gauge = gauge_from_finished(*piece);
  if (!gauge) return refusal(gauge.problem());
  return {{"edge", number(gauge->edge.mm())}, {"uncertainty", number(100 * gauge->uncertainty)}};
}

// swatch "12 columns = 16.1 mm, 20 along the edge = 33.4 mm"
Answer answer_swatch(const Words& words) {
  const auto gauge = bead::parse_swatch(words.at(1));
  if (!gauge) return refusal(gauge.problem());
  return {{"gauge", to_notation(*gauge)}, {"uncertainty", number(100 * *gauge->uncertainty)}};
}

Answer answer(const Words& words) {
  const std::string& verb = words.front();
  if (verb == "fit") return answer_fit(words);
  if (verb == "outline") return answer_outline(words);
  if (verb == "finished") return answer_finished(words);
  if (verb == "swatch") return answer_swatch(words);
  if (verb == "gauge") return {{"gauge", to_notation(gauge_for(*bead::find_size(words.at(2)), words.at(1)))}};
  if (verb == "ring-start") return answer_ring_start(words);
  if (verb == "bezel") return answer_bezel(words);
  if (verb == "stone") return answer_stone(words);
  if (verb == "iso-ring") return {{"diameter", number(iso_inner_diameter(std::stod(words.at(1))).mm())}};
  if (verb == "us-ring") {
    const auto form = us_ring(std::stod(words.at(1)));
    return {{"diameter", number(form->width.mm())},
            {"circumference", number(section(*form)->perimeter().mm())}};
  }
  const auto form = parse_form(words.size() > 1 ? words.at(1) : "");
  if (!form) return refusal(form.problem());
  if (verb == "perimeter") return {{"perimeter", number(section(*form)->perimeter().mm())}};
  if (verb == "parse") return {{"notation", to_notation(*form)}, {"described", describe(*form)}};
  ADD_FAILURE() << "no verb " << verb;
  return {};
}

bool holds(const std::string& wanted, const std::string& found) {
  const auto dots = wanted.find("..");
  const auto value = parse_number(found);
  if (dots == std::string::npos) {
    const auto exact = parse_number(wanted);
    return exact && value ? *exact == *value : wanted == found;
  }
  return value && *value >= *parse_number(wanted.substr(0, dots)) &&
         *value <= *parse_number(wanted.substr(dots + 2));
}

// Words at blanks; what stands in double quotes is one word.
Words words_of(const std::string& text) {
  Words words;
  std::istringstream stream(text);
  for (std::string word; stream >> word;) {
    if (word.find('"') != std::string::npos) {
      for (std::string more; std::count(word.begin(), word.end(), '"') < 2 && stream >> more;)
        word += " " + more;
      word.erase(std::remove(word.begin(), word.end(), '"'), word.end());
    }
    words.push_back(word);
  }
  return words;
}

TEST(FormCases, AllHold) {
  const auto cases = read_cases();
  ASSERT_GE(cases.size(), 30u);
  for (const TextCase& one : cases) {
    SCOPED_TRACE(one.file + ": " + (one.keys.contains("name") ? one.keys.at("name") : "(no name)"));
    for (const char* key : {"name", "why", "source", "input", "expected"}) {
      ASSERT_TRUE(one.keys.contains(key)) << "no " << key;
    }
    const Answer found = answer(words_of(one.keys.at("input")));
    std::string all;
    for (const auto& [key, value] : found) all += key + "=" + value + " ";
    for (const std::string& wanted : words_of(one.keys.at("expected"))) {
      const std::string key = wanted.substr(0, wanted.find('=')), value = wanted.substr(wanted.find('=') + 1);
      ASSERT_TRUE(found.contains(key)) << key << " is not in " << all;
      EXPECT_TRUE(holds(value, found.at(key))) << "expected " << wanted << ", found " << all;
    }
  }
}

}  // namespace
}  // namespace evencount::form
