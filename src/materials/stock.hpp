#pragma once
/// What a designer owns and can buy, as plain data: the values that the stockroom keeps and that supply lists, packs and
/// substitutes work on.
///
/// Amounts are whole numbers of the kind's own unit, so that sums and differences are exact: beads in milligrams, forms and
/// findings in pieces, thread and cord in millimetres.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/units.hpp"
#include "bead/finish.hpp"
#include "colour/rgb.hpp"

namespace evencount::materials {

enum class StockKind { beads, forms, thread, cord, findings };

inline constexpr std::array stock_kinds{StockKind::beads, StockKind::forms, StockKind::thread,
                                        StockKind::cord, StockKind::findings};

/// "beads", "forms", "thread", "cord", "findings".
[[nodiscard]] std::string_view kind_name(StockKind kind);
/// Errors: unknown_name (the message lists the kinds).
[[nodiscard]] Result<StockKind> parse_stock_kind(std::string_view name);
/// "mg", "pieces", "mm".
[[nodiscard]] std::string_view unit_of(StockKind kind);

/// One way of buying a thing.
struct PackOffer {
  std::int64_t amount = 0;     ///< in the kind's unit; above 0
  std::optional<Money> price;  ///< 0 or more
  std::string supplier;
  std::string order_code;  ///< the supplier's
  std::string address;     ///< where it is sold on the web
  bool operator==(const PackOffer&) const = default;
};

struct BeadStock {
  std::string size;  ///< the id of a bead size: "cylinder-11"
  bead::Finish finish = bead::Finish::opaque;
  std::optional<colour::Rgb> colour;     ///< as measured
  std::optional<double> beads_per_gram;  ///< of this bead; its size's figure otherwise
  bool operator==(const BeadStock&) const = default;
};

struct FormStock {
  std::string form;  ///< its notation, as callipered: "lens:17x5x9,holes=6.8,hole=2"
  std::optional<colour::Rgb> colour;
  bool operator==(const FormStock&) const = default;
};

struct ThreadStock {
  std::string thread;  ///< the id of a thread: "braided-6lb"
  std::optional<colour::Rgb> colour;
  bool operator==(const ThreadStock&) const = default;
};

struct CordStock {
  std::string cord;  ///< what it is: "elastic", "beading wire", "braided", "leather", or the designer's own word
  Length diameter;
  std::optional<colour::Rgb> colour;
  bool operator==(const CordStock&) const = default;
};

struct FindingStock {
  std::string what;  ///< "clasp", "crimp", "jump ring", "glue", "needle", or the designer's own word
  bool operator==(const FindingStock&) const = default;
};

struct StockItem {
  std::string code;  ///< the designer's own, single in the stockroom
  std::string name;
  std::variant<BeadStock, FormStock, ThreadStock, CordStock, FindingStock> what;
  std::vector<PackOffer> packs;
  std::string note;
  bool operator==(const StockItem&) const = default;
};

[[nodiscard]] StockKind kind_of(const StockItem& item);

/// How much of an item there is.
struct StockLevel {
  std::int64_t on_hand = 0;   ///< in the kind's unit
  std::int64_t reserved = 0;  ///< of it, promised to runs of kits
  [[nodiscard]] std::int64_t free() const { return on_hand - reserved; }
  bool operator==(const StockLevel&) const = default;
};

/// An item of the stock and how much of it there is.
struct StockedItem {
  StockItem item;
  StockLevel level;
  bool operator==(const StockedItem&) const = default;
};

}  // namespace evencount::materials
