#pragma once
// Will it pull under the whole floor? One answer to a contractor's question, made of the ground's
// ranges, the chance study, the field on the middle guess and the fan's duty point.
//
// A prediction throughout: the re-test decides. No concentration is given: no published formula
// turns suction under a floor into Bq/m3. Never throws; deterministic but for the times.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "airflow/RunningCost.h"
#include "base/Result.h"
#include "siting/ReachAlong.h"
#include "siting/Study.h"
#include "siting/SuctionFans.h"
#include "siting/SuctionGround.h"
#include "siting/SuctionLines.h"
#include "siting/SuctionShared.h"
#include "siting/SuctionSystem.h"
#include "suction/Chance.h"
#include "suction/Field.h"

namespace sumpwright::siting {

/// "Likely": in at least two of three guesses (own figure).
inline constexpr double kLikely = 2.0 / 3.0;

struct SuctionOptions {
  std::optional<Place> at;                      ///< one cored sump there instead of the design's
  std::optional<plan::Fill> fill;               ///< instead of the house's
  std::optional<suction::GroundRanges> ranges;  ///< instead of the fill's (suction::rangesOf())
  suction::Target target;
  double pit_m3 = kPit_m3;  ///< of sumps that state none
  bool use_tests = true;    ///< predict with the ground fitted to the job's tests, if it wants that
  int draws = 64;           ///< fewer are taken for 64 (suction::ChanceOptions)
  double cell_m = 0.10;
  /// Of the middle guess, all answers to what nobody knows together: cells get coarser beyond, so
  /// that a drag on a large floor keeps its frame (own figure).
  double most_cells = 100'000.0;
  int threads = 2;
  bool propose_second = true;
  bool along = false;  ///< also the curve of reach along the wall, with its chance
  /// Sump that the curve is of, "": the first. On one fan for all the others count where they
  /// stand.
  std::string along_of;
  std::vector<OfferedFan> fans;  ///< to be compared on these pipes and this ground
  /// Of an answer before, where nothing but the places of sumps is other: not worked out again.
  std::optional<suction::ChanceStudy> guesses;
  std::shared_ptr<const ReachAlong> reach;
  std::optional<FittedGround> fitted;
  suction::Going going;
};

/// What the job asks for: target, limit, pit, ranges of the ground.
SuctionOptions suctionOptionsOf(const plan::Job& job);

/// A sump that was counted with.
struct StudiedSump {
  std::string id;  ///< "" where it is none of the design's
  std::optional<Place> place;
  suction::Sink sink;
};

/// One of the answers on the middle guess: what nobody knows may leave several.
struct MiddleCase {
  suction::ModelChoices choices;
  base::Message label;  ///< phrase; empty where there is only one
  suction::FieldSummary field;
  suction::Reach reach;
  airflow::DutySummary duty;
  base::Message sentence;
};

/// In eight of ten guesses the figure lies within.
struct Band {
  double low = 0.0;
  double middle = 0.0;
  double high = 0.0;
};

/// A place to add a second sump, with a fan of its own or on the one fan that the design wants for
/// all, and what both together do.
struct SecondSump {
  Place place;
  geometry::Point point;  ///< on the outside face
  State state = State::clear;
  suction::Reach reach;  ///< of both on the worst middle case
  double whole_floor = 0.0;
  double mean_floor = 0.0;
  bool helps = false;  ///< the mean share of floor held grows by 5 % of the floor (own figure)
  base::Message sentence;
};

/// So much floor and so far for one sump in clean stone, by the figures of the rule sheet
/// (suction/SumpPerArea.h).
struct RuleOfThumb {
  bool applies = false;  ///< clean stone and no wall across the fill
  bool held = false;
  double area_m2 = 0.0;
  std::optional<double> farthest_m;  ///< corner of the floor from the one sump, straight
  base::Message sentence;  ///< where it does not apply: why; empty: the sheet has no such rule
  base::Source source;
};

/// What a gap round the pipe would do where nobody said that it is sealed to the inner leaf.
struct LeakCase {
  airflow::DutySummary duty;
  suction::Reach reach;  ///< on the worst middle case
  base::Message sentence;
};

/// A cell of the floor as plain data.
struct FloorPoint {
  geometry::Point at;
  double suction_pa = 0.0;  ///< on the worst middle case
  double chance = 0.0;
};

/// What a drawing of the field needs: the worst middle case.
struct SuctionField {
  suction::SuctionModel model;
  suction::Network network;
  std::vector<double> suction_pa;  ///< by cell
};

enum class SuctionState {
  answered,
  not_layered,  ///< no granular layer: no figure of reach
  off_floor     ///< no sump stands in a floor on fill
};

struct SuctionAnswer {
  SuctionState state = SuctionState::answered;
  base::Message verdict;
  plan::Fill fill = plan::Fill::unknown;
  suction::Target target;
  std::vector<StudiedSump> sumps;
  std::vector<base::Message> remarks;  ///< of the duty point, and sumps left out
  std::vector<Assumption> assumptions;
  std::vector<base::Message> cautions;
  std::optional<FittedGround> fitted;  ///< to what was measured; all else is predicted
  std::vector<ExpectedTest> expected;  ///< predicted for the pressure tests before they were fitted
  SuctionPaperLines paper;             ///< suctionPaperLines()
  /// The rest only where answered.
  suction::ChanceSummary chance;
  int draws = 0;
  std::vector<MiddleCase> middle;
  std::size_t worst = 0;                        ///< of `middle`: the least floor held
  double whole_floor = 0.0;                     ///< share of guesses that hold 95 % of the floor
  double mean_floor = 0.0;                      ///< mean share of floor held
  double likely_floor = 0.0;                    ///< share of floor that is likely held
  suction::Least least_likely;                  ///< chance, not Pa; of like ones the least suction
  base::Message least_where;                    ///< phrase
  Band floor_held;                              ///< share of floor held
  Band flow_m3_s;                               ///< of all sumps together
  std::optional<Band> pit_pa;                   ///< one sump only
  std::vector<base::Message> ranges;            ///< both in words
  std::optional<double> power_w;                ///< of all fans on the worst middle case
  std::optional<suction::ChanceStudy> guesses;  ///< to ask again (SuctionOptions::guesses)
  airflow::RunningCost running;
  std::optional<SecondSump> second;
  std::optional<LeakCase> leak;
  std::vector<FanOffer> fans;  ///< best first; empty where none were given
  SharedFan shared;
  RuleOfThumb thumb;
  std::vector<FloorPoint> floor;
  std::shared_ptr<const SuctionField> field;
  std::shared_ptr<const ReachAlong> along;  ///< only where asked for
};

/// The sumps of the design, or the one asked for; without either the best place of the study, said
/// among the assumptions. Errors: suction.pits-in-one,
/// suction.no-duty (fan and pipe cannot be worked out), suction.no-place (no sump and no best
/// place), suction.options (target or limit not above nothing, limit above target), those of
/// suction::modelOf(), suction.chance.stopped. Contract: the ring of `at` exists.
base::Result<SuctionAnswer> studySuction(const Study& study, const SuctionSystem& system,
                                         const SuctionOptions& options = {});

}  // namespace sumpwright::siting
