#include "drawing/TapeLayout.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::drawing {
namespace {

constexpr double kRight_mm = 3.5;  // room for half a corner letter at the end

bool hasLane(const rules::Rule& rule) {
  return rule.enabled && rule.severity != rules::Severity::preference;
}

std::vector<Lane> lanesOf(const siting::Study& study, const TapeView& view) {
  std::vector<Lane> lanes;
  if (view.reach) return lanes;
  for (const rules::Rule& rule : study.sheet().rules) {
    if (!hasLane(rule)) continue;
    std::optional<double> needed;
    if (rule.needed_m) needed = rules::needed_m(rule, study.site());
    lanes.push_back({rule.id, rule.title, needed});
  }
  for (const rules::FindingSpan& span : study.spans()) {
    const bool known = std::any_of(lanes.begin(), lanes.end(),
                                   [&](const Lane& l) { return l.rule == span.finding.rule; });
    if (!known) lanes.push_back({span.finding.rule, {}, std::nullopt});
  }
  // Lanes with nothing in them go below: in a low window the others are what is in view.
  std::stable_partition(lanes.begin(), lanes.end(), [&](const Lane& l) {
    return std::any_of(study.spans().begin(), study.spans().end(),
                       [&](const rules::FindingSpan& s) { return s.finding.rule == l.rule; });
  });
  return lanes;
}

}  // namespace

TapeLayout::TapeLayout(const siting::Study& study, const TapeView& view)
    : m_study(study), m_view(view), m_lanes(lanesOf(study, view)) {
  const perimeter::Perimeter& perimeter = study.perimeter();
  double sum = 0.0;
  for (int r = 0; r < perimeter.ringCount(); ++r) sum += perimeter.length_m(r);
  const double gaps = kRingGap_mm * (perimeter.ringCount() - 1);
  const double room = view.width_mm - view.label_mm - kRight_mm - gaps;
  m_mm_per_m = std::max(room, 1.0) / std::max(sum, 1e-9);
  double at = view.label_mm;
  for (int r = 0; r < perimeter.ringCount(); ++r) {
    m_left.push_back(at);
    at += perimeter.length_m(r) * m_mm_per_m + kRingGap_mm;
  }
}

double TapeLayout::xOf(int ring, double chainage_m) const {
  return m_left[static_cast<std::size_t>(ring)] + chainage_m * m_mm_per_m;
}

double TapeLayout::x(perimeter::Place place) const {
  const perimeter::Place here = m_study.perimeter().wrapped(place);
  return xOf(here.ring, here.chainage_m);
}

double TapeLayout::right(int ring) const { return xOf(ring, m_study.perimeter().length_m(ring)); }

perimeter::Place TapeLayout::place(double x_mm) const {
  perimeter::Place best;
  double least = std::abs(x_mm - m_left.front()) + 1.0;
  for (int r = 0; r < m_study.perimeter().ringCount(); ++r) {
    const double inside = std::clamp(x_mm, left(r), right(r));
    if (r > 0 && std::abs(x_mm - inside) >= least) continue;
    least = std::abs(x_mm - inside);
    best = {r, (inside - left(r)) / m_mm_per_m};
  }
  return m_study.perimeter().wrapped(best);
}

double TapeLayout::scoreBottom() const {
  if (m_view.reach) return verdictTop() - 1.25;
  return m_view.lanes ? 13.5 : 0.0;
}

double TapeLayout::verdictTop() const {
  if (m_view.reach) return axisTop() - 1.0 - verdictHeight();
  return m_view.lanes ? 15.0 : 3.0;
}

double TapeLayout::axisTop() const {
  if (m_view.reach) return m_view.height_mm - kAxis_mm;
  if (!m_view.lanes) return verdictTop() + verdictHeight() + 0.5;
  return std::min(m_view.height_mm, fullHeight()) - kAxis_mm;
}

double TapeLayout::fullHeight() const {
  if (m_view.reach) return kReachTape_mm;
  if (!m_view.lanes) return verdictTop() + verdictHeight() + kAxis_mm;
  return lanesTop() + kLane_mm * static_cast<double>(m_lanes.size()) + 0.5 + kAxis_mm;
}

double TapeLayout::lanesRoom() const {
  return m_view.lanes ? std::max(0.0, axisTop() - 0.5 - lanesTop()) : 0.0;
}

double TapeLayout::scroll() const {
  const double all = kLane_mm * static_cast<double>(m_lanes.size());
  const double most = std::max(0.0, all - lanesRoom());
  // Whole lanes only: half a lane cannot be read.
  return std::ceil(std::clamp(m_view.scroll_mm, 0.0, most) / kLane_mm - 1e-9) * kLane_mm;
}

std::optional<std::size_t> TapeLayout::pinned() const {
  if (!m_view.lanes || m_view.deciding_rule.empty()) return std::nullopt;
  for (std::size_t i = 0; i < m_lanes.size(); ++i) {
    if (m_lanes[i].rule != m_view.deciding_rule) continue;
    const double top = kLane_mm * static_cast<double>(i) - scroll();
    const bool seen = top > -1e-6 && top + kLane_mm <= lanesRoom() + 1e-6;
    return seen ? std::nullopt : std::optional(i);
  }
  return std::nullopt;
}

std::optional<double> TapeLayout::laneTop(std::size_t lane) const {
  if (!m_view.lanes) return std::nullopt;
  const double rows = std::floor(lanesRoom() / kLane_mm + 1e-6);
  if (rows < 1.0) return std::nullopt;
  const auto kept = pinned();
  const double last = lanesTop() + (rows - 1.0) * kLane_mm;
  if (kept && *kept == lane) return last;  // in the last row, in place of the lane it covers
  const double top = lanesTop() + kLane_mm * static_cast<double>(lane) - scroll();
  const double limit = kept ? last : last + kLane_mm;
  if (top < lanesTop() - 1e-6 || top + kLane_mm > limit + 1e-6) return std::nullopt;
  return top;
}

std::optional<std::size_t> TapeLayout::laneAt(double y_mm) const {
  for (std::size_t i = 0; i < m_lanes.size(); ++i) {
    const auto top = laneTop(i);
    if (top && *top <= y_mm && y_mm < *top + kLane_mm) return i;
  }
  return std::nullopt;
}

std::size_t TapeLayout::hidden() const {
  std::size_t count = 0;
  for (std::size_t i = 0; i < m_lanes.size(); ++i)
    count += laneTop(i) ? std::size_t{0} : std::size_t{1};
  return count;
}

}  // namespace sumpwright::drawing
