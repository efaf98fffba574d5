#include "suction/Cuts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "geometry/Distance.h"
#include "geometry/Polylines.h"
#include "geometry/Shapes.h"
#include "suction/Coverage.h"
#include "suction/TipFactor.h"

namespace sumpwright::suction {

namespace {

using geometry::Point;
using geometry::Polyline;
using geometry::Segment;
using geometry::Vec;

/// No barrier meets a cell's centre: it is moved by this, in cells, far below any measure.
constexpr Vec kNudge{1.31e-7, 1.73e-7};
/// Cells within which an end meets what it runs up to, and by which it is led past an edge. A link
/// lies within sqrt(1/2) of the floor, so that no link passes an end led past it (derived,
/// rounded).
constexpr double kMeets = 0.75;
constexpr double kFarthest = 3.0;     // cells an end is led onward at most (own figure)
constexpr double kRound = 1e-3;       // cells beyond a tip where one passes round it (own figure)
constexpr double kAlongGrid = 0.002;  // as Frame.cpp: the wall runs along the grid
constexpr double kOvershoot = 1e-6;
constexpr double kSlit = 1.25;  // cells: openings below are lumped (own figure, by trial)
/// Radius at which a cell beside a tight wall stands for a source at the wall, in cells:
/// sqrt(r0 * exp(pi/2) r0), r0 of Peaceman 1978, the image being one cell away (derived).
constexpr double kWallSource = 0.435379;

/// A line of a barrier that stands, between openings; `free_*`: not led up to anything.
struct Run {
  Polyline line;
  bool free_start = true;
  bool free_end = true;
};

Vec unit(Vec v) { return (1.0 / geometry::norm(v)) * v; }

/// Openings in cells along a line, in order, overlapping ones joined, kept on it.
std::vector<Stretch> openingsOf(const Barrier& barrier, double length, double h_m) {
  std::vector<Stretch> gaps;
  for (const Stretch& gap : barrier.gaps) {
    const Stretch kept{std::clamp(gap.from_m / h_m, 0.0, length),
                       std::clamp(gap.to_m / h_m, 0.0, length)};
    if (kept.to_m > kept.from_m) gaps.push_back(kept);
  }
  std::sort(gaps.begin(), gaps.end(),
            [](const Stretch& a, const Stretch& b) { return a.from_m < b.from_m; });
  std::vector<Stretch> joined;
  for (const Stretch& gap : gaps) {
    if (!joined.empty() && gap.from_m <= joined.back().to_m) {
      joined.back().to_m = std::max(joined.back().to_m, gap.to_m);
    } else {
      joined.push_back(gap);
    }
  }
  return joined;
}

class CutMaker {
 public:
  CutMaker(const SuctionModel& model, const Frame& frame) : m_model(model), m_frame(frame) {
    m_cuts.nx = frame.nx;
    m_cuts.upright.resize(slotOf(0, frame.ny, frame.nx));
    m_cuts.level.resize(m_cuts.upright.size());
    for (const Barrier& barrier : model.barriers) m_lines.push_back(inGrid(barrier.line));
    for (const Region& region : model.regions) {
      m_edges.push_back(inGrid(region.outline));
      m_hole.push_back(false);
      for (const Polygon& hole : region.holes) {
        m_edges.push_back(inGrid(hole));
        m_hole.push_back(true);
      }
    }
  }

  Cuts made() {
    for (std::size_t k = 0; k < m_lines.size(); ++k) {
      if (m_lines[k].size() < 2 || !(geometry::lengthOf(m_lines[k]) > 0.0)) continue;
      for (Run& run : runsOf(k)) {
        lead(run, k);
        cut(run, k);
      }
    }
    for (const Tip& tip : m_tips) correct(tip);
    return std::move(m_cuts);
  }

 private:
  Polyline inGrid(const Polyline& line) const {
    Polyline out;
    for (const Point p : line) {
      const Point q = m_frame.toGrid(p);
      if (out.empty() || geometry::distance(out.back(), q) > 1e-9) out.push_back(q);
    }
    return out;
  }

