#pragma once
// Outlines of a GeoJSON map (RFC 7946), in metres.

#include <string_view>

#include "base/Result.h"
#include "files/import/LocalMetres.h"
#include "files/import/Outline.h"

namespace sumpwright::files {

/// Farther from the largest outline, others are left out (own figure): see LocalMetres.h.
inline constexpr double kFarFromLargest_m = 10'000.0;

struct MapOutlines {
  ImportedOutlines found;  ///< x east, y north; the reader's frame, for `origin`, is that about:
  LonLat centre;           ///< of the corners of the largest polygon
};

/// Polygon and MultiPolygon, alone or in Feature, FeatureCollection and GeometryCollection; heights
/// are passed over. A name is the feature's property "name", else its id. Outlines have their
/// holes. Left out and counted: other geometries, polygons with coordinates that are none.
/// Problems, all unreadable: import.too-large, import.geojson.not-json, import.geojson.not-geojson,
/// import.geojson.crs (coordinates of another kind, which the format no longer allows),
/// import.geojson.not-degrees (coordinates beyond ±180 and ±90: a map's grid, or swapped).
base::Result<MapOutlines> readGeoJson(std::string_view bytes);

}  // namespace sumpwright::files
