#include "build/DrillSection.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "build/Figures.h"
#include "build/HoleRule.h"
#include "build/SectionWords.h"

namespace sumpwright::build {

namespace {

constexpr std::array<std::string_view, 4> kFitNames{"fits", "fits_if_footing", "never",
                                                    "not_cored"};
constexpr std::array<std::string_view, 10> kLimitNames{
    "slab", "barrier", "dpc",         "ground",     "footing",
    "fill", "dig",     "gentle_fall", "steep_fall", "barrel"};

/// From above the ground the least fall is steep enough to be sure of.
FallWish fallWish(Start start) {
  if (start == Start::above_ground) return {kLeastFallAbove, kLeastFallAbove};
  return {kUsualFall, kSureFall};
}

/// One way to core: from below or above the ground, with some of the advisory limits kept.
struct Way {
  Start start = Start::below_ground;
  Fit fit = Fit::never;
  std::optional<Bore> bore;
  std::optional<double> footing_top_m;
  std::optional<Tightest> clash;
};

std::vector<Limit> without(std::vector<Limit> limits, const std::vector<LimitKind>& kinds) {
  std::erase_if(limits, [&](const Limit& limit) {
    return std::find(kinds.begin(), kinds.end(), limit.kind) != kinds.end();
  });
  return limits;
}

/// Advisory limits are given up one after the other: the drill can be lengthened, a pipe end below
/// the hardcore is dug free upward.
const std::array<std::vector<LimitKind>, 4> kGivenUp{
    {{}, {LimitKind::barrel}, {LimitKind::fill}, {LimitKind::barrel, LimitKind::fill}}};

class Finder {
 public:
  Finder(const BuildUp& up, const SectionWish& wish) : m_up(up), m_wish(wish) {}

  Way best() const {
    const Way below = from(Start::below_ground);
    if (below.fit == Fit::fits) return below;
    const Way above = from(Start::above_ground);
    return above.fit < below.fit ? above : below;
  }

 private:
  std::vector<Limit> limits(Start start, double footing_top) const {
    return limitsOf(m_up, start, footing_top, m_wish.least_fall);
  }

  Way from(Start start) const {
    for (const auto& given_up : kGivenUp) {
      const FeasibleSet set(without(limits(start, m_up.footing_high_m), given_up));
      const auto bore = set.best(m_wish.bore, fallWish(start));
      if (bore && set.contains(*bore)) return {start, Fit::fits, bore, {}, {}};
    }
    return notSurely(start);
  }

  Way notSurely(Start start) const {
    Way way{start};
    for (const auto& given_up : kGivenUp) {
      const auto kept = without(limits(start, m_up.footing_high_m), given_up);
      if (m_wish.bore == BoreWish{}) {
        const auto ceiling = ceilingOver(kept, start);
        if (!ceiling) continue;
        way.bore = ceiling->bore;
        way.footing_top_m = ceiling->footing_top_m;
      } else if (!atWish(kept, way)) {
        continue;
      }
      way.fit = *way.footing_top_m >= m_up.footing_low_m ? Fit::fits_if_footing : Fit::never;
      break;
    }
    addClash(way);
    return way;
  }

  /// At a fall one can be sure of, where that leaves room over the lowest footing at all.
  std::optional<Ceiling> ceilingOver(const std::vector<Limit>& kept, Start start) const {
    const FallWish falls = fallWish(start);
    const auto sure = footingCeiling(kept, falls.usual, falls.sure);
    if (sure && sure->footing_top_m >= m_up.footing_low_m) return sure;
    return footingCeiling(kept, falls.usual);
  }

  /// The bore as wished, if it keeps all limits but the footing's.
  bool atWish(const std::vector<Limit>& kept, Way& way) const {
    const FeasibleSet set(without(kept, {LimitKind::footing}));
    const auto bore = set.best(m_wish.bore, fallWish(way.start));
    if (!bore || !set.contains(*bore)) return false;
    way.bore = bore;
    const auto footing = std::find_if(kept.begin(), kept.end(), [](const Limit& limit) {
      return limit.kind == LimitKind::footing;
    });
    way.footing_top_m = m_up.footing_high_m + footing->slack(bore->entry_m, bore->fall);
    return true;
  }

