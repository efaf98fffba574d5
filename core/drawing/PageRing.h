#pragma once
// A ring of the footprint on the page: its outside face, its inner face with each wall's own
// thickness, and strips that run along it outside, mitred at corners.

#include <vector>

#include "drawing/PlanDrawing.h"

namespace sumpwright::drawing {

using geometry::Vec;

struct PageEdge {
  const perimeter::Edge* edge = nullptr;
  Point from;
  Point to;
  Vec along;  ///< unit on the page
  Vec out;    ///< unit, out of the house
  double length_mm = 0.0;
  double thick_mm = 0.0;
  double mitre_from = 0.0;  ///< tangent of half the turn: > 0 where the corner stands out
  double mitre_to = 0.0;
  double inner_from_mm = 0.0;  ///< along the edge, where the inner face starts and ends
  double inner_to_mm = 0.0;
  Point at(double along_mm, double out_mm = 0.0) const {
    return from + along_mm * along + out_mm * out;
  }
};

struct PageRing {
  int ring = 0;
  double mm_per_m = 10.0;
  double length_m = 0.0;
  std::vector<PageEdge> edges;

  std::vector<Point> outside() const;
  std::vector<Point> inside() const;
  /// The edge at a chainage (wrapped) and the distance along it, mm.
  struct Spot {
    std::size_t edge = 0;
    double along_mm = 0.0;
  };
  Spot spot(double chainage_m) const;
  Point face(double chainage_m, double out_mm = 0.0) const;
  /// Area between two offsets outside the face, from chainage to chainage (to may pass the end of
  /// the ring); a whole ring closes on itself. Ends are cut square to the wall.
  std::vector<Point> strip(double from_m, double to_m, double near_mm, double far_mm) const;
  /// The body of the wall from chainage to chainage.
  std::vector<Point> body(double from_m, double to_m) const;
};

std::vector<PageRing> pageRings(const siting::Study& study, const PlanView& view);

}  // namespace sumpwright::drawing
