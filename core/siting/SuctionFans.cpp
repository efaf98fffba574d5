#include "siting/SuctionFans.h"

#include <algorithm>
#include <utility>

#include "siting/SuctionMiddle.h"

namespace sumpwright::siting {

namespace {

/// The same fan, not merely one of the same name: a firm's table may have a class of the same id.
bool isTaken(const airflow::Fan& fan, const SuctionSystem& system) {
  return fan.id == system.fan.id && fan.title == system.fan.title &&
         fan.source.text == system.fan.source.text;
}

}  // namespace

std::vector<FanOffer> fanOffers(const MiddleCases& middle, const SuctionSystem& system,
                                std::vector<OfferedFan> offered) {
  const auto taken = [&](const OfferedFan& one) { return isTaken(one.fan, system); };
  if (std::none_of(offered.begin(), offered.end(), taken)) {
    offered.push_back({system.fan, "", system.invented});
  }
  std::vector<airflow::Fan> fans;
  for (const OfferedFan& one : offered) fans.push_back(one.fan);
  const auto cases = middle.fanCases();
  std::vector<FanOffer> out;
  for (airflow::FanVerdict& verdict : airflow::chooseFan(fans, cases).ranked) {
    const OfferedFan& one = offered[verdict.fan];
    out.push_back({one.fan.id, one.table, one.fan.title, one.invented, taken(one), {}});
    out.back().verdict = std::move(verdict);
  }
  return out;
}

}  // namespace sumpwright::siting
