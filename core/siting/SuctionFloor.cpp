#include "siting/SuctionFloor.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "siting/SuctionPlaces.h"
#include "siting/SuctionWords.h"

namespace sumpwright::siting {

namespace {

using geometry::Point;

double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size() - 1);
  const auto low = static_cast<std::size_t>(place);
  const std::size_t high = std::min(low + 1, sorted.size() - 1);
  return sorted[low] + (place - static_cast<double>(low)) * (sorted[high] - sorted[low]);
}

Band bandOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return {quantile(values, 0.1), quantile(values, 0.5), quantile(values, 0.9)};
}

double suctionAt(const MiddleCases& middle, Point at) {
  const int cell = middle.solverOf(middle.worst()).network().cellNear(at);
  return cell < 0 ? 0.0 : middle.suctionOfWorst()[static_cast<std::size_t>(cell)];
}

bool isLess(const FloorPoint& a, const FloorPoint& b) {
  if (std::abs(a.chance - b.chance) > 1e-6) return a.chance < b.chance;
  return a.suction_pa < b.suction_pa;
}

}  // namespace

bool takeFloor(const Study& study, const MiddleCases& middle, const suction::ChanceStudy& guesses,
               const suction::Chance& chance, SuctionAnswer& answer) {
  const suction::Network& network = guesses.network();
  double likely = 0.0;
  double area = 0.0;
  std::vector<Point> unlikely;
  const FloorPoint* least = nullptr;
  answer.floor.reserve(network.cells.size());
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    const double own = network.cells[c].own_m2;
    if (!(own > 0.0)) continue;
    const Point at = network.centre(static_cast<int>(c));
    answer.floor.push_back({at, suctionAt(middle, at), static_cast<double>(chance.by_cell[c])});
    const FloorPoint& here = answer.floor.back();
    area += own;
    if (isLikelyHeld(here.chance)) {
      likely += own;
    } else {
      unlikely.push_back(at);
    }
    if (least == nullptr || isLess(here, *least)) least = &here;
  }
  if (least == nullptr) return false;
  answer.likely_floor = likely / area;
  answer.least_likely = {least->chance, least->at};
  answer.least_where = placeOnFloor(study, least->at);
  // "All but" one place is said only where all the rest lies round it: within half the side of a
  // square of the floor's area (own figure).
  const double round = 0.5 * std::sqrt(area);
  return std::all_of(unlikely.begin(), unlikely.end(),
                     [&](Point p) { return geometry::distance(p, least->at) <= round; });
}

void takeRanges(const SuctionSystem& system, const suction::Chance& chance, SuctionAnswer& answer) {
  answer.floor_held = bandOf(chance.floors);
  answer.flow_m3_s = bandOf(chance.flows_m3_s);
  if (answer.sumps.size() == 1) {
    std::vector<double> pits;
    for (const double flow : chance.flows_m3_s) {
      pits.push_back(pitSuctionAt(system, base::Flow::ofM3PerS(flow)).pa());
    }
    answer.pit_pa = bandOf(std::move(pits));
  }
  answer.ranges = rangeSentences(answer);
}

}  // namespace sumpwright::siting
