// The plan at the largest round scale that fits, and the walls unrolled.

#include <array>

#include "dossier/Sheet.h"
#include "drawing/Bands.h"
#include "drawing/PlanDrawing.h"
#include "drawing/TapeDrawing.h"

namespace sumpwright::dossier {
namespace {

/// Largest first; those after 1:250 only for a house that fits no page otherwise.
constexpr std::array kScales = {50, 75, 100, 125, 150, 200, 250, 400, 500, 1000, 2000, 5000};

struct Fitted {
  int scale = kScales.back();
  drawing::PlanView view;
};

/// With room for things in the garden where the scale allows it.
constexpr double kWideGarden_m = 3.0;

Fitted largest(const siting::Study& study, double width_mm, double height_mm) {
  const auto fits = [&](const drawing::PlanView& view) {
    return view.width_mm <= width_mm && view.height_mm <= height_mm;
  };
  Fitted out;
  for (int scale : kScales) {
    out = {scale, drawing::atScale(study, 1000.0 / scale, drawing::ThemeName::paper)};
    if (fits(out.view)) break;
  }
  const auto wide =
      drawing::atScale(study, 1000.0 / out.scale, drawing::ThemeName::paper, kWideGarden_m);
  if (fits(wide)) out.view = wide;
  out.view.width_mm = width_mm;
  out.view.height_mm = std::min(out.view.height_mm, height_mm);
  out.view.grid = false;
  out.view.furniture = false;
  out.view.overall_dimensions = true;
  return out;
}

struct Mover {
  Point by;
  Point operator()(Point p) const { return {p.x + by.x, p.y + by.y}; }
  std::vector<Point> operator()(std::vector<Point> points) const {
    for (Point& p : points) p = (*this)(p);
    return points;
  }
  drawing::Shape shape(const drawing::Stroke& s) const {
    return drawing::Stroke{(*this)(s.points), s.closed, s.pen};
  }
  drawing::Shape shape(drawing::Fill f) const {
    for (auto& ring : f.rings) ring = (*this)(ring);
    return f;
  }
  drawing::Shape shape(drawing::Arc a) const {
    a.centre = (*this)(a.centre);
    return a;
  }
  drawing::Shape shape(drawing::Text t) const {
    t.at = (*this)(t.at);
    return t;
  }
};

void place(Sketch& sketch, const drawing::DrawList& list, Point at) {
  const Mover mover{at};
  for (const drawing::Item& item : list.items) {
    sketch.put({std::visit([&](const auto& s) { return mover.shape(s); }, item.shape), item.tag});
  }
}

/// Every cored sump; the paper's own last, on top.
std::vector<drawing::DrawList> markers(const Sheet& sheet, const drawing::PlanView& view) {
  std::vector<drawing::DrawList> out;
  for (const plan::Sump& other : sheet.job().design.sumps) {
    if (other.kind != plan::SumpKind::cored || &other == sheet.sump) continue;
    const auto assessment = sheet.study.assess({other.ring, other.chainage_m}, other.id);
    out.push_back(drawing::planMarker(sheet.study, assessment, view, sheet.desk.voice, false));
  }
  if (sheet.assessment) {
    out.push_back(
        drawing::planMarker(sheet.study, *sheet.assessment, view, sheet.desk.voice, true));
  }
  return out;
}

constexpr double kSample_mm = 9.0;

struct LegendEntry {
  rules::State state;
  std::string words;
  double width_mm;
};

/// The four states with their lengths, each as wide as its words.
std::vector<LegendEntry> legend(const Sheet& sheet) {
  static constexpr const char* kWords[] = {"paper.legend.clear", "paper.legend.advised",
                                           "paper.legend.not-proven", "paper.legend.refused"};
  std::vector<LegendEntry> out;
  for (auto state : {rules::State::clear, rules::State::advised_against, rules::State::not_proven,
                     rules::State::refused}) {
    const auto i = static_cast<std::size_t>(state);
    const std::string words =
        sheet.desk.say(kWords[i], {base::metres("length", sheet.study.lengths_m()[i])});
    out.push_back({state, words, kSample_mm + 2.4 + sheet.desk.voice.width_mm(words, fonts::body)});
  }
  return out;
}

void paintLegend(Sketch& sketch, const Sheet& sheet, Point at, double width_mm) {
  const auto entries = legend(sheet);
  double words = 0.0;
  for (const LegendEntry& e : entries) words += e.width_mm;
  const double gap =
      std::max(3.0, (width_mm - 2.4 - words) / static_cast<double>(entries.size() - 1));
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

Rows planRows(const Sheet& sheet, double width_mm, double height_mm) {
  // North point and scale bar stand in a strip of their own above the plan.
  const double furniture = drawing::kFurnitureHeight_mm;
  Fitted fitted = largest(sheet.study, width_mm, height_mm - furniture - 1.5);
  if (sheet.assessment) fitted.view.keep_clear = sheet.assessment->place;
  const auto top = drawing::planFurniture(sheet.study, fitted.view, sheet.desk.voice);
  const auto base = drawing::planBase(sheet.study, fitted.view, sheet.desk.voice);
  const auto over = markers(sheet, fitted.view);
  const std::string scale =
      sheet.desk.say(sheet.options.size == PaperSize::a4 ? "paper.scale-a4" : "paper.scale-a3",
                     {base::count("scale", fitted.scale)});
  return {{furniture,
           [=, &sheet](Sketch& sketch, Point at) {
             place(sketch, top, at);
             sketch.tagged("scale").text({at.x + width_mm, at.y + 13.2}, scale, fonts::body,
                                         sheet.desk.theme.ink2, drawing::HAlign::right);
           },
           false},
          {fitted.view.height_mm,
           [=](Sketch& sketch, Point at) {
             place(sketch, base, at);
             for (const auto& list : over) place(sketch, list, at);
           },
           false},
          {1.5, {}, false}};
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
           place(sketch, base, at);
           place(sketch, marker, at);
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
