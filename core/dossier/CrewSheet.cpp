// What the crew has in the hand: where the hole is set out, what it goes through, what to bring,
// when to stop and who says go on.

#include <algorithm>
#include <cmath>
#include <deque>

#include "build/Run.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"
#include "geometry/Shapes.h"
#include "plan/SumpList.h"
#include "price/SealList.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

constexpr double kPlanShare = 0.42;    // of a page, so that the setting-out stands on the same one
constexpr double kUnderPlan_mm = 4.0;  // left of a page that lies, which the plan has to itself
constexpr double kSignature_mm = 8.0;  // height of a line to sign on

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

const char* sealsOf(plan::RoomUse use) {
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
}

/// What was drawn there: services, wastes, radiators.
std::string countedWords(const Desk& desk, const price::SealRoom& room) {
  std::vector<Message> parts = room.entries;
  if (room.wastes > 0) parts.push_back({"paper.seal.wastes", {base::count("count", room.wastes)}});
  if (room.radiators > 0) {
    parts.push_back({"paper.seal.radiators", {base::count("count", room.radiators)}});
  }
  std::string out;
  for (const Message& part : parts) out += (out.empty() ? "" : ", ") + desk.say(part);
  return out;
}

/// As it is printed, so that what is printed adds up.
double toDecimetre(double metres) { return std::round(10.0 * metres) / 10.0; }

/// Its name; without one what it is and how large, as the plan has it.
std::string roomWords(const Sheet& sheet, const plan::Room& room) {
  if (!room.name.empty()) return room.name;
  return sheet.desk.say("paper.seal.unnamed",
                        {base::phrase("room", sheet.study.labelOf(room.id)),
                         {"area", base::Quantity{std::abs(geometry::signedArea(room.outline_m)),
                                                 base::Unit::squareMetre}}});
}

std::vector<Cell> sealCells(const Sheet& sheet, const price::SealRoom& one) {
  const Desk& desk = sheet.desk;
  const auto& rooms = sheet.job().plan.rooms;
  const auto room = std::find_if(rooms.begin(), rooms.end(),
                                 [&](const plan::Room& r) { return r.id == one.room; });
  const bool known = room != rooms.end();
  const std::string joint =
      one.joint_m > 0.0
          ? desk.say("paper.seal.joint", {base::metres("length", toDecimetre(one.joint_m))})
          : "";
  return {Cell(known ? roomWords(sheet, *room) : desk.say("paper.seal.no-room"), fonts::strong),
          Cell(desk.say(Message(known ? sealsOf(room->use) : "paper.seal.entries"))),
          Cell(countedWords(desk, one)), Cell(joint), Cell()};
}

/// What leaks, room by room, before anybody thinks of a second sump.
Rows sealRows(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  const price::SealList list = price::sealList(sheet.study);
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.seals"));
  w.body(desk.say("paper.crew.seals.why"));
  w.gap(1.0);
  std::vector<std::vector<Cell>> cells{
      {Cell(desk.say("paper.seal.house"), fonts::strong), Cell(desk.say("paper.seal.entries"))}};
  double joint_m = 0.0;
  for (const price::SealRoom& room : list.rooms) {
    cells.push_back(sealCells(sheet, room));
    joint_m += toDecimetre(room.joint_m);
  }
  cells.push_back(
      {Cell(desk.say("paper.seal.together"), fonts::strong), Cell(),
       Cell(desk.say("paper.seal.count", {base::count("count", list.entries)}), fonts::strong),
       Cell(desk.say("paper.seal.joint", {base::metres("length", joint_m)}), fonts::strong)});
  w.append(tableRows(desk,
                     {{desk.say("paper.crew.room"), 1.4},
                      {desk.say("paper.crew.look-at"), 3.2},
                      {desk.say("paper.seal.drawn"), 2.4},
                      {desk.say("paper.seal.joint-head"), 1.1, drawing::HAlign::right},
                      {desk.say("paper.crew.done"), 0.9}},
                     cells, width_mm, {5.6, true}));
  w.gap(0.8);
  w.text(desk.say("paper.seal.how"), fonts::small, desk.theme.ink2);
  return w.take();
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
  if (part.stopped()) return part.addStop(folio);
  Writer sizes(desk, folio.columnWidth_mm(2));
  part.writeSizes(sizes);
  folio.add(sizes.take(), 2);
  part.addDrawings(folio);
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

void addFirst(Folio& folio, const Sheet& sheet) {
  const double column = folio.columnWidth_mm(2);
  if (!sheet.assessment) return folio.add(toolRows(sheet, column), 2);
  const SumpPart part(sheet);
  if (part.stopped()) return part.addStop(folio);
  Writer w(sheet.desk, column);
  part.writeSizes(w);
  w.gap(3.2);
  w.append(toolRows(sheet, column));
  folio.add(w.take(), 2);
  part.addDrawings(folio);
}

}  // namespace

Document crewSheet(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.crew.title"), forWhom(sheet, desk.say("paper.crew.for")));
  const double width = folio.width_mm();
  folio.add(verdictRows(sheet, width));
  folio.add(waiverRows(sheet, width));
  const double share_mm = kPlanShare * sheet.height_mm;
  const bool lies = sheet.width_mm > sheet.height_mm;
  const double plan_mm = lies ? std::max(share_mm, folio.room_mm() - kUnderPlan_mm) : share_mm;
  folio.add(planRows(sheet, width, plan_mm));
  addNotHere(folio, sheet);
  if (lies) folio.newPage();
  addFirst(folio, sheet);
  const OtherSumps others(sheet);
  for (const Sheet& other : others.sheets()) addOther(folio, other);
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
