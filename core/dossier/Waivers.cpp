// Waivers in ruled boxes; struck out once they have lapsed.

#include "dossier/Sheet.h"

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

/// Strikes a waiver's lines out once it has lapsed.
void strike(Rows& rows, const Desk& desk, double width_mm) {
  for (Row& row : rows) {
    if (row.isGap()) continue;
    const auto line = row.paint;
    const double middle = row.height_mm / 2.0;
    const Colour colour = desk.theme.ink2;
    row.paint = [=](Sketch& sketch, Point at) {
      line(sketch, at);
      sketch.line({at.x, at.y + middle}, {at.x + width_mm, at.y + middle}, solid(colour, 1.2));
    };
  }
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
  w.text(desk.say(waiver.thing.empty() ? "paper.waiver.rule" : "paper.waiver.thing", args),
         fonts::strong, desk.theme.ink);
  w.body(desk.say("paper.waiver.reason", args));
  w.body(desk.say("paper.waiver.signed", args));
  Rows rows = w.take();
  if (stands) return rows;
  strike(rows, desk, width_mm);
  Writer lapsed(desk, width_mm);
  lapsed.text(desk.say("paper.waiver.lapsed"), fonts::strong, desk.theme.ink);
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

}  // namespace sumpwright::dossier
