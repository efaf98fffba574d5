#pragma once
// An ASCII DXF drawing, as far as outlines need it: the lines and polylines of its model space, by
// layer, in the drawing's own units. Read by its group codes (DXF Reference 2024, "LWPOLYLINE";
// the other entities and the header from memory).
//
// Taken: LINE, LWPOLYLINE, POLYLINE with its VERTEX list (2D and 3D, seen from above; of a fitted
// curve the fitted points). Left out and counted: all other kinds, block insertions among them,
// what lies on a paper sheet, what is hidden, what is drawn on a tilted plane. A mirrored plane
// (extrusion 0, 0, -1) is turned back. Line ends LF, CRLF or CR; a byte order mark, comments (999)
// and unknown sections are passed over. A file that ends early gives what was whole.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Message.h"
#include "base/Result.h"
#include "geometry/Point.h"

namespace sumpwright::files {

struct DxfVertex {
  geometry::Point at;
  /// Of the side that starts here: tangent of a quarter of its arc, > 0 counter-clockwise, 0
  /// straight.
  double bulge = 0.0;
  bool operator==(const DxfVertex&) const = default;
};

/// A LINE is an open path of two vertices.
struct DxfPath {
  std::string layer;
  std::vector<DxfVertex> vertices;  ///< one or more; coordinates finite, below 1e10 (own figure)
  bool closed = false;
  bool operator==(const DxfPath&) const = default;
};

struct DxfLayer {
  std::string name;  ///< UTF-8
  int lines = 0;
  int polylines = 0;
  int others = 0;  ///< left out, for whatever reason
  bool operator==(const DxfLayer&) const = default;
};

struct DxfDrawing {
  std::vector<DxfPath> paths;           ///< in the file's order
  std::vector<DxfLayer> layers;         ///< those with anything on them, by name
  std::vector<base::Message> left_out;  ///< ids "import.*", each with its count {n}
  /// What the header says its unit is ($INSUNITS: 1 inch, 2 foot, 4 mm, 5 cm, 6 m, 10 yard, 14 dm);
  /// nothing where it says none or another. Often wrong in practice: ask.
  std::optional<double> metres_per_unit;
};

/// Problems, all unreadable: import.dxf.binary, import.dxf.not-dxf (with the line where the
/// pattern of code and value breaks), import.dxf.no-entities, import.too-large (over
/// kMaxImportBytes of Outline.h).
base::Result<DxfDrawing> readDxf(std::string_view bytes);

}  // namespace sumpwright::files
