// The cable on paper: a plain line for the client, the way part by part for crew and electrician.

#include <algorithm>

#include "build/CableRoute.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "geometry/Distance.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using build::CableAnswer;
using build::CableAsk;
using build::CablePart;
using build::CablePartKind;
using build::CableRoute;

std::string wayOf(const Sheet& sheet, const CablePart& part) {
  const std::string id = "paper.cable.part." + std::string(build::cablePartName(part.kind));
  if (part.things.empty()) return sheet.desk.say(Message(id));
  std::string things;
  for (const std::string& thing : part.things) {
    things += (things.empty() ? "" : ", ") + sheet.desk.say(sheet.study.labelOf(thing));
  }
  return sheet.desk.say(Message(id, {base::text("thing", things)}));
}

/// The room along whose skirting a part runs; nothing where none is drawn there.
const plan::Room* roomAlong(const Sheet& sheet, const CablePart& part) {
  constexpr double kOn_m = 0.01;  // rounding, generously
  if (part.line_m.size() < 2) return nullptr;
  const geometry::Point middle = geometry::lerp(part.line_m[0], part.line_m[1], 0.5);
  for (const plan::Room& room : sheet.job().plan.rooms) {
    geometry::Polyline outline = room.outline_m;
    if (!outline.empty()) outline.push_back(outline.front());
    if (geometry::distance(middle, outline) < kOn_m) return &room;
  }
  return nullptr;
}

/// What the crew reads as one: along a skirting round its corners, along the walls outside.
struct Leg {
  CablePartKind kind = CablePartKind::drop;
  std::string words;
  double length_m = 0.0;
};

std::string alongWords(const Sheet& sheet, const CablePart& part) {
  const plan::Room* room = part.kind == CablePartKind::skirting ? roomAlong(sheet, part) : nullptr;
  if (room == nullptr) return wayOf(sheet, part);
  return sheet.desk.say("paper.cable.part.skirting-of",
                        {base::phrase("room", sheet.study.labelOf(room->id))});
}

std::vector<Leg> legsOf(const Sheet& sheet, const CableRoute& route) {
  std::vector<Leg> legs;
  for (const CablePart& part : route.parts) {
    const bool along = part.kind == CablePartKind::skirting || part.kind == CablePartKind::outside;
    const std::string words = alongWords(sheet, part);
    if (along && !legs.empty() && legs.back().kind == part.kind && legs.back().words == words) {
      legs.back().length_m += part.length_m;
    } else {
      legs.push_back({part.kind, words, part.length_m});
    }
  }
  return legs;
}

Rows wayTable(const Sheet& sheet, const CableRoute& route, double width_mm) {
  const Desk& desk = sheet.desk;
  const auto length = [&](double metres) {
    return desk.say("paper.crew.length", {base::metres("length", metres)});
  };
  std::vector<std::vector<Cell>> cells;
  for (const Leg& leg : legsOf(sheet, route)) {
    cells.push_back({Cell(leg.words), Cell(length(leg.length_m))});
  }
  cells.push_back({Cell(desk.say("paper.cable.laid"), fonts::strong),
                   Cell(length(route.length_m), fonts::strong)});
  cells.push_back({Cell(desk.say("paper.cable.to-buy")), Cell(length(route.to_buy_m))});
  return tableRows(desk,
                   {{desk.say("paper.cable.way"), 4.0},
                    {desk.say("paper.cable.length"), 1.0, drawing::HAlign::right}},
                   cells, width_mm, {0.0, false, true});
}

/// Where services come in that the cable passes outside, as near as no sleeve is drilled.
void passedLine(Writer& w, const Sheet& sheet, const CableRoute& route, double beside_m) {
  constexpr double kBesideMore_m = 0.10;  // own figure: what stands as near as that is named, too
  base::Message passed;
  for (const plan::Service& service : sheet.job().plan.services) {
    if (!service.entry) continue;
    const perimeter::Perimeter& walls = sheet.study.perimeter();
    const geometry::Point entry = walls.pointAt(walls.placeOf(*service.entry));
    const bool beside =
        std::any_of(route.parts.begin(), route.parts.end(), [&](const CablePart& part) {
          const bool outside = part.kind == CablePartKind::outside ||
                               part.kind == CablePartKind::over_opening ||
                               part.kind == CablePartKind::sleeve;
          return outside && geometry::distance(entry, part.line_m) < beside_m + kBesideMore_m;
        });
    if (!beside) continue;
    const Message label = sheet.study.labelOf(service.id);
    passed =
        passed.id.empty()
            ? label
            : Message("list.comma", {base::phrase("first", passed), base::phrase("second", label)});
  }
  if (passed.id.empty()) return;
  w.body(w.desk().say("paper.cable.passes",
                      {base::phrase("things", passed), base::metres("off", beside_m)}));
}

