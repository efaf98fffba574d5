// Use of the room behind the wall, and fittings that stand in it.

#include <algorithm>

#include "geometry/Distance.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"

namespace sumpwright::rules {

namespace {

using perimeter::Edge;
using plan::Room;

base::Message roomLabel(const Room& room) {
  if (!room.name.empty()) return base::Message("thing.named", {base::text("name", room.name)});
  return base::Message("room." + std::string(plan::nameOf(room.use)));
}

/// Where a room is behind the wall, joined round corners.
std::vector<RingSpan> whereBehind(const Site& site, const std::string& room) {
  std::vector<RingSpan> spans;
  for (std::size_t ring = 0; ring < site.rooms_behind.size(); ++ring) {
    for (const auto& edge : site.rooms_behind[ring]) {
      for (const perimeter::Span& s : edge) {
        if (s.id == room) {
          spans.push_back({static_cast<int>(ring), s.from_m, s.to_m, s.from_in});
        }
      }
    }
  }
  return joinSpans(std::move(spans));
}

void roomSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  for (const Room& room : site.job.plan.rooms) {
    const auto use = plan::nameOf(room.use);
    if (std::find(rule.values.begin(), rule.values.end(), use) == rule.values.end()) continue;
    Finding f = makeFinding(rule, site, -1,
                            base::Message("rule.room", {base::phrase("room", roomLabel(room))}));
    f.thing = room.id;
    f.thing_label = roomLabel(room);
    addSpans(rule, site, -1, f, whereBehind(site, room.id), out);
  }
}

std::optional<Nearest> noNearest(const Rule&, const Site&, perimeter::Place) {
  return std::nullopt;
}

std::optional<double> noLeast(const Rule&, const Site&, const Thing&, int, double, double) {
  return std::nullopt;
}

/// A fitting drawn against the wall stands on its room's outline, give or take a drawing's rounding
/// (own figure).
constexpr double kOnOutline_m = 0.001;

/// The room a fitting stands in; the first in file order where they overlap.
const Room* roomOf(const Site& site, const Thing& fitting) {
  for (const Room& room : site.job.plan.rooms) {
    if (geometry::distanceToArea(fitting.shapes[0][0], room.outline_m) <= kOnOutline_m) {
      return &room;
    }
  }
  return nullptr;
}

std::vector<EdgePiece> nearPoint(const perimeter::Perimeter& perimeter, geometry::Point p,
                                 double r) {
  std::vector<EdgePiece> pieces;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const Edge& edge : perimeter.edges(ring)) {
      if (const auto i = geometry::within(edge.line(), p, r)) pieces.push_back({&edge, *i});
    }
  }
  return pieces;
}

std::vector<RingSpan> overlap(const std::vector<RingSpan>& as, const std::vector<RingSpan>& bs) {
  std::vector<RingSpan> both;
  for (const RingSpan& a : as) {
    for (const RingSpan& b : bs) {
      if (a.ring != b.ring) continue;
      const RingSpan& later = a.from_m > b.from_m || (a.from_m == b.from_m && !a.from_in) ? a : b;
      const double to = std::min(a.to_m, b.to_m);
      if (later.from_m < to) both.push_back({a.ring, later.from_m, to, later.from_in});
    }
  }
  return joinSpans(std::move(both));
}

void fittingSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  const double reach = reach_m(rule, site);
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const Thing& thing = site.things[static_cast<std::size_t>(i)];
    const Room* room = roomOf(site, thing);
    if (room == nullptr) continue;
    const auto near = joinPieces(nearPoint(site.perimeter, thing.shapes[0][0], reach));
    const Finding f = makeFinding(
        rule, site, i, base::Message("rule.too-near", {base::phrase("thing", thing.label)}));
    addSpans(rule, site, i, f, overlap(near, whereBehind(site, room->id)), out);
  }
}

bool behindAt(const Site& site, perimeter::Place place, const std::string& room) {
  const Edge& edge = site.perimeter.edgeAt(place);
  const double s = site.perimeter.wrapped(place).chainage_m;
  const auto& spans =
      site.rooms_behind[static_cast<std::size_t>(edge.ring)][static_cast<std::size_t>(edge.edge)];
  return std::any_of(spans.begin(), spans.end(), [&](const perimeter::Span& span) {
    return span.id == room && holds(span, s);
  });
}

std::optional<Nearest> fittingNearest(const Rule& rule, const Site& site, perimeter::Place place) {
  const auto half = halfWidth_m(rule, site);
  if (!half) return std::nullopt;
  const geometry::Point at = site.perimeter.pointAt(place);
  return nearestOf(rule, site, [&](const Thing& thing) -> std::optional<double> {
    const Room* room = roomOf(site, thing);
    if (room == nullptr || !behindAt(site, place, room->id)) return std::nullopt;
    return geometry::distance(at, thing.shapes[0][0]) - *half;
  });
}

}  // namespace

const RuleJudge kRoomBehind{RuleKind::room_behind, roomSpans, noNearest, noLeast};
const RuleJudge kFittingBehind{RuleKind::fitting_behind, fittingSpans, fittingNearest,
                               kClearance.least};

}  // namespace sumpwright::rules