  std::vector<Run> runsOf(std::size_t k) {
    const Polyline& line = m_lines[k];
    const double length = geometry::lengthOf(line);
    std::vector<Run> runs;
    double from = 0.0;
    for (const Stretch& gap : openingsOf(m_model.barriers[k], length, m_frame.h_m)) {
      if (gap.to_m - gap.from_m < kSlit) {
        addSlit(line, gap);
        continue;
      }
      if (gap.from_m > from) runs.push_back({geometry::partOf(line, from, gap.from_m)});
      from = gap.to_m;
    }
    if (from < length) runs.push_back({geometry::partOf(line, from, length)});
    return runs;
  }

  /// Two far points either side of a slit of half-width a in a tight wall are apart by the
  /// resistance 2/(pi T) ln(2 R/a) (conformal map z = a sinh(zeta), derived); the grid gives
  /// 2/(pi T) ln(R/kWallSource) to the two cells. What is missing is the link between them.
  void addSlit(const Polyline& line, const Stretch& gap) {
    const double half = 0.5 * (gap.to_m - gap.from_m);
    const double missing = 2.0 / std::numbers::pi * std::log(2.0 * kWallSource / half);
    const Point a = geometry::pointAlong(line, gap.from_m);
    const Point b = geometry::pointAlong(line, gap.to_m);
    m_cuts.slits.push_back(
        {geometry::lerp(a, b, 0.5), geometry::left(unit(b - a)), 1.0 / std::max(missing, 0.05)});
  }

  /// Ends near an edge are led past it, ends near another barrier up to it; ends beyond the floor
  /// are no ends, nothing passes round them.
  void lead(Run& run, std::size_t own) {
    run.free_end = !ledAtBack(run.line, own);
    std::reverse(run.line.begin(), run.line.end());
    run.free_start = !ledAtBack(run.line, own);
    std::reverse(run.line.begin(), run.line.end());
  }

  bool ledAtBack(Polyline& line, std::size_t own) const {
    const Vec outward = unit(line.back() - line[line.size() - 2]);
    const Point end = line.back();
    bool near = false;
    for (const Polygon& edge : m_edges) {
      for (std::size_t k = 0; k < edge.size(); ++k) {
        const Segment side{edge[k], edge[(k + 1) % edge.size()]};
        if (geometry::distance(end, side) > kMeets) continue;
        if (ledPast(line, outward, side)) return true;
        near = true;
      }
    }
    if (near) {  // the floor goes on behind the edge
      line.back() = end + (2.0 * kMeets) * outward;
      return true;
    }
    return !isOnFloor(end) || ledToBarrier(line, outward, own);
  }

  /// Straight on where that leaves the floor, else square to the edge.
  bool ledPast(Polyline& line, Vec outward, const Segment& side) const {
    const Point end = line.back();
    for (double step = 2.0 * kMeets; step <= kFarthest; step += kMeets) {
      if (!isClearOfFloor(end + step * outward)) continue;
      line.back() = end + step * outward;
      return true;
    }
    const double length = geometry::distance(side.a, side.b);
    const Vec square = length > 0.0 ? geometry::left(unit(side.b - side.a)) : outward;
    for (const Point beyond : {end + (2.0 * kMeets) * square, end - (2.0 * kMeets) * square}) {
      if (!isClearOfFloor(beyond)) continue;
      line.push_back(beyond);
      return true;
    }
    return false;
  }

  bool isOnFloor(Point p) const {
    int inside = 0;  // holes count off what they lie in
    for (std::size_t k = 0; k < m_edges.size(); ++k) {
      if (geometry::contains(m_edges[k], p)) inside += m_hole[k] ? -1 : 1;
    }
    return inside > 0;
  }

  bool isClearOfFloor(Point p) const {
    if (isOnFloor(p)) return false;
    return std::none_of(m_edges.begin(), m_edges.end(), [&](const Polygon& edge) {
      for (std::size_t k = 0; k < edge.size(); ++k) {
        if (geometry::distance(p, Segment{edge[k], edge[(k + 1) % edge.size()]}) < kMeets) {
          return true;
        }
      }
      return false;
    });
  }

  bool ledToBarrier(Polyline& led, Vec outward, std::size_t own) const {
    const Point end = led.back();
    for (std::size_t other = 0; other < m_lines.size(); ++other) {
      const Polyline& line = m_lines[other];
      for (std::size_t k = 1; other != own && k < line.size(); ++k) {
        const Segment wall{line[k - 1], line[k]};
        if (geometry::distance(end, wall) > kMeets) continue;
        const Point at = meeting(end, outward, wall);
        if (std::abs(geometry::cross(outward, at - end)) < kOvershoot) {
          led.back() = at + kOvershoot * outward;
        } else {  // what was drawn stays where it is, others may meet it
          led.push_back(at + kOvershoot * unit(at - end));
        }
        return true;
      }
    }
    return false;
  }

