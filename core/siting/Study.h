#pragma once
// READ THIS FIRST: the whole flow. Study once, assess often.
//
//   job + rule sheet -> perimeter -> what lies behind the walls -> findings of every rule as exact
//   spans -> stretches (the ring tiled by state) -> best places.
//
// A Study is a value that never changes; an Assessment of one place is cheap enough for every
// mouse move. Deterministic: the same job, sheet and options give the same bits.

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"
#include "rules/Finding.h"
#include "rules/Judge.h"
#include "rules/RuleSheet.h"

namespace sumpwright::build {
class CableAlong;    // build/CableAlong.h
class SectionAlong;  // build/SectionAlong.h
struct Wiring;       // build/CableAlong.h
}  // namespace sumpwright::build

namespace sumpwright::siting {

using perimeter::Place;
using rules::Finding;
using rules::Margin;
using rules::State;

/// Overrides of what the job says.
struct StudyOptions {
  std::optional<plan::OutletMode> outlet;
  std::optional<double> core_m;
  std::string sump;  ///< whose placed run is judged; "": of the first sump that has one
};

/// A part of a ring with one state and one set of (rule, thing). Stretches tile each ring from 0
/// to its length without gap or overlap; one that runs over chainage 0 is cut there.
struct Stretch {
  int ring = 0;
  double from_m = 0.0;
  double to_m = 0.0;
  State state = State::clear;
  std::vector<int> spans;  ///< indices into Study::spans(), in the sheet's order; see findingsOf().
                           ///< Not each holds all of it: spans of one thing may all but meet
  double length_m() const { return to_m - from_m; }
};

/// A run of neighbouring stretches of one state, joined over chainage 0: to_m may exceed the
/// ring's length. A whole ring of one state: from 0 to its length.
struct Run {
  int ring = 0;
  double from_m = 0.0;
  double to_m = 0.0;
  State state = State::clear;
};

class ReachAlong;  // ReachAlong.h

/// What best places are put in order by. reach: by the chance of reaching the whole floor, like
/// ones by the mean share of floor held; before the chance is there, by the share of floor held on
/// the middle guess.
enum class RankBy { score, reach };

struct ScoredPart {
  rules::PartKind kind = rules::PartKind::margin;
  std::string title;
  double points = 0.0;  ///< of `weight`
  double weight = 0.0;
  bool judged = true;    ///< false: left out, the rest scaled to 100
  base::Message reason;  ///< phrase: why so many points
};

struct Score {
  double total = 0.0;  ///< 0..100, judged parts scaled to 100, less the cost of advisories
  std::vector<ScoredPart> parts;
  double advisory_cost = 0.0;
  bool complete = false;  ///< no part was left out
};

/// All that is known of one position.
struct Assessment {
  Place place;
  geometry::Point point;       ///< on the outside face
  State state = State::clear;  ///< never changed by a waiver
  bool waived = false;         ///< refused, and every binding finding has a waiver that holds
  std::vector<Finding> findings;
  std::vector<bool> accepted;   ///< of each finding: binding, and a waiver holds for it
  std::vector<Margin> margins;  ///< one per distance rule that has a thing to measure to
  bool close = false;           ///< some margin of a binding rule is below the survey's accuracy
  Score score;                  ///< on a refused place: what it would score
  base::Message sentence;       ///< the verdict
  std::vector<std::string> rooms_behind;  ///< ids
  bool thickness_assumed = false;
};

struct BestPlace {
  Place place;
  geometry::Point point;
  double score = 0.0;
  std::optional<double> floor;   ///< share of floor predicted held, where reach is known
  std::optional<double> chance;  ///< of reaching the whole floor, where it was asked for
  Run run;                       ///< the stretch it is the best of
  bool close = false;  ///< too close to call: the stretch is narrower than twice the survey's
                       ///< accuracy, or some margin of a binding rule is below it
};

/// Where nothing is clear or advised against: the place that needs least put right, or why none
/// may be proposed.
struct LeastBad {
  std::optional<Place> place;
  geometry::Point point;
  State state = State::refused;
  std::vector<Finding> changes;  ///< what would have to change
  base::Message advice;  ///< phrase; with no place: look first, inside sump, other remedy, ask
};

/// A thing that a rule speaks of but that cannot be judged yet, and why.
struct Unjudged {
  std::string rule;
  std::string thing;
  base::Message thing_label;
  base::Message reason;
};

class Study {
 public:
  /// Problems: the job's own unsound ones (checkJob), study.core-size, study.pipe-size (sizes the
  /// job does not state are the sheet's), or study.no-plan.
  static base::Result<Study> of(const plan::Job& job, const rules::RuleSheet& sheet,
                                const StudyOptions& options = {});

