// What to expect: the share of floor held, as predicted and as measured. Never a concentration: no
// published formula turns suction under a floor into Bq/m3.

#include <algorithm>
#include <cmath>
#include <set>

#include "base/Rounding.h"
#include "dossier/Figure.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "dossier/Wording.h"
#include "drawing/FieldDrawing.h"
#include "drawing/FieldLegend.h"
#include "plan/SuctionEdits.h"
#include "siting/SuctionPlaces.h"
#include "siting/SuctionWords.h"
#include "suction/Field.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using siting::SuctionAnswer;

constexpr Font kShare{17.0, true, true};
constexpr Font kAbout{12.0, false, true};
constexpr Font kPredicted{8.5, false, true};
constexpr double kFigureRim_mm = 6.0;  // for sumps that stand out of the wall
constexpr double kFigureHeight_mm = 66.0;
constexpr double kNearlyAll = 0.995;  // prints as 100 %

/// As the large figure is printed.
double wholePercent(double share) { return base::roundedDown(100.0 * share); }

base::Arg targetArg(const SuctionAnswer& answer) {
  return base::pressure("target", base::Pressure::ofPa(answer.target.design_pa));
}

std::string holeName(const plan::Plan& plan, const std::string& id) {
  for (const plan::TestHole& hole : plan.test_holes) {
    if (hole.id == id) return hole.name.empty() ? hole.id : hole.name;
  }
  return id;
}

/// Contradicted by the other holes, so that the ground was fitted without it: what is predicted
/// there is not to be compared with.
bool isLeftOut(const plan::Plan& plan, const SuctionAnswer& answer, const std::string& hole) {
  if (!answer.fitted) return false;
  const std::string name = holeName(plan, hole);
  const auto& holes = answer.fitted->fit.holes;
  return std::any_of(holes.begin(), holes.end(),
                     [&](const suction::Misfit& one) { return one.outlier && one.hole == name; });
}

/// The figure large, its meaning beside it, the band as words and as a bar.
void shareRows(Writer& w, const SuctionAnswer& answer) {
  const Desk& desk = w.desk();
  const siting::Band& band = answer.floor_held;
  const std::string figure =
      desk.say("paper.expect.share", {base::percent("share", 100.0 * siting::middleFloor(answer))});
  const std::string about = desk.say("paper.expect.about");
  const double about_mm = desk.voice.width_mm(about, kAbout) + 1.2;
  const double text_x = about_mm + desk.voice.width_mm(figure, kShare) + 4.0;
  auto lines = wrapped(desk, desk.say("paper.expect.of-floor", {targetArg(answer)}), fonts::body,
                       w.width() - text_x);
  const bool one = wholePercent(band.low) == wholePercent(band.high);
  const std::string likely =
      desk.say(one ? "paper.expect.band-one" : "paper.expect.band",
               {base::percent("low", 100.0 * band.low), base::percent("high", 100.0 * band.high)});
  for (auto& line : wrapped(desk, likely, fonts::body, w.width() - text_x)) {
    lines.push_back(std::move(line));
  }
  const double step = drawing::leading_mm(fonts::body);
  const double height = std::max(9.0, step * static_cast<double>(lines.size()) + 1.0);
  w.row({height,
         [=, &desk](Sketch& sketch, Point at) {
           const double base = at.y + 1.0 + desk.voice.capHeight_mm(kShare);
           sketch.tagged("expect").text({at.x, base}, about, kAbout, desk.theme.ink);
           sketch.text({at.x + about_mm, base}, figure, kShare, desk.theme.ink);
           double y = at.y + 0.6 + desk.voice.capHeight_mm(fonts::body);
           for (const std::string& line : lines) {
             sketch.text({at.x + text_x, y}, line, fonts::body, desk.theme.ink);
             y += step;
           }
           sketch.tagged("text");
         },
         true});
  auto bar = drawing::shareBar({band.low, siting::middleFloor(answer), band.high},
                               drawing::ThemeName::paper, w.width());
  w.row(figureRow(std::move(bar), true));
  w.text(desk.say("paper.expect.predicted"), kPredicted, desk.theme.ink2);
  w.keepLastWithNext();
}

