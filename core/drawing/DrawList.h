#pragma once
// A drawing as data: what every output paints. Millimetres, x right, y DOWN, origin at the top
// left of the page or view. On screen 1 px at 100 % = 0.25 mm. Hatches are real lines, already
// clipped; nothing in a list needs a clip, a brush pattern or a transform.

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::drawing {

using geometry::Point;

struct Colour {
  std::uint8_t r = 0, g = 0, b = 0, a = 255;
  bool operator==(const Colour&) const = default;
};

enum class Cap { butt, round, square };

struct Pen {
  Colour colour;
  double width_mm = 0.25;
  std::vector<double> dash_mm;  ///< on, off, ...; empty: solid
  Cap cap = Cap::butt;
  double dash_offset_mm = 0.0;  ///< how far into the pattern the stroke starts
  bool operator==(const Pen&) const = default;
};

struct Stroke {
  std::vector<Point> points;
  bool closed = false;
  Pen pen;
  bool operator==(const Stroke&) const = default;
};

/// Even-odd area of one or more rings, optionally outlined.
struct Fill {
  std::vector<std::vector<Point>> rings;
  Colour colour;
  bool operator==(const Fill&) const = default;
};

/// A circle or arc, angles in degrees counter-clockwise on the page from 3 o'clock.
struct Arc {
  Point centre;
  double radius_mm = 0.0;
  double start_deg = 0.0;
  double sweep_deg = 360.0;
  Pen pen;  ///< width 0: not stroked
  bool filled = false;
  Colour fill;
  bool operator==(const Arc&) const = default;
};

enum class HAlign { left, centre, right };

struct Font {
  double size_pt = 8.5;  ///< on screen 1 px = 0.25 mm applies to fonts as well
  bool bold = false;
  bool italic = false;
  bool operator==(const Font&) const = default;
};

/// One line of text, its baseline starting/centred/ending at `at`.
struct Text {
  Point at;
  std::string text;  ///< UTF-8
  Font font;
  Colour colour;
  HAlign align = HAlign::left;
  double turn_deg = 0.0;  ///< counter-clockwise about `at`
  bool operator==(const Text&) const = default;
};

using Shape = std::variant<Stroke, Fill, Arc, Text>;

struct Item {
  Shape shape;
  std::string tag;  ///< what it belongs to: a thing's id, or a role such as "band", "grid"
  bool operator==(const Item&) const = default;
};

struct DrawList {
  double width_mm = 0.0;
  double height_mm = 0.0;
  std::vector<Item> items;  ///< painted in order
  bool operator==(const DrawList&) const = default;
};

/// One item a line, numbers to 0.001 mm: for golden files and differences.
std::string toText(const DrawList& list);

}  // namespace sumpwright::drawing
