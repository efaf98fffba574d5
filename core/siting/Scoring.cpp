#include "siting/Scoring.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "build/CableAlong.h"
#include "build/Discharge.h"
#include "build/SectionAlong.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"
#include "siting/ReachAlong.h"
#include "siting/RuleList.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using rules::PartKind;
using rules::ScorePart;
using rules::Site;

bool isJudged(const Scored& of, const ScorePart& part) {
  switch (part.kind) {
    case PartKind::reach:
      return of.reach != nullptr && of.reach->computed();
    case PartKind::supply:
      return part.none_at_m && of.cable != nullptr;
    case PartKind::pipe:
      return part.none_at_m.has_value();
    case PartKind::margin:
    case PartKind::wall:
    case PartKind::room:
      break;
  }
  return true;
}

double shareOf(const ScorePart& part, std::string_view value) {
  double other = 0.0;
  for (const rules::ValueScore& v : part.values) {
    if (v.value == value) return v.share;
    if (v.value == "other") other = v.share;
  }
  return other;
}

plan::Elevation elevationAt(const Site& site, Place place) {
  return site.perimeter.wall(site.perimeter.edgeAt(place)).elevation;
}

template <class Use>
void eachRoomBehind(const Site& site, Place place, Use&& use) {
  const auto& edge = site.perimeter.edgeAt(place);
  const double s = site.perimeter.wrapped(place).chainage_m;
  for (const perimeter::Span& span : site.rooms_behind[static_cast<std::size_t>(edge.ring)]
                                                      [static_cast<std::size_t>(edge.edge)]) {
    if (rules::holds(span, s)) use(span.id);
  }
}

std::string_view useOf(const Site& site, const std::string& id) {
  for (const plan::Room& room : site.job.plan.rooms) {
    if (room.id == id) return plan::nameOf(room.use);
  }
  return "unknown";
}

/// The use that earns least of the rooms behind; "none" where no room is drawn.
std::string_view worstRoomUse(const Site& site, const ScorePart& part, Place place) {
  std::string_view worst = "none";
  double least = 2.0;
  eachRoomBehind(site, place, [&](const std::string& id) {
    const std::string_view use = useOf(site, id);
    if (shareOf(part, use) >= least) return;
    least = shareOf(part, use);
    worst = use;
  });
  return worst;
}

double reachShare(const Scored& of, const ScorePart& part, Place place) {
  if (!isJudged(of, part)) return 0.0;
  const double full = part.full_at_share ? part.full_at_share->value : 1.0;
  return std::clamp(of.reach->at(place).floor / full, 0.0, 1.0);
}

/// 1 up to full_at_m, 0 from none_at_m on.
double shareUpTo(const ScorePart& part, double value_m) {
  const double full = part.full_at_m->value;
  return std::clamp((part.none_at_m->value - value_m) / (part.none_at_m->value - full), 0.0, 1.0);
}

double supplyShare(const Scored& of, const ScorePart& part, Place place) {
  if (!isJudged(of, part)) return 0.0;
  const auto length = of.cable->length_m(of.site.perimeter.wrapped(place));
  return length ? shareUpTo(part, *length) : 0.0;
}

double holeShare(const Scored& of, const ScorePart& part, Place place) {
  if (!isJudged(of, part)) return 0.0;
  const Place at = of.site.perimeter.wrapped(place);
  const build::Fit fit = of.section.at(at).fit;
  if (fit != build::Fit::fits && fit != build::Fit::fits_if_footing) return 0.0;
  return shareOf(part, build::fitName(fit)) * shareUpTo(part, of.section.read(at).dig_m);
}

double pointsOf(const Scored& of, const ScorePart& part, Place place,
                std::optional<double> least_m) {
  const Site& site = of.site;
  switch (part.kind) {
    case PartKind::margin: {
      const double full = part.full_at_m ? part.full_at_m->value : 1.0;
      return part.weight * (least_m ? std::clamp(*least_m / full, 0.0, 1.0) : 1.0);
    }
    case PartKind::wall:
      return part.weight * shareOf(part, plan::nameOf(elevationAt(site, place)));
    case PartKind::room:
      return part.weight * shareOf(part, worstRoomUse(site, part, place));
    case PartKind::reach:
      return part.weight * reachShare(of, part, place);
    case PartKind::supply:
      return part.weight * supplyShare(of, part, place);
    case PartKind::pipe:
      return part.weight * holeShare(of, part, place);
  }
  return 0.0;
}

