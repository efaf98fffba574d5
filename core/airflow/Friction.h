#pragma once
// Darcy's friction factor f of a round pipe: loss = f (L/D) rho V²/2.
//
//   Re <= 2300          f = 64/Re                                     (Hagen-Poiseuille)
//   Re >= 4000          1/sqrt f = -2 log10(e/(3.7 D) + 2.51/(Re sqrt f))
//                                  (C. F. Colebrook, J. Inst. Civil Engineers 11, 1939)
//   between             (1 - w) laminar + w turbulent, w = t²(3 - 2t), t = (Re - 2300)/1700
//
// The limits 2300 and 4000 are textbook figures (from memory); the blend is our own. Since w
// rises, w' is nothing at both ends and the turbulent factor is the larger of the two, f and its
// slope are continuous and f Re² rises with Re throughout: more flow always costs more pressure.

namespace sumpwright::airflow {

struct Friction {
  double factor = 0.0;
  double slope = 0.0;  ///< d factor / d Re
};

inline constexpr double kLaminarUpTo = 2300.0;
inline constexpr double kTurbulentFrom = 4000.0;

/// `roughness` is e/D, the wall's roughness as a share of the bore.
/// Re <= 0 gives nothing for both: the loss of still air is nothing, see pipeLoss().
Friction friction(double reynolds, double roughness);

/// Colebrook-White's factor at any Re > 0, by Newton's method from swameeJain(); relative error
/// under 1e-13 for Re in 100..1e9, e/D in 0..0.05.
Friction colebrook(double reynolds, double roughness);

/// 0.25 / log10(e/(3.7 D) + 5.74/Re^0.9)² (P. K. Swamee, A. K. Jain, J. Hydraulics Division ASCE
/// 102, 1976): within some 3 % of Colebrook-White for Re in 5000..1e8.
double swameeJain(double reynolds, double roughness);

}  // namespace sumpwright::airflow
