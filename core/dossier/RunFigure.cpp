// The run as it will be seen, what it is set out by, and what to mind on the way up.

#include <cmath>

#include "build/Levels.h"
#include "build/Noise.h"
#include "build/Run.h"
#include "dossier/Figure.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "drawing/CableDrawing.h"
#include "siting/SuctionWords.h"

namespace sumpwright::dossier {
namespace {

constexpr double kNightOutside_db = 40.0;  // WHO, Night Noise Guidelines for Europe (from memory)

/// Litres a day from each m³/h of saturated air of 10 °C that is cooled to 0 °C: 9.4 and 4.85 g of
/// water in a cubic metre (from memory), 24 hours.
constexpr double kDampLitres = (9.4 - 4.85) * 24.0 / 1000.0;

/// The run of this sheet's sump: the study's own may be another's.
std::optional<rules::PlacedRun> runOf(const Sheet& sheet) {
  if (!sheet.assessment || sheet.sump == nullptr) return std::nullopt;
  return build::placedRun(sheet.study.site(), *sheet.sump);
}

bool isPlaced(const Sheet& sheet) { return runOf(sheet).has_value(); }

/// Nobody has placed its outlet, and nobody needs to: it is low, at the hole, and judged there.
bool isLowAtHole(const Sheet& sheet) {
  return sheet.sump != nullptr && !isPlaced(sheet) &&
         build::outletModeOf(sheet.study.site(), *sheet.sump) == plan::OutletMode::low;
}

/// Heights of one part of the run, in words: to the floor, to the ground, along the wall.
class RunTable {
 public:
  explicit RunTable(const Sheet& sheet) : m_sheet(sheet), m_run(*runOf(sheet)) {}

  std::vector<std::vector<Cell>> cells() {
    const double ground = build::groundAt(m_sheet.study.site(), m_sheet.assessment->place);
    const bool aside = m_run.shift_m != 0.0;
    const bool roof = m_run.fan_place == plan::FanPlace::roof_space;
    const bool low = m_run.fan_place == plan::FanPlace::outside_low;
    add("paper.run.ground", ground, 0.0);
    if (roof) {
      add("paper.run.into-roof", m_run.fan_m, m_run.shift_m);
    } else {
      add(m_run.fan_assumed ? "paper.run.fan-assumed" : "paper.run.fan", m_run.fan_m,
          low ? 0.0 : m_run.shift_m);
    }
    if (aside) add("paper.run.crossing", m_run.outlet_m - build::kCrossUnderOutlet_m, 0.0);
    add("paper.run.outlet", m_run.outlet_m, m_run.shift_m);
    return std::move(m_cells);
  }

 private:
  void add(const char* what, double height_m, double shift_m) {
    const Desk& desk = m_sheet.desk;
    const perimeter::Place place = m_sheet.study.perimeter().wrapped(
        {m_sheet.assessment->place.ring, m_sheet.assessment->place.chainage_m + shift_m});
    const double ground = build::groundAt(m_sheet.study.site(), place);
    m_cells.push_back({Cell(desk.say(what)), length(height_m), Cell(fromDatum(m_sheet, height_m)),
                       length(height_m - ground),
                       shift_m == 0.0
                           ? Cell(desk.say("paper.run.above-hole"))
                           : Cell(desk.say(shift_m > 0.0 ? "paper.run.right" : "paper.run.left",
                                           {base::metres("shift", std::abs(shift_m))}))});
  }
  Cell length(double metres) const {
    return Cell(m_sheet.desk.say("paper.crew.length", {base::metres("length", metres)}),
                fonts::strong);
  }

