#pragma once
// An outline on its way from a drawing or a map into the plan: what the file holds, which layers
// and unit the user chose, which ring is the outside wall and which are courtyards.

#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "base/Result.h"
#include "files/import/DxfOutline.h"
#include "files/import/GeoJsonOutline.h"
#include "plan/Job.h"

namespace sumpwright::session {

/// What can become a courtyard of the chosen outside wall.
struct CourtyardOffer {
  geometry::Polygon ring;
  double area_m2 = 0.0;
  /// Not: so large that it is the inner face of the walls rather, or within a courtyard.
  bool likely = true;
};

class OutlineImport {
 public:
  /// Drawing or map, by its bytes, not its name. Problems: those of readBytes, readDxf,
  /// readGeoJson.
  static base::Result<OutlineImport> read(const std::string& path);

  const std::string& path() const { return m_path; }
  /// nullptr for a map.
  const files::DxfDrawing* drawing() const { return std::get_if<files::DxfDrawing>(&m_source); }
  /// nullptr for a drawing.
  const files::MapOutlines* map() const { return std::get_if<files::MapOutlines>(&m_source); }

  /// Of a drawing: nothing is found before the unit is said. Empty layers: all. Problem:
  /// import.choice.
  base::Problems choose(double metres_per_unit, const std::vector<std::string>& layers);
  std::optional<double> metresPerUnit() const { return m_metres_per_unit; }
  /// Largest first.
  const std::vector<files::Outline>& outlines() const { return m_found.outlines; }
  const std::vector<base::Message>& leftOut() const { return m_found.left_out; }

  /// Inner rings of an outline: its holes, and all outlines that lie in it.
  std::vector<CourtyardOffer> courtyardsOf(std::size_t outer) const;
  /// The job with that outline, its lower left corner at the origin, and the courtyards chosen by
  /// their number in courtyardsOf(). An outline that is there is replaced, with what stands on it.
  /// A map's y is north: the plan's north is turned there. Problems: those of plan/WallEdits.h.
  base::Result<plan::Job> takenInto(const plan::Job& job, std::size_t outer,
                                    const std::set<std::size_t>& courtyards) const;

 private:
  std::string m_path;
  std::variant<files::DxfDrawing, files::MapOutlines> m_source;
  files::ImportedOutlines m_found;
  std::optional<double> m_metres_per_unit;
};

/// What a file that is dropped onto the window can be, by its name and its first bytes.
enum class FileNature { job, picture, outline };
FileNature natureOf(const std::string& path);

}  // namespace sumpwright::session
