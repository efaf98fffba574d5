#include "airflow/Fittings.h"

#include <algorithm>
#include <array>
#include <limits>

#include "base/Contract.h"

namespace sumpwright::airflow {

namespace {

using base::Mark;

constexpr std::string_view kMunson =
    "Munson, Young, Okiishi: Fundamentals of Fluid Mechanics, table of loss coefficients, flanged";

constexpr FittingFacts fact(FittingKind kind, double k, Mark mark, std::string_view source) {
  return {kind, kFittingNames[static_cast<std::size_t>(kind)], k, mark, source};
}

constexpr auto kFittingFacts = std::to_array<FittingFacts>({
    fact(FittingKind::sharp_inlet, 0.5, Mark::published,
         "Crane Technical Paper 410, pipe entrance, flush and sharp"),
    fact(FittingKind::projecting_inlet, 0.78, Mark::published,
         "Crane Technical Paper 410, pipe entrance, inward projecting"),
    fact(FittingKind::bend_90, 0.3, Mark::published, kMunson),
    fact(FittingKind::bend_45, 0.16, Mark::derived,
         "the 90 degree bend times 16/30, the ratio of the two standard elbows in Crane Technical "
         "Paper 410"),
    fact(FittingKind::tee_run, 0.2, Mark::from_memory, kMunson),
    fact(FittingKind::tee_branch, 1.0, Mark::from_memory, kMunson),
    fact(FittingKind::exit, 1.0, Mark::published,
         "the whole velocity head is lost; any textbook, such as Crane Technical Paper 410, pipe "
         "exit"),
    fact(FittingKind::cowl, 1.0, Mark::from_memory,
         "handbooks give 0.5 to 1.5 for rain caps; no table was found"),
});

}  // namespace

std::span<const FittingFacts> fittingTable() { return kFittingFacts; }

double sumOfK(std::span<const Fitting> fittings) {
  double sum = 0.0;
  for (const Fitting& fitting : fittings) {
    const auto at = static_cast<std::size_t>(fitting.kind);
    SUMPWRIGHT_REQUIRE(at < kFittingFacts.size());
    sum += std::max(fitting.count, 0) * fitting.k.value_or(kFittingFacts.at(at).k);
  }
  return sum;
}

double valveK(ValvePosition position) {
  switch (position) {
    case ValvePosition::none:
      return 0.0;
    case ValvePosition::open:
      return 0.15;
    case ValvePosition::three_quarters:
      return 0.26;
    case ValvePosition::half:
      return 2.1;
    case ValvePosition::quarter:
      return 17.0;
    case ValvePosition::closed:
      break;
  }
  return std::numeric_limits<double>::infinity();
}

}  // namespace sumpwright::airflow