  /// The same study, its score's part on suction judged by a curve of reach and its best places
  /// looked for anew. Cheap: all else is shared. nullptr, or one that does not fit this wall (the
  /// plan moved on): none, and that part of the score is left out, with its reason.
  Study withReach(std::shared_ptr<const ReachAlong> reach, RankBy rank = RankBy::score) const;
  const ReachAlong* reach() const { return m_places->reach.get(); }
  /// How long the cable is, with the fan of the sump that is judged, or low beside the hole where
  /// there is none; worked out when it is first asked for, from any thread. nullptr: no supply is
  /// drawn.
  const build::CableAlong* cable() const;
  /// Where a hole can be built; worked out when it is first asked for, from any thread.
  const build::SectionAlong& section() const;
  RankBy rankedBy() const { return m_places->rank; }

  const rules::Site& site() const { return m_data->site; }
  const plan::Job& job() const { return m_data->site.job; }
  const rules::RuleSheet& sheet() const { return m_data->site.sheet; }
  const perimeter::Perimeter& perimeter() const { return m_data->site.perimeter; }

  /// By ring.
  const std::vector<std::vector<Stretch>>& stretches() const { return m_data->stretches; }
  /// Every finding of every rule as spans, in the sheet's order: the lanes of the wall tape.
  const std::vector<rules::FindingSpan>& spans() const { return m_data->spans; }
  /// The findings of a stretch, worst first, then in the sheet's order; distances are the least
  /// over the stretch.
  std::vector<Finding> findingsOf(const Stretch& stretch) const;
  /// Runs of one state, joined over chainage 0, in order of ring and chainage.
  std::vector<Run> runs() const;
  /// Runs that nothing refuses and where nothing is unknown but what the program cannot judge yet
  /// (a riser's outlet); joined over chainage 0.
  std::vector<Run> runsLeftOpen() const;
  /// Length of wall in each state over all rings, by State.
  std::vector<double> lengths_m() const;
  /// Best first, by rankedBy(). This and leastBad() are looked for when they are first asked (from
  /// any thread): they take most of what a study of many things takes, and a drag does not ask.
  const std::vector<BestPlace>& best() const;
  /// Only where best() is empty.
  const std::optional<LeastBad>& leastBad() const;
  const std::vector<Unjudged>& unjudged() const { return m_data->unjudged; }
  double accuracy_m() const { return m_data->accuracy_m; }

  /// The verdict at a place; wrapped onto the ring. Waivers of the job's design that name `sump`
  /// are taken into account; a sump whose run is not the one this study judges (site().run) is
  /// judged by its own, or as one whose discharge is not placed. Contract: the ring exists.
  Assessment assess(Place place, const std::string& sump = {}) const;
  /// Score alone, for the curve.
  double scoreAt(Place place) const;
  State stateAt(Place place) const;

  /// The next run of clear (or, with none, advised-against) wall from a place, in the direction of
  /// growing (+1) or falling (-1) chainage on the same ring: its nearest position at least the
  /// survey's accuracy inside (or its middle when it is shorter). Nothing when the ring has none.
  std::optional<Place> nextAllowed(Place from, int direction) const;

  /// Label of a thing, room, zone, wall or corner by id; its id where unknown.
  base::Message labelOf(const std::string& id) const;

 private:
  struct Data {
    rules::Site site;
    std::vector<rules::FindingSpan> spans;
    std::vector<std::vector<Stretch>> stretches;
    std::vector<Unjudged> unjudged;
    double accuracy_m = 0.0;
    mutable std::mutex others_lock;
    mutable std::map<std::string, std::shared_ptr<const Data>> others;  ///< by sump
    mutable std::once_flag section_once;
    mutable std::shared_ptr<const build::SectionAlong> section;
    std::shared_ptr<const build::Wiring> wiring;
    mutable std::once_flag cable_once;
    mutable std::shared_ptr<const build::CableAlong> cable;
  };
  /// What changes with the reach, and what was looked for since.
  struct Places {
    std::shared_ptr<const ReachAlong> reach;
    RankBy rank = RankBy::score;
    mutable std::once_flag best_once;
    mutable std::vector<BestPlace> best;
    mutable std::once_flag least_bad_once;
    mutable std::optional<LeastBad> least_bad;
  };
  static std::shared_ptr<const Data> dataOf(rules::Site site, const std::string& sump);
  /// This study, or one that judges the sump's own run.
  std::shared_ptr<const Data> dataFor(const std::string& sump) const;
  std::shared_ptr<const Data> m_data;
  std::shared_ptr<const Places> m_places;
};

}  // namespace sumpwright::siting
