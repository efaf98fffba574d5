// What the crew has in the hand: where the hole is set out, what it goes through, what to bring,
// when to stop and who says go on.

#include <algorithm>
#include <deque>

#include "build/Run.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/PlanPages.h"
#include "dossier/Table.h"
#include "dossier/Works.h"
#include "plan/SumpList.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

constexpr double kPlanShare = 0.42;    // of a page, so that the setting-out stands on the same one
constexpr double kUnderPlan_mm = 4.0;  // left of a page that lies, which the plan has to itself

/// What the suction study has for the crew: its hold points, then what the figures say.
Rows suctionRows(const Sheet& sheet, double width_mm) {
  const siting::SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr) return {};
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.suction"));
  w.body(desk.say(answer->verdict));
  if (answer->leak) w.body(desk.say(answer->leak->sentence));
  for (const Message& line : answer->shared.sentences) w.body(desk.say(line));
  if (answer->fitted) {
    for (const Message& line : answer->fitted->sentences) w.body(desk.say(line));
  }
  writeReckoned(w, sheet);
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
  const auto& sumps = sheet.job().design.sumps;
  if (std::any_of(sumps.begin(), sumps.end(), [&](const plan::Sump& sump) {
        return build::outletModeOf(sheet.study.site(), sump) == plan::OutletMode::riser;
      })) {
    ids.push_back("paper.crew.tool.ladder");
  }
  if (hasOverheadLine(sheet.study.site())) ids.push_back("paper.crew.tool.line");
  Rows tools = ticked(sheet.desk, width_mm, "paper.crew.tools", ids);
  rows.push_back({3.2, {}, false});
  rows.insert(rows.end(), tools.begin(), tools.end());
  return rows;
}

/// The other cored sumps, each as a sheet of its own; none where one sump was asked for.
class OtherSumps {
 public:
  explicit OtherSumps(const Sheet& sheet) {
    if (!sheet.options.sump.empty()) return;
    for (const plan::Sump& sump : sheet.job().design.sumps) {
      if (sump.kind != plan::SumpKind::cored || &sump == sheet.sump) continue;
      m_options.push_back(sheet.options);
      m_options.back().sump = sump.id;
      m_sheets.emplace_back(sheet.study, sheet.desk.voice, m_options.back());
    }
  }
  const std::deque<Sheet>& sheets() const { return m_sheets; }

 private:
  std::deque<ClientPlanOptions> m_options;  // sheets refer to them: they stay where they are
  std::deque<Sheet> m_sheets;
};

/// What is said of one more sump: its verdict, its figures, its drawings.
void addOther(Folio& folio, const Sheet& other) {
  const Desk& desk = other.desk;
  const SumpPart part(other);
  Writer w(desk, folio.width_mm());
  w.heading(desk.say("paper.crew.other",
                     {base::text("sump", plan::sumpWord(other.job(), other.sump->id))}));
  w.body(desk.say(other.assessment->sentence));
  folio.newPage();
  folio.add(w.take());
  folio.add(waiverRows(other, folio.width_mm()));
  if (part.stopped()) return folio.addWhole(part.stopRows(folio.width_mm()));
  Writer sizes(desk, folio.columnWidth_mm(2));
  part.writeSizes(sizes);
  folio.add(sizes.take(), 2);
  part.addDrawings(folio);
}

/// A sump inside, or a pipe that was there: what is known of it, and room for its run and cable,
/// which no drawing holds.
Rows insideRows(const Sheet& sheet, const plan::Sump& sump, double width_mm) {
  const Desk& desk = sheet.desk;
  const bool standby = sump.kind == plan::SumpKind::standby;
  const plan::StandbySump& found = sheet.job().house.standby;
  Writer w(desk, width_mm);
  w.heading(desk.say(standby ? "paper.crew.standby" : "paper.crew.inside",
                     {base::text("sump", plan::sumpWord(sheet.job(), sump.id))}));
  if (standby && !found.where.empty()) {
    w.body(desk.say("paper.crew.standby-where", {base::text("where", found.where)}));
  }
  if (standby) {
    w.tick(desk.say(
        found.drain_test.empty() ? "paper.crew.standby-untested" : "paper.crew.standby-tested",
        {base::text("test", found.drain_test)}));
  }
  w.body(desk.say("paper.crew.inside-run"));
  w.keepLastWithNext();
  w.gap(0.8);
  w.keepLastWithNext();
  std::vector<std::vector<Cell>> cells;
  for (const char* id :
       {"paper.crew.inside.way", "paper.crew.inside.fan", "paper.crew.inside.outlet",
        "paper.crew.inside.nearest", "paper.crew.inside.cable"}) {
    cells.push_back({Cell(desk.say(id)), Cell()});
  }
  w.append(tableRows(desk, {{"", 1.0}, {"", 1.2}}, cells, width_mm, {kSignature_mm, true, true}));
  return w.take();
}