drawing::PlanView figureView(const Sheet& sheet, double width_mm) {
  std::vector<Point> house;
  for (int r = 0; r < sheet.study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : sheet.study.perimeter().edges(r)) house.push_back(e.from);
  }
  const drawing::Box box = drawing::boxOf(house);
  drawing::PlanView view;
  view.theme = drawing::ThemeName::paper;
  view.grid = false;
  view.furniture = false;
  view.centre_m = box.centre();
  view.width_mm = width_mm;
  view.mm_per_m = std::min((width_mm - 2.0 * kFigureRim_mm) / std::max(0.5, box.width()),
                           (kFigureHeight_mm - 2.0 * kFigureRim_mm) / std::max(0.5, box.height()));
  view.height_mm = view.mm_per_m * box.height() + 2.0 * kFigureRim_mm;
  return view;
}

void fieldRows(Writer& w, const Sheet& sheet, const SuctionAnswer& answer) {
  if (!answer.field) return;
  const Desk& desk = w.desk();
  const auto view = figureView(sheet, w.width());
  const auto drawn =
      drawing::fieldSheet(sheet.study, answer.field->model, view, desk.voice, {}, true);
  drawing::FieldShown shown;
  shown.field = {&answer.field->network, &answer.field->suction_pa};
  shown.target = answer.target.design_pa;
  auto holes = drawing::predictedAt(sheet.job().plan, shown.field);
  for (drawing::HoleMark& hole : holes) {
    if (isLeftOut(sheet.job().plan, answer, hole.id)) hole.predicted_pa.reset();
  }
  auto picture = drawing::fieldPicture(drawn, shown, holes, desk.voice);
  w.gap(1.0);
  w.row(figureRow(std::move(picture), true));
  w.row(figureRow(drawing::fieldLegend(drawing::FieldKind::suction, shown.target,
                                       drawing::ThemeName::paper, w.width(), desk.voice),
                  true));
  // A line there is only where the floor lies to both sides of the target.
  const auto& pa = answer.field->suction_pa;
  const auto [least, most] = std::minmax_element(pa.begin(), pa.end());
  if (least != pa.end() && *least < shown.target && *most >= shown.target) {
    w.row(figureRow(drawing::targetKey(drawing::FieldKind::suction, shown.target, false,
                                       drawing::ThemeName::paper, w.width(), desk.voice),
                    true));
  }
  w.row(figureRow(drawing::colourKey(drawing::FieldKind::suction, drawing::ThemeName::paper,
                                     w.width(), desk.voice),
                  true));
  w.text(desk.say("paper.expect.figure"), fonts::small, desk.theme.ink2);
}

std::string pascals(const Desk& desk, const char* id, double pa) {
  return desk.say(id, {base::pressure("pa", base::Pressure::ofPa(pa))});
}

/// To two figures: more would be pretended.
std::string predictedPascals(const Desk& desk, double pa) {
  if (pa < 10.0) return pascals(desk, "paper.expect.hole-predicted", pa);
  double step = 1.0;
  while (pa >= 100.0 * step) step *= 10.0;
  return pascals(desk, "paper.expect.hole-predicted-whole", step * std::round(pa / step));
}

/// Hole by hole what was read and, where the flow was measured, what had been predicted for that
/// flow from where the sump stood.
Rows readingRows(const Sheet& sheet, const plan::PressureTest& test,
                 const siting::ExpectedTest* expected, double width_mm) {
  const Desk& desk = sheet.desk;
  std::vector<TableColumn> columns{{desk.say("paper.expect.hole"), 2.0}};
  if (expected != nullptr) {
    columns.push_back({desk.say("paper.expect.column-before",
                                {base::flow("flow", base::Flow::ofM3PerS(expected->flow_m3_s))}),
                       1.4, drawing::HAlign::right});
  }
  columns.push_back({desk.say("paper.expect.column-measured"), 1.0, drawing::HAlign::right});
  std::vector<std::vector<Cell>> cells;
  for (const plan::HoleReading& reading : test.readings) {
    std::vector<Cell> row{Cell(holeName(sheet.job().plan, reading.hole))};
    if (expected != nullptr) {
      const auto pa = expected->in(reading.hole);
      row.emplace_back(pa ? predictedPascals(desk, *pa) : std::string(), kPredicted);
    }
    row.emplace_back(pascals(desk, "paper.expect.hole-measured", reading.suction_pa),
                     fonts::strong);
    cells.push_back(std::move(row));
  }
  return tableRows(desk, columns, cells, width_mm);
}

