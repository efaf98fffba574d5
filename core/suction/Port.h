#pragma once
// How a sump of radius r_w stands on the grid, and what its own suction is.
//
// Away from edges and walls a pit smaller than three cells is a sink split bilinearly over the four
// nearest centres, its suction read back with the same weights. On a square lattice that is a well
// of radius r_eff = r0 exp(2 pi sum_ij w_i w_j a_ij), r0 = h exp(-gamma) / (2 sqrt 2) (Peaceman
// 1978), a = 1/4 between neighbours, 1/pi across, 0 with itself (potential kernel of the square
// lattice, from memory; the rest derived). So
//
//   s_w = sum w_i s_i + Q/(2 pi T) (K0(r_w/lambda) - K0(r_eff/lambda)).
//
// Near edges and walls, and for r_w >= 3 h, it is the disc of the pit, weighted by area:
// s_w = weighted mean - Q/(8 pi T phi), phi the share of the disc that lies inside (derived: in an
// even disc the mean exceeds the rim by Q/(8 pi T)).

#include <optional>

#include "suction/Factor.h"
#include "suction/Network.h"

namespace sumpwright::suction {

/// r0 / h of Peaceman 1978.
inline constexpr double kPeaceman = 0.198505904096;

enum class PortKind { bilinear, disc };

struct Port {
  PortKind kind = PortKind::bilinear;
  Draw weights;           ///< of cells; they sum to 1
  double r_eff_m = 0.0;   ///< bilinear
  double inside = 1.0;    ///< share of the disc inside
  double radius_m = 0.0;  ///< r_w
  double fill = 0.0;      ///< T there
  double leakage_length_m = 0.0;
};

/// r_eff / h of a bilinear sink at (alpha, beta) between four centres, each in [0, 1].
double bilinearRadius(double alpha, double beta);

/// Nothing where less than 15 % of the disc is floor (a pit beside it, not in it), or r_w is not
/// positive.
std::optional<Port> portAt(const Network& network, Point plan, double radius_m);

/// portAt(), else the same pit at the nearest cell's middle within two cells that makes one, on its
/// own side of every wall: a pit that stands in the floor on fine cells stands in it on coarse ones
/// too. Nothing farther off.
std::optional<Port> portNear(const Network& network, Point plan, double radius_m);

/// Suction read at a port: sum of weights times suction.
double readAt(const Port& port, const std::vector<double>& suction);
/// What is added to readAt() per unit of the port's own flow, Pa s/m3, under scales.
double ownTerm(const Port& port, const Scales& scales);

}  // namespace sumpwright::suction
