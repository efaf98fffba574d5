#include "siting/BestPlaces.h"

#include <algorithm>
#include <cmath>

#include "siting/Findings.h"
#include "siting/ReachAlong.h"
#include "siting/Scoring.h"
#include "siting/Verdict.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using rules::Weight;

constexpr double kStep_m = 0.05;     // search step (own figure); peaks are refined from there
constexpr int kLeastSteps = 16;      // for short runs (own figure)
constexpr double kSettled_m = 1e-6;  // search ends here (own figure)

int stepsOver(const Inset& inset) {
  const double length = inset.to_m - inset.from_m;
  if (length <= 0.0) return 0;
  return std::max(kLeastSteps, static_cast<int>(std::ceil(length / kStep_m)));
}

double stepAt(const Inset& inset, int steps, int i) {
  return steps == 0 ? inset.from_m : inset.from_m + (inset.to_m - inset.from_m) * i / steps;
}

/// A mean share of floor cannot outbid one guess of 64 (own figure).
constexpr double kMeanFloor = 0.01;

/// What places are put in order by, 0..100.
double rankAt(const Study& study, Place place) {
  const ReachAlong* reach = study.reach();
  if (study.rankedBy() == RankBy::score || reach == nullptr) return study.scoreAt(place);
  const ReachRead read = reach->at(place);
  if (!reach->hasChance()) return 100.0 * read.floor;
  if (!read.chance) return 0.0;
  return 100.0 * (read.chance->whole_floor + kMeanFloor * read.chance->mean_floor);
}

/// What is climbed: rank first; among equal ranks more margin, then further from the run's ends.
/// The two small weights (own figures) cannot outbid a hundredth of a point over a house's walls.
double worth(const Study& study, const Run& run, double s) {
  const Place place = study.perimeter().wrapped({run.ring, s});
  const double margin = leastBindingMargin_m(study.site(), place).value_or(0.0);
  const double central = std::min(s - run.from_m, run.to_m - s);
  return rankAt(study, place) + 1e-3 * std::clamp(margin, -10.0, 10.0) + 1e-6 * central;
}

/// Ternary search between two places. Worth is a lower envelope of convex distances, so between
/// neighbouring samples its peak is where one thing takes over from another.
double climb(const Study& study, const Run& run, double low, double high) {
  while (high - low > kSettled_m) {
    const double a = low + (high - low) / 3.0;
    const double b = high - (high - low) / 3.0;
    if (worth(study, run, a) < worth(study, run, b)) {
      low = a;
    } else {
      high = b;
    }
  }
  return 0.5 * (low + high);
}

double bestIn(const Study& study, const Run& run) {
  const Inset inset = insetOf(run, study.accuracy_m());
  const int steps = stepsOver(inset);
  int best = 0;
  double most = worth(study, run, inset.from_m);
  for (int i = 1; i <= steps; ++i) {
    const double w = worth(study, run, stepAt(inset, steps, i));
    if (w > most) {
      most = w;
      best = i;
    }
  }
  const double refined = climb(study, run, stepAt(inset, steps, std::max(0, best - 1)),
                               stepAt(inset, steps, std::min(steps, best + 1)));
  return worth(study, run, refined) > most ? refined : stepAt(inset, steps, best);
}

BestPlace bestOf(const Study& study, const Run& run) {
  BestPlace best;
  best.run = run;
  best.place = study.perimeter().wrapped({run.ring, bestIn(study, run)});
  best.point = study.perimeter().pointAt(best.place);
  best.score = study.scoreAt(best.place);
  if (const ReachAlong* reach = study.reach(); reach != nullptr && reach->computed()) {
    const ReachRead read = reach->at(best.place);
    best.floor = read.floor;
    if (reach->hasChance()) best.chance = read.chance ? read.chance->whole_floor : 0.0;
  }
  best.close = run.to_m - run.from_m < 2.0 * study.accuracy_m() || study.assess(best.place).close;
  return best;
}

/// How much would have to change, against the needed distances: 1 for what has no distance, half
/// for what nobody looked at, a tenth for an advisory (own figures: they only rank).
double harm(const std::vector<Finding>& findings) {
  double sum = 0.0;
  for (const Finding& f : findings) {
    if (f.weight == Weight::advisory) {
      sum += 0.1;
    } else if (f.weight == Weight::unknown) {
      sum += 0.5;
    } else if (f.distance_m && f.needed_m && *f.needed_m > 0.0) {
      sum += std::max(0.0, *f.needed_m - *f.distance_m) / *f.needed_m;
    } else {
      sum += 1.0;
    }
  }
  return sum;
}

bool maybeProposed(const Study& study, const Stretch& stretch) {
  return std::all_of(stretch.spans.begin(), stretch.spans.end(), [&](int i) {
    const Finding& f = study.spans()[static_cast<std::size_t>(i)].finding;
    return f.weight == Weight::advisory || f.least_bad;
  });
}

