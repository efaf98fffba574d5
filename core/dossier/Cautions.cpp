// When to stop and look, and what to mind.

#include <algorithm>

#include "build/BuildUp.h"
#include "build/Run.h"
#include "dossier/Sheet.h"
#include "geometry/Shapes.h"

namespace sumpwright::dossier {
namespace {

/// Less room than this round the pipe cannot be sealed (common practice).
constexpr double kLeastGap_mm = 3.0;

/// Floor zones that the hole comes out under.
bool underfloorHeating(const Sheet& sheet) {
  if (!sheet.assessment) {
    return std::any_of(sheet.job().plan.floor_zones.begin(), sheet.job().plan.floor_zones.end(),
                       [](const plan::FloorZone& z) { return z.underfloor_heating; });
  }
  const geometry::Point inner = sheet.study.perimeter().drillLine(sheet.assessment->place).b;
  return std::any_of(sheet.job().plan.floor_zones.begin(), sheet.job().plan.floor_zones.end(),
                     [&](const plan::FloorZone& z) {
                       return z.underfloor_heating && geometry::contains(z.outline_m, inner);
                     });
}

void standby(Writer& w, const Sheet& sheet) {
  const plan::StandbySump& s = sheet.job().house.standby;
  switch (s.state) {
    case plan::StandbyState::not_searched:
      w.tick(sheet.desk.say("paper.hold.standby-search"));
      break;
    case plan::StandbyState::found:
      w.tick(sheet.desk.say(s.identity == plan::StandbyIdentity::assumed
                                ? "paper.hold.standby-assumed"
                                : "paper.hold.standby-found",
                            {base::text("where", s.where)}));
      break;
    case plan::StandbyState::searched_not_found:
      break;
  }
}

void barrier(Writer& w, const Sheet& sheet) {
  // Where the hole goes the floor behind it counts, which may have one of its own.
  const plan::Barrier there =
      sheet.assessment ? build::buildUpAt(sheet.study.site(), sheet.assessment->place).barrier
                       : sheet.job().house.barrier;
  switch (there) {
    case plan::Barrier::unknown:
      w.tick(sheet.desk.say("paper.hold.barrier-unknown"));
      break;
    case plan::Barrier::in_floor:
    case plan::Barrier::lapped_through_wall:
      w.tick(sheet.desk.say("paper.hold.barrier"));
      break;
    case plan::Barrier::none:
      break;
  }
}

/// Also before a sump has its place.
bool coresAWall(const plan::Design& design) {
  return design.sumps.empty() ||
         std::any_of(design.sumps.begin(), design.sumps.end(),
                     [](const plan::Sump& sump) { return sump.kind == plan::SumpKind::cored; });
}

void trialPit(Writer& w, const Sheet& sheet) {
  const plan::House& house = sheet.job().house;
  if (!tellsHeights(sheet) || !house.footing_top_low_m || !house.footing_top_high_m) {
    return w.tick(sheet.desk.say("paper.hold.pit"));
  }
  const double low = *house.footing_top_low_m;
  const double high = *house.footing_top_high_m;
  if (low < 0.0 && high < 0.0) {
    w.tick(sheet.desk.say("paper.hold.pit-under",
                          {base::metres("low", -high), base::metres("high", -low)}));
  } else {
    w.tick(sheet.desk.say("paper.hold.pit-range",
                          {base::metres("low", low), base::metres("high", high)}));
  }
}

/// As the rule sheet's country does it; without a word of its own, what holds everywhere.
void services(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  const rules::RuleSheet& rules = sheet.study.sheet();
  const rules::PracticeLine* own = rules.practiceOn("services");
  w.tick(own != nullptr ? practiceWords(desk, *own) : desk.say("paper.hold.services"));
  const rules::PracticeLine* depths = rules.practiceOn("depths");
  w.text(depths != nullptr ? practiceWords(desk, *depths) : desk.say("paper.hold.depths"),
         fonts::small, desk.theme.ink2, 4.8);
}

/// The job holds no readings of radon: what a very high one asks for is said whatever it is.
void highReading(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  const rules::PracticeLine* own = sheet.study.sheet().practiceOn("high");
  w.tick(own != nullptr ? practiceWords(desk, *own) : desk.say("paper.hold.high"));
  const auto& sumps = sheet.job().design.sumps;
  const bool low = std::any_of(sumps.begin(), sumps.end(), [&](const plan::Sump& sump) {
    return build::outletModeOf(sheet.study.site(), sump) == plan::OutletMode::low;
  });
  if (low) w.tick(desk.say("paper.hold.high-low"));
}

void appliances(Writer& w, const Sheet& sheet) {
  const auto& all = sheet.job().house.appliances;
  const bool open =
      std::any_of(all.begin(), all.end(), [](const plan::Appliance& a) { return a.open_flued; });
  const bool none = sheet.job().looked_for.open_flue == plan::Looked::looked_none && !open;
  w.tick(sheet.desk.say(none ? "paper.caution.flue-none" : "paper.caution.flue"));
}

}  // namespace

std::string practiceWords(const Desk& desk, const rules::PracticeLine& line) {
  static constexpr const char* kMarks[] = {"paper.practice.published", "paper.practice.common",
                                           "paper.practice.own", "paper.practice.derived",
                                           "paper.practice.memory"};
  return desk.say(kMarks[static_cast<std::size_t>(line.source.mark)],
                  {base::text("text", line.text), base::text("source", line.source.text)});
}

void writeHoldPoints(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.hold"));
  w.tick(desk.say("paper.hold.consent"));
  services(w, sheet);
  standby(w, sheet);
  if (coresAWall(sheet.job().design)) {
    trialPit(w, sheet);
    w.tick(desk.say("paper.hold.pit-limits"));
  }
  highReading(w, sheet);
  barrier(w, sheet);
  if (underfloorHeating(sheet)) w.tick(desk.say("paper.hold.underfloor"));
  const double core_mm = sheet.study.site().core_m * 1000.0;
  const double pipe_mm = sheet.study.site().pipe_od_m * 1000.0;
  const double gap_mm = (core_mm - pipe_mm) / 2.0;
  if (gap_mm < kLeastGap_mm) {
    w.tick(desk.say("paper.hold.core-gap",
                    {base::millimetres("core", core_mm), base::millimetres("pipe", pipe_mm),
                     base::millimetres("gap", gap_mm), base::millimetres("least", kLeastGap_mm)}));
  }
  w.text(desk.say("paper.hold.memory"), fonts::small, desk.theme.ink2);
}

void writeCautions(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.cautions"));
  w.tick(desk.say("paper.caution.electric"));
  w.tick(desk.say("paper.caution.silica"));
  w.tick(desk.say("paper.caution.asbestos"));
  appliances(w, sheet);
  w.tick(desk.say("paper.caution.co-alarm"));
  w.tick(desk.say("paper.caution.ladder"));
  w.tick(desk.say("paper.caution.codes"));
  w.tick(desk.say("paper.caution.check"));
  w.tick(desk.say("paper.caution.prediction"));
}

}  // namespace sumpwright::dossier
