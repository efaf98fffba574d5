// Hold points: when the work goes on, when it stops, and who says so.

#include <string>
#include <vector>

#include "dossier/Table.h"
#include "dossier/Works.h"

namespace sumpwright::dossier {
namespace {

using base::Message;

/// Nobody has shown that there is no drain; a job that says so has none drawn (checkJob()).
bool mayMeetDrains(const plan::Job& job) {
  return job.looked_for.drain != plan::Looked::looked_none;
}

/// In the order they come.
std::vector<std::string> holdSteps(const Sheet& sheet, const Works& works) {
  std::vector<std::string> steps{"consent", "services", "asbestos"};
  const auto add = [&](bool wanted, std::initializer_list<const char*> ids) {
    if (wanted) steps.insert(steps.end(), ids.begin(), ids.end());
  };
  add(works.standby, {"standby"});
  add(works.digs() && mayMeetDrains(sheet.job()), {"drains"});
  add(works.cored, {"pit", "footing", "core"});
  add(works.internal, {"floor"});
  add(true, {"trial-fan"});
  add(works.cored, {"seal"});
  add(works.internal || works.standby, {"seal-inside"});
  add(works.cored, {"backfill"});
  add(true, {"certificate", "spillage", "gauge"});
  return steps;
}

}  // namespace

Rows holdRows(const Sheet& sheet, const Works& works, double width_mm) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.crew.holds"));
  w.body(desk.say("paper.crew.holds.rule"));
  w.keepLastWithNext();
  w.gap(1.0);
  w.keepLastWithNext();
  std::vector<std::vector<Cell>> cells;
  for (const std::string& step : holdSteps(sheet, works)) {
    cells.push_back({Cell(std::to_string(cells.size() + 1), fonts::strong),
                     Cell(desk.say(Message("paper.hold-step." + step))),
                     Cell(desk.say(Message("paper.hold-stop." + step))), Cell(), Cell()});
  }
  w.append(tableRows(desk,
                     {{"", 0.35},
                      {desk.say("paper.crew.hold"), 3.3},
                      {desk.say("paper.crew.stop"), 3.4},
                      {desk.say("paper.crew.date"), 1.0},
                      {desk.say("paper.crew.sign"), 1.8}},
                     cells, width_mm, {kSignature_mm, true}));
  return w.take();
}

}  // namespace sumpwright::dossier
