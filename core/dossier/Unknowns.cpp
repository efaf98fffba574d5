// What nobody looked for, and what cannot be judged yet.

#include <algorithm>
#include <cstdint>

#include "dossier/Sheet.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using plan::Looked;

std::vector<const char*> notLooked(const plan::LookedFor& l) {
  std::vector<const char*> out;
  const auto add = [&](Looked looked, const char* id) {
    if (looked == Looked::not_looked) out.push_back(id);
  };
  add(l.openings, "looked.openings");
  add(l.gas, "looked.gas");
  add(l.electricity, "looked.electricity");
  add(l.water, "looked.water");
  add(l.telecom, "looked.telecom");
  add(l.oil, "looked.oil");
  add(l.drain, "looked.drain");
  add(l.flue_terminal, "looked.flue_terminal");
  add(l.heating, "looked.heating");
  return out;
}

std::string list(const Desk& desk, const std::vector<const char*>& ids) {
  Message all(ids.front());
  for (std::size_t i = 1; i < ids.size(); ++i) {
    all = Message(i + 1 == ids.size() ? "list.and" : "list.comma",
                  {base::phrase("first", all), base::phrase("second", Message(ids[i]))});
  }
  return desk.say(all);
}

}  // namespace

void writeNotLooked(Writer& w, const Sheet& sheet) {
  const auto missing = notLooked(sheet.job().looked_for);
  if (missing.empty()) return;
  w.heading(sheet.desk.say("paper.not-looked"));
  w.body(sheet.desk.say("paper.not-looked.list", {base::text("kinds", list(sheet.desk, missing))}));
}

void writeUnjudged(Writer& w, const Sheet& sheet) {
  constexpr std::size_t kMost = 12;
  if (sheet.study.unjudged().empty()) return;
  w.heading(sheet.desk.say("paper.unjudged"));
  std::vector<std::string> lines;
  for (const siting::Unjudged& u : sheet.study.unjudged()) {
    std::vector<base::Arg> args{base::phrase("reason", u.reason),
                                base::phrase("thing", u.thing_label)};
    const std::string line = sheet.desk.say(
        u.thing_label.id.empty() ? "paper.unjudged.rule" : "paper.unjudged.thing", args);
    if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(line);
  }
  for (std::size_t i = 0; i < std::min(lines.size(), kMost); ++i) {
    w.text(lines[i], fonts::body, sheet.desk.theme.ink, 0.0, 2.5);
  }
  if (lines.size() > kMost) {
    w.body(sheet.desk.say("paper.and-more",
                          {base::count("count", static_cast<std::int64_t>(lines.size() - kMost))}));
  }
}

}  // namespace sumpwright::dossier
