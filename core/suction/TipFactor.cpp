#include "suction/TipFactor.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::suction {

namespace {

using geometry::Point;
using geometry::Vec;

constexpr double kWeak =
    0.002;  // differences squared below which the link is left alone (own figure)
constexpr double kMost = 4.0;  // times the fill's conductance (own figure)

/// r^(1/2) sin(theta/2) and its conjugate -r^(1/2) cos(theta/2).
struct TipField {
  double value = 0.0;
  double conjugate = 0.0;
};

TipField fieldAt(const Tip& tip, Point p) {
  const Vec v = p - tip.at;
  const Vec out = -tip.into_wall;
  const double theta = std::atan2(geometry::cross(out, v), geometry::dot(out, v));
  const double root = std::sqrt(geometry::norm(v));
  return {root * std::sin(0.5 * theta), -root * std::cos(0.5 * theta)};
}

}  // namespace

double tipFactor(const Tip& tip, const geometry::Segment& link, Point right, Point left, bool cut) {
  const double flow = fieldAt(tip, left).conjugate - fieldAt(tip, right).conjugate;
  const double difference = fieldAt(tip, link.b).value - fieldAt(tip, link.a).value;
  const double none = cut ? 0.0 : geometry::distance(right, left);
  const double factor = (flow * difference + none * kWeak) / (difference * difference + kWeak);
  return std::clamp(factor, 0.0, kMost);
}

}  // namespace sumpwright::suction