  const Sheet& m_sheet;
  rules::PlacedRun m_run;
  std::vector<std::vector<Cell>> m_cells;
};

void eavesLine(Writer& w, const Sheet& sheet) {
  const build::EavesPassed eaves =
      build::eavesPassed(sheet.study.site(), *runOf(sheet), sheet.assessment->place);
  if (eaves.isAround()) {
    w.tick(w.desk().say("paper.run.round-eaves", {base::metres("out", *eaves.out_m)}));
  } else if (eaves.passed && !eaves.out_m) {
    w.tick(w.desk().say("paper.run.overhang"));
  }
}

void lagLine(Writer& w, const Sheet& sheet) {
  const rules::PlacedRun run = *runOf(sheet);
  const Desk& desk = w.desk();
  const double open = build::exposedLength_m(sheet.study.site(), run, sheet.assessment->place);
  const base::Arg least = base::metres("least", build::kLagOver_m);
  if (run.fan_place == plan::FanPlace::roof_space) {
    w.tick(desk.say("paper.run.through-roof"));
    w.tick(desk.say("paper.run.roof-space"));
  }
  if (open > build::kLagOver_m) {
    std::vector<base::Arg> args{base::metres("open", open), least};
    const siting::SuctionAnswer* answer = sheet.answer();
    const double flow_m3_h = answer == nullptr ? 0.0 : siting::middleFlow_m3_h(*answer);
    if (flow_m3_h > 0.0) {
      args.push_back(base::flow("flow", base::Flow::ofM3PerH(flow_m3_h)));
      args.push_back(base::number("water", kDampLitres * flow_m3_h));
    }
    w.tick(desk.say(flow_m3_h > 0.0 ? "paper.run.lag-flow" : "paper.run.lag", std::move(args)));
  }
}

/// Straight up from the hole is where nobody has placed it: on paper, over windows, it would be
/// taken for a design.
void leaveOutRiser(drawing::DrawList& run) {
  std::erase_if(run.items, [](const drawing::Item& item) {
    return item.tag == "riser" && std::holds_alternative<drawing::Stroke>(item.shape);
  });
}

}  // namespace

Rows elevationRows(const Sheet& sheet, double width_mm, double height_mm) {
  if (!sheet.assessment || sheet.sump == nullptr) return {};
  const Desk& desk = sheet.desk;
  auto view = drawing::elevationAbout(sheet.study, sheet.assessment->place, width_mm, height_mm,
                                      drawing::ThemeName::paper);
  view.keep_clear = sheet.assessment->place;
  auto picture = drawing::elevationBase(sheet.study, view, desk.voice);
  auto run = drawing::elevationMarker(sheet.study, *sheet.assessment, sheet.sump->id, view,
                                      desk.voice, drawing::wordsOf(picture, desk.voice));
  if (!isPlaced(sheet)) leaveOutRiser(run);
  picture.items.insert(picture.items.end(), run.items.begin(), run.items.end());
  if (const auto cable = isStopped(sheet) ? std::nullopt : chosenCable(sheet)) {
    const auto way = drawing::elevationCable(sheet.study, cable->route,
                                             {cable->ask.fan, cable->ask.fan_height_m}, view,
                                             desk.voice, drawing::wordsOf(picture, desk.voice));
    picture.items.insert(picture.items.end(), way.items.begin(), way.items.end());
  }
  Writer w(desk, width_mm);
  w.row(figureRow(std::move(picture), true));
  w.text(desk.say(isPlaced(sheet)      ? "paper.run.figure"
                  : isLowAtHole(sheet) ? "paper.run.figure-low"
                                       : "paper.run.figure-unplaced"),
         fonts::small, desk.theme.ink2);
  return w.take();
}

Rows runRows(const Sheet& sheet, double width_mm) {
  if (!isPlaced(sheet)) return {};
  const Desk& desk = sheet.desk;
  const rules::Site& site = sheet.study.site();
  const rules::PlacedRun run = *runOf(sheet);
  Writer w(desk, width_mm);
  w.append(tableRows(desk,
                     {{desk.say("paper.run.part"), 2.2},
                      {desk.say("paper.run.to-floor"), 1.1, drawing::HAlign::right},
                      {desk.say("paper.run.to-datum"), 3.0},
                      {desk.say("paper.run.to-ground"), 1.2, drawing::HAlign::right},
                      {desk.say("paper.run.along"), 2.4}},
                     RunTable(sheet).cells(), width_mm, {0.0, false, true}));
  w.gap(1.0);
  const perimeter::Place hole = sheet.assessment->place;
  w.body(
      desk.say("paper.run.length", {base::metres("open", build::exposedLength_m(site, run, hole)),
                                    base::count("bends", build::bendsOutside(site, run, hole))}));
  return w.take();
}

void writeRunAdvice(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.run.mind"));
  w.tick(desk.say("paper.run.fall"));
  w.tick(desk.say("paper.run.pressure-side"));
  w.tick(desk.say("paper.run.couplers"));
  w.tick(desk.say("paper.run.supports"));
  w.tick(desk.say("paper.run.mesh"));
  if (isPlaced(sheet)) {
    lagLine(w, sheet);
    eavesLine(w, sheet);
  } else if (isLowAtHole(sheet)) {
    w.tick(desk.say("paper.run.low"));
  } else if (sheet.sump != nullptr) {
    w.tick(desk.say("paper.run.unplaced"));
    w.tick(desk.say("paper.run.lag-unplaced", {base::metres("least", build::kLagOver_m)}));
  }
}

void writeNoise(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  const bool silencer = sheet.job().design.silencer == plan::YesNo::yes;
  std::optional<build::Hearer> hearer;
  if (const auto run = runOf(sheet)) {
    rules::Site site = sheet.study.site();
    site.run = run;
    hearer = build::nearestHearer(site, sheet.assessment->place);
  }
  if (hearer && hearer->distance_m > 0.1) {
    const double level = build::levelAt_db(build::kFanSound_db, hearer->distance_m);
    w.body(desk.say(
        "paper.noise.near",
        {base::phrase("window", hearer->label), base::metres("distance", hearer->distance_m),
         base::number("level", level), base::number("power", build::kFanSound_db)}));
    if (!silencer && level > kNightOutside_db) {
      w.body(desk.say("paper.noise.loud", {base::number("guide", kNightOutside_db)}));
    }
  } else {
    w.body(desk.say("paper.noise.usual",
                    {base::number("power", build::kFanSound_db),
                     base::number("level", build::levelAt_db(build::kFanSound_db, 2.0))}));
  }
  w.body(desk.say(silencer ? "paper.noise.silencer" : "paper.noise.no-silencer"));
}

}  // namespace sumpwright::dossier
