#pragma once
/// One kit of a project as it is packed: bags of beads, forms, thread, findings. Pick lists and labels are written from it.

#include <string>
#include <vector>

#include "project/supply_list.hpp"

namespace evencount::project {

struct KitBag {
  std::string letter;
  std::string name;
  std::string size;  ///< "11/0 cylinder bead"
  bead::Finish finish = bead::Finish::opaque;
  colour::Rgb colour;
  std::int64_t count = 0;   ///< what the charts hold
  std::int64_t packed = 0;  ///< with the allowance, in whole beads, rounded up
  Mass mass;                ///< of `packed`, rounded up to 0.1 g: what the bag is weighed to
  bool operator==(const KitBag&) const = default;
};

/// So many lengths of thread.
struct KitThread {
  Length length;  ///< to cut, tails in it, rounded up to a whole centimetre
  std::int64_t count = 0;
  bool operator==(const KitThread&) const = default;
};

struct Kit {
  std::string title;
  std::vector<KitBag> bags;  ///< in the legend's order, without beads that no band uses
  std::vector<CountedSupply> forms;
  std::string thread_name;
  std::vector<KitThread> threads;  ///< longest first
  std::vector<CountedSupply> findings;
  std::string size;  ///< the wearer's, as in SupplyList
  bool operator==(const Kit&) const = default;
};

/// Properties (tests/project/supply_list_kits_test.cpp):
///  (1) the counts are supply_list's for one piece; packed covers the count with the allowance, and mass covers packed
///  (2) bags, forms and findings of n kits are at least collection_supplies' of n kits, and exactly that with `in_bags`
///  (3) the lengths of thread together are at least what the plans take
/// Errors: those of supply_list.
[[nodiscard]] Result<Kit> kit_of(const Project& project, const std::string& size = {});

}  // namespace evencount::project
