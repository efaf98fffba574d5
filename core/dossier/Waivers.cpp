// Waivers in ruled boxes; one that has lapsed, or accepts nothing by this sheet, is kept, its title
// struck out and the reason given.

#include <algorithm>
#include <cmath>

#include "dossier/Sheet.h"
#include "dossier/Wording.h"
#include "siting/DesignCheck.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using drawing::solid;

base::Message evidenceWord(plan::Evidence evidence) {
  switch (evidence) {
    case plan::Evidence::reason:
      return Message("paper.evidence.reason");
    case plan::Evidence::locating_record:
      return Message("paper.evidence.locating-record");
    case plan::Evidence::drains_located:
      return Message("paper.evidence.drains-located");
    case plan::Evidence::engineers_note:
      return Message("paper.evidence.engineers-note");
    case plan::Evidence::consent:
      break;
  }
  return Message("paper.evidence.consent");
}

/// A thin line through the title: the words stay legible.
void strike(Row& row, const Desk& desk, double length_mm) {
  const auto line = row.paint;
  const double middle = row.height_mm / 2.0 + 0.2;
  const Colour colour = desk.theme.ink2;
  row.paint = [=](Sketch& sketch, Point at) {
    sketch.line({at.x, at.y + middle}, {at.x + length_mm, at.y + middle}, solid(colour, 0.6));
    line(sketch, at);
  };
}

/// Why it holds no longer: moved along the wall by so much, or onto another wall's ring, or it was
/// set aside in the job itself.
base::Message lapseReason(const Sheet& sheet, const plan::Waiver& waiver) {
  const plan::Sump& sump = *sheet.sump;
  if (waiver.lapsed) return Message("paper.waiver.lapsed-kept");
  if (sump.ring != waiver.ring) return Message("paper.waiver.lapsed-ring");
  const double length = sheet.study.perimeter().length_m(sump.ring);
  const double straight = std::abs(sump.chainage_m - waiver.chainage_m);
  return Message("paper.waiver.lapsed-moved",
                 {base::metres("moved", std::min(straight, length - straight))});
}

/// Why it accepts nothing although the sump stands where it did.
base::Message idleReason(const Sheet& sheet, const plan::Waiver& waiver) {
  const auto problem = siting::waiverProblem(sheet.study, waiver);
  const std::string id = problem ? problem->message.id : std::string();
  if (id == "waiver.evidence" || id == "waiver.blank") return Message("paper.waiver.idle-evidence");
  if (id == "waiver.nothing-refused") return Message("paper.waiver.idle-nothing");
  if (id == "waiver.too-near") return Message("paper.waiver.idle-near");
  if (id == "waiver.not-located") return Message("paper.waiver.idle-located");
  return Message("paper.waiver.idle-sheet");  // unknown to it, not binding, not to be waived
}

Rows waiverText(const Sheet& sheet, const plan::Waiver& waiver, double width_mm) {
  const Desk& desk = sheet.desk;
  const bool stands = sheet.holds(waiver);
  Writer w(desk, width_mm);
  const std::vector<base::Arg> args{
      base::text("rule", sheet.ruleTitle(waiver.rule)),
      base::phrase("thing", waiver.thing.empty() ? Message() : sheet.study.labelOf(waiver.thing)),
      base::text("reason", waiver.reason),
      base::text("name", waiver.name),
      base::text("date", waiver.date),
      base::phrase("evidence", evidenceWord(waiver.evidence)),
      base::metres("chainage", waiver.chainage_m)};
  const std::string title =
      desk.say(waiver.thing.empty() ? "paper.waiver.rule" : "paper.waiver.thing", args);
  const Colour& colour = stands ? desk.theme.ink : desk.theme.ink2;
  w.text(title, fonts::strong, colour);
  w.text(desk.say("paper.waiver.reason", args), fonts::body, colour);
  w.text(desk.say("paper.waiver.signed", args), fonts::body, colour);
  Rows rows = w.take();
  if (stands) return rows;
  const auto lines = wrapped(desk, title, fonts::strong, width_mm);
  for (std::size_t i = 0; i < std::min(lines.size(), rows.size()); ++i) {
    strike(rows[i], desk, desk.voice.width_mm(lines[i], fonts::strong));
  }
  Writer lapsed(desk, width_mm);
  const bool left = sheet.isLeftBehind(waiver);
  lapsed.text(desk.say(left ? "paper.waiver.lapsed" : "paper.waiver.idle",
                       {base::phrase(
                           "why", left ? lapseReason(sheet, waiver) : idleReason(sheet, waiver))}),
              fonts::strong, desk.theme.ink);
  lapsed.append(std::move(rows));
  return lapsed.take();
}

/// One row of a ruled box: its sides, its top or bottom edge where it has one, and what it holds.
/// Row by row, so that a long waiver may run on in the next column.
Row boxRow(double height, double width_mm, const Colour& colour, bool top, bool bottom,
           const Row* inner) {
  constexpr double kPad_mm = 2.2;
  const auto paint = inner != nullptr ? inner->paint : std::function<void(Sketch&, Point)>();
  return {height,
          [=](Sketch& sketch, Point at) {
            const drawing::Pen pen = solid(colour, 2.0);
            const double left = at.x + 0.25;
            const double right = at.x + width_mm - 0.25;
            sketch.tagged("waiver");
            for (double x : {left, right}) sketch.line({x, at.y}, {x, at.y + height}, pen);
            if (top) sketch.line({left - 0.25, at.y}, {right + 0.25, at.y}, pen);
            if (bottom)
              sketch.line({left - 0.25, at.y + height}, {right + 0.25, at.y + height}, pen);
            if (paint) paint(sketch, {at.x + kPad_mm, at.y});
          },
          top};
}

}  // namespace

Rows waiverRows(const Sheet& sheet, double width_mm) {
  Rows out;
  for (const plan::Waiver& waiver : sheet.waivers) {
    const Colour colour = sheet.holds(waiver) ? sheet.desk.theme.ink : sheet.desk.theme.ink3;
    out.push_back(boxRow(1.6, width_mm, colour, true, false, nullptr));
    for (const Row& row : waiverText(sheet, waiver, width_mm - 4.4)) {
      out.push_back(boxRow(row.height_mm, width_mm, colour, false, false, &row));
    }
    out.push_back(boxRow(1.6, width_mm, colour, false, true, nullptr));
    out.push_back({2.0, {}, false});
  }
  return out;
}

Rows allWaiverRows(const Sheet& sheet, double width_mm) {
  Rows out;
  eachCored(sheet, [&](const Sheet& its) {
    Rows rows = waiverRows(its, width_mm);
    out.insert(out.end(), rows.begin(), rows.end());
  });
  return out;
}

}  // namespace sumpwright::dossier
