#pragma once
// Single losses of a duct: loss = K rho V²/2, V in the bore of the pipe.
//
// Textbook figures. Measured on radon pipework, fittings lay between 53 % below and 109 % above
// what the tables of the day said (Brodhead and Saum, AARST symposium 1996, abstract), so every K
// may be replaced where it is used (Fitting::k).

#include <optional>
#include <span>
#include <string_view>

#include "base/Source.h"

namespace sumpwright::airflow {

enum class FittingKind {
  sharp_inlet,       ///< pipe flush with the side of the pit
  projecting_inlet,  ///< pipe reaching into the pit
  bend_90,
  bend_45,
  tee_run,     ///< straight on past a branch
  tee_branch,  ///< in from the branch
  exit,        ///< open end, the jet's energy lost
  cowl         ///< rain cap or cowl, over and above the exit
};

/// In the order of FittingKind; words of files.
inline constexpr std::string_view kFittingNames[] = {
    "sharp_inlet", "projecting_inlet", "bend_90", "bend_45",
    "tee_run",     "tee_branch",       "exit",    "cowl"};

struct FittingFacts {
  FittingKind kind = FittingKind::exit;
  std::string_view name;  ///< as in kFittingNames
  double k = 0.0;
  base::Mark mark = base::Mark::own;
  std::string_view source;
};

/// One row for each kind, in the order of FittingKind.
std::span<const FittingFacts> fittingTable();

struct Fitting {
  FittingKind kind = FittingKind::exit;
  int count = 1;
  std::optional<double> k;  ///< of one; absent: the table's
  bool operator==(const Fitting&) const = default;
};

/// Sum of K. Counts below nothing count as nothing.
double sumOfK(std::span<const Fitting> fittings);

/// A slide valve in a leg. none: there is none.
enum class ValvePosition { none, open, three_quarters, half, quarter, closed };

/// K of a gate valve by how far it is open: 0.15, 0.26, 2.1, 17 (Munson, Young, Okiishi:
/// Fundamentals of Fluid Mechanics, table of loss coefficients; from memory). none 0; closed is
/// infinite.
double valveK(ValvePosition position);

}  // namespace sumpwright::airflow
