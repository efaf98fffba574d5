// How to set the hole out with a tape: beside the plan, on its page.

#include <cmath>

#include "dossier/Sheet.h"
#include "plan/SumpList.h"
#include "plan/WallThickness.h"

namespace sumpwright::dossier {
namespace {

void ties(Writer& w, const drawing::Ties& t) {
  const Desk& desk = w.desk();
  if (t.before && t.after) {
    w.body(desk.say(
        "paper.set-out.two",
        {base::metres("first", t.before->length_m), base::phrase("one", t.before->label),
         base::metres("second", t.after->length_m), base::phrase("other", t.after->label)}));
  } else if (t.before || t.after) {
    const drawing::Tie& only = t.before ? *t.before : *t.after;
    w.body(desk.say("paper.set-out.tie",
                    {base::metres("length", only.length_m), base::phrase("feature", only.label)}));
  }
  if (t.check) {
    w.body(desk.say(
        t.check_on_wall ? "paper.set-out.check" : "paper.set-out.check-straight",
        {base::metres("length", t.check->length_m), base::phrase("feature", t.check->label)}));
  } else if (t.before && t.after) {
    w.body(desk.say("paper.set-out.sum",
                    {base::metres("length", t.before->length_m + t.after->length_m)}));
  }
}

}  // namespace

std::string fromDatum(const Sheet& sheet, double level_m) {
  const plan::House& house = sheet.job().house;
  if (!house.height_datum_m) return {};
  const double up = level_m - *house.height_datum_m;
  return sheet.desk.say(
      up < 0.0 ? "paper.datum.below" : "paper.datum.above",
      {base::metres("length", std::abs(up)),
       base::phrase("datum", house.height_datum.empty() ? base::Message("paper.datum.unnamed")
                                                        : base::plainText(house.height_datum))});
}

void writeOtherSumps(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  for (const plan::Sump& sump : sheet.job().design.sumps) {
    if (&sump == sheet.sump) continue;
    w.heading(
        desk.say("paper.other-sump", {base::text("sump", plan::sumpWord(sheet.job(), sump.id))}));
    if (sump.kind != plan::SumpKind::cored) {
      w.body(desk.say("paper.other-sump.inside"));
      continue;
    }
    ClientPlanOptions options = sheet.options;
    options.sump = sump.id;
    const Sheet other(sheet.study, desk.voice, options);
    w.body(desk.say(other.assessment->sentence));
    // The rows hold nothing of `other` but words.
    w.append(settingOutRows(other, w.width()));
    const Rows waivers = waiverRows(other, w.width());
    if (!waivers.empty()) w.gap(1.5);
    w.append(waivers);
  }
}

bool tellsHeights(const Sheet& sheet) {
  return sheet.job().house.footing_top_low_m && sheet.job().house.footing_top_high_m;
}

Rows settingOutRows(const Sheet& sheet, double width_mm) {
  if (!sheet.assessment || isStopped(sheet)) return {};
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.text(desk.say("paper.set-out"), fonts::strong, desk.theme.ink);
  ties(w, sheet.ties);
  // A datum without a height to take from it would only puzzle.
  if (tellsHeights(sheet)) {
    const std::string& datum = sheet.job().house.height_datum;
    w.body(desk.say(datum.empty() ? "paper.set-out.no-datum" : "paper.set-out.datum",
                    {base::text("datum", datum)}));
  }
  if (sheet.assessment->thickness_assumed) {
    w.body(desk.say("paper.set-out.thickness",
                    {base::metres("thickness", plan::kAssumedWallThickness_m)}));
  }
  return w.take();
}

}  // namespace sumpwright::dossier
