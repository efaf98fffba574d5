#include "drawing/PageRing.h"

#include <algorithm>
#include <cmath>

#include "drawing/Sketch.h"

namespace sumpwright::drawing {
namespace {

constexpr double kSharpest = 2.5;    // longest mitre, in offsets; beyond it the strip is bevelled
constexpr double kStraight = 0.035;  // sine of 2 degrees: walls in line, whose faces step

/// Where the inner faces of two neighbouring edges meet, along the second one.
void joinInside(PageEdge& before, PageEdge& after) {
  const double turn = geometry::cross(before.along, after.along);
  before.inner_to_mm = before.length_mm;
  after.inner_from_mm = 0.0;
  if (std::abs(turn) < kStraight) return;
  const Point a = before.at(0.0, -before.thick_mm);
  const Point b = after.at(0.0, -after.thick_mm);
  before.inner_to_mm = geometry::cross(b - a, after.along) / turn;
  after.inner_from_mm = geometry::cross(b - a, before.along) / turn;
}

double mitre(double turn_rad) {
  return std::clamp(std::tan(std::clamp(turn_rad, -3.0, 3.0) / 2.0), -kSharpest, kSharpest);
}

PageEdge pageEdge(const perimeter::Edge& edge, const PlanView& view) {
  PageEdge out;
  out.edge = &edge;
  out.from = toPage(view, edge.from);
  out.to = toPage(view, edge.to);
  out.along = unit(out.to - out.from);
  out.out = {-edge.inward.x, edge.inward.y};  // y runs down the page
  out.length_mm = edge.length_m * view.mm_per_m;
  out.thick_mm = edge.thickness_m * view.mm_per_m;
  return out;
}

/// Start and end of an offset line on one edge, cut to [from, to] where these are given.
struct Cut {
  double from = 0.0;
  double to = 0.0;
};

Cut offsetCut(const PageEdge& e, double out_mm, double from_mm, bool from_corner, double to_mm,
              bool to_corner) {
  const double start = -out_mm * e.mitre_from;
  const double end = e.length_mm + out_mm * e.mitre_to;
  Cut cut{from_corner ? start : std::max(start, from_mm), to_corner ? end : std::min(end, to_mm)};
  if (cut.from > cut.to)
    cut.from = cut.to =
        std::clamp((cut.from + cut.to) / 2.0, std::min(start, end), std::max(start, end));
  return cut;
}

/// Walks the edges a span of chainage covers: calls `visit(edge, from, starts at corner, to, ends
/// at corner)` in order.
template <class Visit>
void walk(const PageRing& ring, double from_m, double to_m, Visit visit) {
  constexpr double kSame_m = 1e-9;
  const bool whole = to_m - from_m >= ring.length_m - kSame_m;
  for (int lap = 0; lap < 2; ++lap) {
    for (const PageEdge& e : ring.edges) {
      const double start = e.edge->start_m + lap * ring.length_m;
      const double end = start + e.edge->length_m;
      const double from = std::max(from_m, start);
      const double to = std::min(to_m, end);
      if (to - from <= kSame_m) continue;
      visit(e, (from - start) * ring.mm_per_m, whole || from - start <= kSame_m,
            (to - start) * ring.mm_per_m, whole || end - to <= kSame_m);
    }
  }
}

}  // namespace

std::vector<Point> PageRing::outside() const {
  std::vector<Point> out;
  for (const PageEdge& e : edges) out.push_back(e.from);
  return out;
}

std::vector<Point> PageRing::inside() const {
  std::vector<Point> out;
  for (const PageEdge& e : edges) {
    out.push_back(e.at(e.inner_from_mm, -e.thick_mm));
    out.push_back(e.at(e.inner_to_mm, -e.thick_mm));
  }
  return out;
}

PageRing::Spot PageRing::spot(double chainage_m) const {
  double s = std::fmod(chainage_m, length_m);
  if (s < 0.0) s += length_m;
  std::size_t i = 0;
  while (i + 1 < edges.size() && s >= edges[i + 1].edge->start_m) ++i;
  return {i, (s - edges[i].edge->start_m) * mm_per_m};
}

Point PageRing::face(double chainage_m, double out_mm) const {
  const Spot at = spot(chainage_m);
  return edges[at.edge].at(at.along_mm, out_mm);
}

std::vector<Point> PageRing::strip(double from_m, double to_m, double near_mm,
                                   double far_mm) const {
  std::vector<Point> outer;
  std::vector<Point> inner;
  walk(*this, from_m, to_m, [&](const PageEdge& e, double from, bool first, double to, bool last) {
    const Cut far = offsetCut(e, far_mm, from, first, to, last);
    const Cut near = offsetCut(e, near_mm, from, first, to, last);
    outer.push_back(e.at(far.from, far_mm));
    outer.push_back(e.at(far.to, far_mm));
    inner.push_back(e.at(near.from, near_mm));
    inner.push_back(e.at(near.to, near_mm));
  });
  outer.insert(outer.end(), inner.rbegin(), inner.rend());
  return outer;
}

std::vector<Point> PageRing::body(double from_m, double to_m) const {
  std::vector<Point> outer;
  std::vector<Point> inner;
  walk(*this, from_m, to_m, [&](const PageEdge& e, double from, bool first, double to, bool last) {
    outer.push_back(e.at(from));
    outer.push_back(e.at(to));
    const double low = std::min(e.inner_from_mm, e.inner_to_mm);
    const double high = std::max(e.inner_from_mm, e.inner_to_mm);
    inner.push_back(e.at(first ? e.inner_from_mm : std::clamp(from, low, high), -e.thick_mm));
    inner.push_back(e.at(last ? e.inner_to_mm : std::clamp(to, low, high), -e.thick_mm));
  });
  outer.insert(outer.end(), inner.rbegin(), inner.rend());
  return outer;
}

std::vector<PageRing> pageRings(const siting::Study& study, const PlanView& view) {
  std::vector<PageRing> rings;
  const perimeter::Perimeter& perimeter = study.perimeter();
  for (int r = 0; r < perimeter.ringCount(); ++r) {
    PageRing ring{r, view.mm_per_m, perimeter.length_m(r), {}};
    for (const perimeter::Edge& edge : perimeter.edges(r)) {
      ring.edges.push_back(pageEdge(edge, view));
    }
    for (std::size_t i = 0; i < ring.edges.size(); ++i) {
      PageEdge& before = ring.edges[i];
      PageEdge& after = ring.edges[(i + 1) % ring.edges.size()];
      after.mitre_from = before.mitre_to = mitre(after.edge->turn_rad);
      joinInside(before, after);
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

}  // namespace sumpwright::drawing
