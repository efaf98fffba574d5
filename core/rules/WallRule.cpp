// What the wall is: party wall, elevation, foundation, whose ground, room to work outside.

#include <algorithm>

#include "plan/KindNames.h"
#include "rules/Spans.h"
#include "rules/WallSays.h"

namespace sumpwright::rules {

namespace {

using perimeter::Edge;
using plan::Wall;

std::string valueOf(const Wall& wall, WallAttribute attribute) {
  switch (attribute) {
    case WallAttribute::kind:
      return std::string(plan::nameOf(wall.kind));
    case WallAttribute::elevation:
      return std::string(plan::nameOf(wall.elevation));
    case WallAttribute::foundation:
      return std::string(plan::nameOf(wall.foundation));
    case WallAttribute::ground:
      return std::string(plan::nameOf(wall.ground));
    case WallAttribute::free_depth_m:
      break;
  }
  return wall.free_depth_m ? "known" : "unknown";
}

std::string idOf(WallAttribute attribute) {
  switch (attribute) {
    case WallAttribute::kind:
      return "kind";
    case WallAttribute::elevation:
      return "elevation";
    case WallAttribute::foundation:
      return "foundation";
    case WallAttribute::ground:
      return "ground";
    case WallAttribute::free_depth_m:
      break;
  }
  return "free-depth";
}

bool objected(const Rule& rule, const Wall& wall) {
  if (rule.attribute == WallAttribute::free_depth_m) {
    return wall.free_depth_m && rule.needed_m && *wall.free_depth_m < rule.needed_m->value;
  }
  return std::find(rule.values.begin(), rule.values.end(), valueOf(wall, rule.attribute)) !=
         rule.values.end();
}

}  // namespace

WallSays saysOf(const Rule& rule, const Wall& wall) {
  if (objected(rule, wall)) return WallSays::objects;
  const bool unknown = rule.unknown_gates && valueOf(wall, rule.attribute) == "unknown";
  return unknown ? WallSays::unknown : WallSays::nothing;
}

base::Message wallReason(const Rule& rule, const Site& site, const Edge& edge) {
  const Wall& wall = site.perimeter.wall(edge);
  const char* suffix = saysOf(rule, wall) == WallSays::unknown ? "-unknown" : "";
  base::Message m("rule.wall." + idOf(rule.attribute) + suffix,
                  {base::phrase("wall", site.perimeter.wallLabel(edge))});
  if (rule.attribute != WallAttribute::free_depth_m) {
    m.args.push_back(
        base::phrase("value", base::Message("value." + valueOf(wall, rule.attribute))));
  } else if (wall.free_depth_m) {
    m.args.push_back(base::metres("depth", *wall.free_depth_m));
  }
  return m;
}

Finding wallFinding(const Rule& rule, const Site& site, const Edge& edge, base::Message reason) {
  Finding f = makeFinding(rule, site, -1, std::move(reason));
  const Wall& wall = site.perimeter.wall(edge);
  f.thing = wall.id;
  f.thing_label = site.perimeter.wallLabel(edge);
  if (saysOf(rule, wall) == WallSays::unknown) {
    f.weight = Weight::unknown;
    f.waivable = {};
    f.needed_m.reset();
  } else if (rule.attribute == WallAttribute::free_depth_m) {
    f.distance_m = wall.free_depth_m;
  }
  return f;
}

namespace {

void spans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (saysOf(rule, site.perimeter.wall(edge)) == WallSays::nothing) continue;
      const Finding f = wallFinding(rule, site, edge, wallReason(rule, site, edge));
      addSpans(rule, site, -1, f, {{edge.ring, edge.start_m, edge.end_m(), true}}, out);
    }
  }
}

std::optional<Nearest> nearest(const Rule& rule, const Site& site, perimeter::Place place) {
  if (rule.attribute != WallAttribute::free_depth_m || !rule.needed_m) return std::nullopt;
  const Edge& edge = site.perimeter.edgeAt(place);
  const Wall& wall = site.perimeter.wall(edge);
  if (!wall.free_depth_m) return std::nullopt;
  return Nearest{*wall.free_depth_m, -1};
}

std::optional<double> least(const Rule&, const Site&, const Thing&, int, double, double) {
  return std::nullopt;
}

}  // namespace

const RuleJudge kWallRule{RuleKind::wall, spans, nearest, least};

}  // namespace sumpwright::rules