  /// Where the line onward meets the wall, or the nearest point of it where they run alike.
  static Point meeting(Point end, Vec outward, const Segment& wall) {
    const Vec along = wall.b - wall.a;
    const double turn = geometry::cross(outward, along) / geometry::norm(along);
    const Point nearest = geometry::nearest(end, wall);
    if (std::abs(turn) < 0.3) return nearest;  // some 17 degrees (own figure)
    const double t = geometry::cross(wall.a - end, along) / geometry::cross(outward, along);
    const Point at = end + t * outward;
    return geometry::distance(at, wall) < 1e-6 ? at : nearest;
  }

  void cut(const Run& run, std::size_t barrier) {
    const double conductance = m_model.barriers[barrier].conductance_m2_s_pa;
    for (std::size_t k = 1; k < run.line.size(); ++k) {
      const Segment piece{run.line[k - 1] + kNudge, run.line[k] + kNudge};
      if (geometry::distance(piece.a, piece.b) < 1e-9) continue;
      const Vec u = unit(piece.b - piece.a);
      cutLinks(piece, conductance * m_frame.h_m / (std::abs(u.x) + std::abs(u.y)));
      const Point a = run.line[k - 1];
      const Point b = run.line[k];
      if (std::abs(u.x) < kAlongGrid) trim({a.x, b.x}, {a.y, b.y}, kNudge.x, Across::columns);
      if (std::abs(u.y) < kAlongGrid) trim({a.y, b.y}, {a.x, b.x}, kNudge.y, Across::rows);
      m_cuts.pieces.push_back({piece.a, piece.b, barrier});
    }
    const std::size_t n = run.line.size();
    if (run.free_start) m_tips.push_back({run.line[0], unit(run.line[1] - run.line[0])});
    if (run.free_end) m_tips.push_back({run.line[n - 1], unit(run.line[n - 2] - run.line[n - 1])});
  }

  void cutLinks(const Segment& piece, double wall) {
    crossings(piece.a, piece.b, m_frame.ny,
              [&](int j, double x) { narrow(m_cuts.upright, sideAfter(x), j, wall); });
    crossings({piece.a.y, piece.a.x}, {piece.b.y, piece.b.x}, m_frame.nx,
              [&](int i, double y) { narrow(m_cuts.level, i, sideAfter(y), wall); });
  }

  /// What the wall stands between: centres of columns (an upright wall) or of rows (a level one).
  enum class Across { columns, rows };

  /// An upright wall stands at `across` between the centres of columns i-1 and i, off the line
  /// between them by `off`, and runs over rows of `along`; a level one the other way about.
  void trim(std::pair<double, double> across, std::pair<double, double> along, double nudge,
            Across what) {
    const bool upright = what == Across::columns;
    const int columns = upright ? m_frame.nx : m_frame.ny;
    const int rows = upright ? m_frame.ny : m_frame.nx;
    const double place = 0.5 * (across.first + across.second) + nudge;
    const int i = sideAfter(place);
    const double off = place - i;
    const double low = std::max(0.0, std::min(along.first, along.second));
    const double high = std::min(1.0 * rows, std::max(along.first, along.second));
    if (i < 1 || i >= columns) return;
    auto& links = upright ? m_cuts.level : m_cuts.upright;
    const auto slot = [&](int c, int r) {
      return upright ? slotOf(c, r, m_frame.nx) : slotOf(r, c, m_frame.nx);
    };
    for (int r = static_cast<int>(low); r < high; ++r) {
      const double part = std::min(high, r + 1.0) - std::max(low, 1.0 * r);
      addMove(upright ? AreaMove{i, r, i - 1, r, off * part}
                      : AreaMove{r, i, r, i - 1, off * part});
      if (r < low) continue;
      links[slot(i, r)].from = off;
      links[slot(i - 1, r)].to = 1.0 + off;
    }
  }
  void addMove(AreaMove move) {
    if (move.area < 0.0) {
      std::swap(move.from_i, move.to_i);
      std::swap(move.from_j, move.to_j);
      move.area = -move.area;
    }
    if (move.area > 1e-6) m_cuts.moves.push_back(move);
  }