/// Those of the design; none where one sump was asked for.
std::vector<const plan::Sump*> insideSumps(const Sheet& sheet) {
  std::vector<const plan::Sump*> out;
  if (!sheet.options.sump.empty()) return out;
  for (const plan::Sump& sump : sheet.job().design.sumps) {
    if (sump.kind != plan::SumpKind::cored) out.push_back(&sump);
  }
  return out;
}

Works worksOf(const Sheet& sheet, const OtherSumps& others) {
  Works works;
  works.cored = sheet.assessment && !isStopped(sheet);
  for (const Sheet& other : others.sheets()) works.cored = works.cored || !isStopped(other);
  for (const plan::Sump* sump : insideSumps(sheet)) {
    (sump->kind == plan::SumpKind::standby ? works.standby : works.internal) = true;
  }
  return works;
}

/// Sumps that are asked for elsewhere, so that nobody takes this sheet for the whole job.
void addNotHere(Folio& folio, const Sheet& sheet) {
  if (sheet.options.sump.empty()) return;
  Writer w(sheet.desk, folio.width_mm());
  for (const plan::Sump& sump : sheet.job().design.sumps) {
    if (&sump != sheet.sump)
      w.tick(sheet.desk.say("paper.crew.not-here",
                            {base::text("sump", plan::sumpWord(sheet.job(), sump.id))}));
  }
  folio.add(w.take());
}

/// Its sizes, unless they stand beside the plan already, and its drawings.
void addFirst(Folio& folio, const Sheet& sheet, bool sized) {
  if (!sheet.assessment) return;
  const SumpPart part(sheet);
  if (part.stopped()) return;  // said beside the plan
  if (!sized) {
    Writer w(sheet.desk, folio.columnWidth_mm(2));
    part.writeSizes(w);
    folio.add(w.take(), 2);
  }
  part.addDrawings(folio);
}

/// That nobody drills there, and what was waived.
Rows warnings(const Sheet& sheet, double width_mm) {
  Rows rows = isStopped(sheet) ? SumpPart(sheet).stopRows(width_mm) : Rows();
  Rows waivers = waiverRows(sheet, width_mm);
  if (!rows.empty() && !waivers.empty()) rows.push_back({2.0, {}, false});
  rows.insert(rows.end(), waivers.begin(), waivers.end());
  return rows;
}

/// On a sheet that lies warnings and sizes stand beside the plan, which else was a stamp under
/// them; false where they are more than a page holds.
bool addBesidePlan(Folio& folio, const Sheet& sheet) {
  const double column = columnWidth_mm(sheet);
  const double room_mm = folio.room_mm() - kUnderPlan_mm;
  const PlanParts drawn = planParts(sheet, folio.besideWidth_mm(column), room_mm);
  Rows left = warnings(sheet, column);
  if (sheet.assessment && !isStopped(sheet)) {
    Writer w(sheet.desk, column);
    SumpPart(sheet).writeSizes(w);
    const Rows sizes = w.take();
    left.insert(left.end(), sizes.begin(), sizes.end());
  }
  left.push_back({3.0, {}, false});
  left.push_back(drawn.key);
  if (heightOf(left) > room_mm) return false;
  folio.addBeside(left, drawn.plan, column);
  return true;
}

/// What is minded and signed where anything is drilled or fitted at all.
void addHolds(Folio& folio, const Sheet& sheet, const Works& works) {
  if (!works.any()) return;
  const double width = folio.width_mm();
  folio.add(suctionRows(sheet, width));
  const double column = folio.columnWidth_mm(2);
  Writer cautions(sheet.desk, column);
  cautions.append(toolRows(sheet, column));
  writeHoldPoints(cautions, sheet);
  writeCautions(cautions, sheet);
  folio.add(cautions.take(), 2);
  folio.add(holdRows(sheet, works, width));
}

}  // namespace

Document crewSheet(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.crew.title"), forWhom(sheet, desk.say("paper.crew.for")));
  const double width = folio.width_mm();
  folio.add(verdictRows(sheet, width));
  const bool lies = sheet.width_mm > sheet.height_mm;
  const bool beside = lies && addBesidePlan(folio, sheet);
  if (!beside) {
    folio.addWhole(warnings(sheet, width));
    const double share_mm = kPlanShare * sheet.height_mm;
    const double room_mm = folio.room_mm() - kUnderPlan_mm;
    folio.add(planRows(sheet, width, lies ? room_mm : std::min(share_mm, room_mm)));
  }
  addNotHere(folio, sheet);
  if (lies && !beside) folio.newPage();
  addFirst(folio, sheet, beside);
  const OtherSumps others(sheet);
  for (const Sheet& other : others.sheets()) addOther(folio, other);
  for (const plan::Sump* sump : insideSumps(sheet)) {
    folio.addWhole(insideRows(sheet, *sump, width));
  }
  addHolds(folio, sheet, worksOf(sheet, others));
  folio.add(sealRows(sheet, width));
  return folio.finished();
}

}  // namespace sumpwright::dossier
