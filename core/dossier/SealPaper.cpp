// What to seal, room by room: the same numbers as the quote offers.

#include <algorithm>
#include <cmath>

#include "dossier/Table.h"
#include "dossier/Works.h"
#include "geometry/Shapes.h"
#include "price/SealList.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

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
      one.joint_m > 0.0 ? desk.say("paper.seal.joint", {base::metres("length", one.joint_m)}) : "";
  return {Cell(known ? roomWords(sheet, *room) : desk.say("paper.seal.no-room"), fonts::strong),
          Cell(desk.say(Message(known ? sealsOf(room->use) : "paper.seal.entries"))),
          Cell(countedWords(desk, one)), Cell(joint), Cell()};
}

}  // namespace

Rows sealRows(const Sheet& sheet, double width_mm) {
  const Desk& desk = sheet.desk;
  const price::SealList list = price::sealList(sheet.study);
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.seals"));
  w.body(desk.say("paper.crew.seals.why"));
  w.keepLastWithNext();
  w.gap(1.0);
  w.keepLastWithNext();
  std::vector<std::vector<Cell>> cells{
      {Cell(desk.say("paper.seal.house"), fonts::strong), Cell(desk.say("paper.seal.entries"))}};
  for (const price::SealRoom& room : list.rooms) cells.push_back(sealCells(sheet, room));
  if (!list.rooms.empty()) {
    cells.push_back(
        {Cell(desk.say("paper.seal.together"), fonts::strong), Cell(),
         Cell(desk.say("paper.seal.count", {base::count("count", list.entries)}), fonts::strong),
         Cell(desk.say("paper.seal.joint", {base::metres("length", list.joint_m)}),
              fonts::strong)});
  }
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

}  // namespace sumpwright::dossier