Message reachReason(const ReachAlong* reach, Place place) {
  if (reach == nullptr) return Message("score.reach-not-yet");
  if (!reach->computed()) return Message("score.reach-not-layered");
  const ReachRead read = reach->at(place);
  if (!read.on_floor) return Message("score.reach-off-floor");
  const base::Arg floor = base::percent("floor", 100.0 * read.floor);
  const base::Arg target =
      base::pressure("target", base::Pressure::ofPa(reach->summary().target.design_pa));
  if (!read.chance) return Message("score.reach", {floor, target});
  return Message("score.reach-chance",
                 {floor, target, base::percent("whole", 100.0 * read.chance->whole_floor)});
}

Message supplyReason(const Scored& of, Place place) {
  if (of.cable == nullptr) return Message("score.supply-not-drawn");
  const auto length = of.cable->length_m(of.site.perimeter.wrapped(place));
  if (!length) return Message("score.supply-no-way");
  return Message("score.supply", {base::metres("length", *length)});
}

Message holeReason(const Scored& of, Place place) {
  const Place at = of.site.perimeter.wrapped(place);
  const build::SectionNode node = of.section.read(at);
  const base::Arg dig = base::metres("dig", node.dig_m);
  switch (of.section.at(at).fit) {
    case build::Fit::fits:
      return Message("score.hole-fits", {dig});
    case build::Fit::fits_if_footing:
      if (!node.footing_top_m) break;
      return Message("score.hole-if", {base::metres("top", *node.footing_top_m), dig});
    case build::Fit::never:
      return Message("score.hole-never");
    case build::Fit::not_cored:
      break;
  }
  return Message("score.hole-not-cored");
}

Message reasonOf(const Scored& of, const ScorePart& part, Place place, const Margin* least) {
  const Site& site = of.site;
  switch (part.kind) {
    case PartKind::margin:
      if (least == nullptr) return Message("score.margin-nothing");
      return Message("score.margin", {base::metres("margin", least->margin_m),
                                      base::phrase("thing", least->thing_label)});
    case PartKind::wall: {
      const std::string value(plan::nameOf(elevationAt(site, place)));
      return Message("score.wall", {base::phrase("value", Message("value." + value))});
    }
    case PartKind::room: {
      const std::string use(worstRoomUse(site, part, place));
      if (use == "none") return Message("score.room-none");
      return Message("score.room", {base::phrase("room", Message("room." + use))});
    }
    case PartKind::reach:
      return reachReason(of.reach, place);
    case PartKind::supply:
      if (!part.none_at_m) break;
      return supplyReason(of, place);
    case PartKind::pipe:
      if (!part.none_at_m) break;
      return holeReason(of, place);
  }
  return Message("score.not-judged");
}

bool countsAsMargin(const rules::Rule& rule) {
  return rule.enabled && rule.severity == rules::Severity::binding &&
         rule.kind != rules::RuleKind::wall && rule.kind != rules::RuleKind::discharge;
}

void takeDistance(Margin& m, double distance_m, double accuracy_m) {
  m.distance_m = distance_m;
  m.margin_m = distance_m - m.needed_m;
  if (std::abs(m.margin_m) < rules::kRounding_m) m.margin_m = 0.0;
  m.close = std::abs(m.margin_m) < accuracy_m;
}

Margin toMargin(const Site& site, const rules::Rule& rule, const rules::Nearest& nearest,
                Place place, double accuracy_m) {
  Margin m;
  m.rule = rule.id;
  m.needed_m = rules::needed_m(rule, site);
  takeDistance(m, nearest.distance_m, accuracy_m);
  if (nearest.thing_index >= 0) {
    const rules::Thing& thing = site.things[static_cast<std::size_t>(nearest.thing_index)];
    m.thing = thing.id;
    m.thing_label = thing.label;
  } else {
    const auto& edge = site.perimeter.edgeAt(place);
    m.thing = site.perimeter.wall(edge).id;
    m.thing_label = site.perimeter.wallLabel(edge);
  }
  return m;
}

