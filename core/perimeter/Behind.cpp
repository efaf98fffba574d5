#include "perimeter/Behind.h"

#include <algorithm>
#include <limits>

namespace sumpwright::perimeter {

namespace {

using geometry::Interval;
using geometry::Intervals;

/// A room side in the wall's own frame: u along the outside face, v into the house.
struct Side {
  std::size_t room = 0;
  double u1 = 0.0, v1 = 0.0, u2 = 0.0, v2 = 0.0;
  double lowU() const { return std::min(u1, u2); }
  double highU() const { return std::max(u1, u2); }
  double at(double u) const { return v1 + (v2 - v1) * ((u - u1) / (u2 - u1)); }
};

std::vector<Side> sidesInFrame(const Edge& edge, const std::vector<plan::Room>& rooms, double low,
                               double high) {
  std::vector<Side> sides;
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    const auto& outline = rooms[r].outline_m;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec a = outline[i] - edge.from;
      const Vec b = outline[(i + 1) % outline.size()] - edge.from;
      const Side side{r, geometry::dot(edge.along, a), geometry::dot(edge.inward, a),
                      geometry::dot(edge.along, b), geometry::dot(edge.inward, b)};
      // A side square to the wall bounds nothing that its neighbours do not bound.
      if (side.u1 == side.u2 || side.highU() <= low || side.lowU() >= high) continue;
      sides.push_back(side);
    }
  }
  return sides;
}

void addCrossing(const Side& side, double v, std::vector<double>& breaks) {
  if ((side.v1 > v) == (side.v2 > v)) return;
  breaks.push_back(side.u1 + (side.u2 - side.u1) * ((v - side.v1) / (side.v2 - side.v1)));
}

/// Where two sides of different rooms cross: rooms ought not to overlap, but may by a tape's error.
void addMeeting(const Side& a, const Side& b, std::vector<double>& breaks) {
  const double low = std::max(a.lowU(), b.lowU());
  const double high = std::min(a.highU(), b.highU());
  if (!(low < high)) return;
  const double d1 = a.at(low) - b.at(low);
  const double d2 = a.at(high) - b.at(high);
  if ((d1 > 0.0) == (d2 > 0.0)) return;
  breaks.push_back(low + (high - low) * (d1 / (d1 - d2)));
}

/// Chainages (less the edge's start) between which the first room entered cannot change.
std::vector<double> breaksOf(const std::vector<Side>& sides, double depth, double low,
                             double high) {
  std::vector<double> breaks{low, high};
  for (std::size_t i = 0; i < sides.size(); ++i) {
    breaks.push_back(sides[i].u1);
    breaks.push_back(sides[i].u2);
    addCrossing(sides[i], 0.0, breaks);
    addCrossing(sides[i], depth, breaks);
    for (std::size_t j = i + 1; j < sides.size(); ++j) {
      if (sides[i].room != sides[j].room) addMeeting(sides[i], sides[j], breaks);
    }
  }
  std::erase_if(breaks, [&](double u) { return u < low || u > high; });
  std::sort(breaks.begin(), breaks.end());
  breaks.erase(std::unique(breaks.begin(), breaks.end()), breaks.end());
  return breaks;
}

/// Depth at which the line at u enters the room, +inf if not before `depth`.
double entry(const std::vector<Side>& sides, std::size_t room, double u, double depth) {
  std::vector<double> crossings;
  for (const Side& side : sides) {
    if (side.room == room && (side.u1 > u) != (side.u2 > u)) crossings.push_back(side.at(u));
  }
  std::sort(crossings.begin(), crossings.end());
  for (std::size_t i = 1; i < crossings.size(); i += 2) {
    const double from = std::max(crossings[i - 1], 0.0);
    if (crossings[i] > from && from < depth) return from;
  }
  return std::numeric_limits<double>::infinity();
}

void addFirstRooms(const std::vector<Side>& sides, const std::vector<std::size_t>& present,
                   const Interval& piece, double depth, std::vector<Intervals>& first) {
  const double u = 0.5 * (piece.from + piece.to);
  double least = std::numeric_limits<double>::infinity();
  std::vector<std::size_t> winners;
  for (const std::size_t room : present) {
    const double at = entry(sides, room, u, depth);
    if (at > least || at == std::numeric_limits<double>::infinity()) continue;
    if (at < least) winners.clear();
    least = at;
    winners.push_back(room);
  }
  for (const std::size_t room : winners) {
    auto& list = first[room];
    if (!list.empty() && list.back().to == piece.from) {
      list.back().to = piece.to;
    } else {
      list.push_back(piece);
    }
  }
}

void addSpans(const Edge& edge, const std::string& id, Intervals found, double widen, bool first_in,
              std::vector<Span>& spans) {
  for (Interval& i : found) i = {i.from - widen, i.to + widen};
  for (const Interval& i : geometry::unite(std::move(found))) {
    const Interval on = geometry::clip(i, {0.0, edge.length_m});
    if (on.empty()) continue;
    const bool tillEnd = i.to >= edge.length_m;
    spans.push_back({id, edge.start_m + on.from, tillEnd ? edge.end_m() : edge.start_m + on.to,
                     first_in || i.from < 0.0});
  }
}

void sortSpans(std::vector<Span>& spans) {
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) {
    return a.from_m != b.from_m ? a.from_m < b.from_m : a.id < b.id;
  });
}

}  // namespace

std::vector<Span> roomsBehind(const Edge& edge, const std::vector<plan::Room>& rooms,
                              double core_m) {
  const double half = core_m / 2.0;
  const double low = -half;
  const double high = edge.length_m + half;
  const double depth = edge.drillDepth_m();
  const std::vector<Side> sides = sidesInFrame(edge, rooms, low, high);
  std::vector<std::size_t> present;
  for (const Side& side : sides) {
    if (present.empty() || present.back() != side.room) present.push_back(side.room);
  }
  const std::vector<double> breaks = breaksOf(sides, depth, low, high);
  std::vector<Intervals> first(rooms.size());
  for (std::size_t i = 1; i < breaks.size(); ++i) {
    addFirstRooms(sides, present, {breaks[i - 1], breaks[i]}, depth, first);
  }
  std::vector<Span> spans;
  for (const std::size_t room : present)
    addSpans(edge, rooms[room].id, first[room], half, false, spans);
  sortSpans(spans);
  return spans;
}

std::vector<Span> zonesBehind(const Edge& edge, const std::vector<plan::FloorZone>& zones) {
  const geometry::Line ends{edge.from + edge.drillDepth_m() * edge.inward, edge.along};
  std::vector<Span> spans;
  for (const plan::FloorZone& zone : zones) {
    // Half-open, so that where two zones share an outline one of them holds the place between.
    addSpans(edge, zone.id, geometry::inside(ends, zone.outline_m), 0.0, true, spans);
  }
  sortSpans(spans);
  return spans;
}

}  // namespace sumpwright::perimeter
