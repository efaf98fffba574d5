#include "drawing/Beyond.h"

#include <algorithm>
#include <optional>

#include "drawing/PlanContext.h"
#include "geometry/Distance.h"

namespace sumpwright::drawing {
namespace {

constexpr double kThing_mm = 3.4;   // half of the largest sign that stands for a point, and a hair
constexpr double kLines_m = 1.5;    // lines are shown this far from the house where there is room
constexpr double kStroke_mm = 1.1;  // half a stroke of a break mark
constexpr double kInside_mm = 1.4;  // from the view's edge to a break mark

Box onPage(const plan::OutsideThing& thing, const PlanView& view) {
  std::vector<Point> points;
  for (Point p : thing.points_m) points.push_back(toPage(view, p));
  return grown(boxOf(points), points.size() == 1 ? kThing_mm : 0.8);
}

std::vector<geometry::Polyline> lines(const siting::Study& study) {
  std::vector<geometry::Polyline> out;
  for (const plan::OutsideThing& t : study.job().plan.outside) {
    if (isLine(t)) out.push_back(t.points_m);
  }
  for (const plan::Service& s : study.job().plan.services) {
    if (s.run == plan::RunKnown::drawn) out.push_back(s.run_m);
  }
  return out;
}

/// Whether any of a line lies on the page.
bool isSeen(const geometry::Polyline& line, const Box& page, const PlanView& view) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point here = toPage(view, line[i]);
    if (holds(page, here)) return true;
    if (i > 0 && crosses(page, toPage(view, line[i - 1]), here)) return true;
  }
  return false;
}

/// Grows while everything still fits the page.
class Frame {
 public:
  Frame(const PlanView& view, double width_mm, double height_mm)
      : m_width(width_mm),
        m_height(height_mm),
        m_box{-view.width_mm / 2.0, -view.height_mm / 2.0, view.width_mm / 2.0,
              view.height_mm / 2.0} {}
  /// Whether the box (mm off the old centre) could be taken in.
  bool take(const Box& box) {
    const Box wider = join(m_box, box);
    if (wider.width() > m_width || wider.height() > m_height) return false;
    m_box = wider;
    return true;
  }
  const Box& box() const { return m_box; }

 private:
  double m_width;
  double m_height;
  Box m_box;
};

/// A point of the segment inside the page, if there is one.
std::optional<Point> pointInside(const Box& page, Point a, Point b) {
  constexpr int kSteps = 64;
  if (!crosses(page, a, b)) return std::nullopt;
  for (int i = 0; i <= kSteps; ++i) {
    const Point p = geometry::lerp(a, b, static_cast<double>(i) / kSteps);
    if (holds(page, p)) return p;
  }
  return std::nullopt;  // clips a corner: too short to carry a mark
}

/// Two strokes where the line from a point inside to `to` leaves the page, if it does.
void breakMark(Sketch& sketch, const PlanContext& c, Point in, Point to, const Colour& colour) {
  if (holds(c.page, to)) return;
  double low = 0.0;
  double high = 1.0;
  for (int step = 0; step < 40; ++step) {
    const double share = (low + high) / 2.0;
    (holds(c.page, geometry::lerp(in, to, share)) ? low : high) = share;
  }
  const Vec along = unit(to - in);
  const Vec slant = kStroke_mm * unit(2.0 * geometry::left(along) + along);
  const Point at = geometry::lerp(in, to, low) - kInside_mm * along;
  sketch.line(at - 0.5 * along, at + 0.5 * along, solid(c.theme.paper, 6.0));
  for (double aside : {-0.45, 0.45}) {
    const Point p = at + aside * along;
    sketch.line(p - slant, p + slant, solid(colour, 1.3));
  }
}

}  // namespace

bool isLine(const plan::OutsideThing& thing) {
  return thing.kind == plan::OutsideKind::path || thing.kind == plan::OutsideKind::boundary ||
         thing.kind == plan::OutsideKind::overhead_line;
}

std::vector<const plan::OutsideThing*> beyond(const siting::Study& study, const PlanView& view) {
  // A hair wider: what just fits is in view.
  const Box page = grown({0.0, 0.0, view.width_mm, view.height_mm}, 1e-6);
  std::vector<const plan::OutsideThing*> out;
  for (const plan::OutsideThing& t : study.job().plan.outside) {
    if (t.points_m.empty()) continue;
    if (isLine(t) ? !isSeen(t.points_m, page, view) : !holds(page, onPage(t, view))) {
      out.push_back(&t);
    }
  }
  return out;
}

bool linesGoOn(const siting::Study& study, const PlanView& view) {
  const Box page{0.0, 0.0, view.width_mm, view.height_mm};
  for (const geometry::Polyline& line : lines(study)) {
    bool in = false;
    bool out = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const Point here = toPage(view, line[i]);
      (holds(page, here) ? in : out) = true;
      if (i > 0) in = in || crosses(page, toPage(view, line[i - 1]), here);
    }
    if (in && out) return true;
  }
  return false;
}

PlanView holdingMost(const siting::Study& study, PlanView view, double width_mm, double height_mm) {
  const Point middle = toPage(view, view.centre_m);
  const auto off = [&](const Box& b) {
    return Box{b.left - middle.x, b.top - middle.y, b.right - middle.x, b.bottom - middle.y};
  };
  geometry::Polyline house;
  for (const perimeter::Edge& e : study.perimeter().edges(0)) house.push_back(e.from);
  const Box walls = boxOf(house);
  house.push_back(house.front());
  std::vector<const plan::OutsideThing*> things;
  for (const plan::OutsideThing& t : study.job().plan.outside) {
    if (!isLine(t) && !t.points_m.empty()) things.push_back(&t);
  }
  const auto away = [&](const plan::OutsideThing* t) {
    return geometry::distance(t->points_m.front(), house);
  };
  std::stable_sort(things.begin(), things.end(),
                   [&](const auto* a, const auto* b) { return away(a) < away(b); });
  Frame frame(view, width_mm, height_mm);
  for (const auto* t : things) frame.take(off(onPage(*t, view)));
  const Box near = grown(walls, kLines_m);
  for (const geometry::Polyline& line : lines(study)) {
    std::vector<Point> kept;
    for (Point p : line) {
      kept.push_back(toPage(
          view, {std::clamp(p.x, near.left, near.right), std::clamp(p.y, near.top, near.bottom)}));
    }
    if (!kept.empty()) frame.take(off(grown(boxOf(kept), 1.5)));
  }
  const Point centre = frame.box().centre();
  view.centre_m = toPlan(view, {middle.x + centre.x, middle.y + centre.y});
  view.width_mm = width_mm;
  view.height_mm = std::min(frame.box().height(), height_mm);
  return view;
}

void breakMarks(Sketch& sketch, const PlanContext& c, const std::vector<Point>& line,
                const Colour& colour) {
  if (!c.onPaper()) return;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Point a = line[i];
    const Point b = line[i + 1];
    if (const auto in = pointInside(c.page, a, b)) {
      breakMark(sketch, c, *in, a, colour);
      breakMark(sketch, c, *in, b, colour);
    }
  }
}

}  // namespace sumpwright::drawing
