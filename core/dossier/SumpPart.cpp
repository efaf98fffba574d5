// What the crew has of one sump: where it is set out, what the hole goes through, how the run goes
// up and where the cable comes from. Of a place where nobody drills: why not, and no sizes.

#include <algorithm>
#include <cmath>

#include "build/Run.h"
#include "dossier/Figure.h"
#include "dossier/Folio.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "drawing/SectionDrawing.h"
#include "plan/SumpList.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

constexpr double kSectionHeight_mm = 112.0;
constexpr double kSectionShare = 0.42;  // at most, of a page that lies
constexpr double kElevationHeight_mm = 92.0;

/// Rows of a table of what and how much.
class SizeTable {
 public:
  explicit SizeTable(const Sheet& sheet) : m_sheet(sheet) {}

  void add(const char* what, const std::string& value) {
    m_cells.push_back({Cell(m_sheet.desk.say(what)), Cell(value, fonts::strong)});
  }
  void size(const char* what, double size_m) {
    add(what, m_sheet.desk.say("paper.crew.size", {base::millimetres("size", 1000.0 * size_m)}));
  }
  void tie(const std::optional<drawing::Tie>& one, const char* id) {
    if (!one) return;
    const Desk& desk = m_sheet.desk;
    m_cells.push_back({Cell(desk.say(id, {base::phrase("feature", one->label)})),
                       Cell(desk.say("paper.crew.length", {base::metres("length", one->length_m)}),
                            fonts::strong)});
  }
  /// From the floor, and as it is taped from outside where that can be.
  void level(const char* what, double level_m) {
    add(what, m_sheet.desk.say(level_m < 0.0 ? "paper.crew.below-floor" : "paper.crew.above-floor",
                               {base::metres("level", std::abs(level_m))}));
    const std::string taped = fromDatum(m_sheet, level_m);
    if (!taped.empty()) m_cells.push_back({Cell(), Cell(taped, fonts::strong)});
  }
  Rows rows(double width_mm) const {
    return tableRows(m_sheet.desk, {{"", 1.3}, {"", 1.3, drawing::HAlign::right}}, m_cells,
                     width_mm);
  }

 private:
  const Sheet& m_sheet;
  std::vector<std::vector<Cell>> m_cells;
};

void assumedText(Writer& w, const build::DrillSection& section) {
  const Desk& desk = w.desk();
  std::string all;
  for (const build::Assumption& one : section.up.assumed) {
    all += (all.empty() ? "" : "; ") + desk.say(one.what);
  }
  if (all.empty()) return;
  w.text(desk.say("paper.crew.assumed", {base::text("what", all)}), fonts::small, desk.theme.ink);
}

/// Every limit with what is there and what is needed; those that fail say so in words.
void marginLines(Writer& w, const build::DrillSection& section) {
  const Desk& desk = w.desk();
  for (const build::Margin& margin : section.margins) {
    const char* id = margin.passes     ? "paper.crew.margin"
                     : margin.advisory ? "paper.crew.margin-advised"
                                       : "paper.crew.margin-fails";
    w.text(desk.say(id, {base::phrase("what", margin.what)}),
           margin.passes ? fonts::body : fonts::strong,
           margin.passes ? desk.theme.ink : desk.theme.refused.text);
  }
}

}  // namespace

SumpPart::SumpPart(const Sheet& sheet)
    : m_sheet(sheet),
      m_section(build::drillSection(sheet.study.site(), sheet.assessment->place,
                                    build::wishOf(sheet.job(), *sheet.sump))),
      m_refused(sheet.assessment->state == rules::State::refused && !sheet.assessment->waived) {}

bool SumpPart::stopped() const { return m_refused || m_section.stopped; }

bool isStopped(const Sheet& sheet) { return sheet.assessment && SumpPart(sheet).stopped(); }

std::optional<Message> whatIsOpen(const Sheet& sheet) {
  if (!sheet.assessment) return std::nullopt;
  const SumpPart part(sheet);
  if (part.stopped()) return part.whyStopped();
  const rules::Site& site = sheet.study.site();
  const bool ends_nowhere = build::outletModeOf(site, *sheet.sump) == plan::OutletMode::riser &&
                            !build::placedRun(site, *sheet.sump);
  if (!ends_nowhere || sheet.assessment->state != rules::State::not_proven) return std::nullopt;
  return Message("paper.open.outlet");
}

void eachCored(const Sheet& sheet, const std::function<void(const Sheet&)>& use) {
  for (const plan::Sump& sump : sheet.job().design.sumps) {
    if (sump.kind != plan::SumpKind::cored) continue;
    ClientPlanOptions options = sheet.options;
    options.sump = sump.id;
    use(Sheet(sheet.study, sheet.desk.voice, options));
  }
}

