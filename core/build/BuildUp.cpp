#include "build/BuildUp.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "build/Layers.h"
#include "plan/Assumed.h"
#include "plan/FloorLevels.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"

namespace sumpwright::build {

namespace {

using base::Mark;
using base::Message;
using plan::Barrier;
using plan::FloorZone;

/// Of hardcore where nobody knows it: the least that Irish guidance asks for (TGD C 2004, reprint
/// 2008, §3.1.4(b)).
constexpr double kUsualHardcore_m = 0.150;
constexpr double kUsualBlinding_m = 0.050;  // from memory: sand over the stone

class Maker {
 public:
  Maker(const rules::Site& site, perimeter::Place place)
      : m_site(site),
        m_house(site.job.house),
        m_place(site.perimeter.wrapped(place)),
        m_edge(site.perimeter.edgeAt(place)),
        m_wall(site.perimeter.wall(m_edge)),
        m_zone(floorBehind(site, place)) {}

  BuildUp made() {
    takeWall();
    takeFloor();
    takeFill();
    takeGround();
    takeBarrier();
    takeFooting();
    takeDrill();
    return std::move(m_up);
  }

 private:
  /// What is not known is said.
  double told(const char* id, const plan::Taken& taken, Mark mark, const char* source) {
    if (taken.known) return taken.m;
    assume(taken.m > 0.0 ? Message(id, {base::millimetres("thickness", 1000.0 * taken.m)})
                         : Message("section.assumed.insulation-none"),
           mark, source);
    return taken.m;
  }

  void assume(Message what, Mark mark, const char* source) {
    m_up.assumed.push_back({std::move(what), {mark, source}});
  }

  void takeWall() {
    m_up.wall_m = m_edge.thickness_m;
    if (m_edge.thickness_assumed) {
      assume(
          Message("section.assumed.wall", {base::millimetres("thickness", 1000.0 * m_up.wall_m)}),
          Mark::common_practice, "cavity walls of 300 to 350 mm");
    }
    m_up.leaves = leavesOf(m_wall, m_house, m_up.wall_m, m_up.assumed);
  }

  void takeOversite(const plan::FloorLayers& layers) {
    m_up.under_floor_m = layers.under_floor_m;
    m_up.slab_m = layers.slab.m;
    assume(
        Message("section.assumed.oversite", {base::millimetres("thickness", 1000.0 * m_up.slab_m),
                                             base::metres("under", m_up.under_floor_m)}),
        Mark::own, "joists of 200 mm over a void of 150 mm (Approved Document C, 1992)");
  }

  void takeFloor() {
    if (m_zone == nullptr || m_zone->kind == plan::FloorKind::unknown) {
      assume(Message("section.assumed.floor"), Mark::own, "the floor behind the wall is not known");
    }
    m_up.floor = m_zone != nullptr ? m_zone->kind : plan::FloorKind::unknown;
    const plan::FloorLayers layers = plan::floorLayers(m_house, m_zone);
    m_up.floor_m = layers.floor_m;
    if (plan::isSuspended(m_up.floor)) return takeOversite(layers);
    const char* source = "floors as usually built";
    m_up.screed_m = told("section.assumed.screed", layers.screed, Mark::common_practice, source);
    m_up.insulation_m =
        told("section.assumed.insulation", layers.insulation, Mark::common_practice, source);
    m_up.slab_m = told("section.assumed.slab", layers.slab, Mark::common_practice, source);
  }

  void takeFill() {
    m_up.fill = m_house.fill;
    if (m_up.fill == plan::Fill::none) return;
    m_up.blinding_m = kUsualBlinding_m;
    assume(Message("section.assumed.blinding",
                   {base::millimetres("thickness", 1000.0 * kUsualBlinding_m)}),
           Mark::from_memory, "sand over the stone");
    m_up.hardcore_m = told(
        "section.assumed.hardcore",
        {m_house.hardcore_m.value_or(kUsualHardcore_m), m_house.hardcore_m.has_value()},
        Mark::published, "TGD C 2004 (reprint 2008), §3.1.4(b): hardcore bed of 150 mm at least");
  }

  /// Level and slope on the piece of the wall that the place lies on; level beyond the ends.
  bool takeGroundPoints() {
    std::vector<plan::GroundPoint> points = m_wall.ground_points;
    if (points.empty()) return false;
    std::stable_sort(points.begin(), points.end(),
                     [](const auto& a, const auto& b) { return a.offset_m < b.offset_m; });
    const double s = m_place.chainage_m - m_edge.start_m;
    std::size_t after = 0;
    while (after < points.size() && points[after].offset_m <= s) ++after;
    const plan::GroundPoint& low = points[after > 0 ? after - 1 : 0];
    const plan::GroundPoint& high = points[std::min(after, points.size() - 1)];
    const double run = high.offset_m - low.offset_m;
    m_up.ground_slope = run > 0.0 ? (high.level_m - low.level_m) / run : 0.0;
    m_up.ground_m = low.level_m + m_up.ground_slope * (s - low.offset_m);
    m_up.surface = s - low.offset_m <= high.offset_m - s ? low.surface : high.surface;
    return true;
  }

  void takeGround() {
    if (!takeGroundPoints()) {
      const auto level = m_wall.ground_level_m ? m_wall.ground_level_m : m_house.ground_level_m;
      m_up.ground_m = level.value_or(plan::kAssumedGround_m);
      if (!level) {
        assume(Message("section.assumed.ground", {base::metres("level", m_up.ground_m)}),
               Mark::common_practice, "one step down");
      }
    }
    m_up.dpc_m = m_house.dpc_height_m.value_or(m_up.ground_m + plan::kGroundUnderDpc_m);
    if (!m_house.dpc_height_m) {
      assume(Message("section.assumed.dpc", {base::metres("level", m_up.dpc_m)}), Mark::published,
             "Approved Document C, England, as quoted elsewhere: 150 mm above the ground");
    }
  }

