#include "files/import/DxfDrawing.h"

#include <cmath>
#include <map>
#include <utility>

#include "files/import/DxfTags.h"
#include "files/import/Outline.h"

namespace sumpwright::files {

namespace {

using base::Message;

/// Beyond, no drawing of a house is meant (own figure: a country's grid in millimetres is below).
constexpr double kFarthestUnits = 1e10;

// Bits of POLYLINE's and VERTEX's group 70.
constexpr int kClosed = 1;
constexpr int kMesh = 16;
constexpr int kFacesMesh = 64;
constexpr int kFrameOfCurve = 16;

base::Problem unreadableDrawing(Message message) {
  return {std::move(message), "", base::Gravity::unreadable};
}

/// One entity while its codes come in.
struct Entity {
  std::string_view kind;
  std::string_view layer = "0";
  int flags = 0;
  bool on_paper = false;
  bool hidden = false;
  bool bad = false;  ///< a number that is none, or too large
  double extrusion[3] = {0, 0, 1};
  DxfVertex first;   ///< LINE and VERTEX
  DxfVertex second;  ///< LINE
  std::vector<DxfVertex> vertices;

  bool isLine() const { return kind == "LINE"; }
  bool isLight() const { return kind == "LWPOLYLINE"; }
  bool isPolyline() const { return kind == "POLYLINE"; }
  bool isVertex() const { return kind == "VERTEX"; }

  void take(const DxfTag& tag);

 private:
  void takeInteger(const DxfTag& tag);
  void takeNumber(const DxfTag& tag);
  double* placeOf(int code);
};

double* Entity::placeOf(int code) {
  if (code == 210 || code == 220 || code == 230) return &extrusion[(code - 210) / 10];
  if (!isLine() && !isLight() && !isVertex()) return nullptr;  // POLYLINE's own point is a dummy
  if (code == 11) return &second.at.x;
  if (code == 21) return &second.at.y;
  if (isLight() && code == 10) vertices.emplace_back();
  DxfVertex* now = &first;
  if (isLight()) now = vertices.empty() ? nullptr : &vertices.back();
  if (now == nullptr) return nullptr;
  if (code == 10) return &now->at.x;
  if (code == 20) return &now->at.y;
  if (code == 42) return &now->bulge;
  return nullptr;
}

void Entity::takeNumber(const DxfTag& tag) {
  double* const place = placeOf(tag.code);
  if (place == nullptr) return;
  const auto value = dxfNumber(tag.value);
  bad = bad || !value || std::abs(*value) > kFarthestUnits;
  *place = value.value_or(0.0);
}

void Entity::takeInteger(const DxfTag& tag) {
  const int value = dxfInteger(tag.value).value_or(0);
  if (tag.code == 60) hidden = value == 1;
  if (tag.code == 67) on_paper = value == 1;
  if (tag.code == 70) flags = value;
}

void Entity::take(const DxfTag& tag) {
  switch (tag.code) {
    case 8:
      layer = tag.value;
      break;
    case 60:
    case 67:
    case 70:
      takeInteger(tag);
      break;
    default:
      takeNumber(tag);
  }
}

/// 1: seen from above; -1: from below; 0: tilted.
int facing(const Entity& entity) {
  if (std::abs(entity.extrusion[0]) > 1e-9 || std::abs(entity.extrusion[1]) > 1e-9) return 0;
  if (entity.extrusion[2] == 0.0) return 0;
  return entity.extrusion[2] > 0 ? 1 : -1;
}

/// In the plane of an extrusion (0, 0, -1) x runs the other way (arbitrary axis algorithm of the
/// DXF Reference, from memory).
void mirror(std::vector<DxfVertex>& vertices) {
  for (DxfVertex& v : vertices) v = {{-v.at.x, v.at.y}, -v.bulge};
}

double unitOf(int insunits) {
  switch (insunits) {
    case 1:
      return 0.0254;
    case 2:
      return 0.3048;
    case 4:
      return 0.001;
    case 5:
      return 0.01;
    case 6:
      return 1.0;
    case 10:
      return 0.9144;
    case 14:
      return 0.1;
    default:
      return 0.0;
  }
}

/// Reads section by section, and sorts entities into paths and what is left out.
class DrawingReader {
 public:
  explicit DrawingReader(std::string_view bytes) : m_tags(bytes) {}
  base::Result<DxfDrawing> read();

 private:
  void take(const DxfTag& tag);
  void takeHeader(const DxfTag& tag);
  void startEntity(std::string_view kind);
  void endEntity();
  void endPolyline();
  void keep(const Entity& entity);
  Message reasonAgainst(const Entity& entity) const;
  DxfLayer& layerOf(const Entity& entity);