bool anyStopped(const Sheet& sheet) {
  bool any = false;
  eachCored(sheet, [&](const Sheet& its) { any = any || isStopped(its); });
  return any;
}

bool anyOpen(const Sheet& sheet) {
  bool any = false;
  eachCored(sheet, [&](const Sheet& its) { any = any || whatIsOpen(its).has_value(); });
  return any;
}

void writeStops(Writer& w, const Sheet& sheet) {
  const Desk& desk = w.desk();
  eachCored(sheet, [&](const Sheet& its) {
    const auto why = whatIsOpen(its);
    if (!why) return;
    const bool stopped = isStopped(its);
    w.text(desk.say(stopped ? "paper.stopped" : "paper.open",
                    {base::text("sump", plan::sumpWord(sheet.job(), its.sump->id))}),
           fonts::strong, stopped ? desk.theme.refused.text : desk.theme.ink);
    w.body(desk.say(*why));
    w.gap(1.0);
  });
}

Message SumpPart::whyStopped() const {
  return m_refused ? m_sheet.assessment->sentence : m_section.verdict;
}

Rows SumpPart::stopRows(double width_mm) const {
  const Desk& desk = m_sheet.desk;
  Writer w(desk, width_mm);
  w.text(desk.say("paper.crew.stop-drilling"), fonts::verdict, desk.theme.refused.text);
  w.gap(1.0);
  w.body(desk.say(whyStopped()));
  w.body(desk.say("paper.crew.stop-why"));
  return w.take();
}

void SumpPart::writeSizes(Writer& w) const {
  const Desk& desk = w.desk();
  const rules::Site& site = m_sheet.study.site();
  w.heading(desk.say("paper.crew.set-out"));
  SizeTable table(m_sheet);
  table.tie(m_sheet.ties.before, "paper.crew.from");
  table.tie(m_sheet.ties.after, "paper.crew.from");
  table.tie(m_sheet.ties.check, "paper.crew.check");
  if (m_section.bore) table.level("paper.crew.hole-level", m_section.bore->entry_m);
  if (m_section.dig_m > 0.0) {
    table.level("paper.crew.dig-level", m_section.up.ground_m - m_section.dig_m);
  }
  table.size("paper.crew.core", site.core_m);
  table.size("paper.crew.pipe", site.pipe_od_m);
  const std::string& datum = m_sheet.job().house.height_datum;
  table.add("paper.crew.datum", datum.empty() ? desk.say("paper.crew.no-datum") : datum);
  w.append(table.rows(w.width()));
  if (!m_sheet.job().house.height_datum_m) w.tick(desk.say("paper.crew.datum-first"));
}

/// The drawing over the whole width, its figures below in columns.
void SumpPart::addSection(Folio& folio) const {
  const Desk& desk = m_sheet.desk;
  const double width = folio.width_mm();
  const double height = std::min(kSectionHeight_mm, kSectionShare * m_sheet.height_mm);
  Writer figure(desk, width);
  figure.heading(desk.say("paper.crew.section"));
  figure.text(desk.say(m_section.verdict), fonts::strong, desk.theme.ink);
  const drawing::SectionView view{width, height, drawing::ThemeName::paper, true};
  figure.row(figureRow(drawing::sectionDrawing(m_section, view, desk.voice)));
  Writer facts(desk, folio.columnWidth_mm(2));
  for (const Message& fact : build::factsOf(m_section)) facts.body(desk.say(fact));
  marginLines(facts, m_section);
  assumedText(facts, m_section);
  for (const Message& note : m_section.notes) facts.tick(desk.say(note));
  const Rows drawn = figure.take();
  const Rows told = facts.take();
  folio.addTogether(drawn, told, 2);
}

/// The run with its figures, then what to mind and the cable.
void SumpPart::addRun(Folio& folio) const {
  const Desk& desk = m_sheet.desk;
  const double width = folio.width_mm();
  Writer w(desk, width);
  w.heading(desk.say("paper.crew.run"));
  w.append(elevationRows(m_sheet, width, kElevationHeight_mm));
  w.gap(1.2);
  w.append(runRows(m_sheet, width));
  folio.addWhole(w.take());
  const double column = folio.columnWidth_mm(2);
  Writer advice(desk, column);
  writeRunAdvice(advice, m_sheet);
  advice.gap(3.2);
  advice.append(cableRows(m_sheet, column));
  folio.add(advice.take(), 2);
}

void SumpPart::addDrawings(Folio& folio) const {
  addSection(folio);
  addRun(folio);
}

}  // namespace sumpwright::dossier
