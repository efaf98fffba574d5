#pragma once
// Longitude and latitude as metres on the ground about a place.
//
// The plane touches the WGS 84 ellipsoid at the centre; x east, y north (geocentric to topocentric
// coordinates, EPSG Guidance Note 7-2, with semi-axis 6 378 137 m and 1/f = 298.257 223 563, NIMA
// TR8350.2; both from memory). A length between two points within d of the centre comes out too
// short by at most the part d^2 / 2R^2 (derived: the plane tilts away by d/R): with R = 6 357 km,
// 1 part in 800 000 000 at d = 200 m: far below a hair for a house; under 2 mm in 1 km at d = 10
// km. Ground above sea level h is larger than the ellipsoid by the part h/R: 16 mm in 100 m at 1000
// m height, which a map does not say and no one can correct from it alone.

#include "geometry/Point.h"

namespace sumpwright::files {

struct LonLat {
  double lon_deg = 0.0;  ///< east of Greenwich
  double lat_deg = 0.0;  ///< geodetic
  bool operator==(const LonLat&) const = default;
};

class LocalMetres {
 public:
  /// Any finite place; at a pole "north" is the way the longitude runs on.
  explicit LocalMetres(LonLat centre);
  geometry::Point at(LonLat place) const;
  /// Straight through the Earth: tells a place near by from its shadow on the far side.
  double away_m(LonLat place) const;

 private:
  struct Space {
    double x, y, z;
  };
  static Space onEllipsoid(double lon, double lat);
  Space fromCentre(LonLat place) const;

  double m_sin_lon, m_cos_lon, m_sin_lat, m_cos_lat;
  Space m_centre;
};

}  // namespace sumpwright::files
