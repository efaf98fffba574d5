#include "build/CableNetwork.h"

#include <algorithm>
#include <cmath>

#include "build/CableLines.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::build {

namespace {

constexpr double kTriedEvery_m = 0.25;  // own figure

class Network {
 public:
  Network(const rules::Site& site, const CableAsk& ask, const std::vector<perimeter::Place>& fans)
      : m_site(site),
        m_ask(ask),
        m_fans(fans),
        m_inside(ask.fan_place == plan::FanPlace::roof_space),
        m_lines(cableLines(site, ask.figures)) {}

  CableNetwork made() {
    m_net.head_assumed = m_lines.head_assumed;
    m_net.sill_assumed = m_lines.sill_assumed;
    m_net.dpc_m = m_lines.dpc_m;
    m_net.run_outside_m = m_lines.run_outside_m;
    m_stops.resize(m_lines.lines.size());
    for (const plan::Supply& supply : m_site.job.plan.supplies) addSupply(supply);
    addBends();
    addCrossings();
    // After the crossings: a fan's place is no better to drill at than the bends about it, and so
    // no fan changes the way of another.
    if (!m_inside) {
      for (const perimeter::Place& fan : m_fans) addStop(m_lines.spotOnFace(fan));
    }
    number();
    joinAlong();
    joinAcross();
    m_inside ? putInRoof() : putOutside();
    for (Wanted& one : m_wanted) {
      one.terminal.node = nodeOf(one.spot);
      m_net.terminals.push_back(one.terminal);
    }
    return std::move(m_net);
  }

 private:
  struct Wanted {
    CableTerminal terminal;
    Spot spot;
  };
  struct Across {
    Spot from;
    Spot to;
    double length_m;
  };

  void addStop(const Spot& spot) { m_stops[spot.line].push_back(spot.s_m); }

  void refuse(const plan::Supply& supply, const char* id) {
    m_net.none.push_back({supply.id, supplyLabel(m_site, supply), base::Message(id)});
  }

  void addSupply(const plan::Supply& supply) {
    const auto found = m_lines.spotOf(supply.at_m);
    if (found.state == Found::wet) return refuse(supply, "cable.no.wet");
    if (found.state == Found::nowhere) return refuse(supply, "cable.no.room");
    CableTerminal terminal{supply.id, 0, 0.0, found.through ? found.off_m : 0.0};
    const double run = found.outside ? m_lines.run_outside_m : m_ask.figures.skirting_m;
    terminal.rise_m = std::abs(heightOfSupply(supply, m_ask.figures) - run);
    if (!found.through) terminal.rise_m += found.off_m;
    addStop(found.spot);
    m_wanted.push_back({terminal, found.spot});
  }

  /// Corners, jambs, ends of what is too near to a bath, and as near to them as is drilled.
  void addBends() {
    for (std::size_t k = 0; k < m_lines.lines.size(); ++k) {
      const CableLine& line = m_lines.lines[k];
      for (std::size_t i = 0; i < line.corners.size(); ++i) m_stops[k].push_back(line.starts_m[i]);
      for (const OverOpening& over : line.over) {
        m_stops[k].push_back(over.from_m);
        m_stops[k].push_back(over.to_m);
      }
      for (const CableRange& entry : line.entries) {
        m_stops[k].push_back(entry.from_m);
        m_stops[k].push_back(entry.to_m);
      }
      for (const CableRange& wet : line.closed) {
        m_stops[k].push_back(wet.from_m);
        m_stops[k].push_back(wet.to_m);
      }
    }
  }

  /// From every place that may be drilled to what it faces, and from some between: where a third
  /// wall stands in the way at all of those, a drilling a little further on is better than none;
  /// both ends become places of their lines. From the roof space a cable comes down at any of them
  /// inside, whatever they face.
  void addCrossings() {
    std::vector<Spot> down;
    for (std::size_t k = 0; k < m_lines.lines.size(); ++k) {
      const bool inside = m_lines.lines[k].kind != CablePartKind::outside;
      for (const Spot& from : triedOn(k)) {
        if (!m_lines.mayDrill(from)) continue;
        if (m_inside && inside) down.push_back(from);
        const auto across = m_lines.facing(from);
        if (!across || !m_lines.mayDrill(across->spot)) continue;
        m_across.push_back({from, across->spot, across->distance_m});
      }
    }
    for (const Spot& spot : down) addStop(spot);
    for (const Across& one : m_across) {
      addStop(one.from);
      addStop(one.to);
    }
  }