struct Candidate {
  double harm = 0.0;
  double score = 0.0;
  Assessment assessment;
};

void consider(const Study& study, const Stretch& stretch, std::optional<Candidate>& best) {
  const Inset inset =
      insetOf({stretch.ring, stretch.from_m, stretch.to_m, stretch.state}, study.accuracy_m());
  const int steps = stepsOver(inset);
  for (int i = 0; i <= steps; ++i) {
    Assessment a = study.assess({stretch.ring, stepAt(inset, steps, i)});
    const double h = harm(a.findings);
    if (best && (h > best->harm || (h == best->harm && a.score.total <= best->score))) continue;
    best = Candidate{h, a.score.total, std::move(a)};
  }
}

bool isAboutOutlet(const rules::Rule& rule) {
  using rules::Part;
  return std::all_of(rule.applies_to.begin(), rule.applies_to.end(), [](Part part) {
    return part == Part::outlet || part == Part::fan || part == Part::riser;
  });
}

/// Whether a stretch is refused only by rules that speak of nothing but the outlet and its fan: a
/// riser takes those away from the hole.
bool refusedForOutlet(const Study& study, const Stretch& stretch) {
  return std::all_of(stretch.spans.begin(), stretch.spans.end(), [&](int i) {
    const rules::FindingSpan& s = study.spans()[static_cast<std::size_t>(i)];
    return s.finding.weight != Weight::binding || s.rule_index < 0 ||
           isAboutOutlet(study.sheet().rules[static_cast<std::size_t>(s.rule_index)]);
  });
}

template <class Wanted>
bool anyStretch(const Study& study, Wanted&& wanted) {
  return std::any_of(study.stretches().begin(), study.stretches().end(), [&](const auto& ring) {
    return std::any_of(ring.begin(), ring.end(), wanted);
  });
}

/// The kinds nobody looked for, each once.
std::vector<Message> kindsNotLookedFor(const Study& study) {
  std::vector<Message> kinds;
  for (const rules::FindingSpan& s : study.spans()) {
    const bool gate = s.finding.reason.id == "rule.not-looked";
    if (gate && std::find(kinds.begin(), kinds.end(), s.finding.thing_label) == kinds.end()) {
      kinds.push_back(s.finding.thing_label);
    }
  }
  return kinds;
}

/// Why nothing may be proposed and what to do: look, if that could help; else what the program
/// cannot judge yet; else another outlet or another remedy.
Message adviceWithoutPlace(const Study& study) {
  const bool riser = study.site().outlet == plan::OutletMode::riser;
  const bool lookingHelps =
      anyStretch(study, [](const Stretch& s) { return s.state == State::not_proven; });
  if (!lookingHelps) {
    const bool riserHelps =
        !riser && anyStretch(study, [&](const Stretch& s) { return refusedForOutlet(study, s); });
    return Message(riserHelps ? "study.try-riser" : "study.other-remedy");
  }
  const std::vector<Message> kinds = kindsNotLookedFor(study);
  if (!kinds.empty()) {
    return Message(riser ? "study.look-first-riser" : "study.look-first",
                   {base::phrase("kinds", listOf(kinds))});
  }
  if (study.runsLeftOpen().empty()) return Message("study.look-further");
  return Message(riser ? "study.riser-left-open" : "study.left-open");
}

}  // namespace

Inset insetOf(const Run& run, double accuracy_m) {
  if (run.to_m - run.from_m < 2.0 * accuracy_m) {
    const double middle = 0.5 * (run.from_m + run.to_m);
    return {middle, middle};
  }
  return {run.from_m + accuracy_m, run.to_m - accuracy_m};
}

State allowedState(const Study& study) {
  const auto lengths = study.lengths_m();
  if (lengths[static_cast<std::size_t>(State::clear)] > 0.0) return State::clear;
  return State::advised_against;
}

std::vector<BestPlace> bestPlaces(const Study& study) {
  const State wanted = allowedState(study);
  std::vector<BestPlace> best;
  for (const Run& run : study.runs()) {
    if (run.state == wanted) best.push_back(bestOf(study, run));
  }
  std::stable_sort(best.begin(), best.end(), [&](const BestPlace& a, const BestPlace& b) {
    return rankAt(study, a.place) > rankAt(study, b.place);
  });
  return best;
}

LeastBad leastBadPlace(const Study& study) {
  std::optional<Candidate> best;
  for (const auto& ring : study.stretches()) {
    for (const Stretch& stretch : ring) {
      if (maybeProposed(study, stretch)) consider(study, stretch, best);
    }
  }
  LeastBad result;
  if (!best) {
    result.advice = adviceWithoutPlace(study);
    return result;
  }
  result.place = best->assessment.place;
  result.point = best->assessment.point;
  result.state = best->assessment.state;
  result.changes = best->assessment.findings;
  result.advice = Message("study.least-bad",
                          {base::count("count", static_cast<std::int64_t>(result.changes.size()))});
  return result;
}

}  // namespace sumpwright::siting
