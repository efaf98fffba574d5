#include "perimeter/Perimeter.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "base/Contract.h"
#include "geometry/Distance.h"

namespace sumpwright::perimeter {

namespace {

constexpr double kShortestEdge_m = 0.001;  // as the plan check (own figure)

std::string ringPointer(std::size_t ring) { return "/plan/rings/" + std::to_string(ring); }

void checkRing(const plan::Ring& ring, std::size_t index, base::Problems& problems) {
  if (!ring.closed) {
    problems.push_back({base::Message("plan.ring.open"), ringPointer(index)});
    return;
  }
  if (ring.corners.size() < 3 || ring.walls.size() != ring.corners.size()) {
    problems.push_back({base::Message("plan.ring.corners"), ringPointer(index) + "/corners_m"});
    return;
  }
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    const Point next = ring.corners[(i + 1) % ring.corners.size()];
    if (!(geometry::distance(ring.corners[i], next) >= kShortestEdge_m)) {
      problems.push_back({base::Message("plan.ring.short-edge"),
                          ringPointer(index) + "/corners_m/" + std::to_string(i)});
    }
  }
}

double turn(Vec before, Vec after) {
  return std::atan2(geometry::cross(before, after), geometry::dot(before, after));
}

Edge makeEdge(const plan::Ring& ring, std::size_t i, int ringIndex, double start,
              const plan::House& house) {
  Edge e;
  e.ring = ringIndex;
  e.edge = static_cast<int>(i);
  e.from = ring.corners[i];
  e.to = ring.corners[(i + 1) % ring.corners.size()];
  e.start_m = start;
  e.length_m = geometry::distance(e.from, e.to);
  e.along = (1.0 / e.length_m) * (e.to - e.from);
  e.inward = geometry::left(e.along);
  const auto known = plan::knownThickness_m(ring.walls[i], house);
  e.thickness_assumed = !known;
  e.thickness_m = known.value_or(plan::kAssumedWallThickness_m);
  return e;
}

std::vector<Edge> makeEdges(const plan::Ring& ring, int ringIndex, const plan::House& house) {
  std::vector<Edge> edges;
  double start = 0.0;
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    edges.push_back(makeEdge(ring, i, ringIndex, start, house));
    start = edges.back().end_m();
  }
  for (std::size_t i = 0; i < edges.size(); ++i) {
    edges[i].turn_rad = turn(edges[(i + edges.size() - 1) % edges.size()].along, edges[i].along);
  }
  return edges;
}

}  // namespace

base::Result<Perimeter> Perimeter::of(const plan::Job& job) {
  base::Problems problems;
  if (job.plan.rings.empty()) problems.push_back({base::Message("plan.ring.none"), "/plan/rings"});
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) checkRing(job.plan.rings[r], r, problems);
  if (!problems.empty()) return problems;
  Perimeter result;
  result.m_north_deg = job.plan.north_deg;
  for (const plan::Ring& ring : job.plan.rings) {
    RingData data;
    data.edges = makeEdges(ring, result.ringCount(), job.house);
    data.walls = ring.walls;
    data.length_m = data.edges.back().end_m();
    result.m_rings.push_back(std::move(data));
  }
  return result;
}

double Perimeter::length_m(int ring) const {
  SUMPWRIGHT_REQUIRE(ring >= 0 && ring < ringCount());
  return m_rings[static_cast<std::size_t>(ring)].length_m;
}

const std::vector<Edge>& Perimeter::edges(int ring) const {
  SUMPWRIGHT_REQUIRE(ring >= 0 && ring < ringCount());
  return m_rings[static_cast<std::size_t>(ring)].edges;
}

const plan::Wall& Perimeter::wall(const Edge& edge) const {
  return m_rings[static_cast<std::size_t>(edge.ring)].walls[static_cast<std::size_t>(edge.edge)];
}

bool Perimeter::contains(Place place) const {
  return place.ring >= 0 && place.ring < ringCount() && std::isfinite(place.chainage_m);
}

