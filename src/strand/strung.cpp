#include "strand/strung.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>

#include "base/text.hpp"

namespace evencount::strand {
namespace {

template <typename List>
decltype(auto) at(List& list, int index) {
  return list[static_cast<std::size_t>(index)];
}

/// Turns items into steps.
class Layer {
 public:
  Layer(const Layout& layout, std::span<const Element> catalogue) : layout_(layout), catalogue_(catalogue) {
    strung_.cords = layout.cords;
    strung_.cord = layout.cord;
  }

  Result<Strung> lay() {
    if (!layout_.closing.empty()) strung_.closing = element(layout_.closing);
    lay_items(layout_.items);
    for (const OnHand& entry : layout_.on_hand)
      strung_.on_hand.emplace_back(element(entry.name), entry.count);
    for (const Step& step : strung_.steps)
      if (step.run >= 0) ++at(strung_.runs, step.run).places;
    if (!problem_) run_cords();
    if (problem_) return *problem_;
    return std::move(strung_);
  }

 private:
  void fail(ProblemCode code, std::string where, std::string found, std::string expected) {
    if (!problem_) problem_ = Problem{code, std::move(where), std::move(found), std::move(expected)};
  }

  int element(const std::string& id) {
    const auto known = indices_.find(id);
    if (known != indices_.end()) return known->second;
    const int index = static_cast<int>(strung_.elements.size());
    indices_.emplace(id, index);
    strung_.elements.push_back(look_up(id));
    return index;
  }
  Element look_up(const std::string& id) {
    for (const Element& part : layout_.parts)
      if (part.id == id) return part;
    for (const Element& entry : catalogue_)
      if (entry.id == id) return entry;
    if (const auto size = bead::find_size(id)) return bead_element(*size);
    fail(ProblemCode::unknown_name, "string", quote(id),
         "a part of the layout, a standard bead, or a form or band of the project");
    return usual_part(ElementKind::bead, id, millimetres(1));
  }

  void lay_items(const std::vector<Item>& items) {
    for (const Item& item : items) lay_item(item);
  }
  void lay_item(const Item& item) {
    switch (item.kind) {
      case Item::Kind::single:
        for (int i = 0; i < item.times; ++i) strung_.steps.push_back(single(item));
        break;
      case Item::Kind::group:
        for (int i = 0; i < item.times; ++i) lay_items(item.items);
        break;
      case Item::Kind::fill:
        strung_.steps.push_back(run(item));
        break;
      case Item::Kind::between:
        lay_between(item);
        break;
      case Item::Kind::mirror:
        lay_mirror(item);
        break;
    }
  }
  Step single(const Item& item) {
    Step step;
    step.piece.element = element(item.name);
    step.piece.both = item.both;
    return step;
  }

  /// Repeats count as many neighbours.
  void lay_between(const Item& item) {
    bool first = true;
    const auto next = [&](const auto& lay) {
      if (!first) strung_.steps.push_back(run(item));
      first = false;
      lay();
    };
    for (const Item& member : item.items) {
      if (member.kind == Item::Kind::single) {
        for (int i = 0; i < member.times; ++i) next([&] { strung_.steps.push_back(single(member)); });
      } else if (member.kind == Item::Kind::group) {
        for (int i = 0; i < member.times; ++i) next([&] { lay_items(member.items); });
      } else {
        next([&] { lay_item(member); });
      }
    }
  }

  void lay_mirror(const Item& item) {
    const std::size_t begin = strung_.steps.size();
    lay_items(item.items);
    const std::vector<Step> half(strung_.steps.begin() + static_cast<std::ptrdiff_t>(begin),
                                 strung_.steps.end());
    lay_items(item.about);
    for (auto step = half.rbegin(); step != half.rend(); ++step) {
      strung_.steps.push_back(*step);
      strung_.steps.back().turned = step->run >= 0;
    }
  }

