#pragma once
// What a design takes: material, labour by task, and what may come on top. Pipe is that of each
// sump's placed run or as the job states it, else the usual one, and marked so; cable is that of
// the route; all figures of Materials.cpp are own figures to be changed line by line in the job's
// quote.

#include <optional>
#include <string>
#include <vector>

#include "price/PriceBook.h"
#include "siting/Study.h"
#include "siting/SuctionSystem.h"

namespace sumpwright::price {

struct Need {
  std::string item;  ///< id in the price book; each once
  NeedKind kind = NeedKind::material;
  base::Message text;  ///< "price.item.*"
  Decimal quantity;
  PriceUnit unit = PriceUnit::each;
  /// What it is bought by, as far as the job knows: diameter, type, size; "price.detail.*".
  std::optional<base::Message> detail = {};
  bool assumed = false;  ///< counted from a run that nobody has placed or stated
  /// Of an optional row: a thing to buy, and so on the shopping list once it is taken up.
  bool goods = false;
};

struct Needs {
  std::vector<Need> rows;              ///< material, labour, optional
  std::vector<base::Message> remarks;  ///< what could not be counted, and why
  bool too_large = false;              ///< more of something than can be reckoned with: no price
};

/// Of the sumps in the design. Without any, nothing but a remark.
Needs needsOf(const siting::Study& study, const siting::SuctionSystem& system);

}  // namespace sumpwright::price
