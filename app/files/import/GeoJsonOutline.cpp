#include "files/import/GeoJsonOutline.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <utility>

#include "geometry/Shapes.h"

namespace sumpwright::files {

namespace {

using base::Message;
using nlohmann::json;

/// Nested deeper, a file is no map; a collection within two collections comes to 14 (own figure).
constexpr int kDeepest = 20;

using LonLatRing = std::vector<LonLat>;

/// The first ring is the outer one.
struct MapPolygon {
  std::vector<LonLatRing> rings;
  std::string name;
};

base::Problem unreadableMap(Message message) {
  return {std::move(message), "", base::Gravity::unreadable};
}

std::string textOf(const json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) return {};
  if (found->is_string()) return found->get<std::string>();
  return found->is_number_integer() ? found->dump() : std::string();
}

/// The member, or null: also where `object` is none.
const json& member(const json& object, const char* key) {
  static const json kNone;
  if (!object.is_object()) return kNone;
  const auto found = object.find(key);
  return found == object.end() ? kNone : *found;
}

std::string featureName(const json& feature) {
  const json& properties = member(feature, "properties");
  const std::string name = properties.is_object() ? textOf(properties, "name") : std::string();
  return name.empty() ? textOf(feature, "id") : name;
}

std::optional<LonLatRing> ringFrom(const json& positions) {
  if (!positions.is_array()) return std::nullopt;
  LonLatRing ring;
  ring.reserve(positions.size());
  for (const json& position : positions) {
    if (!position.is_array() || position.size() < 2) return std::nullopt;
    if (!position[0].is_number() || !position[1].is_number()) return std::nullopt;
    ring.push_back({position[0].get<double>(), position[1].get<double>()});
  }
  if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  return ring.empty() ? std::nullopt : std::optional(std::move(ring));
}

bool inDegrees(const LonLatRing& ring) {
  return std::all_of(ring.begin(), ring.end(), [](LonLat p) {
    return std::abs(p.lon_deg) <= 180 && std::abs(p.lat_deg) <= 90;
  });
}

/// The mean of the corners, also across the line where longitude jumps.
LonLat middleOf(const LonLatRing& ring) {
  LonLat sum;
  for (const LonLat p : ring) {
    sum.lon_deg += std::remainder(p.lon_deg - ring.front().lon_deg, 360.0);
    sum.lat_deg += p.lat_deg - ring.front().lat_deg;
  }
  const auto n = static_cast<double>(ring.size());
  return {ring.front().lon_deg + sum.lon_deg / n, ring.front().lat_deg + sum.lat_deg / n};
}

geometry::Polygon inMetres(const LonLatRing& ring, const LocalMetres& local) {
  geometry::Polygon result;
  result.reserve(ring.size());
  for (const LonLat p : ring) result.push_back(local.at(p));
  return result;
}

double areaOf(const MapPolygon& polygon) {
  const LonLatRing& outer = polygon.rings.front();
  return std::abs(geometry::signedArea(inMetres(outer, LocalMetres(middleOf(outer)))));
}

/// Goes through the objects of a map and gathers polygons.
class MapReader {
 public:
  base::Result<MapOutlines> read(const json& root);

 private:
  void visit(const json& object, const std::string& name);
  void visitAll(const json& list, const std::string& name);
  void addPolygon(const json& rings, const std::string& name);
  MapOutlines outlines();

  std::vector<MapPolygon> m_polygons;
  OutlineList m_list;
  bool m_known_type = false;
  bool m_not_degrees = false;
};

void MapReader::addPolygon(const json& rings, const std::string& name) {
  MapPolygon polygon{{}, name};
  for (const json& positions : rings) {
    auto ring = ringFrom(positions);
    if (!ring) return m_list.leaveOut(Message("import.geojson.coordinates"));
    m_not_degrees = m_not_degrees || !inDegrees(*ring);
    polygon.rings.push_back(std::move(*ring));
  }
  if (polygon.rings.empty()) return m_list.leaveOut(Message("import.geojson.coordinates"));
  m_polygons.push_back(std::move(polygon));
}

void MapReader::visitAll(const json& list, const std::string& name) {
  if (!list.is_array()) return;
  for (const json& object : list) visit(object, name);
}

void MapReader::visit(const json& object, const std::string& name) {
  if (!object.is_object()) return;
  const std::string type = textOf(object, "type");
  const json& coordinates = member(object, "coordinates");
  if (type == "FeatureCollection") {
    visitAll(member(object, "features"), name);
  } else if (type == "Feature") {
    visit(member(object, "geometry"), featureName(object));
  } else if (type == "GeometryCollection") {
    visitAll(member(object, "geometries"), name);
  } else if (type == "Polygon") {
    addPolygon(coordinates, name);
  } else if (type == "MultiPolygon") {
    for (const json& rings : coordinates) addPolygon(rings, name);
  } else if (type == "Point" || type == "MultiPoint" || type == "LineString" ||
             type == "MultiLineString") {
    m_list.leaveOut({"import.geojson.other-kind", {base::text("kind", type)}});
  } else {
    return;
  }
  m_known_type = true;
}

MapOutlines MapReader::outlines() {
  MapOutlines result;
  double largest = -1;
  for (const MapPolygon& polygon : m_polygons) {
    const double area = areaOf(polygon);
    if (area <= largest) continue;
    largest = area;
    result.centre = middleOf(polygon.rings.front());
  }
  const LocalMetres local(result.centre);
  for (const MapPolygon& polygon : m_polygons) {
    std::vector<geometry::Polygon> rings;
    for (const LonLatRing& ring : polygon.rings) rings.push_back(inMetres(ring, local));
    const bool is_far = std::any_of(polygon.rings.front().begin(), polygon.rings.front().end(),
                                    [&](LonLat p) { return local.away_m(p) > kFarFromLargest_m; });
    if (is_far) {
      m_list.leaveOut({"import.geojson.far", {base::metres("most", kFarFromLargest_m)}});
      continue;
    }
    const geometry::Polygon outer = std::move(rings.front());
    rings.erase(rings.begin());
    m_list.add(outer, rings, polygon.name);
  }
  result.found = std::move(m_list).finish();
  return result;
}

/// A "crs" of before RFC 7946 may only say what is the rule now.
bool isOtherCrs(const json& root) {
  const json& crs = member(root, "crs");
  if (crs.is_null()) return false;
  const std::string name = textOf(
      member(crs, "properties").is_object() ? member(crs, "properties") : json::object(), "name");
  return name.find("CRS84") == std::string::npos && name.find("4326") == std::string::npos;
}

base::Result<MapOutlines> MapReader::read(const json& root) {
  if (isOtherCrs(root)) return unreadableMap(Message("import.geojson.crs"));
  visit(root, {});
  if (!m_known_type) return unreadableMap(Message("import.geojson.not-geojson"));
  if (m_not_degrees) return unreadableMap(Message("import.geojson.not-degrees"));
  return outlines();
}

}  // namespace

base::Result<MapOutlines> readGeoJson(std::string_view bytes) {
  if (bytes.size() > kMaxImportBytes) {
    return unreadableMap(
        {"import.too-large",
         {base::count("limit", static_cast<std::int64_t>(kMaxImportBytes / (1024U * 1024U)))}});
  }
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  const auto not_too_deep = [](int depth, json::parse_event_t, json&) { return depth < kDeepest; };
  const json root = json::parse(bytes.begin(), bytes.end(), not_too_deep, false);
  if (root.is_discarded()) return unreadableMap(Message("import.geojson.not-json"));
  return MapReader().read(root);
}

}  // namespace sumpwright::files