  std::vector<Spot> triedOn(std::size_t k) const {
    const CableLine& line = m_lines.lines[k];
    const double off = m_ask.figures.from_corner_m;
    std::vector<Spot> tried;
    const auto add = [&](double s) { tried.push_back({k, line.wrapped(s)}); };
    for (const double s : m_stops[k]) add(s);
    for (const double s : m_stops[k]) {
      add(s + off);
      add(s - off);
    }
    for (double s = 0.0; s < line.length_m; s += kTriedEvery_m) add(s);
    return tried;
  }

  void number() {
    for (std::size_t k = 0; k < m_stops.size(); ++k) {
      std::vector<double>& stops = m_stops[k];
      for (double& s : stops) s = m_lines.lines[k].wrapped(s);
      std::sort(stops.begin(), stops.end());
      stops.erase(std::unique(stops.begin(), stops.end(),
                              [](double a, double b) { return b - a < kSameSpot_m; }),
                  stops.end());
      m_first.push_back(m_net.nodes.size());
      for (const double s : stops) m_net.nodes.push_back(m_lines.lines[k].pointAt(s));
    }
  }

  std::size_t nodeOf(const Spot& spot) const {
    const std::vector<double>& stops = m_stops[spot.line];
    const auto at = std::lower_bound(stops.begin(), stops.end(), spot.s_m - kSameSpot_m);
    const std::size_t i = at == stops.end() ? 0 : static_cast<std::size_t>(at - stops.begin());
    return m_first[spot.line] + i;
  }

  void joinAlong() {
    for (std::size_t k = 0; k < m_stops.size(); ++k) {
      const CableLine& line = m_lines.lines[k];
      const std::vector<double>& stops = m_stops[k];
      for (std::size_t i = 0; i < stops.size(); ++i) {
        const std::size_t next = (i + 1) % stops.size();
        const double to = next == 0 ? stops[0] + line.length_m : stops[next];
        const double middle = line.wrapped((stops[i] + to) / 2.0);
        if (line.isClosed(middle)) continue;
        const OverOpening* over = line.overAt(middle);
        if (over == nullptr || !(over->detour_m > 0.0)) {
          const double length = to - stops[i];
          m_net.links.push_back({m_first[k] + i, m_first[k] + next, length, length, line.kind, {}});
        }
      }
      for (const OverOpening& over : line.over) {
        if (over.detour_m > 0.0) joinOver(k, {over, over.to_m, over.from_m});
      }
      for (const OverSeveral& row : line.several) joinOver(k, row);
    }
  }

  /// Over a head in one go, from jamb to jamb; what stands in front of the opening goes up and down
  /// to either jamb and to what else stands there.
  void joinOver(std::size_t k, const OverSeveral& row) {
    const OverOpening& over = row.all;
    std::vector<double> places{over.from_m, over.to_m};
    for (const double s : m_stops[k]) {
      if (s > over.from_m + kSameSpot_m && s < over.to_m - kSameSpot_m) places.push_back(s);
    }
    std::sort(places.begin(), places.end());
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (places[i] > row.first_to_m + kSameSpot_m) break;
      for (std::size_t j = i + 1; j < places.size(); ++j) {
        if (places[j] > row.last_from_m - kSameSpot_m) joinOver(k, over, places[i], places[j]);
      }
    }
  }

  void joinOver(std::size_t k, const OverOpening& over, double from, double to) {
    const CableLine& line = m_lines.lines[k];
    const bool wet = std::any_of(line.closed.begin(), line.closed.end(), [&](const CableRange& w) {
      return w.from_m < to - kSameSpot_m && w.to_m > from + kSameSpot_m;
    });
    if (wet) return;
    const double length = to - from + over.detour_m;
    m_net.links.push_back({nodeOf({k, line.wrapped(from)}), nodeOf({k, line.wrapped(to)}), length,
                           length, CablePartKind::over_opening, over.things});
  }

