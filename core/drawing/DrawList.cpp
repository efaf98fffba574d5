#include "drawing/DrawList.h"

#include <cmath>
#include <cstdio>

namespace sumpwright::drawing {
namespace {

std::string number(double value) {
  // -0.000 and 0.000 are the same place.
  const double rounded = std::round(value * 1000.0) / 1000.0;
  char buffer[64];
  std::snprintf(buffer, sizeof buffer, "%.3f", rounded == 0.0 ? 0.0 : rounded);
  std::string out = buffer;
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out;
}

std::string point(Point p) { return number(p.x) + ',' + number(p.y); }

std::string points(const std::vector<Point>& list) {
  std::string out;
  for (const Point& p : list) out += (out.empty() ? "" : " ") + point(p);
  return out;
}

std::string colour(const Colour& c) {
  char buffer[16];
  std::snprintf(buffer, sizeof buffer, "#%02X%02X%02X", unsigned{c.r}, unsigned{c.g},
                unsigned{c.b});
  std::string out = buffer;
  if (c.a != 255) out += '/' + std::to_string(unsigned{c.a});
  return out;
}

std::string pen(const Pen& p) {
  std::string out = colour(p.colour) + ' ' + number(p.width_mm);
  if (!p.dash_mm.empty()) {
    out += " dash";
    for (double part : p.dash_mm) out += ' ' + number(part);
    if (p.dash_offset_mm != 0.0) out += " from " + number(p.dash_offset_mm);
  }
  if (p.cap == Cap::round) out += " round";
  if (p.cap == Cap::square) out += " square";
  return out;
}

struct Line {
  std::string operator()(const Stroke& s) const {
    return std::string(s.closed ? "outline " : "stroke ") + pen(s.pen) + " : " + points(s.points);
  }
  std::string operator()(const Fill& f) const {
    std::string out = "fill " + colour(f.colour) + " :";
    for (const auto& ring : f.rings) out += " (" + points(ring) + ')';
    return out;
  }
  std::string operator()(const Arc& a) const {
    std::string out = "arc " + point(a.centre) + " r " + number(a.radius_mm) + " from " +
                      number(a.start_deg) + " sweep " + number(a.sweep_deg);
    if (a.pen.width_mm > 0.0) out += " pen " + pen(a.pen);
    if (a.filled) out += " fill " + colour(a.fill);
    return out;
  }
  std::string operator()(const Text& t) const {
    std::string out = "text " + point(t.at) + ' ' + number(t.font.size_pt) + "pt";
    if (t.font.bold) out += " bold";
    if (t.font.italic) out += " italic";
    out += ' ' + colour(t.colour);
    if (t.align == HAlign::centre) out += " centre";
    if (t.align == HAlign::right) out += " right";
    if (t.turn_deg != 0.0) out += " turn " + number(t.turn_deg);
    return out + " : " + t.text;
  }
};

}  // namespace

std::string toText(const DrawList& list) {
  std::string out = "page " + number(list.width_mm) + ' ' + number(list.height_mm) + '\n';
  for (const Item& item : list.items) {
    out += (item.tag.empty() ? std::string("-") : item.tag) + " | " +
           std::visit(Line{}, item.shape) + '\n';
  }
  return out;
}

}  // namespace sumpwright::drawing