  DxfTags m_tags;
  DxfDrawing m_drawing;
  std::map<std::string, DxfLayer, std::less<>> m_layers;
  OutlineList m_left_out;
  std::string_view m_section;
  std::string_view m_variable;
  bool m_section_opens = false;
  bool m_had_entities = false;
  std::optional<Entity> m_entity;    ///< whose codes come in
  std::optional<Entity> m_polyline;  ///< whose vertices come in
};

DxfLayer& DrawingReader::layerOf(const Entity& entity) {
  const std::string name = dxfName(entity.layer);
  DxfLayer& layer = m_layers[name];
  layer.name = name;
  return layer;
}

Message DrawingReader::reasonAgainst(const Entity& entity) const {
  if (!entity.isLine() && !entity.isLight() && !entity.isPolyline()) {
    return {"import.dxf.other-kind", {base::text("kind", dxfName(entity.kind.substr(0, 40)))}};
  }
  if (entity.isPolyline() && (entity.flags & (kMesh | kFacesMesh)) != 0) {
    return Message("import.dxf.mesh");
  }
  if (entity.on_paper) return Message("import.dxf.on-paper");
  if (entity.hidden) return Message("import.dxf.hidden");
  if (entity.bad) return Message("import.dxf.number");
  // A LINE's ends are in the world's axes, whatever its plane.
  if (!entity.isLine() && facing(entity) == 0) return Message("import.dxf.tilted");
  return {};
}

void DrawingReader::keep(const Entity& entity) {
  DxfLayer& layer = layerOf(entity);
  const Message reason = reasonAgainst(entity);
  if (!reason.id.empty()) {
    ++layer.others;
    return m_left_out.leaveOut(reason);
  }
  DxfPath path{layer.name, entity.vertices, (entity.flags & kClosed) != 0};
  if (entity.isLine()) path = {layer.name, {entity.first, entity.second}, false};
  if (path.vertices.empty()) return;
  if (!entity.isLine() && facing(entity) < 0) mirror(path.vertices);
  ++(entity.isLine() ? layer.lines : layer.polylines);
  m_drawing.paths.push_back(std::move(path));
}

void DrawingReader::endPolyline() {
  if (m_polyline) keep(*std::exchange(m_polyline, std::nullopt));
}

void DrawingReader::endEntity() {
  if (!m_entity) return;
  const Entity entity = *std::exchange(m_entity, std::nullopt);
  if (entity.isVertex() && m_polyline) {
    m_polyline->bad = m_polyline->bad || entity.bad;
    if ((entity.flags & kFrameOfCurve) == 0) m_polyline->vertices.push_back(entity.first);
    return;
  }
  endPolyline();
  if (entity.isPolyline()) {
    m_polyline = entity;
  } else if (entity.kind != "SEQEND" && !entity.isVertex()) {
    keep(entity);
  }
}

void DrawingReader::startEntity(std::string_view kind) {
  endEntity();
  if (kind == "ENDSEC") {
    endPolyline();
    m_section = {};
  } else if (kind == "SECTION") {
    m_section_opens = true;
  } else if (m_section == "ENTITIES") {
    m_entity.emplace();
    m_entity->kind = kind;
  }
}

void DrawingReader::takeHeader(const DxfTag& tag) {
  if (tag.code == 9) m_variable = tag.value;
  if (tag.code != 70 || m_variable != "$INSUNITS") return;
  const double unit = unitOf(dxfInteger(tag.value).value_or(0));
  if (unit > 0) m_drawing.metres_per_unit = unit;
}

void DrawingReader::take(const DxfTag& tag) {
  if (tag.code == 0) return startEntity(tag.value);
  if (std::exchange(m_section_opens, false) && tag.code == 2) {
    m_section = tag.value;
    m_had_entities = m_had_entities || m_section == "ENTITIES";
  } else if (m_section == "HEADER") {
    takeHeader(tag);
  } else if (m_entity) {
    m_entity->take(tag);
  }
}

base::Result<DxfDrawing> DrawingReader::read() {
  while (const auto tag = m_tags.next()) take(*tag);
  if (m_tags.broken()) {
    return unreadableDrawing(
        {"import.dxf.not-dxf", {base::count("line", static_cast<std::int64_t>(m_tags.line()))}});
  }
  if (!m_had_entities) return unreadableDrawing(Message("import.dxf.no-entities"));
  if (m_tags.whole()) {
    endEntity();
    endPolyline();
  } else {
    m_left_out.leaveOut(Message("import.dxf.ends-early"));  // and what was being read is not whole
  }
  for (auto& [name, layer] : m_layers) m_drawing.layers.push_back(layer);
  m_drawing.left_out = std::move(m_left_out).finish().left_out;
  return std::move(m_drawing);
}

}  // namespace

base::Result<DxfDrawing> readDxf(std::string_view bytes) {
  if (bytes.size() > kMaxImportBytes) {
    return unreadableDrawing(
        {"import.too-large",
         {base::count("limit", static_cast<std::int64_t>(kMaxImportBytes / (1024U * 1024U)))}});
  }
  // A binary one says so in its first line; no text has a zero byte.
  if (bytes.substr(0, 64).find('\0') != std::string_view::npos) {
    return unreadableDrawing(Message("import.dxf.binary"));
  }
  return DrawingReader(bytes).read();
}

}  // namespace sumpwright::files
