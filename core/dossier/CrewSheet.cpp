// What the crew has in the hand: where the hole is set out, what it goes through, what to bring,
// when to stop and who says go on.

#include <algorithm>

#include "build/DrillSection.h"
#include "dossier/Figure.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"
#include "drawing/SectionDrawing.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

constexpr double kPlanShare = 0.42;  // of a page, so that the setting-out stands on the same one
constexpr double kSectionHeight_mm = 112.0;
constexpr double kSignature_mm = 8.0;  // height of a line to sign on

void sizesTable(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  const rules::Site& site = sheet.study.site();
  w.heading(desk.say("paper.crew.set-out"));
  std::vector<std::vector<Cell>> cells;
  const auto add = [&](const char* what, const std::string& value) {
    cells.push_back({Cell(desk.say(what)), Cell(value, fonts::strong)});
  };
  const auto tie = [&](const std::optional<drawing::Tie>& one, const char* id) {
    if (!one) return;
    cells.push_back({Cell(desk.say(id, {base::phrase("feature", one->label)})),
                     Cell(desk.say("paper.crew.length", {base::metres("length", one->length_m)}),
                          fonts::strong)});
  };
  tie(sheet.ties.before, "paper.crew.from");
  tie(sheet.ties.after, "paper.crew.from");
  tie(sheet.ties.check, "paper.crew.check");
  add("paper.crew.core",
      desk.say("paper.crew.size", {base::millimetres("size", 1000.0 * site.core_m)}));
  add("paper.crew.pipe",
      desk.say("paper.crew.size", {base::millimetres("size", 1000.0 * site.pipe_od_m)}));
  const std::string& datum = sheet.job().house.height_datum;
  add("paper.crew.datum", datum.empty() ? desk.say("paper.crew.no-datum") : datum);
  w.append(tableRows(desk, {{"", 1.6}, {"", 1.0, drawing::HAlign::right}}, cells, w.width()));
}

Rows sectionRows(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  const auto section = build::drillSection(sheet.study.site(), sheet.assessment->place,
                                           build::wishOf(sheet.job(), *sheet.sump));
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.section"));
  w.text(desk.say(section.verdict), fonts::strong, desk.theme.ink);
  const drawing::SectionView view{width_mm, kSectionHeight_mm, drawing::ThemeName::paper, true};
  w.row(figureRow(drawing::sectionDrawing(section, view, desk.voice)));
  for (const Message& fact : build::factsOf(section)) w.body(desk.say(fact));
  for (const Message& note : section.notes) w.tick(desk.say(note));
  return w.take();
}

/// What the suction study has for the crew: its hold points, then what the figures say.
Rows suctionRows(const Sheet& sheet, double width_mm) {
  const siting::SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr) return {};
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.suction"));
  w.body(desk.say(answer->verdict));
  for (const Message& range : answer->ranges) w.body(desk.say(range));
  if (answer->leak) w.body(desk.say(answer->leak->sentence));
  for (const Message& line : answer->shared.sentences) w.body(desk.say(line));
  if (answer->fitted) {
    for (const Message& line : answer->fitted->sentences) w.body(desk.say(line));
  }
  for (const Message& line : siting::suctionPaperLines(*answer).crew) w.tick(desk.say(line));
  return w.take();
}

Rows ticked(const Desk& desk, double width_mm, const char* heading,
            const std::vector<const char*>& ids) {
  Writer w(desk, width_mm);
  w.heading(desk.say(heading));
  for (const char* id : ids) w.tick(desk.say(id));
  return w.take();
}

/// Drawn, or where an overhead supply comes to the wall.
bool hasOverheadLine(const rules::Site& site) {
  return std::any_of(site.things.begin(), site.things.end(), [](const rules::Thing& thing) {
    return thing.kind == rules::ThingKind::overhead_line;
  });
}

Rows toolRows(const Sheet& sheet, double width_mm) {
  Rows rows = ticked(sheet.desk, width_mm, "paper.crew.protection",
                     {"paper.crew.ppe.mask", "paper.crew.ppe.eyes", "paper.crew.ppe.ears",
                      "paper.crew.ppe.gloves", "paper.crew.ppe.boots", "paper.crew.ppe.water"});
  std::vector<const char*> ids{
      "paper.crew.tool.locator", "paper.crew.tool.rig",   "paper.crew.tool.barrel",
      "paper.crew.tool.dig",     "paper.crew.tool.seal",  "paper.crew.tool.fan",
      "paper.crew.tool.gauge",   "paper.crew.tool.smoke", "paper.crew.tool.camera"};
  if (sheet.job().design.outlet == plan::OutletMode::riser) {
    ids.push_back("paper.crew.tool.ladder");
  }
  if (hasOverheadLine(sheet.study.site())) ids.push_back("paper.crew.tool.line");
  Rows tools = ticked(sheet.desk, width_mm, "paper.crew.tools", ids);
  rows.push_back({3.2, {}, false});
  rows.insert(rows.end(), tools.begin(), tools.end());
  return rows;
}

