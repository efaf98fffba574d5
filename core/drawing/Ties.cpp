#include "drawing/Ties.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

using geometry::Point;
using perimeter::Edge;

constexpr double kCorner_rad = 10.0 * std::numbers::pi / 180.0;  // as the rules: a turn over 10 deg
constexpr double kShortest_m =
    0.10;  // a shorter tie cannot be read on a tape with care (own figure)
constexpr double kNearWall_m = 0.01;     // own figure: what a tape tells apart
constexpr double kLongestCheck_m = 8.0;  // a longer straight sags on the tape (own figure)

const Edge& neighbour(const siting::Study& study, const Edge& edge, int step) {
  const auto& edges = study.perimeter().edges(edge.ring);
  const int n = static_cast<int>(edges.size());
  return edges[static_cast<std::size_t>((edge.edge + step + n) % n)];
}

/// A corner one can put a tape to from outside.
bool seen(const siting::Study& study, const Edge& beyond, double turn_rad) {
  return std::abs(turn_rad) > kCorner_rad &&
         study.perimeter().wall(beyond).kind != plan::WallKind::party;
}

Tie cornerTie(const siting::Study& study, const Edge& starts_here, double length_m) {
  const std::string letter = study.perimeter().cornerLetter(starts_here.ring, starts_here.edge);
  return {base::Message("thing.corner", {base::text("letter", letter)}), starts_here.from,
          starts_here.start_m, length_m};
}

/// Jambs on the wall, by distance along it.
std::vector<std::pair<double, Tie>> jambs(const siting::Study& study, const Edge& edge,
                                          double at_m) {
  std::vector<std::pair<double, Tie>> out;
  for (const plan::Opening& o : study.job().plan.openings) {
    if (o.at.ring != edge.ring || o.at.edge != edge.edge || o.storey != 0) continue;
    if (o.kind == plan::OpeningKind::flue_terminal || plan::isOfRoof(o.kind)) continue;  // no jambs
    // Chainage grows from left to right for someone who stands outside.
    for (const bool right : {false, true}) {
      const double along = o.at.offset_m + (right ? o.width_m : 0.0);
      const double length = std::abs(along - at_m);
      if (length < kShortest_m) continue;
      const base::Message label(right ? "drawing.jamb-right" : "drawing.jamb-left",
                                {base::phrase("opening", study.labelOf(o.id))});
      out.push_back({along, {label, edge.line().at(along), edge.start_m + along, length}});
    }
  }
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  return out;
}

bool inSight(const siting::Study& study, Point from, Point to) {
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    for (const Edge& e : study.perimeter().edges(r)) {
      if (geometry::meet({from, to}, e.face())) return false;
    }
  }
  return true;
}

std::optional<Tie> cornerInSight(const siting::Study& study, const Edge& own, Point at) {
  std::optional<Tie> best;
  const Point from = at - kNearWall_m * own.inward;
  for (const Edge& e : study.perimeter().edges(own.ring)) {
    const Edge& before = neighbour(study, e, -1);
    if (e.edge == own.edge || before.edge == own.edge || !seen(study, before, e.turn_rad) ||
        !seen(study, e, e.turn_rad)) {
      continue;
    }
    const Point to = e.from - kNearWall_m * (e.inward + before.inward);
    const double length = geometry::distance(at, e.from);
    if (length < 0.3 || length > kLongestCheck_m || (best && best->length_m <= length) ||
        !inSight(study, from, to))
      continue;
    best = cornerTie(study, e, length);
  }
  return best;
}

}  // namespace

Ties tiesOf(const siting::Study& study, perimeter::Place place) {
  const perimeter::Place here = study.perimeter().wrapped(place);
  const Edge& edge = study.perimeter().edgeAt(here);
  const Edge& next = neighbour(study, edge, 1);
  const double at = here.chainage_m - edge.start_m;
  auto features = jambs(study, edge, at);
  const auto take = [&](auto pick) -> std::optional<Tie> {
    if (pick == features.end()) return std::nullopt;
    Tie tie = pick->second;
    features.erase(pick);
    return tie;
  };
  const auto firstBefore = [&] {
    return features.empty() || features.front().first > at ? features.end() : features.begin();
  };
  const auto lastAfter = [&] {
    return features.empty() || features.back().first < at ? features.end() : features.end() - 1;
  };
  Ties ties;
  if (!seen(study, neighbour(study, edge, -1), edge.turn_rad)) ties.before = take(firstBefore());
  if (!ties.before && at >= kShortest_m) ties.before = cornerTie(study, edge, at);
  if (!seen(study, next, next.turn_rad)) ties.after = take(lastAfter());
  if (!ties.after && edge.length_m - at >= kShortest_m) {
    ties.after = cornerTie(study, next, edge.length_m - at);
    ties.after->chainage_m = edge.end_m();
  }
  const auto nearest = std::min_element(
      features.begin(), features.end(),
      [](const auto& a, const auto& b) { return a.second.length_m < b.second.length_m; });
  ties.check = take(nearest);
  ties.check_on_wall = ties.check.has_value();
  if (!ties.check) ties.check = cornerInSight(study, edge, study.perimeter().pointAt(here));
  return ties;
}

}  // namespace sumpwright::drawing
