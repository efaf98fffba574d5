#include "build/CableRoute.h"

#include <algorithm>
#include <cmath>

#include "build/CableNetwork.h"
#include "geometry/Distance.h"

namespace sumpwright::build {

namespace {

using base::Message;

const plan::Supply& supplyOf(const rules::Site& site, const std::string& id) {
  const std::vector<plan::Supply>& all = site.job.plan.supplies;
  return *std::find_if(all.begin(), all.end(), [&](const plan::Supply& s) { return s.id == id; });
}

bool runsOn(const geometry::Polyline& line, geometry::Point next) {
  if (line.size() < 2) return true;
  const geometry::Vec last = line[line.size() - 1] - line[line.size() - 2];
  const geometry::Vec step = next - line.back();
  return std::abs(geometry::cross(last, step)) <= 1e-6 && geometry::dot(last, step) >= 0.0;
}

/// Another part, or more of the last one where that runs on straight.
void append(std::vector<CablePart>& parts, CablePart part) {
  const bool along = part.kind == CablePartKind::outside || part.kind == CablePartKind::skirting;
  if (along && !parts.empty() && parts.back().kind == part.kind &&
      runsOn(parts.back().line_m, part.line_m.back())) {
    parts.back().length_m += part.length_m;
    parts.back().line_m.push_back(part.line_m.back());
    const std::size_t n = parts.back().line_m.size();
    if (n > 2) parts.back().line_m.erase(parts.back().line_m.end() - 2);
    return;
  }
  parts.push_back(std::move(part));
}

void count(CableRoute& route, const CablePart& part) {
  route.length_m += part.length_m;
  if (part.kind == CablePartKind::drilling) ++route.drillings;
  if (part.kind == CablePartKind::sleeve) ++route.sleeves;
  route.over_openings += static_cast<int>(part.things.size());
}

std::vector<Message> remarksOn(const plan::Supply& supply, const CableRoute& route) {
  std::vector<Message> remarks;
  if (supply.kind == plan::SupplyKind::socket) remarks.emplace_back("cable.remark.socket");
  if (supply.kind == plan::SupplyKind::consumer_unit) remarks.emplace_back("cable.remark.board");
  if (supply.rcd_shared == plan::YesNo::yes) remarks.emplace_back("cable.remark.rcd-shared");
  if (supply.rcd_shared == plan::YesNo::unknown) remarks.emplace_back("cable.remark.rcd-unknown");
  if (supply.circuit.empty()) remarks.emplace_back("cable.remark.circuit-unknown");
  if (route.sleeves > 1) {
    remarks.push_back(Message("cable.remark.sleeves", {base::count("sleeves", route.sleeves)}));
  }
  return remarks;
}

class Routes {
 public:
  Routes(const rules::Site& site, const CableAsk& ask)
      : m_site(site),
        m_ask(ask),
        m_net(cableNetwork(site, ask, {ask.fan})),
        m_ways(cableWays(m_net, {{m_net.fans[0], 0.0}})) {}

  CableAnswer answer() {
    m_answer.none = m_net.none;
    for (const CableTerminal& terminal : m_net.terminals) addRoute(terminal);
    putInOrder();
    choose();
    assume();
    for (const char* id : {"cable.caution.electrician", "cable.caution.isolator",
                           "cable.caution.drip-loop", "cable.caution.polystyrene"}) {
      m_answer.cautions.emplace_back(id);
    }
    return std::move(m_answer);
  }

 private:
  void addRoute(const CableTerminal& terminal) {
    const plan::Supply& supply = supplyOf(m_site, terminal.supply);
    const Message label = supplyLabel(m_site, supply);
    if (std::isinf(m_ways.cost_m[terminal.node])) {
      m_answer.none.push_back({supply.id, label, Message("cable.no.way")});
      return;
    }
    CableRoute route;
    route.supply = supply.id;
    route.kind = supply.kind;
    route.label = label;
    addParts(route, terminal);
    for (const CablePart& part : route.parts) count(route, part);
    const CableFigures& f = m_ask.figures;
    route.to_buy_m = (1.0 + f.spare_share) * route.length_m + f.spare_m;
    route.drop_v =
        2.0 * route.length_m * (m_ask.power_w / f.volts) * f.ohm_mm2_per_m / f.section_mm2;
    route.drop_percent = 100.0 * route.drop_v / f.volts;
    route.remarks = remarksOn(supply, route);
    m_answer.routes.push_back(std::move(route));
  }

  void addParts(CableRoute& route, const CableTerminal& terminal) const {
    std::size_t at = m_net.fans[0];
    const geometry::Point fan = m_net.nodes[at];
    if (m_net.drop_m > 0.0) {
      append(route.parts, {CablePartKind::drop, m_net.drop_m, {fan}, {}, m_net.run_outside_m});
    }
    bool outdoors = m_ask.fan_place != plan::FanPlace::roof_space;
    for (const std::size_t index : m_ways.linksTo(m_net, terminal.node)) {
      const CableLink& link = m_net.links[index];
      const std::size_t to = link.a == at ? link.b : link.a;
      append(route.parts, partOf(link, at, to, outdoors));
      at = to;
      if (link.kind == CablePartKind::sleeve) outdoors = !outdoors;
      if (link.kind == CablePartKind::roof) {
        append(route.parts, {CablePartKind::descent,
                             m_net.descent_m,
                             {m_net.nodes[at]},
                             {},
                             m_ask.figures.skirting_m});
      }
    }
    if (terminal.through_m > 0.0) {
      append(
          route.parts,
          {CablePartKind::sleeve, terminal.through_m, {m_net.nodes[at]}, {}, m_net.run_outside_m});
    }
    append(route.parts, {CablePartKind::rise,
                         terminal.rise_m,
                         {m_net.nodes[at]},
                         {},
                         heightOfSupply(supplyOf(m_site, terminal.supply), m_ask.figures)});
  }