/// In this order, each with the rule that stops the work and a line to sign.
Rows holdRows(const Sheet& sheet, double width_mm) {
  static constexpr int kSteps = 12;
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.holds"));
  w.body(desk.say("paper.crew.holds.rule"));
  w.gap(1.0);
  std::vector<std::vector<Cell>> cells;
  for (int step = 1; step <= kSteps; ++step) {
    const std::string id = std::to_string(step);
    cells.push_back({Cell(id, fonts::strong), Cell(desk.say(Message("paper.hold-step." + id))),
                     Cell(desk.say(Message("paper.hold-stop." + id)), fonts::small), Cell(),
                     Cell()});
  }
  w.append(tableRows(desk,
                     {{"", 0.35},
                      {desk.say("paper.crew.hold"), 3.4},
                      {desk.say("paper.crew.stop"), 3.4},
                      {desk.say("paper.crew.date"), 1.0},
                      {desk.say("paper.crew.sign"), 1.7}},
                     cells, width_mm, {kSignature_mm, true}));
  return w.take();
}

/// What leaks, room by room, before anybody thinks of a second sump.
Rows sealRows(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.seals"));
  w.body(desk.say("paper.crew.seals.why"));
  w.gap(1.0);
  const auto where = [](plan::RoomUse use) -> const char* {
    switch (use) {
      case plan::RoomUse::kitchen:
        return "paper.seal.kitchen";
      case plan::RoomUse::bathroom:
      case plan::RoomUse::shower:
      case plan::RoomUse::wc:
        return "paper.seal.wet";
      case plan::RoomUse::utility:
      case plan::RoomUse::garage:
        return "paper.seal.utility";
      case plan::RoomUse::stairs:
      case plan::RoomUse::hall:
        return "paper.seal.hall";
      case plan::RoomUse::living:
      case plan::RoomUse::dining:
        return "paper.seal.living";
      default:
        return "paper.seal.other";
    }
  };
  std::vector<std::vector<Cell>> cells{{Cell(desk.say("paper.seal.house"), fonts::strong),
                                        Cell(desk.say("paper.seal.entries")), Cell()}};
  for (const plan::Room& room : sheet.job().plan.rooms) {
    const std::string name = room.name.empty() ? room.id : room.name;
    cells.push_back({Cell(name, fonts::strong), Cell(desk.say(Message(where(room.use)))), Cell()});
  }
  w.append(tableRows(desk,
                     {{desk.say("paper.crew.room"), 1.3},
                      {desk.say("paper.crew.look-at"), 3.6},
                      {desk.say("paper.crew.done"), 1.2}},
                     cells, width_mm, {5.6, true}));
  return w.take();
}

}  // namespace

Document crewSheet(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.crew.title"), forWhom(sheet, desk.say("paper.crew.for")));
  const double width = folio.width_mm();
  folio.add(verdictRows(sheet, width));
  folio.add(waiverRows(sheet, width));
  folio.add(planRows(sheet, width, kPlanShare * sheet.height_mm));
  if (sheet.assessment) {
    const double column = folio.columnWidth_mm(2);
    Writer w(desk, column);
    sizesTable(w, sheet);
    Rows rows = w.take();
    rows.push_back({3.2, {}, false});
    const Rows tools = toolRows(sheet, column);
    rows.insert(rows.end(), tools.begin(), tools.end());
    folio.add(rows, 2);
    folio.addWhole(sectionRows(sheet, width));
  } else {
    folio.add(toolRows(sheet, folio.columnWidth_mm(2)), 2);
  }
  folio.addWhole(suctionRows(sheet, width));
  Writer cautions(desk, folio.columnWidth_mm(2));
  writeHoldPoints(cautions, sheet);
  writeCautions(cautions, sheet);
  folio.add(cautions.take(), 2);
  folio.addWhole(holdRows(sheet, width));
  folio.addWhole(sealRows(sheet, width));
  return folio.finished();
}

}  // namespace sumpwright::dossier
