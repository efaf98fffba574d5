// The cable's network holds the shortest way of all: beside a search over places every 2 cm.

#include <gtest/gtest.h>

#include <cmath>
#include <queue>

#include "build/CableLines.h"
#include "build/CableNetwork.h"
#include "core/build/Sites.h"
#include "plan/RoomEdits.h"
#include "support/Seed.h"

namespace sumpwright::build {
namespace {

constexpr double kStep_m = 0.02;

/// Cost from the fan to each terminal's place, every line cut in steps. Slow and obvious.
class Stepped {
 public:
  Stepped(const rules::Site& site, const CableAsk& ask, Spot start, std::vector<Spot> ends)
      : m_lines(cableLines(site, ask.figures)), m_ask(ask) {
    for (const CableLine& line : m_lines.lines) {
      m_first.push_back(m_count);
      m_steps.push_back(
          std::max<std::size_t>(3, static_cast<std::size_t>(line.length_m / kStep_m)));
      m_count += m_steps.back();
    }
    search(node(start));
    for (const Spot& end : ends) m_found.push_back(m_cost[node(end)]);
  }
  const std::vector<double>& found() const { return m_found; }

 private:
  double s(std::size_t line, std::size_t i) const {
    return m_lines.lines[line].length_m * static_cast<double>(i) /
           static_cast<double>(m_steps[line]);
  }
  std::size_t node(const Spot& spot) const {
    const double share = spot.s_m / m_lines.lines[spot.line].length_m;
    const auto n = static_cast<double>(m_steps[spot.line]);
    return m_first[spot.line] +
           static_cast<std::size_t>(std::lround(share * n)) % m_steps[spot.line];
  }

  /// Going over a head is paid for once: at its nearer jamb.
  double along(std::size_t line, double from, double to) const {
    const CableLine& l = m_lines.lines[line];
    const double middle = l.wrapped((from + to) / 2.0);
    if (l.isClosed(middle)) return std::numeric_limits<double>::infinity();
    double cost = to - from;
    for (const OverOpening& over : l.over) {
      const double width = std::max(over.to_m - over.from_m, 1e-9);
      const double shared = std::min(to, over.to_m) - std::max(from, over.from_m);
      if (shared > 0.0) cost += over.detour_m * shared / width;
    }
    return cost;
  }

  void search(std::size_t start) {
    m_cost.assign(m_count, std::numeric_limits<double>::infinity());
    using Item = std::pair<double, std::size_t>;
    std::priority_queue<Item, std::vector<Item>, std::greater<>> open;
    const auto reach = [&](std::size_t to, double cost) {
      if (cost >= m_cost[to]) return;
      m_cost[to] = cost;
      open.emplace(cost, to);
    };
    reach(start, 0.0);
    while (!open.empty()) {
      const auto [cost, at] = open.top();
      open.pop();
      if (cost > m_cost[at]) continue;
      std::size_t line = m_first.size() - 1;
      while (m_first[line] > at) --line;
      const std::size_t i = at - m_first[line];
      const std::size_t n = m_steps[line];
      reach(m_first[line] + (i + 1) % n, cost + along(line, s(line, i), s(line, i) + s(line, 1)));
      const std::size_t before = (i + n - 1) % n;
      reach(m_first[line] + before,
            cost + along(line, s(line, before), s(line, before) + s(line, 1)));
      const Spot here{line, s(line, i)};
      if (!m_lines.mayDrill(here)) continue;
      const auto across = m_lines.facing(here);
      if (!across || !m_lines.mayDrill(across->spot)) continue;
      const bool sleeve = m_lines.lines[line].kind == CablePartKind::outside ||
                          m_lines.lines[across->spot.line].kind == CablePartKind::outside;
      reach(node(across->spot),
            cost + across->distance_m + m_ask.figures.per_drilling_m +
                (sleeve ? std::abs(m_lines.run_outside_m - m_ask.figures.skirting_m) : 0.0));
    }
  }

  CableLines m_lines;
  const CableAsk& m_ask;
  std::vector<std::size_t> m_first;
  std::vector<std::size_t> m_steps;
  std::size_t m_count = 0;
  std::vector<double> m_cost;
  std::vector<double> m_found;
};

TEST(CableProperty, NoWayInStepsIsShorter) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    support::Random random(seed);
    plan::Job job = support::randomJob(random);
    if (const auto roomed = plan::roomsFromWalls(job)) job = *roomed;
    // Showers by some walls: no cable within 0.6 m of one.
    for (const plan::Room& room : job.plan.rooms) {
      if (room.outline_m.size() < 3 || !random.chance(0.5)) continue;
      const geometry::Point by =
          geometry::lerp(room.outline_m[0], room.outline_m[1], random.uniform(0.0, 1.0));
      job.plan.fittings.push_back({"by-" + room.id, "", plan::FittingKind::shower, by});
    }
    const rules::Site site = siteOf(job);
    CableAsk ask;
    ask.fan = {0, random.uniform(0.0, site.perimeter.length_m(0))};
    const CableNetwork net = cableNetwork(site, ask, {ask.fan});
    const CableWays ways = cableWays(net, {{net.fans[0], 0.0}});
    const CableLines lines = cableLines(site, ask.figures);
    std::vector<Spot> ends;
    for (const CableTerminal& terminal : net.terminals) {
      for (const plan::Supply& supply : job.plan.supplies) {
        if (supply.id == terminal.supply) ends.push_back(lines.spotOf(supply.at_m).spot);
      }
    }
    const Spot start = lines.spotOnFace(ask.fan);
    if (!lines.mayDrill(start)) return;  // no fan stands in a window: steps would share its cost
    const Stepped stepped(site, ask, start, ends);
    for (std::size_t i = 0; i < ends.size(); ++i) {
      const double exact = ways.cost_m[net.terminals[i].node];
      const double slow = stepped.found()[i];
      if (std::isinf(slow)) continue;  // a way through less than a step
      if (lines.lines[ends[i].line].overAt(ends[i].s_m) != nullptr) continue;  // in front of a door
      EXPECT_LT(exact, slow + 6.0 * kStep_m) << net.terminals[i].supply;
      // The other way round too, as far as steps can follow it.
      EXPECT_GT(exact, slow - 0.75) << net.terminals[i].supply;
    }
  });
}

TEST(CableProperty, LinksAddUpToTheCost) {
  support::forEachSeed(100, [](std::uint64_t seed) {
    support::Random random(seed);
    const plan::Job job = support::randomJob(random);
    const rules::Site site = siteOf(job);
    CableAsk ask;
    ask.fan = {0, random.uniform(0.0, site.perimeter.length_m(0))};
    const CableNetwork net = cableNetwork(site, ask, {ask.fan});
    const CableWays ways = cableWays(net, {{net.fans[0], 0.0}});
    for (const CableTerminal& terminal : net.terminals) {
      if (std::isinf(ways.cost_m[terminal.node])) continue;
      double sum = 0.0;
      std::size_t at = net.fans[0];
      for (const std::size_t i : ways.linksTo(net, terminal.node)) {
        ASSERT_TRUE(net.links[i].a == at || net.links[i].b == at);
        at = net.links[i].a == at ? net.links[i].b : net.links[i].a;
        sum += net.links[i].cost_m;
      }
      EXPECT_EQ(at, terminal.node);
      EXPECT_NEAR(sum, ways.cost_m[terminal.node], 1e-9);
    }
  });
}

}  // namespace
}  // namespace sumpwright::build
