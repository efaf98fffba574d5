#pragma once
// The field that follows a dragged sump: all that does not depend on its place is made once, then
// each place costs a back-solve and a duty point for every answer to what nobody knows (a
// millisecond or less at 10 cm cells).
//
//   auto live = SuctionLive::of(study, system, options);   // per edit, on a thread of its own
//   auto field = live->at(sumps);                          // per place
//
// It is the middle guess at the ground (or the ground fitted to the job's tests) that
// studySuction() answers with too: the same parts give the same figures. A value to share; at() is
// const and thread-safe. Deterministic. A prediction throughout.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "siting/SuctionParts.h"
#include "siting/SuctionStudy.h"
#include "suction/Model.h"

namespace sumpwright::siting {

/// What one place of the sumps does, on the answer that holds the least floor.
struct LiveField {
  std::size_t which = 0;        ///< of SuctionLive::cases()
  std::vector<double> suction;  ///< Pa, by cell of its network
  suction::Reach reach;
  airflow::DutySummary duty;
  std::vector<std::string> sumps;  ///< ids, as the duty's legs
};

class SuctionLive {
 public:
  /// No granular layer: layered() is false and nothing is solved. Errors: suction.target, those of
  /// solvedCases(), which says what cells they have.
  static base::Result<SuctionLive> of(const Study& study, const SuctionSystem& system,
                                      const SuctionOptions& options);

  bool layered() const { return m_data->layered; }
  const std::vector<SolvedCase>& cases() const { return m_data->cases; }
  const suction::Target& target() const { return m_data->target; }
  const std::optional<FittedGround>& fitted() const { return m_data->fitted; }
  const std::vector<ExpectedTest>& expected() const { return m_data->expected; }

  /// The sumps of a design, `moved` where `place` says instead; those that stand nowhere are left
  /// out.
  std::vector<StudiedSump> sumpsOf(const plan::Design& design, const std::string& moved,
                                   std::optional<Place> place) const;
  /// Why these have no field though they stand in a floor on fill: two pits run into each other.
  static std::optional<base::Problem> problemOf(const std::vector<StudiedSump>& sumps);
  /// Nothing where no sump stands in a floor on fill, nothing is layered, problemOf() says why, or
  /// the fan has no duty point (studySuction(): suction.no-duty).
  std::optional<LiveField> at(const std::vector<StudiedSump>& sumps) const;

 private:
  struct Data {
    bool layered = true;
    suction::Target target;
    double radius_m = 0.0;
    SuctionSystem system;
    std::shared_ptr<const perimeter::Perimeter> perimeter;
    std::optional<FittedGround> fitted;
    std::vector<ExpectedTest> expected;
    std::vector<SolvedCase> cases;
  };
  std::shared_ptr<const Data> m_data;
};

}  // namespace sumpwright::siting