Margin toMargin(const rules::Rule& rule, const build::RunNearest& nearest, double accuracy_m) {
  Margin m;
  m.rule = rule.id;
  m.thing = nearest.thing;
  m.thing_label = nearest.label;
  m.part = nearest.part;
  m.needed_m = rule.needed_m->value;
  takeDistance(m, nearest.distance_m, accuracy_m);
  return m;
}

/// In plan and, where a run is placed, in height: which leaves less.
std::optional<Margin> marginOf(const Site& site, const rules::Rule& rule, Place place,
                               double accuracy_m) {
  std::optional<Margin> least;
  if (const auto in_plan = judgeOf(rule.kind).nearest(rule, site, place)) {
    least = toMargin(site, rule, *in_plan, place, accuracy_m);
  }
  if (const auto in_height = build::nearestOfRun(rule, site, place)) {
    Margin other = toMargin(rule, *in_height, accuracy_m);
    if (!least || other.margin_m < least->margin_m) least = std::move(other);
  }
  return least;
}

}  // namespace

std::vector<Margin> marginsAt(const Site& site, Place place, double accuracy_m) {
  std::vector<Margin> margins;
  for (const rules::Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.severity == rules::Severity::preference) continue;
    if (auto margin = marginOf(site, rule, place, accuracy_m)) {
      margins.push_back(std::move(*margin));
    }
  }
  return margins;
}

const Margin* leastBinding(const Site& site, const std::vector<Margin>& margins) {
  const Margin* least = nullptr;
  for (const Margin& m : margins) {
    if (!countsAsMargin(*site.sheet.find(m.rule))) continue;
    if (least == nullptr || m.margin_m < least->margin_m) least = &m;
  }
  return least;
}

const Margin* leastOfAll(const Site& site, const std::vector<Margin>& margins) {
  const Margin* least = nullptr;
  for (const Margin& m : margins) {
    if (site.sheet.find(m.rule)->severity != rules::Severity::binding) continue;
    if (least == nullptr || m.margin_m < least->margin_m) least = &m;
  }
  return least;
}

std::optional<double> leastBindingMargin_m(const Site& site, Place place) {
  constexpr double kFar_m = std::numeric_limits<double>::infinity();
  std::optional<double> least;
  for (const rules::Rule& rule : site.sheet.rules) {
    if (!countsAsMargin(rule)) continue;
    if (const auto nearest = judgeOf(rule.kind).nearest(rule, site, place)) {
      least = std::min(least.value_or(kFar_m), nearest->distance_m - rules::needed_m(rule, site));
    }
    if (const auto nearest = build::nearestOfRun(rule, site, place)) {
      least = std::min(least.value_or(kFar_m), nearest->distance_m - rules::needed_m(rule, site));
    }
  }
  return least;
}

std::vector<std::string> roomsBehindAt(const Site& site, Place place) {
  std::vector<std::string> ids;
  eachRoomBehind(site, place, [&](const std::string& id) { ids.push_back(id); });
  return ids;
}

double scoreTotal(const Scored& of, Place place, std::optional<double> least_m, int advisories) {
  double points = 0.0;
  double weight = 0.0;
  for (const ScorePart& part : of.site.sheet.score) {
    if (!isJudged(of, part)) continue;
    points += pointsOf(of, part, place, least_m);
    weight += part.weight;
  }
  const double scaled = weight > 0.0 ? 100.0 * points / weight : 0.0;
  return std::clamp(scaled - advisories * of.site.sheet.advisory_cost.value, 0.0, 100.0);
}

Score scoreOf(const Scored& of, Place place, const Margin* least, int advisories) {
  const std::optional<double> least_m =
      least == nullptr ? std::nullopt : std::optional<double>(least->margin_m);
  Score score;
  score.complete = true;
  for (const ScorePart& part : of.site.sheet.score) {
    const bool judged = isJudged(of, part);
    score.complete = score.complete && judged;
    score.parts.push_back({part.kind, part.title, pointsOf(of, part, place, least_m), part.weight,
                           judged, reasonOf(of, part, place, least)});
  }
  score.advisory_cost = advisories * of.site.sheet.advisory_cost.value;
  score.total = scoreTotal(of, place, least_m, advisories);
  return score;
}

}  // namespace sumpwright::siting
