#include "tools/PointDrag.h"

#include <algorithm>
#include <type_traits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/SumpEdits.h"
#include "plan/ThingEdits.h"

namespace sumpwright::tools {

namespace {

constexpr double kAtEntry_m = 0.01;  // own figure

template <class T>
LaidPoints laidIn(const plan::Plan& plan, const T& thing) {
  LaidPoints laid;
  if constexpr (std::is_same_v<T, plan::Service>) {
    laid.points = thing.run_m;
    const auto entry = thing.entry ? placeOnFace(plan, *thing.entry) : std::nullopt;
    const bool tied = entry && !laid.points.empty() &&
                      geometry::distance(*entry, laid.points.front()) <= kAtEntry_m;
    laid.first = tied ? 1 : 0;
  } else if constexpr (requires { thing.outline_m; }) {
    laid.points = thing.outline_m;
    laid.closed = true;
  } else if constexpr (requires { thing.line_m; }) {
    laid.points = thing.line_m;
  } else if constexpr (requires { thing.points_m; }) {
    laid.points = thing.points_m;
    const auto* outside = &thing;
    laid.closed = outside->points_m.size() > 2 && outside->kind != plan::OutsideKind::path &&
                  outside->kind != plan::OutsideKind::boundary &&
                  outside->kind != plan::OutsideKind::overhead_line &&
                  outside->kind != plan::OutsideKind::neighbour_opening;
  } else if constexpr (requires { thing.at_m; }) {
    laid.points = {thing.at_m};
  }
  return laid;
}

/// The sump of that id, where it stands inside the house.
const plan::Sump* sumpInside(const plan::Job& job, const std::string& id) {
  const auto& sumps = job.design.sumps;
  const auto it = std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& s) {
    return s.id == id && s.kind != plan::SumpKind::cored && s.at_m;
  });
  return it == sumps.end() ? nullptr : &*it;
}

std::size_t sideCount(const LaidPoints& laid) {
  if (laid.points.size() < 2) return 0;
  return laid.closed ? laid.points.size() : laid.points.size() - 1;
}

Point middleOf(const LaidPoints& laid, std::size_t side) {
  return geometry::lerp(laid.points[side], laid.points[(side + 1) % laid.points.size()], 0.5);
}

bool isOn(const LaidPoints& laid, Point at, double reach_m) {
  for (std::size_t i = 0; i < sideCount(laid); ++i) {
    const Segment side{laid.points[i], laid.points[(i + 1) % laid.points.size()]};
    if (geometry::distance(at, side) <= reach_m) return true;
  }
  return laid.closed && geometry::contains(laid.points, at);
}

/// The corners of all else.
void leaveOut(std::vector<Point>& corners, const std::vector<Point>& own) {
  std::erase_if(corners,
                [&](Point p) { return std::find(own.begin(), own.end(), p) != own.end(); });
}

void leaveOut(std::vector<Segment>& edges, const std::vector<Point>& own) {
  std::erase_if(edges, [&](const Segment& e) {
    return std::find(own.begin(), own.end(), e.a) != own.end() &&
           std::find(own.begin(), own.end(), e.b) != own.end();
  });
}

}  // namespace

LaidPoints laidPointsOf(const plan::Job& job, const std::string& thing) {
  const auto found = plan::thingOf(job, thing);
  if (!found) {
    const plan::Sump* sump = sumpInside(job, thing);
    return sump == nullptr ? LaidPoints{} : LaidPoints{{*sump->at_m}};
  }
  return std::visit([&](const auto& t) { return laidIn(job.plan, t); }, *found);
}

std::optional<PointGrip> pointGripAt(const plan::Job& job, const std::string& thing, Point at,
                                     double reach_m) {
  const LaidPoints laid = laidPointsOf(job, thing);
  std::optional<PointGrip> best;
  double nearest = reach_m;
  const auto consider = [&](Point p, PointGripKind kind, std::size_t i) {
    const double away = geometry::distance(p, at);
    if (away > nearest || (best && away == nearest)) return;
    nearest = away;
    best = PointGrip{thing, kind, static_cast<int>(i)};
  };
  for (std::size_t i = laid.first; i < laid.points.size(); ++i) {
    consider(laid.points[i], PointGripKind::vertex, i);
  }
  if (best) return best;
  for (std::size_t i = 0; i < sideCount(laid); ++i) {
    consider(middleOf(laid, i), PointGripKind::side, i);
  }
  if (best) return best;
  if (laid.points.size() > 1 && laid.first == 0 && isOn(laid, at, reach_m)) {
    return PointGrip{thing, PointGripKind::whole, 0};
  }
  return std::nullopt;
}

PointDrag::PointDrag(plan::Job before, PointGrip grip, Point pointer, double reach_m, double grid_m)
    : m_before(std::move(before)), m_grip(std::move(grip)) {
  m_laid = laidPointsOf(m_before, m_grip.thing);
  const auto index = static_cast<std::size_t>(m_grip.index);
  SUMPWRIGHT_REQUIRE(m_grip.index >= 0 && index < m_laid.points.size());
  m_held = m_grip.kind == PointGripKind::side ? middleOf(m_laid, index) : m_laid.points[index];
  m_at = m_held;
  m_rod = pointer - m_held;
  m_snapped = {m_held, SnapKind::none, {}};
  m_field = fieldOf(m_before, reach_m, grid_m);
  leaveOut(m_field.places, m_laid.points);
  leaveOut(m_field.edges, m_laid.points);
  if (m_grip.kind == PointGripKind::whole || m_laid.points.size() < 2) return;
  // Square to the side before the one that leads here.
  const std::size_t n = m_laid.points.size();
  const bool has_before = m_grip.kind == PointGripKind::side || m_laid.closed || index > 0;
  const std::size_t from = m_grip.kind == PointGripKind::side ? index
                           : has_before                       ? (index + n - 1) % n
                                                              : index + 1;
  m_field.from = m_laid.points[from];
  for (std::size_t i = 0; i < n; ++i) {
    if (m_grip.kind == PointGripKind::side || i != index)
      m_field.corners.push_back(m_laid.points[i]);
  }
}

base::Result<plan::Job> PointDrag::put(Point at) {
  m_at = at;
  if (const plan::Sump* sump = sumpInside(m_before, m_grip.thing)) {
    return plan::moveSumpInside(m_before, sump->id, sump->kind, at);
  }
  switch (m_grip.kind) {
    case PointGripKind::vertex:
      return plan::movePoint(m_before, m_grip.thing, m_grip.index, at);
    case PointGripKind::side:
      return plan::insertPoint(m_before, m_grip.thing, m_grip.index + 1, at);
    case PointGripKind::whole:
      break;
  }
  return plan::moveThing(m_before, m_grip.thing, at - m_held);
}

base::Result<plan::Job> PointDrag::move(Point pointer) {
  m_snapped = snap(m_field, pointer - m_rod);
  return put(m_snapped.at);
}

std::optional<base::Result<plan::Job>> PointDrag::type(const std::string& text, BareUnit bare) {
  if (const auto pair = readPair(text, bare)) {
    const auto corner = fromNearestCorner(m_before, m_snapped.at);
    if (!corner) return std::nullopt;
    return put(placeAt(*corner, pair->first_m, pair->second_m));
  }
  const LengthReading length = readLength(text, bare);
  if (!length.ok() || !m_field.from) return std::nullopt;
  const Vec way = m_snapped.at - *m_field.from;
  const double now = geometry::norm(way);
  if (now <= 0.0) return std::nullopt;
  return put(*m_field.from + (length.metres.front() / now) * way);
}

}  // namespace sumpwright::tools
