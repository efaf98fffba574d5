#include "build/SectionAlong.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/Contract.h"
#include "build/HoleRule.h"
#include "build/SectionWords.h"

namespace sumpwright::build {

namespace {

using perimeter::Edge;
using rules::Site;

constexpr double kSliver_m = 1e-9;  // shorter pieces are rounding

/// What is known of one place.
struct Taken {
  Fit fit = Fit::never;
  Fit bored = Fit::not_cored;
  std::vector<NoCore> no_core;
  Start start = Start::below_ground;
  std::optional<Tightest> clash;
  std::optional<LimitKind> stated_fails;
  bool assumed = false;
  bool depth_assumed = false;
  bool slopes = false;
  SectionNode node;
  bool isLike(const Taken& other) const {
    const auto pair = [](const Taken& t) {
      return t.clash ? std::optional(std::pair(t.clash->upper, t.clash->lower)) : std::nullopt;
    };
    return fit == other.fit && bored == other.bored && no_core == other.no_core &&
           start == other.start && stated_fails == other.stated_fails &&
           (bored != Fit::never || pair(*this) == pair(other));
  }
};

/// A foundation keeps a hole away by itself; under its rule's waiver the hole is judged as any.
bool mayBeBored(const std::vector<NoCore>& no_core) {
  return std::all_of(no_core.begin(), no_core.end(),
                     [](NoCore why) { return why == NoCore::foundation; });
}

class AlongMaker {
 public:
  explicit AlongMaker(const Site& site) : m_site(site) {
    if (!site.hole) return;
    m_wish.bore.entry_m = site.hole->entry_m;
    if (site.hole->fall_deg) m_wish.bore.fall = fallOfDegrees(*site.hole->fall_deg);
  }

  std::vector<SectionPiece> made() {
    for (int ring = 0; ring < m_site.perimeter.ringCount(); ++ring) {
      for (const Edge& edge : m_site.perimeter.edges(ring)) addEdge(edge);
    }
    return std::move(m_pieces);
  }

 private:
  Taken take(const Edge& edge, double s) const {
    const perimeter::Place place{edge.ring, s};
    const BuildUp up = buildUpAt(m_site, place);
    Taken taken;
    taken.no_core = noCores(m_site, place);
    taken.assumed = isAssumed(up);
    taken.depth_assumed = isDepthAssumed(up);
    taken.slopes = up.ground_slope != 0.0;
    taken.node.chainage_m = s;
    if (mayBeBored(taken.no_core)) takeHole(drillSection(up, m_wish), taken);
    taken.fit = taken.no_core.empty() ? taken.bored : Fit::not_cored;
    return taken;
  }

  void takeHole(const DrillSection& section, Taken& taken) const {
    taken.bored = section.fit;
    taken.start = section.start;
    if (section.fit == Fit::never) {
      taken.clash = section.clash;
      taken.stated_fails = failedByWish(section, m_wish);
    }
    taken.node.dig_m = std::max(0.0, section.dig_m);
    if (section.fit == Fit::fits_if_footing) taken.node.footing_top_m = section.footing_top_m;
  }

  /// Chainages between which neither the floor behind nor the fall of the ground changes.
  std::vector<double> cuts(const Edge& edge) const {
    std::vector<double> all{edge.start_m, edge.end_m()};
    for (const perimeter::Span& span : m_site.zones_behind[static_cast<std::size_t>(edge.ring)]
                                                          [static_cast<std::size_t>(edge.edge)]) {
      all.push_back(span.from_m);
      all.push_back(span.to_m);
    }
    for (const plan::GroundPoint& point : m_site.perimeter.wall(edge).ground_points) {
      all.push_back(edge.start_m + point.offset_m);
    }
    for (double& s : all) s = std::clamp(s, edge.start_m, edge.end_m());
    std::sort(all.begin(), all.end());
    return all;
  }

  void addEdge(const Edge& edge) {
    const std::vector<double> all = cuts(edge);
    for (std::size_t k = 1; k < all.size(); ++k) {
      if (all[k] - all[k - 1] > kSliver_m) addPart(edge, all[k - 1], all[k]);
    }
  }