  static int sideAfter(double x) { return static_cast<int>(std::floor(x - 0.5)) + 1; }

  /// visit(row, where) for every row whose centre line the piece crosses.
  template <class Visit>
  static void crossings(Point a, Point b, int rows, Visit visit) {
    const double low = std::min(a.y, b.y);
    const double high = std::max(a.y, b.y);
    const int first = std::max(0, static_cast<int>(std::ceil(low - 0.5)));
    for (int j = first; j + 0.5 < high && j < rows; ++j) {
      visit(j, a.x + (j + 0.5 - a.y) / (b.y - a.y) * (b.x - a.x));
    }
  }

  void narrow(std::vector<SideCut>& sides, int i, int j, double wall) const {
    if (i < 0 || i >= m_frame.nx || j < 0 || j >= m_frame.ny) return;
    double& now = sides[slotOf(i, j, m_frame.nx)].wall_m2_s_pa;
    if (std::isinf(now)) {
      now = wall;
    } else {
      now = now + wall > 0.0 ? now * wall / (now + wall) : 0.0;  // one behind the other
    }
  }

  void correct(const Tip& tip) {
    const int reach = static_cast<int>(std::ceil(kTipReach)) + 1;
    const int i0 = static_cast<int>(std::floor(tip.at.x));
    const int j0 = static_cast<int>(std::floor(tip.at.y));
    for (int j = j0 - reach; j <= j0 + reach; ++j) {
      for (int i = i0 - reach; i <= i0 + reach; ++i) {
        if (i < 1 || i >= m_frame.nx || j < 1 || j >= m_frame.ny) continue;
        const Point centre{i + 0.5, j + 0.5};
        const std::size_t at = slotOf(i, j, m_frame.nx);
        SideCut& upright = m_cuts.upright[at];
        SideCut& level = m_cuts.level[at];
        const double x = i;
        const double y = j;
        correctSide(tip, {centre - Vec{1.0, 0.0}, centre}, {x, y + upright.from},
                    {x, y + upright.to}, upright);
        correctSide(tip, {centre - Vec{0.0, 1.0}, centre}, {x + level.to, y}, {x + level.from, y},
                    level);
      }
    }
  }

  /// Whether nothing stands between the link's ends on the way round the tip.
  bool passesRound(const Tip& tip, const Segment& link) const {
    const Point turn = tip.at + kNudge - kRound * tip.into_wall;
    return std::none_of(m_cuts.pieces.begin(), m_cuts.pieces.end(), [&](const BarrierPiece& wall) {
      return cross({link.a, turn}, wall) || cross({turn, link.b}, wall);
    });
  }

  static bool cross(const Segment& way, const BarrierPiece& wall) {
    const Vec v = way.b - way.a;
    const Vec w = wall.b - wall.a;
    return (geometry::cross(w, way.a - wall.a) > 0.0) !=
               (geometry::cross(w, way.b - wall.a) > 0.0) &&
           (geometry::cross(v, wall.a - way.a) > 0.0) != (geometry::cross(v, wall.b - way.a) > 0.0);
  }

  void correctSide(const Tip& tip, const Segment& link, Point right, Point left,
                   SideCut& side) const {
    if (geometry::distance(geometry::lerp(link.a, link.b, 0.5), tip.at) > kTipReach) return;
    const double factor = tipFactor(tip, link, right, left, side.cut());
    if (side.cut()) {
      // Tight is tight: of this wall's end nothing reaches through another.
      if (passesRound(tip, link)) side.bypass = std::max(side.bypass, factor);
    } else {
      side.factor *= factor / std::max(side.to - side.from, 0.1);
    }
  }

  const SuctionModel& m_model;
  const Frame& m_frame;
  Cuts m_cuts;
  std::vector<Polyline> m_lines;
  std::vector<Polygon> m_edges;
  std::vector<bool> m_hole;  ///< of each of m_edges
  std::vector<Tip> m_tips;
};

}  // namespace

SideCut::SideCut() : wall_m2_s_pa(std::numeric_limits<double>::infinity()) {}

bool SideCut::cut() const { return !std::isinf(wall_m2_s_pa); }

Cuts cutsOf(const SuctionModel& model, const Frame& frame) { return CutMaker(model, frame).made(); }

}  // namespace sumpwright::suction
