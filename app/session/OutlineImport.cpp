#include "session/OutlineImport.h"

#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <cmath>

#include "files/JobFile.h"
#include "geometry/Shapes.h"
#include "plan/FactEdits.h"
#include "plan/WallEdits.h"

namespace sumpwright::session {

namespace {

/// Of the outer ring's area (own figure: a cottage of 5 m by 5 m within walls of 0.6 m has 0.58).
constexpr double kInnerFace = 0.5;
constexpr qint64 kLook_bytes = 4096;

std::size_t firstInk(std::string_view bytes) {
  const std::size_t skip = bytes.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  return bytes.find_first_not_of(" \t\r\n", skip);
}

bool isJson(std::string_view bytes) {
  const std::size_t at = firstInk(bytes);
  return at != std::string_view::npos && bytes[at] == '{';
}

geometry::Polygon movedBy(geometry::Polygon ring, geometry::Vec by) {
  for (geometry::Point& p : ring) {
    // To the grid the corners stood on, which the way there and back has left by rounding.
    const auto neat = [](double v) {
      return std::round(v / files::kOutlineGrid_m) * files::kOutlineGrid_m;
    };
    p = {neat(p.x + by.x), neat(p.y + by.y)};
  }
  return ring;
}

geometry::Vec toOrigin(const geometry::Polygon& ring) {
  geometry::Point low = ring.front();
  for (const geometry::Point p : ring) low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  return geometry::Point{} - low;
}

base::Result<plan::Job> cleared(const plan::Job& job) {
  base::Result<plan::Job> empty = job;
  for (int ring = static_cast<int>(job.plan.rings.size()) - 1; ring >= 0 && empty.ok(); --ring) {
    empty = plan::removeRing(*empty, ring);
  }
  return empty;
}

}  // namespace

base::Result<OutlineImport> OutlineImport::read(const std::string& path) {
  // One byte over the limit is enough for the reader to say that it is too large.
  const auto bytes = files::readBytes(path, files::kMaxImportBytes + 1);
  if (!bytes.ok()) return bytes.problems();
  OutlineImport import;
  import.m_path = path;
  if (isJson(*bytes)) {
    auto map = files::readGeoJson(*bytes);
    if (!map.ok()) return map.problems();
    import.m_found = map->found;
    import.m_source = std::move(map).value();
    return import;
  }
  auto drawing = files::readDxf(*bytes);
  if (!drawing.ok()) return drawing.problems();
  import.m_source = std::move(drawing).value();
  return import;
}

base::Problems OutlineImport::choose(double metres_per_unit,
                                     const std::vector<std::string>& layers) {
  const files::DxfDrawing* from = drawing();
  if (from == nullptr) return {};
  files::DxfChoice choice;
  choice.metres_per_unit = metres_per_unit;
  choice.layers = layers;
  auto found = files::outlinesOf(*from, choice);
  if (!found.ok()) return found.problems();
  m_metres_per_unit = metres_per_unit;
  m_found = std::move(found).value();
  return {};
}

std::vector<CourtyardOffer> OutlineImport::courtyardsOf(std::size_t outer) const {
  std::vector<CourtyardOffer> offers;
  if (outer >= outlines().size()) return offers;
  const double whole = std::abs(geometry::signedArea(outlines()[outer].outer));
  const auto areaOf = [](const geometry::Polygon& ring) {
    return std::abs(geometry::signedArea(ring));
  };
  for (const geometry::Polygon& hole : outlines()[outer].holes) {
    offers.push_back({hole, areaOf(hole), true});
  }
  // Largest first: what an outline lies in comes before it.
  std::set<std::size_t> inside{outer};
  std::set<std::size_t> faces{outer};  // the walls' outer and inner faces: courtyards lie in these
  for (std::size_t i = outer + 1; i < outlines().size(); ++i) {
    const files::Outline& other = outlines()[i];
    if (!other.within || !inside.contains(*other.within)) continue;
    inside.insert(i);
    const double area = areaOf(other.outer);
    const bool face = faces.contains(*other.within) && area >= kInnerFace * whole;
    if (face) faces.insert(i);
    offers.push_back({other.outer, area, !face && faces.contains(*other.within)});
  }
  return offers;
}

base::Result<plan::Job> OutlineImport::takenInto(const plan::Job& job, std::size_t outer,
                                                 const std::set<std::size_t>& courtyards) const {
  SUMPWRIGHT_REQUIRE(outer < outlines().size());
  base::Result<plan::Job> after = cleared(job);
  if (!after.ok()) return after;
  const geometry::Polygon& ring = outlines()[outer].outer;
  const geometry::Vec by = toOrigin(ring);
  after = plan::addOutline(*after, movedBy(ring, by));
  const std::vector<CourtyardOffer> offers = courtyardsOf(outer);
  for (const std::size_t i : courtyards) {
    if (!after.ok()) return after;
    SUMPWRIGHT_REQUIRE(i < offers.size());
    after = plan::addCourtyard(*after, movedBy(offers[i].ring, by));
  }
  if (!after.ok() || map() == nullptr) return after;
  return plan::setNorth(*after, 0.0);
}

FileNature natureOf(const std::string& path) {
  const QString name = QFileInfo(QString::fromStdString(path)).fileName().toLower();
  if (name.endsWith(QLatin1String(files::kJobSuffix))) return FileNature::job;
  QFile file(QString::fromStdString(path));
  QByteArray head;
  if (file.open(QIODevice::ReadOnly)) head = file.read(kLook_bytes);
  const std::string_view bytes(head.constData(), static_cast<std::size_t>(head.size()));
  if (isJson(bytes)) {
    const bool is_map = name.endsWith(QLatin1String(".geojson")) || head.contains("\"Feature") ||
                        head.contains("Polygon\"");
    return is_map ? FileNature::outline : FileNature::job;
  }
  if (name.endsWith(QLatin1String(".dxf"))) return FileNature::outline;
  const bool is_picture = head.startsWith("\x89PNG") || head.startsWith("\xFF\xD8\xFF") ||
                          head.contains("%PDF-") || head.contains("<svg");
  for (const char* ending : {".png", ".jpg", ".jpeg", ".svg", ".pdf"}) {
    if (is_picture || name.endsWith(QLatin1String(ending))) return FileNature::picture;
  }
  return FileNature::job;
}

}  // namespace sumpwright::session