  /// What is in the way with the footing at the end of its range that decides.
  void addClash(Way& way) const {
    const double top = way.fit == Fit::never ? m_up.footing_low_m : m_up.footing_high_m;
    std::vector<LimitKind> idle{LimitKind::barrel, LimitKind::fill};
    if (!way.footing_top_m) idle.push_back(LimitKind::footing);  // the others clash already
    const FeasibleSet set(without(limits(way.start, top), idle));
    if (!way.bore) way.bore = set.best(m_wish.bore, fallWish(way.start));
    if (way.bore) way.clash = set.tightest(way.bore->fall);
  }

  const BuildUp& m_up;
  const SectionWish& m_wish;
};

Margin marginOf(const Limit& limit, const BuildUp& up, const Bore& bore) {
  const double w = std::sqrt(1.0 + bore.fall * bore.fall);
  const double slack = limit.slack(bore.entry_m, bore.fall);
  Margin margin{
      limit.kind, 0.0,  limit.needed_m, limit.advisory, limit.keptBy(bore.entry_m, bore.fall),
      {},         false};
  switch (limit.kind) {
    case LimitKind::gentle_fall:
      margin.clear = bore.fall;
      break;
    case LimitKind::steep_fall:
      margin.clear = bore.fall;
      margin.at_most = true;
      break;
    case LimitKind::barrel:
      margin.clear = up.wall_m * w;
      margin.needed = up.barrel_m;
      margin.at_most = true;
      break;
    default:
      margin.clear = (limit.square ? slack / w : slack) + limit.needed_m;
  }
  margin.what = marginWords(margin);
  return margin;
}

/// How far the pipe's end lies outside the hollow; below nothing where it is in it.
double offHollow_m(const DrillSection& section, const Bore& bore) {
  const double past_wall = kPastInner_m;
  const double below_slab =
      section.up.underside_m() - axisAt_m(bore, section.up.wall_m + past_wall);
  // A half ball that touches the inner face of the wall (Void.h).
  return std::hypot(past_wall - section.hollow.radius_m, below_slab) - section.hollow.radius_m;
}

DrillSection notCored(NoCore why, const rules::Site& site, perimeter::Place place) {
  DrillSection section;
  section.up = buildUpAt(site, place);
  section.fit = Fit::not_cored;
  section.stopped = true;
  section.verdict = noCoreWords(why, site, place);
  section.notes.emplace_back("section.note.internal");
  return section;
}

void addNotes(DrillSection& section) {
  const BuildUp& up = section.up;
  const auto note = [&](const char* id, std::vector<base::Arg> args) {
    section.notes.emplace_back(id, std::move(args));
  };
  if (section.fit == Fit::never) note("section.note.elsewhere", {});
  if (section.dig_m > kDeepestDig_m) {
    note("section.note.dig-support", {base::metres("depth", section.dig_m)});
  } else if (section.dig_m > kDeepDig_m) {
    note("section.note.dig-deep", {base::metres("depth", section.dig_m)});
  }
  for (const Margin& margin : section.margins) {
    if (margin.passes || !margin.advisory) continue;
    note(margin.kind == LimitKind::barrel ? "section.note.barrel" : "section.note.fill",
         {base::millimetres("path", 1000.0 * section.path_m),
          base::millimetres("barrel", 1000.0 * up.barrel_m)});
  }
  if (const double off = section.bore ? offHollow_m(section, *section.bore) : 0.0;
      off > kOffHollow_m) {
    note("section.note.hollow-off", {base::millimetres("off", 1000.0 * off),
                                     base::number("litres", 1000.0 * section.hollow.volume_m3)});
  }
  if (section.annulus_m < kLeastGap_m) {
    note("section.note.tight-gap", {base::millimetres("gap", 1000.0 * section.annulus_m)});
  } else if (section.annulus_m > kBackerGap_m) {
    note("section.note.backer", {base::millimetres("gap", 1000.0 * section.annulus_m)});
  }
  const bool cavity = std::any_of(up.leaves.begin(), up.leaves.end(), [](const Leaf& leaf) {
    return leaf.kind == plan::LayerKind::cavity;
  });
  note(cavity ? "section.note.seal-leaves" : "section.note.seal-faces",
       {base::millimetres("past", 1000.0 * kPastInner_m)});
  const bool barrier =
      up.barrier == plan::Barrier::in_floor || up.barrier == plan::Barrier::lapped_through_wall;
  if (barrier) note("section.note.barrier", {});
  if (up.foundation == plan::Foundation::rubble)
    note("section.note.rubble", {base::metres("along", kPitAlong_m)});
  note("section.note.trial-pit", {});
  for (const base::Message& one : section.hollow.notes) section.notes.push_back(one);
}

}  // namespace

std::string_view fitName(Fit fit) { return kFitNames[static_cast<std::size_t>(fit)]; }
std::string_view limitName(LimitKind kind) { return kLimitNames[static_cast<std::size_t>(kind)]; }

double fallOfDegrees(double degrees) { return std::tan(radians(degrees)); }
double degreesOfFall(double fall) { return degrees(std::atan(fall)); }
double axisAt_m(const Bore& bore, double x_m) { return bore.entry_m - bore.fall * x_m; }
double halfUpright_m(const Bore& bore, double core_m) {
  return 0.5 * core_m * std::sqrt(1.0 + bore.fall * bore.fall);
}

SectionWish wishOf(const plan::Job& job, const plan::Sump& sump) {
  SectionWish wish;
  wish.bore.entry_m = sump.entry_m;
  if (sump.fall_deg) wish.bore.fall = fallOfDegrees(*sump.fall_deg);
  wish.pit_l = sump.pit_l ? sump.pit_l : job.suction.pit_l;
  wish.sump = sump.id;
  return wish;
}

DrillSection drillSection(const BuildUp& up, const SectionWish& wish) {
  DrillSection section;
  section.up = up;
  const Way way = Finder(up, wish).best();
  section.fit = way.fit;
  section.start = way.start;
  section.bore = way.bore;
  section.footing_top_m = way.footing_top_m;
  section.clash = way.clash;
  section.annulus_m = 0.5 * (up.core_m - up.pipe_od_m);
  const double fall = way.bore ? way.bore->fall : 0.0;
  section.hollow = voidOf(up, wish.pit_l, fall);
  if (way.bore) {
    for (const Limit& limit : limitsOf(up, way.start, up.footing_high_m, wish.least_fall)) {
      section.margins.push_back(marginOf(limit, up, *way.bore));
    }
    section.drop_m = fall * up.wall_m;
    section.path_m = std::hypot(up.wall_m, section.drop_m);
    const double lowest = way.bore->entry_m - halfUpright_m(*way.bore, up.core_m);
    if (way.start == Start::below_ground) section.dig_m = up.ground_m - lowest + kBelowHole_m;
  }
  section.verdict = verdictWords(section, wish);
  section.stopped = section.fit == Fit::never;
  addNotes(section);
  return section;
}

DrillSection drillSection(const rules::Site& site, perimeter::Place place,
                          const SectionWish& wish) {
  BuildUp up = buildUpAt(site, place);
  bool hole = false;
  bool foundation = false;
  for (const NoCore why : noCores(site, place)) {
    const CoredBy by = coredBy(why, site, up, place, wish.sump);
    if (by == CoredBy::nobody) return notCored(why, site, place);
    (by == CoredBy::hole ? hole : foundation) = true;
  }
  DrillSection section = drillSection(up, wish);
  if (section.stopped) hole = hole || acceptsHole(site, section, place, wish.sump);
  if (section.stopped && hole) {
    section.stopped = false;
    std::erase_if(section.notes,
                  [](const base::Message& note) { return note.id == "section.note.elsewhere"; });
  }
  section.on_waiver = !section.stopped && (hole || foundation);
  if (section.on_waiver) {
    section.notes.insert(
        section.notes.begin(),
        base::Message(hole ? "section.note.on-waiver-of-hole" : "section.note.on-waiver"));
  }
  return section;
}

}  // namespace sumpwright::build
