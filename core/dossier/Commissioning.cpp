// A form to fill by hand when the fan runs: what was fitted, what was read, what was tested.

#include <algorithm>
#include <array>

#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"

namespace sumpwright::dossier {
namespace {

/// Room for handwriting: first as it is pleasant, then tighter, so that one house is one sheet to
/// carry about.
struct FormRoom {
  double write_mm;  ///< height of a line to write on
  int spare_rows;
};
constexpr std::array<FormRoom, 6> kFormRooms{
    {{6.6, 3}, {6.6, 2}, {6.1, 2}, {5.6, 1}, {5.2, 1}, {4.8, 0}}};

/// What is asked, and room for the answer.
Rows fieldTable(const Desk& desk, double width_mm, FormRoom room, const char* heading,
                const std::vector<const char*>& ids) {
  Writer w(desk, width_mm);
  w.heading(desk.say(heading));
  std::vector<std::vector<Cell>> cells;
  for (const char* id : ids) cells.push_back({Cell(desk.say(id)), Cell()});
  w.append(tableRows(desk, {{"", 1.5}, {"", 1.0}}, cells, width_mm, {room.write_mm, true}));
  return w.take();
}

/// One row for each hole, with what was predicted there, and some to spare.
Rows holeTable(const Sheet& sheet, double width_mm, FormRoom room) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.form.holes"));
  w.body(desk.say("paper.form.holes.how"));
  w.gap(0.8);
  std::vector<std::vector<Cell>> cells;
  for (const plan::TestHole& hole : sheet.job().plan.test_holes) {
    cells.push_back({Cell(hole.name.empty() ? hole.id : hole.name),
                     Cell(predictedIn(sheet, hole), Font{8.5, false, true})});
  }
  cells.resize(cells.size() + static_cast<std::size_t>(room.spare_rows));
  w.append(tableRows(desk,
                     {{desk.say("paper.form.hole"), 1.6},
                      {desk.say("paper.expect.column-predicted"), 1.0},
                      {desk.say("paper.form.fan-off"), 1.0},
                      {desk.say("paper.form.fan-on"), 1.0},
                      {desk.say("paper.form.after"), 1.2}},
                     cells, width_mm, {room.write_mm, true}));
  return w.take();
}

Rows legTable(const Sheet& sheet, double width_mm, FormRoom room) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.form.legs"));
  w.body(desk.say("paper.form.legs.how"));
  w.gap(0.8);
  std::vector<std::vector<Cell>> cells;
  for (const plan::Sump& sump : sheet.job().design.sumps) cells.push_back({Cell(sump.id)});
  if (cells.empty()) cells.emplace_back();
  w.append(tableRows(desk,
                     {{desk.say("paper.form.sump"), 1.2},
                      {desk.say("paper.form.pit-pa"), 1.0},
                      {desk.say("paper.form.flow"), 1.0},
                      {desk.say("paper.form.valve"), 1.0}},
                     cells, width_mm, {room.write_mm, true}));
  return w.take();
}

/// Each appliance that takes its air from the room, and some nobody has listed.
Rows spillageTable(const Sheet& sheet, double width_mm, FormRoom room) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.form.spillage"));
  w.text(desk.say("paper.form.spillage.how"), fonts::strong, desk.theme.ink);
  w.gap(0.8);
  std::vector<std::vector<Cell>> cells;
  for (const plan::Appliance& appliance : sheet.job().house.appliances) {
    if (!appliance.open_flued) continue;
    std::string name = appliance.name;
    if (!appliance.where.empty()) name += ", " + appliance.where;
    cells.push_back({Cell(name)});
  }
  cells.resize(cells.size() + static_cast<std::size_t>(std::min(2, room.spare_rows)));
  w.append(tableRows(desk,
                     {{desk.say("paper.form.appliance"), 1.8},
                      {desk.say("paper.form.spill-off"), 1.0},
                      {desk.say("paper.form.spill-on"), 1.0},
                      {desk.say("paper.form.spill-by"), 1.4}},
                     cells, width_mm, {room.write_mm, true}));
  return w.take();
}

Document formWith(const Sheet& sheet, FormRoom room) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.form.title"), forWhom(sheet, desk.say("paper.form.for")));
  const double width = folio.width_mm();
  Writer intro(desk, width);
  intro.body(desk.say("paper.form.intro"));
  folio.add(intro.take());
  const double column = folio.columnWidth_mm(2);
  folio.addBeside(
      fieldTable(desk, column, room, "paper.form.fitted",
                 {"paper.form.date", "paper.form.weather", "paper.form.fan", "paper.form.serial",
                  "paper.form.speed", "paper.form.power", "paper.form.pipe"}),
      fieldTable(desk, column, room, "paper.form.tests",
                 {"paper.form.annulus", "paper.form.weep", "paper.form.gauge", "paper.form.alarm",
                  "paper.form.isolator", "paper.form.certificate", "paper.form.labels"}));
  folio.addWhole(legTable(sheet, width, room));
  folio.addWhole(holeTable(sheet, width, room));
  folio.addWhole(spillageTable(sheet, width, room));
  folio.addBeside(fieldTable(desk, column, room, "paper.form.retest",
                             {"paper.form.fan-since", "paper.form.detectors", "paper.form.rooms",
                              "paper.form.back"}),
                  fieldTable(desk, column, room, "paper.form.signed",
                             {"paper.form.crew", "paper.form.client", "paper.form.notes"}));
  return folio.finished();
}

}  // namespace

Document commissioningForm(const Sheet& sheet) {
  Document document;
  for (const FormRoom& room : kFormRooms) {
    document = formWith(sheet, room);
    if (document.pages.size() == 1) break;
  }
  return document;
}

}  // namespace sumpwright::dossier
