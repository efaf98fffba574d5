#include "files/import/LocalMetres.h"

#include <cmath>
#include <numbers>

namespace sumpwright::files {

namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
constexpr double kSemiMajor_m = 6'378'137.0;
constexpr double kFlattening = 1 / 298.257223563;
constexpr double kEccentricity2 = kFlattening * (2 - kFlattening);

}  // namespace

LocalMetres::LocalMetres(LonLat centre)
    : m_sin_lon(std::sin(centre.lon_deg * kRadian)),
      m_cos_lon(std::cos(centre.lon_deg * kRadian)),
      m_sin_lat(std::sin(centre.lat_deg * kRadian)),
      m_cos_lat(std::cos(centre.lat_deg * kRadian)),
      m_centre(onEllipsoid(centre.lon_deg * kRadian, centre.lat_deg * kRadian)) {}

LocalMetres::Space LocalMetres::onEllipsoid(double lon, double lat) {
  const double sine = std::sin(lat);
  const double normal = kSemiMajor_m / std::sqrt(1 - kEccentricity2 * sine * sine);
  return {normal * std::cos(lat) * std::cos(lon), normal * std::cos(lat) * std::sin(lon),
          normal * (1 - kEccentricity2) * sine};
}

LocalMetres::Space LocalMetres::fromCentre(LonLat place) const {
  const Space p = onEllipsoid(place.lon_deg * kRadian, place.lat_deg * kRadian);
  return {p.x - m_centre.x, p.y - m_centre.y, p.z - m_centre.z};
}

geometry::Point LocalMetres::at(LonLat place) const {
  const auto [x, y, z] = fromCentre(place);
  return {-m_sin_lon * x + m_cos_lon * y,
          -m_sin_lat * (m_cos_lon * x + m_sin_lon * y) + m_cos_lat * z};
}

double LocalMetres::away_m(LonLat place) const {
  const auto [x, y, z] = fromCentre(place);
  return std::sqrt(x * x + y * y + z * z);
}

}  // namespace sumpwright::files
