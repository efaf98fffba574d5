// The plan at the largest round scale that fits, and the walls unrolled.

#include <algorithm>
#include <array>

#include "dossier/Figure.h"
#include "dossier/Sheet.h"
#include "drawing/Bands.h"
#include "drawing/Beyond.h"
#include "drawing/Box.h"
#include "drawing/PlanDrawing.h"
#include "drawing/TapeDrawing.h"
#include "plan/SumpList.h"

namespace sumpwright::dossier {
namespace {

/// Largest first; those after 1:250 only for a house that fits no page otherwise.
constexpr std::array kScales = {50, 75, 100, 125, 150, 200, 250, 400, 500, 1000, 2000, 5000};

struct Fitted {
  int scale = kScales.back();
  drawing::PlanView view;
};

/// The largest scale at which the house fits with what stands close to it; then as much of the rest
/// as there is room for.
Fitted largest(const siting::Study& study, double width_mm, double height_mm) {
  Fitted out;
  for (int scale : kScales) {
    out = {scale, drawing::atScale(study, 1000.0 / scale, drawing::ThemeName::paper)};
    if (out.view.width_mm <= width_mm && out.view.height_mm <= height_mm) break;
  }
  out.view = drawing::holdingMost(study, out.view, width_mm, height_mm);
  out.view.grid = false;
  out.view.furniture = false;
  out.view.overall_dimensions = true;
  return out;
}

const char* scaleWords(PaperSize size) {
  if (size == PaperSize::a3) return "paper.scale-a3";
  return size == PaperSize::letter ? "paper.scale-letter" : "paper.scale-a4";
}

/// What the plan leaves out for want of room.
Rows beyondRows(const Sheet& sheet, const drawing::PlanView& view, double width_mm) {
  const Desk& desk = sheet.desk;
  std::string words;
  base::Message things;
  for (const plan::OutsideThing* t : drawing::beyond(sheet.study, view)) {
    const base::Message label = sheet.study.labelOf(t->id);
    things = things.id.empty() ? label
                               : base::Message("list.comma", {base::phrase("first", things),
                                                              base::phrase("second", label)});
  }
  if (!things.id.empty()) words = desk.say("paper.beyond", {base::phrase("things", things)});
  if (drawing::linesGoOn(sheet.study, view)) {
    words += (words.empty() ? "" : " ") + desk.say("paper.lines-go-on");
  }
  Writer w(desk, width_mm);
  if (!words.empty()) w.text(words, fonts::small, desk.theme.ink2);
  return w.take();
}

/// Every cored sump; the paper's own last, on top.
std::vector<drawing::DrawList> markers(const Sheet& sheet, const drawing::PlanView& view,
                                       const std::vector<drawing::Box>& words) {
  std::vector<drawing::DrawList> out;
  for (const plan::Sump& other : sheet.job().design.sumps) {
    if (other.kind != plan::SumpKind::cored || &other == sheet.sump) continue;
    const auto assessment = sheet.study.assess({other.ring, other.chainage_m}, other.id);
    out.push_back(drawing::planMarker(sheet.study, assessment, view, sheet.desk.voice, false, words,
                                      plan::neededNumber(sheet.job(), other.id)));
  }
  if (sheet.assessment) {
    out.push_back(drawing::planMarker(
        sheet.study, *sheet.assessment, view, sheet.desk.voice, !isStopped(sheet), words,
        sheet.sump != nullptr ? plan::neededNumber(sheet.job(), sheet.sump->id) : 0));
  }
  return out;
}

constexpr double kSample_mm = 9.0;
constexpr double kLeastLength_m = 0.05;  // less prints as nought

struct LegendEntry {
  rules::State state;
  std::string words;
  double width_mm;
};

/// The states that occur, with their lengths, each as wide as its words.
std::vector<LegendEntry> legend(const Sheet& sheet) {
  static constexpr const char* kWords[] = {"paper.legend.clear", "paper.legend.advised",
                                           "paper.legend.not-proven", "paper.legend.refused"};
  std::vector<LegendEntry> out;
  for (auto state : {rules::State::clear, rules::State::advised_against, rules::State::not_proven,
                     rules::State::refused}) {
    const auto i = static_cast<std::size_t>(state);
    if (sheet.study.lengths_m()[i] < kLeastLength_m) continue;
    const std::string words =
        sheet.desk.say(kWords[i], {base::metres("length", sheet.study.lengths_m()[i])});
    out.push_back({state, words, kSample_mm + 2.4 + sheet.desk.voice.width_mm(words, fonts::body)});
  }
  return out;
}

void paintLegend(Sketch& sketch, const Sheet& sheet, Point at, double width_mm) {
  const auto entries = legend(sheet);
  constexpr double kGap_mm = 12.0;
  constexpr double kLegendGap_mm = 3.0;
  double words = 2.4;
  for (const LegendEntry& e : entries) words += e.width_mm;
  const double gaps = static_cast<double>(entries.size()) - 1.0;
  const double gap =
      gaps > 0.0 ? std::clamp((width_mm - words) / gaps, kLegendGap_mm, kGap_mm) : 0.0;
  double x = at.x + 1.2;
  const double cap = sheet.desk.voice.capHeight_mm(fonts::body);
  for (const LegendEntry& e : entries) {
    drawing::bandSample(sketch, sheet.desk.theme, e.state, x, x + kSample_mm, at.y + 2.0);
    sketch.text({x + kSample_mm + 2.4, at.y + 2.0 + cap / 2.0}, e.words, fonts::body,
                sheet.desk.theme.ink);
    x += e.width_mm + gap;
  }
}

}  // namespace

PlanParts planParts(const Sheet& sheet, double width_mm, double height_mm) {
  constexpr double kUnder_mm = 1.5;
  Fitted fitted = largest(sheet.study, width_mm, height_mm - kUnder_mm);
  Rows beyond = beyondRows(sheet, fitted.view, width_mm);
  if (!beyond.empty()) {
    fitted = largest(sheet.study, width_mm, height_mm - kUnder_mm - heightOf(beyond));
    beyond = beyondRows(sheet, fitted.view, width_mm);
  }
  if (sheet.assessment) fitted.view.keep_clear = sheet.assessment->place;
  const auto top = drawing::planFurniture(sheet.study, fitted.view, sheet.desk.voice);
  const auto base = drawing::planBase(sheet.study, fitted.view, sheet.desk.voice);
  const auto over = markers(sheet, fitted.view, drawing::wordsOf(base, sheet.desk.voice));
  const std::string scale =
      sheet.desk.say(scaleWords(sheet.options.size), {base::count("scale", fitted.scale)});
  PlanParts parts{{drawing::kFurnitureHeight_mm + 1.8,
                   [=, &sheet](Sketch& sketch, Point at) {
                     placeDrawing(sketch, top, at);
                     sketch.tagged("scale").text({at.x + 20.5, at.y + 17.4}, scale, fonts::body,
                                                 sheet.desk.theme.ink2);
                     sketch.tagged("text");
                   },
                   false},
                  {{fitted.view.height_mm,
                    [=](Sketch& sketch, Point at) {
                      placeDrawing(sketch, base, at);
                      for (const auto& list : over) placeDrawing(sketch, list, at);
                    },
                    false}}};
  parts.plan.insert(parts.plan.end(), beyond.begin(), beyond.end());
  parts.plan.push_back({kUnder_mm, {}, false});
  return parts;
}

Rows planRows(const Sheet& sheet, double width_mm, double height_mm) {
  constexpr double kBeside_mm = 82.0;  // past the longest scale bar
  // North point and scale bar stand in a strip of their own above the plan, the ties beside them.
  const Rows ties = settingOutRows(sheet, width_mm - kBeside_mm);
  const double strip = std::max(drawing::kFurnitureHeight_mm + 1.8, heightOf(ties) + 1.0);
  PlanParts parts = planParts(sheet, width_mm, height_mm - strip);
  const auto key = parts.key.paint;
  Rows out{{strip,
            [=](Sketch& sketch, Point at) {
              key(sketch, at);
              Point line{at.x + kBeside_mm, at.y};
              if (!ties.empty()) sketch.tagged("set-out");
              for (const Row& row : ties) {
                row.paint(sketch, line);
                line.y += row.height_mm;
              }
              sketch.tagged("text");
            },
            false}};
  out.insert(out.end(), parts.plan.begin(), parts.plan.end());
  return out;
}

Rows stripRows(const Sheet& sheet, double width_mm) {
  drawing::TapeView view;
  view.width_mm = width_mm;
  view.theme = drawing::ThemeName::paper;
  view.label_mm = 2.5;
  view.lanes = false;
  view.height_mm = drawing::tapeFullHeight_mm(sheet.study, view);
  Writer w(sheet.desk, width_mm);
  w.heading(sheet.desk.say(sheet.study.perimeter().ringCount() > 1 ? "paper.strip-rings"
                                                                   : "paper.strip"));
  const auto base = drawing::tapeBase(sheet.study, view, sheet.desk.voice);
  const auto marker =
      sheet.assessment ? drawing::tapeMarker(sheet.study, *sheet.assessment, view, sheet.desk.voice)
                       : drawing::DrawList{};
  w.row({view.height_mm + 1.0,
         [=](Sketch& sketch, Point at) {
           placeDrawing(sketch, base, at);
           placeDrawing(sketch, marker, at);
         },
         true});
  w.row({4.6,
         [&sheet, width_mm](Sketch& sketch, Point at) {
           paintLegend(sketch.tagged("legend"), sheet, at, width_mm);
         },
         false});
  return w.take();
}

}  // namespace sumpwright::dossier
