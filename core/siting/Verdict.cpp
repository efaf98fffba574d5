#include "siting/Verdict.h"

#include <algorithm>

#include "base/Contract.h"
#include "plan/KindNames.h"
#include "siting/Scoring.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using rules::Weight;

Message outletPhrase(const rules::Site& site) {
  if (site.run) return Message("outlet.placed", {base::metres("height", site.run->outlet_m)});
  return Message("outlet." + std::string(plan::nameOf(site.outlet)));
}

/// "1.12 m from the back door, 1.50 m needed", or the reason itself where there is no distance.
Message because(const Finding& f) {
  if (f.reason.id == "rule.run-near" && f.distance_m && f.needed_m && *f.distance_m >= 0.0) {
    return Message("verdict.short-part",
                   {base::phrase("part", std::get<Message>(f.reason.find("part")->value)),
                    base::metres("distance", *f.distance_m), base::phrase("thing", f.thing_label),
                    base::metres("needed", *f.needed_m)});
  }
  if (f.reason.id != "rule.too-near" || !f.distance_m || !f.needed_m) return f.reason;
  if (*f.distance_m < 0.0) {
    return Message("verdict.overlaps",
                   {base::phrase("thing", f.thing_label), base::metres("needed", *f.needed_m)});
  }
  return Message("verdict.short",
                 {base::metres("distance", *f.distance_m), base::phrase("thing", f.thing_label),
                  base::metres("needed", *f.needed_m)});
}

Message clearSentence(const rules::Site& site, const Assessment& a) {
  const Margin* least = leastOfAll(site, a.margins);
  if (least == nullptr) {
    return Message("verdict.clear-no-margin", {base::phrase("outlet", outletPhrase(site))});
  }
  const bool room = site.sheet.find(least->rule)->kind == rules::RuleKind::wall;
  if (!least->part.id.empty()) {
    return Message(
        least->close ? "verdict.clear-part-close" : "verdict.clear-part",
        {base::phrase("outlet", outletPhrase(site)), base::metres("margin", least->margin_m),
         base::phrase("part", least->part), base::phrase("thing", least->thing_label)});
  }
  const char* id = room ? (least->close ? "verdict.clear-room-close" : "verdict.clear-room")
                        : (least->close ? "verdict.clear-close" : "verdict.clear");
  return Message(
      id, {base::phrase("outlet", outletPhrase(site)), base::metres("margin", least->margin_m),
           base::phrase("thing", least->thing_label)});
}

/// What stands against the place: the worst that no waiver accepts. Of a place that is accepted,
/// the worst.
const Finding& deciding(const Assessment& a) {
  for (std::size_t i = 0; i < a.findings.size() && !a.waived; ++i) {
    if (!a.accepted[i]) return a.findings[i];
  }
  return a.findings.front();
}

/// Kinds nobody looked for are named together; other unknowns follow.
Message notProvenSentence(const std::vector<Finding>& findings) {
  std::vector<Message> kinds;
  std::vector<Message> others;
  for (const Finding& f : findings) {
    if (f.weight != Weight::unknown) continue;
    if (f.reason.id == "rule.not-looked") {
      kinds.push_back(f.thing_label);
    } else {
      others.push_back(f.reason);
    }
  }
  if (kinds.empty()) {
    if (others.size() == 1)
      return Message("verdict.not-proven", {base::phrase("reason", others[0])});
    return Message("verdict.not-proven-more",
                   {base::phrase("reason", others[0]),
                    base::count("count", static_cast<std::int64_t>(others.size()) - 1)});
  }
  const Message list = listOf(kinds);
  if (others.empty()) return Message("verdict.not-looked", {base::phrase("kinds", list)});
  return Message("verdict.not-looked-more",
                 {base::phrase("kinds", list),
                  base::count("count", static_cast<std::int64_t>(others.size()))});
}

}  // namespace

Message listOf(const std::vector<Message>& phrases) {
  SUMPWRIGHT_REQUIRE(!phrases.empty());
  Message list = phrases.front();
  for (std::size_t i = 1; i < phrases.size(); ++i) {
    const bool last = i + 1 == phrases.size();
    list = Message(last ? "list.and" : "list.comma",
                   {base::phrase("first", std::move(list)), base::phrase("second", phrases[i])});
  }
  return list;
}

Message verdictSentence(const rules::Site& site, const Assessment& a) {
  if (a.state == State::clear) return clearSentence(site, a);
  const Message reason = because(deciding(a));
  if (a.waived) return Message("verdict.waived", {base::phrase("reason", reason)});
  if (a.state == State::refused)
    return Message("verdict.refused", {base::phrase("reason", reason)});
  if (a.state == State::not_proven) return notProvenSentence(a.findings);
  return Message("verdict.advised", {base::phrase("reason", reason)});
}

}  // namespace sumpwright::siting