Place Perimeter::wrapped(Place place) const {
  SUMPWRIGHT_REQUIRE(contains(place));
  const double length = length_m(place.ring);
  if (place.chainage_m >= 0.0 && place.chainage_m < length) return place;
  double s = std::fmod(place.chainage_m, length);
  if (s < 0.0) s += length;
  if (s >= length) s = 0.0;  // -1e-20 + length rounds to length
  return {place.ring, s};
}

const Edge& Perimeter::edgeAt(Place place) const {
  const double s = wrapped(place).chainage_m;
  const auto& all = edges(place.ring);
  const auto after = std::upper_bound(
      all.begin(), all.end(), s, [](double value, const Edge& e) { return value < e.start_m; });
  return *std::prev(after);
}

Point Perimeter::pointAt(Place place) const {
  const Edge& edge = edgeAt(place);
  return edge.line().at(wrapped(place).chainage_m - edge.start_m);
}

Place Perimeter::placeOf(const plan::OnWall& at, double further_m) const {
  const auto& all = edges(at.ring);
  SUMPWRIGHT_REQUIRE(at.edge >= 0 && static_cast<std::size_t>(at.edge) < all.size());
  return wrapped(
      {at.ring, all[static_cast<std::size_t>(at.edge)].start_m + at.offset_m + further_m});
}

Segment Perimeter::faceOf(const plan::OnWall& at, double width_m) const {
  const auto& all = edges(at.ring);
  SUMPWRIGHT_REQUIRE(at.edge >= 0 && static_cast<std::size_t>(at.edge) < all.size());
  const geometry::Line line = all[static_cast<std::size_t>(at.edge)].line();
  return {line.at(at.offset_m), line.at(at.offset_m + width_m)};
}

Place Perimeter::nearestOn(int ring, Point point) const {
  Place best{ring, 0.0};
  double least = geometry::distance(point, pointAt(best));
  for (const Edge& e : edges(ring)) {
    const Point near = geometry::nearest(point, e.face());
    const double d = geometry::distance(point, near);
    if (d < least) {
      least = d;
      best = wrapped({ring, e.start_m + std::min(geometry::distance(e.from, near), e.length_m)});
    }
  }
  return best;
}

Place Perimeter::nearest(Point point) const {
  Place best = nearestOn(0, point);
  for (int ring = 1; ring < ringCount(); ++ring) {
    const Place other = nearestOn(ring, point);
    if (geometry::distance(point, pointAt(other)) < geometry::distance(point, pointAt(best))) {
      best = other;
    }
  }
  return best;
}

Segment Perimeter::drillLine(Place place) const {
  const Edge& edge = edgeAt(place);
  const Point at = pointAt(place);
  return {at, at + edge.drillDepth_m() * edge.inward};
}

double Perimeter::apart_m(int ring, double s1, double s2) const {
  const double length = length_m(ring);
  const double along = std::abs(wrapped({ring, s1}).chainage_m - wrapped({ring, s2}).chainage_m);
  return std::min(along, length - along);
}

std::string Perimeter::cornerLetter(int ring, int edge) const {
  auto n = static_cast<std::size_t>(edge);
  for (int r = 0; r < ring; ++r) n += edges(r).size();
  return letterOfCorner(n);
}

std::string letterOfCorner(std::size_t n) {
  std::string letters;
  do {
    letters.insert(letters.begin(), static_cast<char>('A' + n % 26));
    n = n / 26;
  } while (n-- > 0);
  return letters;
}

std::string Perimeter::compassSide(const Edge& edge) const {
  static constexpr std::array<const char*, 8> kSides{"north", "north-east", "east", "south-east",
                                                     "south", "south-west", "west", "north-west"};
  const Vec out = -edge.inward;
  const double bearing = std::atan2(out.x, out.y) * 180.0 / std::numbers::pi - m_north_deg;
  const auto eighth = static_cast<int>(std::lround(bearing / 45.0)) % 8;
  return kSides[static_cast<std::size_t>((eighth + 8) % 8)];
}

base::Message Perimeter::wallLabel(const Edge& edge) const {
  const std::string& name = wall(edge).name;
  if (!name.empty()) return base::plainText(name);
  return base::Message("wall.compass", {base::text("side", compassSide(edge))});
}

}  // namespace sumpwright::perimeter