  CablePart partOf(const CableLink& link, std::size_t at, std::size_t to, bool outdoors) const {
    CablePart part{link.kind, link.length_m, {m_net.nodes[at], m_net.nodes[to]}, link.things};
    part.height_m = outdoors ? m_net.run_outside_m : m_ask.figures.skirting_m;
    switch (link.kind) {
      case CablePartKind::sleeve:
        part.height_m = m_net.run_outside_m;
        break;
      case CablePartKind::over_opening:  // up at one jamb, down at the other
        part.height_m += 0.5 * (link.length_m - geometry::distance(part.line_m[0], part.line_m[1]));
        break;
      case CablePartKind::roof:
        part.length_m -= m_net.descent_m;
        part.height_m = m_ask.fan_height_m;
        break;
      default:
        break;
    }
    return part;
  }

  double costOf(const CableRoute& route) const {
    return route.length_m + m_ask.figures.per_drilling_m * (route.drillings + route.sleeves);
  }

  void putInOrder() {
    std::stable_sort(m_answer.routes.begin(), m_answer.routes.end(),
                     [this](const CableRoute& a, const CableRoute& b) {
                       const bool board_a = a.kind == plan::SupplyKind::consumer_unit;
                       const bool board_b = b.kind == plan::SupplyKind::consumer_unit;
                       return board_a != board_b ? board_b : costOf(a) < costOf(b);
                     });
  }

  void choose() {
    std::vector<CableRoute>& routes = m_answer.routes;
    if (routes.empty()) {
      m_answer.sentence = Message(m_site.job.plan.supplies.empty() ? "cable.sentence.no-supply"
                                                                   : "cable.sentence.no-way");
      return;
    }
    const auto wished = std::find_if(routes.begin(), routes.end(), [this](const CableRoute& r) {
      return r.supply == m_ask.wish;
    });
    m_answer.chosen =
        wished == routes.end() ? 0U : static_cast<std::size_t>(wished - routes.begin());
    const CableRoute& route = routes[*m_answer.chosen];
    m_answer.sentence =
        Message("cable.sentence.route",
                {base::metres("length", route.length_m), base::phrase("supply", route.label),
                 base::count("drillings", route.drillings + route.sleeves)});
  }

  void assume() {
    const CableFigures& f = m_ask.figures;
    const auto add = [this](Message what) { m_answer.assumptions.push_back(std::move(what)); };
    if (m_net.head_assumed) {
      add(Message("cable.assumed.head", {base::metres("head", f.door_head_m)}));
    }
    if (m_net.sill_assumed) add(Message("cable.assumed.sill", {base::metres("sill", f.sill_m)}));
    if (!m_site.job.house.dpc_height_m) {
      add(Message("cable.assumed.dpc", {base::metres("level", m_net.dpc_m),
                                        base::metres("above", f.sleeve_above_dpc_m)}));
    }
    add(Message("cable.assumed.spare",
                {base::percent("share", 100.0 * f.spare_share), base::metres("more", f.spare_m)}));
  }

  const rules::Site& m_site;
  const CableAsk& m_ask;
  CableNetwork m_net;
  CableWays m_ways;
  CableAnswer m_answer;
};

}  // namespace

std::string_view cablePartName(CablePartKind kind) {
  switch (kind) {
    case CablePartKind::drop:
      return "drop";
    case CablePartKind::outside:
      return "outside";
    case CablePartKind::sleeve:
      return "sleeve";
    case CablePartKind::skirting:
      return "skirting";
    case CablePartKind::over_opening:
      return "over_opening";
    case CablePartKind::drilling:
      return "drilling";
    case CablePartKind::roof:
      return "roof";
    case CablePartKind::descent:
      return "descent";
    case CablePartKind::rise:
      break;
  }
  return "rise";
}

CableAnswer cableRoutes(const rules::Site& site, const CableAsk& ask) {
  return Routes(site, ask).answer();
}

std::vector<CableSleeve> cableSleeves(const rules::Site& site, const CableRoute& route) {
  std::vector<CableSleeve> sleeves;
  for (const CablePart& part : route.parts) {
    if (part.kind != CablePartKind::sleeve) continue;
    const geometry::Point outer = *std::min_element(
        part.line_m.begin(), part.line_m.end(), [&](geometry::Point a, geometry::Point b) {
          const auto off = [&](geometry::Point p) {
            return geometry::distance(p, site.perimeter.pointAt(site.perimeter.nearest(p)));
          };
          return off(a) < off(b);
        });
    sleeves.push_back({site.perimeter.nearest(outer), part.height_m});
  }
  return sleeves;
}

}  // namespace sumpwright::build