  Step run(const Item& item) {
    const std::string key =
        item.group.empty() ? fmt::format("\n{}", static_cast<const void*>(&item)) : item.group;
    const auto [known, is_new] = groups_.try_emplace(key, static_cast<int>(strung_.groups.size()));
    if (is_new) {
      Group group;
      group.name = item.group.empty() ? fmt::format("run {}", strung_.groups.size() + 1) : item.group;
      group.unit = unit(item.unit);
      group.from = item.from;
      group.to = item.to.value_or(most_units);
      strung_.groups.push_back(std::move(group));
    }
    Step step;
    step.run = static_cast<int>(strung_.runs.size());
    strung_.runs.push_back({known->second, 0});
    return step;
  }
  std::vector<Piece> unit(const std::vector<Item>& items) {
    std::vector<Step> outer;
    outer.swap(strung_.steps);
    lay_items(items);
    std::vector<Piece> pieces;
    for (const Step& step : strung_.steps) pieces.push_back(step.piece);
    strung_.steps.swap(outer);
    return pieces;
  }

  [[nodiscard]] bool is_joiner(const Step& step) const {
    return step.run < 0 && at(strung_.elements, step.piece.element).kind == ElementKind::joiner;
  }

  /// How many cords run at each piece.
  void run_cords() {
    const auto joiners = std::count_if(strung_.steps.begin(), strung_.steps.end(),
                                       [&](const Step& s) { return is_joiner(s); });
    if (joiners > 0 && strung_.cords == 1)
      return fail(ProblemCode::out_of_range, "string", "a joiner", "two cords for it to join");
    if (joiners % 2 == 1)
      return fail(ProblemCode::out_of_range, "string", fmt::format("{} joiners", joiners),
                  "as many that part the cord as bring the two together");
    int cords = joiners > 0 ? 1 : strung_.cords;
    std::vector<int> cords_of_group(strung_.groups.size(), 0);
    for (Step& step : strung_.steps) {
      if (is_joiner(step)) {
        step.piece.cords = 2;
        cords = 3 - cords;
      } else if (step.run < 0) {
        set_cords(step.piece, cords);
      } else {
        run_cords_of(at(strung_.runs, step.run).group, cords, cords_of_group);
      }
    }
  }
  void run_cords_of(int group, int cords, std::vector<int>& cords_of_group) {
    int& known = at(cords_of_group, group);
    if (known == cords) return;
    if (known != 0)
      return fail(ProblemCode::out_of_range, "run " + at(strung_.groups, group).name,
                  "one cord in one place and two in another", "two runs with names of their own");
    known = cords;
    for (Piece& piece : at(strung_.groups, group).unit) set_cords(piece, cords);
  }
  void set_cords(Piece& piece, int cords) {
    piece.cords = cords;
    const Element& element = at(strung_.elements, piece.element);
    if (piece.both && (cords == 1 || element.holes != 1))
      fail(ProblemCode::out_of_range, "both " + element.id,
           cords == 1 ? "one cord" : "two holes, one for each cord", "two cords and one hole");
  }