  void joinAcross() {
    for (const Across& one : m_across) {
      const bool sleeve = m_lines.lines[one.from.line].kind == CablePartKind::outside ||
                          m_lines.lines[one.to.line].kind == CablePartKind::outside;
      CableLink link{nodeOf(one.from),
                     nodeOf(one.to),
                     one.length_m,
                     one.length_m,
                     sleeve ? CablePartKind::sleeve : CablePartKind::drilling,
                     {}};
      // Down from the sleeve to the skirting inside.
      if (sleeve) link.length_m += std::abs(m_lines.run_outside_m - m_ask.figures.skirting_m);
      link.cost_m = link.length_m + m_ask.figures.per_drilling_m;
      m_net.links.push_back(std::move(link));
    }
  }

  void putOutside() {
    m_net.drop_m = std::abs(m_ask.fan_height_m - m_lines.run_outside_m);
    for (const perimeter::Place& fan : m_fans) {
      m_net.fans.push_back(nodeOf(m_lines.spotOnFace(fan)));
    }
  }

  void putInRoof() {
    m_net.descent_m = std::max(0.0, m_ask.fan_height_m - m_ask.figures.skirting_m);
    std::vector<std::size_t> below;  // where a cable may come down
    for (std::size_t k = 0; k < m_stops.size(); ++k) {
      if (m_lines.lines[k].kind == CablePartKind::outside) continue;
      for (std::size_t i = 0; i < m_stops[k].size(); ++i) {
        if (m_lines.mayDrill({k, m_stops[k][i]})) below.push_back(m_first[k] + i);
      }
    }
    for (const perimeter::Place& fan : m_fans) {
      const perimeter::Edge& edge = m_site.perimeter.edgeAt(fan);
      m_net.fans.push_back(m_net.nodes.size());
      m_net.nodes.push_back(m_site.perimeter.pointAt(fan) + edge.thickness_m * edge.inward);
    }
    for (const std::size_t fan : m_net.fans) {
      for (const std::size_t node : below) joinRoof(fan, node);
    }
  }

  void joinRoof(std::size_t fan, std::size_t node) {
    const geometry::Segment way{m_net.nodes[fan], m_net.nodes[node]};
    for (const CableLine& line : m_lines.lines) {
      if (line.kind != CablePartKind::outside) continue;
      for (std::size_t i = 0; i < line.corners.size(); ++i) {
        if (crosses(way, line.side(i))) return;
      }
    }
    const double length = geometry::distance(way.a, way.b) + m_net.descent_m;
    m_net.links.push_back({fan, node, length, length, CablePartKind::roof, {}});
  }

  /// Each with its ends on either side of the other.
  static bool crosses(const geometry::Segment& a, const geometry::Segment& b) {
    const auto apart = [](const geometry::Segment& s, const geometry::Segment& t) {
      const geometry::Vec way = s.b - s.a;
      return geometry::cross(way, t.a - s.a) * geometry::cross(way, t.b - s.a) < 0.0;
    };
    return apart(a, b) && apart(b, a);
  }

  const rules::Site& m_site;
  const CableAsk& m_ask;
  const std::vector<perimeter::Place>& m_fans;
  bool m_inside;
  CableLines m_lines;
  CableNetwork m_net;
  std::vector<std::vector<double>> m_stops;  ///< by line
  std::vector<std::size_t> m_first;          ///< node of the first stop, by line
  std::vector<Across> m_across;
  std::vector<Wanted> m_wanted;
};

}  // namespace

double heightOfSupply(const plan::Supply& supply, const CableFigures& figures) {
  return supply.kind == plan::SupplyKind::consumer_unit ? figures.board_m : figures.socket_m;
}

CableNetwork cableNetwork(const rules::Site& site, const CableAsk& ask,
                          const std::vector<perimeter::Place>& fans) {
  return Network(site, ask, fans).made();
}

}  // namespace sumpwright::build
