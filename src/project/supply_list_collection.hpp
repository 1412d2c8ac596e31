#pragma once
/// The supply list of one project or of a whole collection, for any number of kits: what is needed, what is on hand, what is short, what to
/// buy and what will be left over.
///
/// A kit holds one piece of each project of the collection.

#include <string>
#include <vector>

#include "materials/purchase.hpp"
#include "project/supply_list_stock.hpp"

namespace evencount::project {

using Collection = std::span<const Project>;

struct SupplyRequest {
  int kits = 1;
  Stock stock;  ///< none: nothing is on hand, and beads come in the project's own packs
  std::string currency = "EUR";
  /// Enough to fill a bag for each kit, each rounded up to 0.1 g, instead of weighing all kits' beads together.
  bool in_bags = false;
  /// The wearer's size that everything is strung for; the middle one of each project's for an empty name.
  std::string size;
};

/// What one project calls a bead.
struct LetterUse {
  std::size_t project = 0;  ///< its position in the collection
  std::string letter;
  std::int64_t count = 0;  ///< in one piece
  bool operator==(const LetterUse&) const = default;
};

/// A bead of one size, name, finish and colour, whatever the projects call it.
struct BeadLine {
  std::string letter;           ///< "A"; "A, C" where they call it differently
  std::vector<LetterUse> uses;  ///< in the collection's order; none with a count of 0
  std::string name;
  std::string size;  ///< "11/0 cylinder bead"
  std::string size_id;
  bead::Finish finish = bead::Finish::opaque;
  colour::Rgb colour;
  std::int64_t count = 0;  ///< exactly what all the kits use
  Mass mass;         ///< with each project's allowance, rounded up to 0.1 g; of all bags where `in_bags`
  std::string code;  ///< the item of the stock; empty where it has none like it
  materials::Purchase purchase;  ///< in milligrams
  bool operator==(const BeadLine&) const = default;
};

/// "moon ivory, matte, 11/0 cylinder bead": without its letters.
[[nodiscard]] std::string describe(const BeadLine& bead);

/// Anything else.
struct GoodsLine {
  std::string name;
  double count = 0;
  std::string unit;                               ///< empty for pieces; "mm" for thread
  std::string code;                               ///< empty where the stock has none
  std::optional<materials::Purchase> purchase{};  ///< of the stock's item, in its unit: pieces or millimetres
  bool operator==(const GoodsLine&) const = default;
};

struct CollectionSupplies {
  int kits = 1;
  std::vector<BeadLine> beads;
  std::vector<GoodsLine> forms;
  std::vector<GoodsLine> threads;  ///< cut in all, tails in it
  std::vector<GoodsLine> findings;
  std::vector<std::string> sizes;  ///< of each project: what it is strung for; empty for one without a strand
  std::vector<std::string> tools;  ///< each once, the needles last
  /// What all that has to be bought costs; none where a bead has no price, or where prices are in several currencies. Other things
  /// without a price are not in it.
  std::optional<Money> total;
  bool operator==(const CollectionSupplies&) const = default;
};

/// Properties (tests/project/supply_list_collection_test.cpp):
///  (1) the sum of the counts == kits * the sum over projects and bands of copies * cells that hold a bead
///  (2) for k times the kits: every count, thread length and number of pieces k times; the mass k times where `in_bags`, else at most that
///  (3) each bead is one line: no two have the same size, name, finish and colour
///  (4) for one project without a stock: the counts and masses of supply_list
///  (5) no item of the stock is given out twice
/// Errors: those of supply_list, with the project's title in `where` where there are several; those of materials::purchase.
[[nodiscard]] Result<CollectionSupplies> collection_supplies(Collection projects,
                                                             const SupplyRequest& request);

}  // namespace evencount::project
