// A form to fill by hand when the fan runs: what was fitted, what was read, what was tested.

#include <algorithm>
#include <cstdint>

#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"
#include "plan/SumpList.h"

namespace sumpwright::dossier {
namespace {

constexpr double kWrite_mm = 8.5;      // height of a line to write on with a pen
constexpr double kSignLine_mm = 12.0;  // of a line to sign on
constexpr double kNotes_mm = 44.0;     // of the block for notes
constexpr std::size_t kSpare = 2;      // empty lines of a list, for what nobody has drawn

const TableStyle kForm{kWrite_mm, true, true};

/// What is asked, and room for the answer.
Rows fieldTable(const Desk& desk, double width_mm, const char* heading,
                const std::vector<const char*>& ids) {
  Writer w(desk, width_mm);
  w.heading(desk.say(heading));
  std::vector<std::vector<Cell>> cells;
  for (const char* id : ids) cells.push_back({Cell(desk.say(id)), Cell()});
  w.append(tableRows(desk, {{"", 1.1}, {"", 1.0}}, cells, width_mm, kForm));
  return w.take();
}

/// What a gauge of this job's units reads in.
base::Arg suctionUnit(const Sheet& sheet) {
  return base::phrase("unit", base::Message(sheet.desk.voice.inFeet() ? "paper.unit.inches-water"
                                                                      : "paper.unit.pascal"));
}
base::Arg flowUnit(const Sheet& sheet) {
  return base::phrase(
      "unit", base::Message(sheet.desk.voice.inFeet() ? "paper.unit.cfm" : "paper.unit.m3-h"));
}

/// Heading, what to mind, then the table.
Rows listTable(const Desk& desk, double width_mm, const char* heading, const char* how,
               const std::vector<TableColumn>& columns, const std::vector<std::vector<Cell>>& cells,
               const Font& font = fonts::body) {
  Writer w(desk, width_mm);
  w.heading(desk.say(heading));
  w.text(desk.say(how), font, desk.theme.ink);
  w.keepLastWithNext();
  w.gap(0.8);
  w.keepLastWithNext();
  w.append(tableRows(desk, columns, cells, width_mm, kForm));
  return w.take();
}

/// The radon the works are for: what was measured before, and what decides afterwards.
Rows radonTable(const Desk& desk, double width_mm) {
  return listTable(desk, width_mm, "paper.form.radon", "paper.form.radon.how",
                   {{"", 1.3},
                    {desk.say("paper.form.level"), 1.2},
                    {desk.say("paper.form.from-to"), 1.6},
                    {desk.say("paper.form.detectors"), 2.4}},
                   {{Cell(desk.say("paper.form.before"), fonts::strong)},
                    {Cell(desk.say("paper.form.re-test"), fonts::strong)}});
}

/// One row for each hole and some to spare; what was predicted there, where anything was.
Rows holeTable(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  std::vector<std::vector<Cell>> cells;
  bool predicted = false;
  for (const plan::TestHole& hole : sheet.job().plan.test_holes) {
    const std::string there = predictedIn(sheet, hole);
    predicted = predicted || !there.empty();
    cells.push_back(
        {Cell(hole.name.empty() ? hole.id : hole.name), Cell(there, Font{8.5, false, true})});
  }
  cells.resize(cells.size() + kSpare);
  std::vector<TableColumn> columns{{desk.say("paper.form.hole"), 1.6}};
  if (predicted) {
    columns.push_back({desk.say("paper.form.predicted"), 1.0});
  } else {
    for (auto& row : cells) row.resize(std::min<std::size_t>(row.size(), 1));
  }
  columns.push_back({desk.say("paper.form.fan-off", {suctionUnit(sheet)}), 1.0});
  columns.push_back({desk.say("paper.form.fan-on", {suctionUnit(sheet)}), 1.0});
  columns.push_back({desk.say("paper.form.after"), 1.2});
  return listTable(desk, width_mm, "paper.form.holes", "paper.form.holes.how", columns, cells);
}

/// Of each sump that has one, in words; on one fan for all there is but one.
std::vector<std::string> fansOf(const Sheet& sheet) {
  const plan::Design& design = sheet.job().design;
  std::vector<std::string> fans;
  for (const plan::Sump& sump : design.sumps) {
    if (design.shared_fan && !fans.empty()) break;
    fans.push_back(sheet.desk.say("paper.form.fan-number",
                                  {base::text("number", plan::sumpWord(sheet.job(), sump.id))}));
  }
  return fans;
}

/// A row each where there are several.
Rows fanTable(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  std::vector<std::vector<Cell>> cells;
  for (const std::string& fan : fansOf(sheet)) cells.push_back({Cell(fan)});
  std::vector<TableColumn> columns{{"", 1.2}};
  for (const char* id : {"paper.form.fan", "paper.form.serial", "paper.form.speed",
                         "paper.form.power", "paper.form.pipe"}) {
    columns.push_back({desk.say(id), 1.0});
  }
  return listTable(desk, width_mm, "paper.form.each-fan", "paper.form.each-fan.how", columns,
                   cells);
}

Rows legTable(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  std::vector<std::vector<Cell>> cells;
  std::int64_t number = 0;
  for (std::size_t i = 0; i < sheet.job().design.sumps.size(); ++i) {
    cells.push_back({Cell(desk.say("paper.form.sump-number", {base::count("number", ++number)}))});
  }
  if (cells.empty()) cells.emplace_back();
  return listTable(desk, width_mm, "paper.form.legs", "paper.form.legs.how",
                   {{desk.say("paper.form.sump"), 1.2},
                    {desk.say("paper.form.pit-pa", {suctionUnit(sheet)}), 1.0},
                    {desk.say("paper.form.flow", {flowUnit(sheet)}), 1.0},
                    {desk.say("paper.form.valve"), 1.0}},
                   cells);
}

/// Each appliance that takes its air from the room, and some nobody has listed.
Rows spillageTable(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  std::vector<std::vector<Cell>> cells;
  for (const plan::Appliance& appliance : sheet.job().house.appliances) {
    if (!appliance.open_flued) continue;
    std::string name = appliance.name;
    if (!appliance.where.empty()) name += ", " + appliance.where;
    cells.push_back({Cell(name)});
  }
  cells.resize(cells.size() + kSpare);
  return listTable(desk, width_mm, "paper.form.spillage", "paper.form.spillage.how",
                   {{desk.say("paper.form.appliance"), 1.8},
                    {desk.say("paper.form.spill-off"), 1.0},
                    {desk.say("paper.form.spill-on"), 1.0},
                    {desk.say("paper.form.spill-by"), 1.4}},
                   cells, fonts::strong);
}

/// A block over the whole width, then who signs.
Rows closingRows(const Desk& desk, double width_mm) {
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.form.notes"));
  w.append(tableRows(desk, {{"", 1.0}}, {{Cell()}}, width_mm, {kNotes_mm, true}));
  w.keepLastWithNext();
  w.gap(2.4);
  w.keepLastWithNext();
  w.append(tableRows(desk,
                     {{desk.say("paper.form.signed"), 2.2},
                      {desk.say("paper.form.name"), 1.6},
                      {desk.say("paper.crew.date"), 0.9},
                      {desk.say("paper.form.signature"), 1.8}},
                     {{Cell(desk.say("paper.form.crew"))}, {Cell(desk.say("paper.form.client"))}},
                     width_mm, {kSignLine_mm, true, true}));
  return w.take();
}

}  // namespace

Document commissioningForm(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  // Without today's date: it is filled on another day.
  Folio folio(sheet, desk.say("paper.form.title"), desk.say("paper.form.for"));
  const double width = folio.width_mm();
  Writer intro(desk, width);
  writeStops(intro, sheet);
  intro.body(desk.say("paper.form.intro"));
  folio.add(intro.take());
  folio.add(allWaiverRows(sheet, width));
  const double column = folio.columnWidth_mm(2);
  const bool several = fansOf(sheet).size() > 1;
  std::vector<const char*> fitted{"paper.form.date", "paper.form.weather"};
  if (!several) {
    fitted.insert(fitted.end(), {"paper.form.fan", "paper.form.serial", "paper.form.speed",
                                 "paper.form.power", "paper.form.pipe"});
  }
  fitted.insert(fitted.end(), {"paper.form.hole-built", "paper.form.outlet-built"});
  folio.addBeside(fieldTable(desk, column, "paper.form.fitted", fitted),
                  fieldTable(desk, column, "paper.form.tests",
                             {"paper.form.annulus", "paper.form.weep", "paper.form.gauge",
                              "paper.form.alarm", "paper.form.co-alarm", "paper.form.isolator",
                              "paper.form.certificate", "paper.form.labels"}));
  if (several) folio.addWhole(fanTable(sheet, width));
  folio.addWhole(legTable(sheet, width));
  folio.addWhole(holeTable(sheet, width));
  folio.addWhole(spillageTable(sheet, width));
  folio.addWhole(radonTable(desk, width));
  folio.addWhole(closingRows(desk, width));
  return folio.finished();
}

}  // namespace sumpwright::dossier