  const Layout& layout_;
  std::span<const Element> catalogue_;
  Strung strung_;
  std::map<std::string, int> indices_, groups_;
  std::optional<Problem> problem_;
};

void add_use(const Strung& strung, const Piece& piece, std::vector<std::int64_t>& use) {
  at(use, piece.element) += beads_of(strung, piece);
}

std::vector<Piece> turned(std::vector<Piece> pieces, bool other_end) {
  if (other_end) std::reverse(pieces.begin(), pieces.end());
  return pieces;
}

/// The strand as stretches that caps and covers don't reach out of: fixed ones and single units.
template <typename Take>
void each_stretch(const Strung& strung, const Counts& counts, Take take) {
  std::vector<Piece> fixed;
  const auto end_fixed = [&] {
    if (!fixed.empty()) take(fixed);
    fixed.clear();
  };
  for (const Step& step : strung.steps) {
    if (step.run < 0) {
      fixed.push_back(step.piece);
      continue;
    }
    end_fixed();
    const std::vector<Piece> unit =
        turned(at(strung.groups, at(strung.runs, step.run).group).unit, step.turned);
    for (int i = 0; i < at(counts, step.run); ++i) take(unit);
  }
  end_fixed();
}

}  // namespace

Result<Strung> lay_strung(const Layout& layout, std::span<const Element> catalogue) {
  return Layer(layout, catalogue).lay();
}

int beads_of(const Strung& strung, const Piece& piece) {
  const Element& element = at(strung.elements, piece.element);
  return piece.cords == 2 && element.holes <= 1 && !piece.both && element.kind != ElementKind::joiner ? 2 : 1;
}

int passes_of(const Strung& strung, const Piece& piece) {
  const Element& element = at(strung.elements, piece.element);
  return element.holes == 1 && piece.cords == 2 && (piece.both || element.kind == ElementKind::joiner) ? 2
                                                                                                       : 1;
}

std::vector<const Element*> elements_of(const Strung& strung, std::span<const Piece> pieces) {
  std::vector<const Element*> elements;
  for (const Piece& piece : pieces) elements.push_back(&at(strung.elements, piece.element));
  return elements;
}

std::vector<Piece> pieces_of(const Strung& strung, const Counts& counts) {
  std::vector<Piece> pieces;
  each_stretch(strung, counts, [&](const std::vector<Piece>& stretch) {
    pieces.insert(pieces.end(), stretch.begin(), stretch.end());
  });
  return pieces;
}

std::int64_t fixed_um(const Strung& strung) {
  return strung_length_um(strung, Counts(strung.runs.size(), 0));
}

std::int64_t unit_um(const Strung& strung, const Group& group) {
  return length_um(elements_of(strung, group.unit));
}

std::int64_t strung_length_um(const Strung& strung, const Counts& counts) {
  std::int64_t sum = strung.closing < 0 ? 0 : micrometres(at(strung.elements, strung.closing).width);
  each_stretch(strung, counts,
               [&](const std::vector<Piece>& stretch) { sum += length_um(elements_of(strung, stretch)); });
  return sum;
}

std::vector<std::int64_t> piece_starts_um(const Strung& strung, const Counts& counts) {
  std::vector<std::int64_t> starts{0};
  each_stretch(strung, counts, [&](const std::vector<Piece>& stretch) {
    const std::int64_t begin = starts.back();
    starts.pop_back();
    for (const std::int64_t start : starts_um(elements_of(strung, stretch))) starts.push_back(begin + start);
  });
  return starts;
}

std::vector<std::int64_t> fixed_use(const Strung& strung) {
  return use_of(strung, Counts(strung.runs.size(), 0));
}

std::vector<std::int64_t> unit_use(const Strung& strung, const Group& group) {
  std::vector<std::int64_t> use(strung.elements.size(), 0);
  for (const Piece& piece : group.unit) add_use(strung, piece, use);
  return use;
}

std::vector<std::int64_t> use_of(const Strung& strung, const Counts& counts) {
  std::vector<std::int64_t> use(strung.elements.size(), 0);
  for (const Piece& piece : pieces_of(strung, counts)) add_use(strung, piece, use);
  if (strung.closing >= 0) ++at(use, strung.closing);
  return use;
}

RunProblem run_problem(const Strung& strung, std::int64_t length_um) {
  RunProblem problem;
  problem.room_um = length_um - fixed_um(strung);
  const std::vector<std::int64_t> fixed = fixed_use(strung);
  for (const auto& [element, count] : strung.on_hand) problem.on_hand.push_back(count - at(fixed, element));
  for (const Group& group : strung.groups) {
    RunGroup counted;
    counted.unit_um = unit_um(strung, group);
    const std::vector<std::int64_t> use = unit_use(strung, group);
    for (const std::int64_t beads : use) counted.unit_beads += static_cast<int>(beads);
    counted.least = group.from;
    counted.most = group.to;
    for (std::size_t i = 0; i < strung.on_hand.size(); ++i)
      if (const auto taken = at(use, strung.on_hand[i].first); taken > 0)
        counted.takes.push_back({static_cast<int>(i), static_cast<int>(taken)});
    problem.groups.push_back(std::move(counted));
  }
  for (const Run& run : strung.runs) at(problem.groups, run.group).places.push_back(run.places);
  return problem;
}

Counts counts_of(const Strung& strung, const RunCounts& answer) {
  std::vector<std::size_t> next(strung.groups.size(), 0);
  Counts counts;
  for (const Run& run : strung.runs) counts.push_back(at(answer.counts, run.group)[at(next, run.group)++]);
  return counts;
}

}  // namespace evencount::strand
