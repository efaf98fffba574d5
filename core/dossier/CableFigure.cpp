// Where the cable goes through the outside wall, as it is taped, and its way on the plan.

#include <array>
#include <cmath>

#include "build/Levels.h"
#include "dossier/Figure.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "drawing/CableDrawing.h"

namespace sumpwright::dossier {
namespace {

constexpr double kMost_mm = 78.0;      // of the plan about the cable
constexpr double kUnderFan_m = 0.005;  // less prints as nought

/// From the fan's pipe, the shorter way round; more than nought: to the right, seen from outside.
double fromPipe_m(const Sheet& sheet, const ChosenCable& cable, perimeter::Place sleeve) {
  const double around = sheet.study.perimeter().length_m(sleeve.ring);
  return std::remainder(sleeve.chainage_m - cable.ask.fan.chainage_m, around);
}

class SleeveTable {
 public:
  SleeveTable(const Sheet& sheet, const ChosenCable& cable) : m_sheet(sheet), m_cable(cable) {}

  std::vector<std::vector<Cell>> cells(const build::CableSleeve& sleeve) {
    const Desk& desk = m_sheet.desk;
    add(desk.say("paper.cable.sleeve.middle"),
        desk.say(sleeve.height_m < 0.0 ? "paper.crew.below-floor" : "paper.crew.above-floor",
                 {base::metres("level", std::abs(sleeve.height_m))}));
    const std::string taped = fromDatum(m_sheet, sleeve.height_m);
    if (!taped.empty()) add({}, taped);
    length(desk.say("paper.cable.sleeve.ground"),
           sleeve.height_m - build::groundAt(m_sheet.study.site(), sleeve.place));
    corner(sleeve.place);
    pipe(sleeve.place);
    return std::move(m_cells);
  }

 private:
  void add(const std::string& what, const std::string& value) {
    m_cells.push_back({Cell(what), Cell(value, fonts::strong)});
  }
  void length(const std::string& what, double metres) {
    add(what, m_sheet.desk.say("paper.crew.length", {base::metres("length", metres)}));
  }
  /// The nearer of the two on its wall that a tape is put to.
  void corner(perimeter::Place place) {
    const drawing::Ties ties = drawing::tiesOf(m_sheet.study, place);
    const bool left = ties.before && (!ties.after || ties.before->length_m <= ties.after->length_m);
    const auto& nearest = left ? ties.before : ties.after;
    if (!nearest) return;
    length(m_sheet.desk.say(left ? "paper.cable.sleeve.right-of" : "paper.cable.sleeve.left-of",
                            {base::phrase("feature", nearest->label)}),
           nearest->length_m);
  }
  void pipe(perimeter::Place place) {
    if (m_cable.ask.fan_place == plan::FanPlace::roof_space) return;
    if (place.ring != m_cable.ask.fan.ring) return;
    const Desk& desk = m_sheet.desk;
    const double shift = fromPipe_m(m_sheet, m_cable, place);
    if (std::abs(shift) < kUnderFan_m) {
      return add(desk.say("paper.cable.sleeve.pipe"), desk.say("paper.cable.sleeve.under"));
    }
    length(desk.say(shift > 0.0 ? "paper.cable.sleeve.pipe-right" : "paper.cable.sleeve.pipe-left"),
           std::abs(shift));
  }

  const Sheet& m_sheet;
  const ChosenCable& m_cable;
  std::vector<std::vector<Cell>> m_cells;
};

}  // namespace

Rows sleeveRows(const Sheet& sheet, const ChosenCable& cable, double width_mm) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  for (const build::CableSleeve& sleeve : build::cableSleeves(sheet.study.site(), cable.route)) {
    w.text(desk.say("paper.cable.sleeve"), fonts::strong, desk.theme.ink);
    w.keepLastWithNext();
    w.append(tableRows(desk, {{"", 1.5}, {"", 1.3, drawing::HAlign::right}},
                       SleeveTable(sheet, cable).cells(sleeve), width_mm, {0.0, false, true}));
    w.gap(0.8);
  }
  Rows rows = w.take();
  if (rows.empty()) return rows;
  Writer how(desk, width_mm);
  how.append(std::move(rows));
  how.text(desk.say("paper.cable.sleeve.how"), fonts::small, desk.theme.ink2);
  how.gap(1.2);
  return how.take();
}

Rows cablePlanRows(const Sheet& sheet, const ChosenCable& cable, double width_mm) {
  static constexpr std::array kCableScales = {50, 75, 100, 150, 200, 250, 400};
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  for (const int scale : kCableScales) {
    const auto view = drawing::viewOfCable(cable.route, 1000.0 / scale, width_mm, kMost_mm);
    if (!view) continue;
    auto picture = drawing::planBase(sheet.study, *view, desk.voice);
    const auto way = drawing::planCable(sheet.study, cable.route, *view, desk.voice,
                                        drawing::wordsOf(picture, desk.voice));
    picture.items.insert(picture.items.end(), way.items.begin(), way.items.end());
    w.row(figureRow(std::move(picture), true));
    w.text(desk.say("paper.cable.figure", {base::count("scale", scale)}), fonts::small,
           desk.theme.ink2);
    w.gap(1.2);
    break;
  }
  return w.take();
}

}  // namespace sumpwright::dossier
