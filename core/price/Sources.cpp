#include "price/Sources.h"

#include <algorithm>
#include <array>

namespace sumpwright::price {

namespace {

struct ItemSource {
  std::string_view item;
  const char* from;
};

constexpr std::array kSources{ItemSource{"pipe", "price.from.pipe"},
                              ItemSource{"bend", "price.from.pipework"},
                              ItemSource{"tee", "price.from.pipework"},
                              ItemSource{"valve", "price.from.pipework"},
                              ItemSource{"coupler", "price.from.two-each-fan"},
                              ItemSource{"fan", "price.from.each-fan"},
                              ItemSource{"silencer", "price.from.each-fan"},
                              ItemSource{"grille", "price.from.each-fan"},
                              ItemSource{"gauge", "price.from.each-fan"},
                              ItemSource{"labels", "price.from.each-fan"},
                              ItemSource{"mesh", "price.from.each-fan"},
                              ItemSource{"spur", "price.from.each-fan"},
                              ItemSource{"isolator", "price.from.each-fan"},
                              ItemSource{"cover", "price.from.each-hole"},
                              ItemSource{"pipe_clip", "price.from.clips"},
                              ItemSource{"sealant", "price.from.sealant"},
                              ItemSource{"backer", "price.from.backer"},
                              ItemSource{"lagging", "price.from.riser"},
                              ItemSource{"cable", "price.from.cable"},
                              ItemSource{"cable_sleeve", "price.from.cable"},
                              ItemSource{"conduit", "price.from.cable"},
                              ItemSource{"cable_clip", "price.from.cable-clips"},
                              ItemSource{"electrician", "price.from.once"}};

}  // namespace

base::Message sourceOf(const PricedLine& line) {
  if (!line.designed) {
    if (!line.item.empty()) return base::Message("price.from.book");
    const bool work = line.kind == NeedKind::labour;
    return base::Message(work ? "price.from.own-work" : "price.from.own");
  }
  if (line.assumed) return base::Message("price.from.assumed");
  if (line.kind == NeedKind::optional) return base::Message("price.from.offered");
  if (line.unit == PriceUnit::hour) return base::Message("price.from.hours");
  const auto* const found = std::find_if(kSources.begin(), kSources.end(),
                                         [&](const ItemSource& s) { return s.item == line.item; });
  return base::Message(found == kSources.end() ? "price.from.design" : found->from);
}

}  // namespace sumpwright::price
