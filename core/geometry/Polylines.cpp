#include "geometry/Polylines.h"

namespace sumpwright::geometry {

double lengthOf(const Polyline& line) {
  double length = 0.0;
  for (std::size_t k = 1; k < line.size(); ++k) length += distance(line[k - 1], line[k]);
  return length;
}

Point pointAlong(const Polyline& line, double s) {
  for (std::size_t k = 1; k < line.size(); ++k) {
    const double length = distance(line[k - 1], line[k]);
    if (s <= length && length > 0.0) return lerp(line[k - 1], line[k], s / length);
    s -= length;
  }
  return line.back();
}

Polyline partOf(const Polyline& line, double from, double to) {
  Polyline part{pointAlong(line, from)};
  double s = 0.0;
  for (std::size_t k = 1; k + 1 < line.size(); ++k) {
    s += distance(line[k - 1], line[k]);
    if (s > from && s < to) part.push_back(line[k]);
  }
  part.push_back(pointAlong(line, to));
  return part;
}

}  // namespace sumpwright::geometry