void otherWays(Writer& w, const CableAnswer& answer) {
  constexpr std::size_t kMost = 3;
  const Desk& desk = w.desk();
  std::size_t told = 0;
  for (std::size_t i = 0; i < answer.routes.size() && told < kMost; ++i) {
    if (i == *answer.chosen) continue;
    ++told;
    const CableRoute& route = answer.routes[i];
    w.body(desk.say(route.drillings == 0 ? "paper.cable.other" : "paper.cable.other-drilled",
                    {base::phrase("supply", route.label), base::metres("length", route.length_m),
                     base::count("drillings", route.drillings)}));
  }
}

void assumedLine(Writer& w, const CableAnswer& answer) {
  const Desk& desk = w.desk();
  std::string all;
  for (const Message& one : answer.assumptions) all += (all.empty() ? "" : "; ") + desk.say(one);
  if (all.empty()) return;
  w.text(desk.say("paper.cable.assumed", {base::text("what", all)}), fonts::small, desk.theme.ink2);
}

}  // namespace

CableAsk cableAskOf(const Sheet& sheet) {
  CableAsk ask = build::cableAskOf(sheet.study.site(), *sheet.sump, sheet.assessment->place);
  const siting::SuctionAnswer* answer = sheet.answer();
  if (answer != nullptr) build::takePower(ask, sheet.job().design, answer->power_w);
  return ask;
}

std::optional<ChosenCable> chosenCable(const Sheet& sheet) {
  if (!sheet.assessment || sheet.sump == nullptr) return std::nullopt;
  ChosenCable out{cableAskOf(sheet), {}};
  const CableAnswer answer = build::cableRoutes(sheet.study.site(), out.ask);
  if (!answer.chosen) return std::nullopt;
  out.route = answer.routes[*answer.chosen];
  return out;
}

Rows cableRows(const Sheet& sheet, double width_mm) {
  if (!sheet.assessment || sheet.sump == nullptr) return {};
  const Desk& desk = sheet.desk;
  const CableAsk ask = cableAskOf(sheet);
  const CableAnswer answer = build::cableRoutes(sheet.study.site(), ask);
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.cable"));
  w.text(desk.say(answer.sentence), fonts::strong, desk.theme.ink);
  if (answer.chosen) {
    const CableRoute& route = answer.routes[*answer.chosen];
    w.keepLastWithNext();
    w.append(wayTable(sheet, route, width_mm));
    w.gap(1.2);
    w.append(sleeveRows(sheet, {ask, route}, width_mm));
    w.append(cablePlanRows(sheet, {ask, route}, width_mm));
    w.body(desk.say(
        "paper.cable.drop",
        {base::number("volts", route.drop_v), base::percent("share", route.drop_percent),
         base::watts("power", ask.power_w), base::number("section", ask.figures.section_mm2),
         base::number("mains", ask.figures.volts)}));
    passedLine(w, sheet, route, ask.figures.off_entry_m);
    for (const Message& remark : route.remarks) w.body(desk.say(remark));
    otherWays(w, answer);
  }
  for (const build::NoCable& none : answer.none) {
    w.body(desk.say("paper.cable.none",
                    {base::phrase("supply", none.label), base::phrase("why", none.reason)}));
  }
  for (const Message& caution : answer.cautions) w.tick(desk.say(caution));
  if (const auto* supply = sheet.study.sheet().practiceOn("supply")) {
    w.tick(practiceWords(desk, *supply));
  }
  assumedLine(w, answer);
  return w.take();
}

void writeCable(Writer& w, const Sheet& sheet) {
  if (!sheet.assessment || sheet.sump == nullptr) return;
  const auto cable = chosenCable(sheet);
  if (!cable) return w.body(w.desk().say("paper.cable.client-none"));
  const CableRoute& route = cable->route;
  w.body(w.desk().say(route.drillings == 0 ? "paper.cable.client" : "paper.cable.client-drilled",
                      {base::metres("length", route.length_m), base::phrase("supply", route.label),
                       base::count("drillings", route.drillings)}));
}

}  // namespace sumpwright::dossier
