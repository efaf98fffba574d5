#include "build/Curves.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sumpwright::build {

namespace {

/// Places t where a + b t = k sqrt(1 + t^2), k of any sign. Squared:
/// (b^2 - k^2) t^2 + 2 a b t + a^2 - k^2 = 0, of which those with the sign of k are right.
std::vector<double> roots(double a, double b, double k) {
  std::vector<double> found;
  const double p = b * b - k * k;
  const double q = a * b;
  const double s = a * a - k * k;
  const auto add = [&](double t) {
    if (std::isfinite(t) && (a + b * t) * k >= 0.0) found.push_back(t);
  };
  if (k == 0.0) {
    if (b != 0.0) found.push_back(-a / b);
    return found;
  }
  const double d = q * q - p * s;
  if (d < 0.0) return found;
  // The larger sum first, so that nothing cancels.
  const double sum = -(q + std::copysign(std::sqrt(d), q));
  if (p != 0.0) add(sum / p);
  if (sum != 0.0) add(s / sum);
  return found;
}

/// Where a curve is level: sin of the angle is b / k.
std::optional<double> top(const Curve& c) {
  if (!(std::abs(c.b) < c.k)) return std::nullopt;
  return c.b / std::sqrt(c.k * c.k - c.b * c.b);
}

std::pair<double, std::size_t> leastAt(const std::vector<Curve>& curves, double t) {
  std::pair<double, std::size_t> least{curves[0].at(t), 0};
  for (std::size_t i = 1; i < curves.size(); ++i) {
    const double value = curves[i].at(t);
    if (value < least.first) least = {value, i};
  }
  return least;
}

std::optional<Falls> notBelow(const Curve& curve, double value, Falls range) {
  std::vector<double> ends{range.from, range.to};
  for (const double t : roots(curve.a - value, curve.b, curve.k)) {
    if (t > range.from && t < range.to) ends.push_back(t);
  }
  std::sort(ends.begin(), ends.end());
  std::optional<Falls> found;
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const double middle = 0.5 * (ends[i - 1] + ends[i]);
    if (curve.at(middle) < value) continue;
    found = found ? Falls{found->from, ends[i]} : Falls{ends[i - 1], ends[i]};
  }
  if (found) return found;
  // A curve that only touches the value does so at an end of the range or at a root.
  for (const double t : ends) {
    if (curve.at(t) >= value) return Falls{t, t};
  }
  return std::nullopt;
}

}  // namespace

double Curve::at(double t) const { return a + b * t - k * std::sqrt(1.0 + t * t); }

Peak peakOf(const std::vector<Curve>& curves, Falls range) {
  std::vector<double> tries{range.from, range.to};
  const auto attempt = [&](double t) {
    if (t > range.from && t < range.to) tries.push_back(t);
  };
  for (std::size_t i = 0; i < curves.size(); ++i) {
    if (const auto t = top(curves[i])) attempt(*t);
    for (std::size_t j = i + 1; j < curves.size(); ++j) {
      for (const double t :
           roots(curves[i].a - curves[j].a, curves[i].b - curves[j].b, curves[i].k - curves[j].k)) {
        attempt(t);
      }
    }
  }
  std::sort(tries.begin(), tries.end());
  Peak peak;
  bool first = true;
  for (const double t : tries) {
    const auto [value, curve] = leastAt(curves, t);
    if (!first && !(value > peak.value)) continue;
    peak = {t, value, curve};
    first = false;
  }
  return peak;
}

std::optional<Falls> notBelow(const std::vector<Curve>& curves, double value, Falls range) {
  for (const Curve& curve : curves) {
    const auto part = notBelow(curve, value, range);
    if (!part) return std::nullopt;
    range = *part;
  }
  return range;
}

}  // namespace sumpwright::build