/// Readings of pressure tests: marked measured, with the day and the fan they were taken with.
void measuredRows(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  const SuctionAnswer* answer = sheet.answer();
  for (const plan::PressureTest& test : sheet.job().suction.tests) {
    if (test.readings.empty()) continue;
    w.gap(1.6);
    w.text(desk.say(test.date.empty() ? "paper.expect.measured" : "paper.expect.measured-on",
                    {base::text("date", test.date)}),
           fonts::strong, desk.theme.ink);
    w.keepLastWithNext();
    if (plan::hasMovedSince(sheet.job(), test)) {
      w.text(desk.say("paper.expect.stood",
                      {base::phrase("where", siting::placeOfSump(sheet.study, *test.stood))}),
             fonts::small, desk.theme.ink2);
      w.keepLastWithNext();
    }
    const siting::ExpectedTest* expected =
        answer == nullptr ? nullptr : siting::expectedIn(answer->expected, test.id);
    w.append(readingRows(sheet, test, expected, w.width()));
    if (expected != nullptr) {
      w.text(desk.say("paper.expect.before"), fonts::small, desk.theme.ink2);
    }
    if (!test.fan.empty()) {
      w.text(desk.say("paper.expect.test-fan", {base::text("fan", test.fan)}), fonts::small,
             desk.theme.ink2);
    }
  }
}

/// Where a second sump would help. A client reads no second pair of figures beside the one above.
void secondRows(Writer& w, const Sheet& sheet, const SuctionAnswer& answer, bool for_client) {
  if (!answer.second || !answer.second->helps) return;
  const perimeter::Perimeter& walls = sheet.study.perimeter();
  const perimeter::Edge& edge = walls.edgeAt(answer.second->place);
  w.body(w.desk().say(for_client ? "paper.expect.second-client" : "paper.expect.second",
                      {base::phrase("wall", walls.wallLabel(edge)),
                       base::percent("before", 100.0 * answer.mean_floor),
                       base::percent("after", 100.0 * answer.second->mean_floor)}));
}

/// Powers of ten are for the command, not for a client.
bool isForExperts(const Message& assumption) {
  return assumption.id == "suction.assumed.permeability" ||
         assumption.id == "suction.assumed.soil" || assumption.id == "suction.assumed.joint";
}

void dutyRows(Writer& w, const Sheet& sheet, const SuctionAnswer& answer) {
  const Desk& desk = w.desk();
  w.body(desk.say("paper.expect.fan", {base::text("fan", sheet.options.outlook->fan)}));
  for (const Message& range : answer.ranges) w.body(desk.say(range));
  for (const Message& remark : answer.remarks) w.body(desk.say(remark));
  secondRows(w, sheet, answer, false);
  if (!answer.thumb.sentence.id.empty()) {
    w.text(desk.say(answer.thumb.sentence), fonts::small, desk.theme.ink2);
  }
}

void assumedRows(Writer& w, const SuctionAnswer& answer) {
  const Desk& desk = w.desk();
  std::string all = desk.say("paper.expect.assumed");
  bool experts = false;
  for (const siting::Assumption& one : answer.assumptions) {
    if (!isForExperts(one.what)) {
      all += ' ' + desk.say(one.what);
    } else if (!experts) {
      all += ' ' + desk.say("paper.expect.ranges");
      experts = true;
    }
  }
  w.gap(1.0);
  w.text(all, fonts::small, desk.theme.ink2);
}

