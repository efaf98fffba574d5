#pragma once
// Puts shapes into a draw list: the short words the drawing files are written in.
//
// Sizes on the sheet (millimetres of gaps, labels, signs, line lengths) are the look's own figures,
// here and in all of core/drawing and core/dossier; none of them decides anything about the house.

#include <string>
#include <utility>
#include <vector>

#include "drawing/DrawList.h"

namespace sumpwright::drawing {

using geometry::Vec;

/// One screen pixel at 100 %, millimetres; on paper the same.
inline constexpr double kPx = 0.25;

Pen solid(const Colour& colour, double width_px);
Pen dashed(const Colour& colour, double width_px, std::vector<double> dash_px);
/// Font sizes of the look, points.
namespace type {
inline constexpr Font room{9.6, true, false};
inline constexpr Font body{8.5, false, false};
inline constexpr Font strong{8.5, true, false};
inline constexpr Font second{8.0, false, false};
inline constexpr Font small{7.5, false, false};
inline constexpr Font letter{8.5, true, false};
}  // namespace type
/// Distance between baselines: 1.35 times the size.
double leading_mm(const Font& font);

class Sketch {
 public:
  explicit Sketch(DrawList& list) : m_list(list) {}
  /// Items that follow carry this tag.
  Sketch& tagged(std::string tag);

  /// An item as it is, with its own tag.
  void put(Item item) { m_list.items.push_back(std::move(item)); }
  void line(Point a, Point b, const Pen& pen);
  void path(std::vector<Point> points, const Pen& pen);
  void outline(std::vector<Point> points, const Pen& pen);
  void fill(std::vector<Point> ring, const Colour& colour);
  void fill(std::vector<std::vector<Point>> rings, const Colour& colour);
  void circle(Point centre, double radius_mm, const Pen& pen);
  void disc(Point centre, double radius_mm, const Colour& colour);
  void ring(Point centre, double radius_mm, const Pen& pen, const Colour& inside);
  void arc(Point centre, double radius_mm, double start_deg, double sweep_deg, const Pen& pen);
  void text(Point at, std::string words, const Font& font, const Colour& colour,
            HAlign align = HAlign::left, double turn_deg = 0.0);

 private:
  void add(Shape shape);
  DrawList& m_list;
  std::string m_tag;
};

/// Corners of an axis-aligned rectangle.
std::vector<Point> rectangle(double x, double y, double width, double height);
/// The same with rounded corners.
std::vector<Point> roundedRectangle(double x, double y, double width, double height, double radius);
/// Points of a circular arc on the page, from angle to angle (degrees, counter-clockwise).
std::vector<Point> arcPoints(Point centre, double radius, double start_deg, double sweep_deg);
/// Cubic Bezier from a to d, as a polyline.
std::vector<Point> bezier(Point a, Point b, Point c, Point d);
/// v over its length; {1, 0} for no length.
Vec unit(Vec v);

}  // namespace sumpwright::drawing
