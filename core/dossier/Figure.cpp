#include "dossier/Figure.h"

#include <utility>

namespace sumpwright::dossier {
namespace {

struct Mover {
  Point by;
  Point operator()(Point p) const { return {p.x + by.x, p.y + by.y}; }
  std::vector<Point> operator()(std::vector<Point> points) const {
    for (Point& p : points) p = (*this)(p);
    return points;
  }
  drawing::Shape shape(const drawing::Stroke& s) const {
    return drawing::Stroke{(*this)(s.points), s.closed, s.pen};
  }
  drawing::Shape shape(drawing::Fill f) const {
    for (auto& ring : f.rings) ring = (*this)(ring);
    return f;
  }
  drawing::Shape shape(drawing::Arc a) const {
    a.centre = (*this)(a.centre);
    return a;
  }
  drawing::Shape shape(drawing::Text t) const {
    t.at = (*this)(t.at);
    return t;
  }
};

}  // namespace

void placeDrawing(Sketch& sketch, const drawing::DrawList& list, Point at) {
  const Mover mover{at};
  for (const drawing::Item& item : list.items) {
    sketch.put({std::visit([&](const auto& s) { return mover.shape(s); }, item.shape), item.tag});
  }
}

Row figureRow(drawing::DrawList list, bool keep_with_next) {
  const double height = list.height_mm;
  return {height,
          [list = std::move(list)](Sketch& sketch, Point at) { placeDrawing(sketch, list, at); },
          keep_with_next};
}

}  // namespace sumpwright::dossier