  void addPart(const Edge& edge, double from, double to) {
    const Taken middle = take(edge, 0.5 * (from + to));
    if (!middle.slopes) {
      add(edge, from, to, middle, {at(middle, from), at(middle, to)});
      return;
    }
    const int steps = std::max(2, static_cast<int>(std::ceil((to - from) / kSlopeStep_m)));
    const double hair = std::min(kSectionEnd_m, 0.01 * (to - from));
    Taken last = take(edge, from + hair);
    double begun = from;
    std::vector<SectionNode> nodes{at(last, from)};
    for (int k = 1; k <= steps; ++k) {
      const double s = k == steps ? to - hair : from + (to - from) * k / steps;
      Taken next = take(edge, s);
      if (!last.isLike(next)) {
        auto [before, after] = changeBetween(edge, last, next);
        const double end = 0.5 * (before.node.chainage_m + after.node.chainage_m);
        nodes.push_back(at(before, end));
        add(edge, begun, end, before, std::move(nodes));
        begun = end;
        nodes = {at(after, end)};
      }
      nodes.push_back(next.node);
      last = next;
    }
    nodes.back().chainage_m = to;
    add(edge, begun, to, last, std::move(nodes));
  }

  std::pair<Taken, Taken> changeBetween(const Edge& edge, Taken low, Taken high) const {
    while (high.node.chainage_m - low.node.chainage_m > kSectionEnd_m) {
      const Taken middle = take(edge, 0.5 * (low.node.chainage_m + high.node.chainage_m));
      (middle.isLike(low) ? low : high) = middle;
    }
    return {low, high};
  }

  static SectionNode at(const Taken& taken, double s) {
    SectionNode node = taken.node;
    node.chainage_m = s;
    return node;
  }

  void add(const Edge& edge, double from, double to, const Taken& taken,
           std::vector<SectionNode> nodes) {
    SectionPiece piece{edge.ring, edge.edge, from, to};
    piece.fit = taken.fit;
    piece.no_core = taken.no_core;
    piece.bored = taken.bored;
    piece.start = taken.start;
    piece.clash = taken.clash;
    piece.stated_fails = taken.stated_fails;
    piece.assumed = taken.assumed;
    piece.depth_assumed = taken.depth_assumed;
    piece.nodes = std::move(nodes);
    m_pieces.push_back(std::move(piece));
  }

  const Site& m_site;
  SectionWish m_wish;
  std::vector<SectionPiece> m_pieces;
};

}  // namespace

SectionAlong SectionAlong::of(const Site& site) {
  SectionAlong along;
  along.m_pieces = AlongMaker(site).made();
  return along;
}

const SectionPiece& SectionAlong::at(perimeter::Place place) const {
  SUMPWRIGHT_REQUIRE(!m_pieces.empty());
  const auto after = std::upper_bound(
      m_pieces.begin(), m_pieces.end(), place, [](perimeter::Place p, const SectionPiece& piece) {
        return std::pair(p.ring, p.chainage_m) < std::pair(piece.ring, piece.from_m);
      });
  return after == m_pieces.begin() ? m_pieces.front() : *(after - 1);
}

SectionNode SectionAlong::read(perimeter::Place place) const {
  const SectionPiece& piece = at(place);
  const auto high =
      std::find_if(piece.nodes.begin() + 1, piece.nodes.end() - 1,
                   [&](const SectionNode& node) { return node.chainage_m >= place.chainage_m; });
  const SectionNode& a = *(high - 1);
  const SectionNode& b = *high;
  const double apart = b.chainage_m - a.chainage_m;
  const double share =
      apart > 0.0 ? std::clamp((place.chainage_m - a.chainage_m) / apart, 0.0, 1.0) : 0.0;
  SectionNode node{place.chainage_m, a.dig_m + share * (b.dig_m - a.dig_m), std::nullopt};
  if (a.footing_top_m && b.footing_top_m) {
    node.footing_top_m = *a.footing_top_m + share * (*b.footing_top_m - *a.footing_top_m);
  }
  return node;
}

}  // namespace sumpwright::build
