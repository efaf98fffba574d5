#pragma once
// Families of concave curves f(t) = a + b t - k sqrt(1 + t^2), k >= 0: the least of them at its
// highest, and where none is below a value. Closed form; internal to core/build.

#include <cstddef>
#include <optional>
#include <vector>

namespace sumpwright::build {

struct Curve {
  double a = 0.0, b = 0.0, k = 0.0;
  double at(double t) const;
};

/// A closed range of falls, from <= to.
struct Falls {
  double from = 0.0;
  double to = 0.0;
  bool operator==(const Falls&) const = default;
};

/// The largest of the least of the curves over a range, at the smallest such t of those tried; and
/// which curve is the least there (the first of equals). Curves must not be empty.
struct Peak {
  double t = 0.0;
  double value = 0.0;
  std::size_t curve = 0;
};
Peak peakOf(const std::vector<Curve>& curves, Falls range);

/// Where no curve is below `value`, in the range; nothing where that is nowhere.
std::optional<Falls> notBelow(const std::vector<Curve>& curves, double value, Falls range);

}  // namespace sumpwright::build
