#include "siting/SuctionWords.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/KindNames.h"
#include "siting/SuctionMaterial.h"
#include "suction/SumpPerArea.h"

namespace sumpwright::siting {

namespace {

using base::Mark;
using base::Message;
using base::Pressure;

constexpr double kPart = 0.5;    // below this share of the floor "all but" is not said (own figure)
constexpr double kLittle = 0.1;  // own figure

Pressure pa(double value) { return Pressure::ofPa(value); }
base::Flow flowOfM3PerS(double value) { return base::Flow::ofM3PerS(value); }

const char* verdictId(const SuctionAnswer& answer, bool clustered) {
  if (answer.whole_floor > kLikely - 1e-6) return "suction.verdict.whole";
  if (answer.likely_floor < kLittle) return "suction.verdict.little";
  if (clustered && answer.likely_floor >= kPart) return "suction.verdict.all-but";
  return "suction.verdict.part";
}

base::Source permeabilitySource(plan::Fill fill) {
  if (fill == plan::Fill::clean_stone) {
    return {Mark::derived, "Ergun 1952 for stones of 5 to 16 mm at porosity 0.40"};
  }
  return {Mark::own, "Own range"};
}

const rules::Rule* thumbRule(const Study& study) {
  for (const rules::Rule& rule : study.site().sheet.rules) {
    if (rule.enabled && rule.kind == rules::RuleKind::suction) return &rule;
  }
  return nullptr;
}

base::Arg squareMetres(const char* name, double value) {
  return {name, base::Quantity{value, base::Unit::squareMetre}};
}

/// Phrase: what the sheet allows one sump.
Message mostOfThumb(const rules::Rule& rule) {
  std::vector<base::Arg> args;
  if (rule.most_m2) args.push_back(squareMetres("most", rule.most_m2->value));
  if (rule.most_m) args.push_back(base::metres("far", rule.most_m->value));
  return {rule.most_m2 && rule.most_m ? "suction.thumb.most"
          : rule.most_m2              ? "suction.thumb.most-area"
                                      : "suction.thumb.most-far",
          std::move(args)};
}

/// Phrase: what there is.
Message foundOfThumb(const RuleOfThumb& thumb, std::size_t sumps) {
  std::vector<base::Arg> args{squareMetres("area", thumb.area_m2)};
  if (thumb.farthest_m) {
    args.push_back(base::metres("farthest", *thumb.farthest_m));
    return {"suction.thumb.found", std::move(args)};
  }
  args.push_back(base::count("sumps", static_cast<std::int64_t>(sumps)));
  return {"suction.thumb.found-shared", std::move(args)};
}

}  // namespace

double middleFloor(const SuctionAnswer& answer) {
  return answer.middle.empty() ? 0.0 : answer.middle[answer.worst].reach.floor;
}

double middleFlow_m3_h(const SuctionAnswer& answer) {
  if (answer.worst >= answer.middle.size()) return 0.0;
  double sum = 0.0;
  for (const airflow::LegDuty& leg : answer.middle[answer.worst].duty.legs) {
    sum += leg.total.m3PerH();
  }
  return sum;
}

Message verdictOf(const SuctionAnswer& answer, bool clustered) {
  if (answer.state == SuctionState::not_layered) return Message("suction.verdict.not-layered");
  if (answer.state == SuctionState::off_floor) return Message("suction.verdict.off-floor");
  // All of the floor: as much as a guess must hold to count as whole (suction::Chance).
  const auto whole = static_cast<int>(std::lround(answer.whole_floor * answer.draws));
  Message held("suction.verdict.held",
               {base::pressure("target", pa(answer.target.design_pa)),
                base::percent("middle", 100.0 * middleFloor(answer)), base::count("whole", whole),
                base::count("draws", answer.draws)});
  return Message(
      verdictId(answer, clustered),
      {base::phrase("held", std::move(held)), base::percent("likely", 100.0 * answer.likely_floor),
       base::phrase("where", answer.least_where)});
}

Message caseLabel(const plan::Plan& plan, const suction::ModelChoices& choices) {
  Message label;
  const auto add = [&label](bool open, const char* id) {
    if (!open) return;
    label = label.id.empty() ? Message(id)
                             : Message("suction.case.both", {base::phrase("one", label),
                                                             base::phrase("other", Message(id))});
  };
  add(suction::hasUnknownWalls(plan),
      choices.unknown_walls_stand ? "suction.case.walls-stand" : "suction.case.walls-on-slab");
  add(suction::hasUnknownParty(plan),
      choices.party_open ? "suction.case.party-open" : "suction.case.party-closed");
  add(!suction::drainsBelow(plan).empty(),
      choices.trenches_open ? "suction.case.trenches-open" : "suction.case.trenches-filled");
  return label;
}

Message caseSentence(const MiddleCase& one, const suction::Target& target, Message where) {
  Pressure pit;
  base::Flow flow;
  for (const airflow::LegDuty& leg : one.duty.legs) {
    pit = flow == base::Flow() ? leg.pit : std::min(pit, leg.pit);
    flow += leg.ground;
  }
  return Message("suction.middle", {base::percent("floor", 100.0 * one.reach.floor),
                                    base::percent("joint", 100.0 * one.reach.joint),
                                    base::pressure("target", pa(target.design_pa)),
                                    base::percent("floor_limit", 100.0 * one.reach.floor_limit),
                                    base::pressure("limit", pa(target.limit_pa)),
                                    base::pressure("least", pa(one.reach.least.suction_pa)),
                                    base::phrase("where", std::move(where)),
                                    base::flow("flow", flow), base::pressure("pit", pit)});
}

std::vector<Message> dutySentences(const airflow::DutySummary& duty,
                                   const std::vector<std::string>& names) {
  std::vector<Message> out;
  const bool shared = duty.legs.size() > 1 && duty.lines.size() == 1;
  for (std::size_t k = 0; k < duty.lines.size(); ++k) {
    std::vector<base::Arg> args{base::flow("flow", duty.lines[k].flow),
                                base::pressure("fan", duty.lines[k].fan)};
    const char* id = shared ? "suction.duty.shared" : "suction.duty.fan";
    if (duty.lines.size() > 1) {
      id = "suction.duty.sump";
      args.push_back(base::text("sump", names[k]));
    }
    out.emplace_back(id, std::move(args));
  }
  return out;
}

std::vector<std::string> sumpNames(const SuctionAnswer& answer) {
  std::vector<std::string> names;
  for (const StudiedSump& sump : answer.sumps) names.push_back(sump.id);
  return names;
}

std::vector<Message> rangeSentences(const SuctionAnswer& answer) {
  std::vector<Message> out;
  out.push_back(
      Message("suction.range.flow", {base::flow("low", flowOfM3PerS(answer.flow_m3_s.low)),
                                     base::flow("high", flowOfM3PerS(answer.flow_m3_s.high))}));
  if (answer.pit_pa) {
    out.push_back(Message("suction.range.pit", {base::pressure("low", pa(answer.pit_pa->low)),
                                                base::pressure("high", pa(answer.pit_pa->high))}));
  }
  return out;
}

RuleOfThumb ruleOfThumb(const Study& study, const SuctionAnswer& answer) {
  RuleOfThumb thumb;
  const rules::Rule* rule = thumbRule(study);
  if (rule == nullptr) return thumb;
  std::vector<geometry::Point> from;
  for (const StudiedSump& sump : answer.sumps) {
    from.push_back(sump.place ? suction::thumbPoint(study.perimeter(), *sump.place) : sump.sink.at);
  }
  const auto asked = suction::thumbAt(*rule, study.job(), from);
  if (!asked) return thumb;
  const auto why_not = suction::whyNoThumb(study.job(), answer.fill);
  thumb.source = rule->source;
  thumb.area_m2 = asked->area_m2;
  thumb.farthest_m = asked->farthest_m;
  thumb.applies = !why_not;
  thumb.held = thumb.applies && asked->held;
  std::vector<base::Arg> args{base::text("source", rule->source.text),
                              base::phrase("most", mostOfThumb(*rule))};
  if (why_not) {
    thumb.sentence =
        Message(why_not->id == "rule.sump-wall" ? "suction.thumb.wall" : "suction.thumb.fill",
                std::move(args));
    return thumb;
  }
  args.push_back(base::phrase("found", foundOfThumb(thumb, from.size())));
  thumb.sentence =
      Message(thumb.held ? "suction.thumb.held" : "suction.thumb.exceeded", std::move(args));
  return thumb;
}

std::vector<Message> cautionsOf(const plan::Plan& plan, bool fitted) {
  std::vector<Message> out{
      Message(fitted ? "suction.caution.prediction-fitted" : "suction.caution.prediction"),
      Message("suction.caution.no-concentration"), Message("suction.caution.spillage"),
      Message("suction.caution.locate")};
  if (suction::mayGoOnNextDoor(plan)) out.emplace_back("suction.caution.neighbour");
  return out;
}

Message leakSentence(const LeakCase& leak, const MiddleCase& sealed) {
  base::Flow beside;
  base::Flow all;
  for (const airflow::LegDuty& leg : leak.duty.legs) {
    beside += leg.leak;
    all += leg.total;
  }
  // As both are shown: a share is told as changed only where it reads so.
  const bool same =
      std::floor(100.0 * leak.reach.floor + 1e-9) == std::floor(100.0 * sealed.reach.floor + 1e-9);
  return Message(same ? "suction.leak-same" : "suction.leak",
                 {base::percent("share", all > base::Flow() ? 100.0 * (beside / all) : 0.0),
                  base::percent("floor", 100.0 * leak.reach.floor),
                  base::percent("sealed", 100.0 * sealed.reach.floor)});
}

namespace {

/// A range of the ground as it is assumed: the job's own where it states one.
Assumption assumed(Message what, bool stated, base::Source usual) {
  if (stated) return {std::move(what), {Mark::own, "The job's own range"}};
  return {std::move(what), std::move(usual)};
}

void addRanges(const plan::GroundGuess& guess, const SuctionAnswer& answer,
               const suction::GroundRanges& ranges, std::vector<Assumption>& out) {
  const suction::Range& fill = ranges.permeability_m2;
  out.push_back(assumed(Message("suction.assumed.permeability",
                                {base::phrase("like", materialOf(fill.low, fill.high)),
                                 base::text("low", inPowersOfTen(fill.low)),
                                 base::text("high", inPowersOfTen(fill.high))}),
                        guess.permeability_m2.has_value(), permeabilitySource(answer.fill)));
  out.push_back(assumed(
      Message("suction.assumed.depth", {base::metres("low", ranges.thickness_m.low),
                                        base::metres("high", ranges.thickness_m.high)}),
      guess.fill_depth_m.has_value(), {Mark::own, "Own range, or the job's depth -20 % to +25 %"}));
  out.push_back(assumed(
      Message("suction.assumed.soil",
              {base::text("low", inPowersOfTen(ranges.leak_ground_m_s_pa.low)),
               base::text("high", inPowersOfTen(ranges.leak_ground_m_s_pa.high))}),
      guess.leakage_m_s_pa.has_value(), {Mark::derived, "Soil of 1e-13 to 1e-10 m2 over 4 m"}));
  out.push_back(assumed(
      Message("suction.assumed.joint", {base::number("low", 1000.0 * ranges.joint_width_m.low),
                                        base::number("high", 1000.0 * ranges.joint_width_m.high)}),
      guess.joint_width_mm.has_value(), {Mark::own, "Own range"}));
}

/// Drains drawn under the floor, by name.
void addTrenches(const plan::Plan& plan, std::vector<Assumption>& out) {
  const auto below = suction::drainsBelow(plan);
  if (below.empty()) return;
  std::string names;
  for (const plan::Service& service : plan.services) {
    if (std::find(below.begin(), below.end(), service.id) == below.end()) continue;
    names += (names.empty() ? "" : ", ") + (service.name.empty() ? service.id : service.name);
  }
  out.push_back({Message("suction.assumed.trenches", {base::text("drains", names)}),
                 {Mark::own,
                  "Pipe of 110 mm in 100 mm of clean stone all round (Approved Document "
                  "H, from memory); nobody has looked"}});
}

}  // namespace

std::vector<Assumption> groundAssumptions(const plan::Job& job, const SuctionAnswer& answer,
                                          const suction::GroundRanges& ranges, double pit_m3) {
  std::vector<Assumption> out;
  const std::string fill(plan::nameOf(answer.fill));
  out.push_back(
      {Message("suction.assumed.fill", {base::phrase("fill", Message("suction.fill." + fill))}),
       {Mark::own, "What lies under the slab decides most: look in the core"}});
  if (answer.state == SuctionState::not_layered) return out;
  out.push_back({Message("suction.assumed.pit", {base::number("litres", 1000.0 * pit_m3)}),
                 {Mark::common_practice, "A bucket: 10 to 15 l"}});
  const bool fitted = answer.fitted && answer.fitted->usable();
  if (fitted) {
    out.push_back({Message(answer.fitted->fit.flow_known ? "suction.assumed.fitted"
                                                         : "suction.assumed.fitted-shape"),
                   {Mark::derived, "Least squares on the job's pressure tests"}});
  } else {
    addRanges(job.suction.ground, answer, ranges, out);
  }
  addTrenches(job.plan, out);
  out.push_back(
      {Message("suction.assumed.target", {base::pressure("target", pa(answer.target.design_pa)),
                                          base::pressure("limit", pa(answer.target.limit_pa))}),
       {Mark::own, "To be changed by whoever knows better"}});
  out.push_back({Message(fitted ? "suction.assumed.guesses-fitted" : "suction.assumed.guesses",
                         {base::count("draws", answer.draws)}),
                 {Mark::own, "Spread evenly over the ranges, always the same"}});
  return out;
}

}  // namespace sumpwright::siting
