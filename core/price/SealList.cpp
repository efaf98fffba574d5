#include "price/SealList.h"

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "perimeter/Behind.h"

namespace sumpwright::price {

namespace {

using perimeter::Edge;
using perimeter::Span;

constexpr double kSealBand_m = 0.01;   // what a line behind the wall is judged by
constexpr double kOnRoomEdge_m = 0.3;  // a radiator hangs on a wall of its room (own figure)

/// As it is printed, so that what is printed adds up, and is the same on every paper.
double toDecimetre(double metres) { return std::round(10.0 * metres) / 10.0; }

class Sealing {
 public:
  explicit Sealing(const siting::Study& study) : m_study(study) {
    for (const plan::Room& room : plan().rooms) m_out.rooms.push_back({room.id, 0.0, {}, 0, 0});
  }

  SealList list() {
    const auto& walls = m_study.perimeter();
    for (int r = 0; r < walls.ringCount(); ++r) {
      for (const Edge& edge : walls.edges(r)) addEdge(edge);
    }
    for (const plan::Fitting& fitting : plan().fittings) {
      if (fitting.kind == plan::FittingKind::appliance) continue;
      if (SealRoom* room = roomAt(fitting.at_m)) ++room->wastes;
    }
    for (const plan::Radiator& radiator : plan().radiators) addRadiator(radiator);
    if (m_nowhere.counted() > 0) m_out.rooms.push_back(m_nowhere);
    for (SealRoom& room : m_out.rooms) {
      room.joint_m = toDecimetre(room.joint_m);
      m_out.joint_m += room.joint_m;
      m_out.entries += room.counted();
    }
    m_out.joint_m = toDecimetre(m_out.joint_m);
    return std::move(m_out);
  }

 private:
  const plan::Plan& plan() const { return m_study.job().plan; }

  SealRoom* roomCalled(const std::string& id) {
    const auto it = std::find_if(m_out.rooms.begin(), m_out.rooms.end(),
                                 [&](const SealRoom& room) { return room.room == id; });
    return it == m_out.rooms.end() ? nullptr : &*it;
  }

  SealRoom* roomAt(geometry::Point at) {
    for (const plan::Room& room : plan().rooms) {
      if (geometry::contains(room.outline_m, at)) return roomCalled(room.id);
    }
    return nullptr;
  }

  void addEdge(const Edge& edge) {
    const std::vector<Span> spans = perimeter::roomsBehind(edge, plan().rooms, kSealBand_m);
    for (const Span& span : spans) {
      if (SealRoom* room = roomCalled(span.id)) room->joint_m += span.to_m - span.from_m;
    }
    for (const plan::Service& service : plan().services) {
      if (!service.entry || service.entry->ring != edge.ring || service.entry->edge != edge.edge)
        continue;
      const double at = edge.start_m + service.entry->offset_m;
      const auto behind = std::find_if(spans.begin(), spans.end(), [&](const Span& span) {
        return at >= span.from_m && at <= span.to_m;
      });
      SealRoom* room = behind == spans.end() ? nullptr : roomCalled(behind->id);
      (room == nullptr ? m_nowhere : *room).entries.push_back(m_study.labelOf(service.id));
    }
  }

  /// On an outside wall, or along a line at the edge of its room.
  void addRadiator(const plan::Radiator& radiator) {
    if (radiator.on) {
      const auto& edges = m_study.perimeter().edges(radiator.on->ring);
      const Edge& edge = edges[static_cast<std::size_t>(radiator.on->edge)];
      const double at = edge.start_m + radiator.on->offset_m + 0.5 * radiator.width_m;
      for (const Span& span : perimeter::roomsBehind(edge, plan().rooms, kSealBand_m)) {
        if (at < span.from_m || at > span.to_m) continue;
        if (SealRoom* room = roomCalled(span.id)) ++room->radiators;
        return;
      }
      return;
    }
    if (radiator.line_m.size() < 2) return;
    const geometry::Point middle =
        geometry::lerp(radiator.line_m.front(), radiator.line_m.back(), 0.5);
    SealRoom* nearest = nullptr;
    double least = kOnRoomEdge_m;
    for (const plan::Room& room : plan().rooms) {
      const double off = geometry::distanceToArea(middle, room.outline_m);
      if (off >= least) continue;
      least = off;
      nearest = roomCalled(room.id);
    }
    if (nearest != nullptr) ++nearest->radiators;
  }

  const siting::Study& m_study;
  SealList m_out;
  SealRoom m_nowhere;
};

}  // namespace

SealList sealList(const siting::Study& study) { return Sealing(study).list(); }

}  // namespace sumpwright::price