  void takeBarrier() {
    const Barrier zone = m_zone != nullptr ? m_zone->barrier : Barrier::unknown;
    m_up.barrier = zone != Barrier::unknown ? zone : m_house.barrier;
    m_up.barrier_m = m_house.barrier_level_m.value_or(m_up.underside_m());
    if (m_up.barrier == Barrier::unknown) {
      assume(Message("section.assumed.barrier"), Mark::own, "one may lie under the slab");
    } else if (m_up.barrier != Barrier::none && !m_house.barrier_level_m) {
      assume(Message("section.assumed.barrier-level", {base::metres("level", m_up.barrier_m)}),
             Mark::own, "the lowest it can lie in the floor");
    }
  }

  void takeFooting() {
    m_up.foundation = m_wall.foundation;
    const auto& low = m_house.footing_top_low_m;
    const auto& high = m_house.footing_top_high_m;
    m_up.footing_known = low && high;
    const double usual_low = plan::kAssumedFootingLow_m;
    const double usual_high = plan::kAssumedFootingHigh_m;
    m_up.footing_low_m = low.value_or(std::min(usual_low, high.value_or(usual_low)));
    m_up.footing_high_m = high.value_or(std::max(usual_high, low.value_or(usual_high)));
    if (m_up.footing_low_m > m_up.footing_high_m) {
      std::swap(m_up.footing_low_m, m_up.footing_high_m);
    }
    if (m_up.footing_known) return;
    assume(Message("section.assumed.footing", {base::metres("low", m_up.footing_low_m),
                                               base::metres("high", m_up.footing_high_m)}),
           Mark::common_practice, "footing tops as usually found");
  }

  void takeDrill() {
    m_up.core_m = m_site.core_m;
    m_up.pipe_od_m = m_site.pipe_od_m;
    m_up.barrel_m = m_site.job.design.barrel_length_m.value_or(plan::kAssumedBarrel_m);
    if (!m_site.job.design.barrel_length_m) {
      assume(
          Message("section.assumed.barrel", {base::millimetres("length", 1000.0 * m_up.barrel_m)}),
          Mark::common_practice, "usual core drill barrel");
    }
  }

  const rules::Site& m_site;
  const plan::House& m_house;
  perimeter::Place m_place;
  const perimeter::Edge& m_edge;
  const plan::Wall& m_wall;
  const FloorZone* m_zone;
  BuildUp m_up;
};

/// Foundations that no hole is cut in or beside without an engineer's word.
bool structural(plan::Foundation foundation) {
  using plan::Foundation;
  return foundation == Foundation::raft_edge || foundation == Foundation::ground_beam ||
         foundation == Foundation::insulated_raft || foundation == Foundation::retaining;
}

}  // namespace

BuildUp buildUpAt(const rules::Site& site, perimeter::Place place) {
  return Maker(site, place).made();
}

const FloorZone* floorBehind(const rules::Site& site, perimeter::Place place) {
  const perimeter::Place at = site.perimeter.wrapped(place);
  const perimeter::Edge& edge = site.perimeter.edgeAt(at);
  const auto& spans =
      site.zones_behind[static_cast<std::size_t>(edge.ring)][static_cast<std::size_t>(edge.edge)];
  for (const perimeter::Span& span : spans) {
    if (!rules::holds(span, at.chainage_m)) continue;
    const auto& zones = site.job.plan.floor_zones;
    const auto zone = std::find_if(zones.begin(), zones.end(),
                                   [&](const FloorZone& z) { return z.id == span.id; });
    if (zone != zones.end()) return &*zone;
  }
  return nullptr;
}

std::vector<NoCore> noCores(const rules::Site& site, perimeter::Place place) {
  std::vector<NoCore> why;
  const plan::Wall& wall = site.perimeter.wall(site.perimeter.edgeAt(place));
  if (wall.kind == plan::WallKind::party) why.push_back(NoCore::party);
  if (wall.kind == plan::WallKind::dwarf) why.push_back(NoCore::dwarf);
  if (structural(wall.foundation)) why.push_back(NoCore::foundation);
  const FloorZone* zone = floorBehind(site, place);
  if (zone != nullptr && plan::isSuspended(zone->kind) &&
      zone->oversite != plan::Oversite::sealed) {
    why.push_back(zone->kind == plan::FloorKind::suspended_timber ? NoCore::timber
                                                                  : NoCore::concrete);
  }
  const BuildUp up = buildUpAt(site, place);
  if (up.ground_m - up.floor_m > plan::kDeepestFloor_m) why.push_back(NoCore::deep);
  return why;
}

Message noCoreMessage(const std::string& theme, NoCore why, const plan::Wall& wall) {
  static constexpr std::array<std::string_view, 6> kNames{"party",  "dwarf",    "foundation",
                                                          "timber", "concrete", "deep"};
  Message words(theme + std::string(kNames[static_cast<std::size_t>(why)]));
  if (why != NoCore::foundation) return words;
  const std::string kind(plan::nameOf(wall.foundation));
  return {words.id, {base::phrase("foundation", Message("value." + kind))}};
}

Message noCoreWords(NoCore why, const rules::Site& site, perimeter::Place place) {
  const std::string theme = "section.none.";
  if (why != NoCore::deep) {
    return noCoreMessage(theme, why, site.perimeter.wall(site.perimeter.edgeAt(place)));
  }
  const BuildUp up = buildUpAt(site, place);
  return {theme + "deep", {base::metres("depth", up.ground_m - up.floor_m)}};
}

}  // namespace sumpwright::build