/// The ground as it was measured, if it was.
void fittedRows(Writer& w, const SuctionAnswer& answer) {
  if (!answer.fitted) return;
  const Desk& desk = w.desk();
  w.body(desk.say(answer.fitted->usable() ? "paper.expect.fitted" : "paper.expect.not-fitted"));
  if (!answer.fitted->usable()) return;
  std::set<std::string> told;
  for (const suction::Misfit& hole : answer.fitted->fit.holes) {
    if (!hole.outlier || !told.insert(hole.hole).second) continue;
    w.body(desk.say("paper.expect.left-out",
                    {base::text("hole", hole.hole),
                     base::pressure("measured", base::Pressure::ofPa(hole.measured_pa))}));
  }
}

/// The shares of one prediction that stand on these papers, and what each of them is.
void sharesLine(Writer& w, const SuctionAnswer& answer) {
  const double middle = wholePercent(siting::middleFloor(answer));
  const double likely = wholePercent(answer.likely_floor);
  const double mean = wholePercent(answer.mean_floor);
  if (middle == likely && likely == mean) return;
  w.body(w.desk().say("paper.expect.shares",
                      {base::percent("middle", middle), base::percent("likely", likely),
                       base::percent("mean", mean)}));
}

/// What holds whatever the figures are.
void cautionRows(Writer& w, const SuctionAnswer& answer) {
  const Desk& desk = w.desk();
  w.gap(1.0);
  w.text(desk.say("paper.expect.retest"), fonts::strong, desk.theme.ink);
  for (const Message& caution : answer.cautions) {
    // The others are said among the cautions of the work, or below.
    if (caution.id == "suction.caution.no-concentration") w.body(desk.say(caution));
  }
  for (const Message& line : siting::suctionPaperLines(answer).client) w.body(desk.say(line));
}

}  // namespace

std::string predictedIn(const Sheet& sheet, const plan::TestHole& hole) {
  const SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr || !answer->field) return {};
  if (isLeftOut(sheet.job().plan, *answer, hole.id)) return {};
  const auto pa = suction::sampleAt(answer->field->network, answer->field->suction_pa, hole.at_m);
  if (!pa) return {};
  return predictedPascals(sheet.desk, *pa);
}

void writeExpect(Writer& w, const Sheet& sheet) {
  if (sheet.options.suction == Suction::left_out) return;
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.expect"));
  // The figure is of all sumps together.
  if (anyStopped(sheet)) {
    w.body(desk.say("paper.expect.stopped"));
    return measuredRows(w, sheet);
  }
  const SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr) {
    if (sheet.job().design.sumps.empty()) {
      w.body(desk.say("paper.expect.no-sump"));
    } else if (!sheet.options.outlook) {
      w.body(desk.say("paper.expect.not-computed"));
    } else {
      for (const base::Problem& problem : sheet.options.outlook->why_not) {
        w.body(desk.say("paper.expect.none", {base::phrase("why", problem.message)}));
      }
    }
    measuredRows(w, sheet);
    return;
  }
  const bool answered = answer->state == siting::SuctionState::answered;
  if (answered) {
    shareRows(w, *answer);
    w.body(desk.say("paper.expect.means"));
    if (answer->likely_floor < kNearlyAll && !answer->least_where.id.empty()) {
      w.body(desk.say("paper.expect.least", {base::phrase("where", answer->least_where)}));
    }
    fieldRows(w, sheet, *answer);
  } else {
    w.body(desk.say("paper.expect.unpredicted"));
  }
  measuredRows(w, sheet);
  fittedRows(w, *answer);
  if (answered) secondRows(w, sheet, *answer, true);
  cautionRows(w, *answer);
}

void writeReckoned(Writer& w, const Sheet& sheet) {
  const SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr) return;
  if (answer->state == siting::SuctionState::answered) {
    sharesLine(w, *answer);
    dutyRows(w, sheet, *answer);
  }
  assumedRows(w, *answer);
}

}  // namespace sumpwright::dossier
