#include "stages/SuctionFacts.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>

#include "plan/FactEdits.h"
#include "plan/RunningEdits.h"
#include "plan/SuctionEdits.h"
#include "stages/KindWords.h"
#include "stages/SurveyText.h"
#include "stages/WallFacts.h"
#include "suction/Reach.h"
#include "tools/CurveText.h"
#include "tools/LengthText.h"

namespace sumpwright::stages {

namespace {

struct SuctionFacts {
  Q_DECLARE_TR_FUNCTIONS(SuctionFacts)
};

using plan::Design;
using plan::GroundGuess;
using plan::Job;
using plan::PressureTest;
using plan::Spread;

constexpr double kFactSecondsAnHour = 3600.0;

QString figure(double value) { return QString::number(value, 'g', 3); }

/// What a range is of: a figure of its own unit, or a depth as lengths are typed.
enum class SpreadOf { figure, length };

QString typedSpread(const Spread& spread, SpreadOf of, const Job& job) {
  if (of == SpreadOf::length) {
    return SuctionFacts::tr("%1 to %2")
        .arg(typedLength(spread.low, job), typedLength(spread.high, job));
  }
  return SuctionFacts::tr("%1 to %2").arg(figure(spread.low), figure(spread.high));
}

/// "1e-9 to 1e-7", "0.1 0.3"; nothing where it is neither.
std::optional<Spread> readSpread(const std::string& text) {
  static const QRegularExpression number(QStringLiteral("[0-9]*[.,]?[0-9]+(?:[eE][-+]?[0-9]+)?"));
  auto found = number.globalMatch(QString::fromStdString(text));
  std::vector<double> values;
  while (found.hasNext()) {
    values.push_back(
        found.next().captured().replace(QLatin1Char(','), QLatin1Char('.')).toDouble());
  }
  if (values.size() != 2) return std::nullopt;
  return Spread{values[0], values[1]};
}

/// "0.10 to 0.30", "4\" to 1'"; nothing where it is neither.
std::optional<Spread> readLengths(const std::string& text, const Job& job) {
  static const QRegularExpression between(QStringLiteral("\\s+(?:to|-|–)\\s+|\\s*;\\s*"));
  QStringList parts = QString::fromStdString(text).split(between);
  if (parts.size() == 1) parts = parts.front().simplified().split(QLatin1Char(' '));
  if (parts.size() != 2) return std::nullopt;
  const auto bare = job.display_units == plan::DisplayUnits::imperial ? tools::BareUnit::foot
                                                                      : tools::BareUnit::metre;
  const auto low = tools::readLength(parts[0].toStdString(), bare);
  const auto high = tools::readLength(parts[1].toStdString(), bare);
  if (!low.ok() || !high.ok()) return std::nullopt;
  return Spread{low.metres.front(), high.metres.front()};
}

void addSpread(FactTable<GroundGuess>& t, const char* key, const QString& label,
               std::optional<Spread> GroundGuess::*part, const QString& says,
               SpreadOf of = SpreadOf::figure) {
  Fact fact;
  fact.key = std::string("/suction/ground/") + key;
  fact.label = label;
  fact.says = says;
  fact.kind = FactKind::text;
  fact.unknown = SuctionFacts::tr("What the fill stands for is taken.");
  fact.get = [part, of](const Job& job) -> FactValue {
    const auto& spread = job.suction.ground.*part;
    return spread ? FactValue(typedSpread(*spread, of, job).toStdString()) : FactValue();
  };
  fact.set = [part, of](const Job& job, const FactValue& value) -> base::Result<Job> {
    GroundGuess guess = job.suction.ground;
    (guess.*part).reset();
    if (const auto* text = std::get_if<std::string>(&value)) {
      guess.*part = of == SpreadOf::length ? readLengths(*text, job) : readSpread(*text);
      if (!(guess.*part)) {
        return base::Problem{base::Message("suction.typed.spread"), "", base::Gravity::unsound};
      }
    }
    return plan::setGroundGuess(job, guess);
  };
  t.add(std::move(fact));
}

Fact targetFact(const char* key, const QString& label,
                std::optional<double> plan::SuctionFacts::*part, const QString& says,
                const QString& unknown, std::optional<double> taken_pa = std::nullopt) {
  FactTable<plan::SuctionFacts> t(
      [](const Job& job) { return std::optional(job.suction); },
      [](const Job& job, const plan::SuctionFacts& facts) {
        // A file may hold what is not typed: another field is not to
        // blame.
        const bool same =
            facts.target_pa == job.suction.target_pa && facts.limit_pa == job.suction.limit_pa;
        auto after =
            same ? base::Result<Job>(job) : plan::setTarget(job, facts.target_pa, facts.limit_pa);
        if (after) after = plan::setUsualPit(*after, facts.pit_l);
        return after;
      });
  Fact& fact = t.measure(std::string("/suction/") + key, label, part,
                         taken_pa ? FactKind::pressure : FactKind::number);
  fact.says = says;
  fact.unknown = unknown;
  fact.taken = taken_pa.value_or(0.0);
  return t.take().front();
}

Fact useTestsFact() {
  FactTable<plan::SuctionFacts> t(
      [](const Job& job) { return std::optional(job.suction); },
      [](const Job& job, const plan::SuctionFacts& facts) {
        return base::Result<Job>(plan::setUseTests(job, facts.use_tests));
      });
  Fact& use = t.choice("/suction/use_tests", SuctionFacts::tr("Fit to the tests"),
                       &plan::SuctionFacts::use_tests, noYesWords());
  use.says = SuctionFacts::tr("Predict with the ground fitted to the pressure tests");
  use.applies = [](const Job& job) { return !job.suction.tests.empty(); };
  return t.take().front();
}

Fact fillFact() {
  FactTable<plan::House> t(
      [](const Job& job) { return std::optional(job.house); },
      [](const Job& job, const plan::House& house) { return plan::setHouse(job, house); });
  Fact& fill = t.choice("/house/fill", SuctionFacts::tr("Fill"), &plan::House::fill, fillWords());
  fill.says = SuctionFacts::tr("Fill: what lies under the slab");
  return t.take().front();
}

FactTable<Design> designTable() {
  return FactTable<Design>([](const Job& job) { return std::optional(job.design); },
                           [](const Job& job, const Design& design) {
                             auto after = plan::setFan(job, design.fan);
                             if (after) after = plan::setSharedFan(*after, design.shared_fan);
                             if (after) after = plan::setPipeRun(*after, design.pipe);
                             if (after) after = plan::setAnnulus(*after, design.annulus);
                             if (after) after = plan::setSilencer(*after, design.silencer);
                             if (after) after = plan::setRunning(*after, design.running);
                             return after;
                           });
}

QString typedCurve(const std::vector<plan::FanPickPoint>& points, tools::AirUnits air) {
  QStringList parts;
  for (const plan::FanPickPoint& p : points) {
    QString part = SuctionFacts::tr("%1 %2").arg(
        QString::fromStdString(tools::typedFlow(p.flow_m3_s * kFactSecondsAnHour, air)),
        QString::fromStdString(tools::typedPressure(p.pressure_pa, air)));
    if (p.power_w) part += QLatin1Char(' ') + figure(*p.power_w);
    parts << part;
  }
  return parts.join(QStringLiteral("; "));
}

bool hasOwnCurve(const Job& job) { return !job.design.fan.points.empty(); }

/// The fans of the tables, and the own curve where there is one: it wins over them.
Fact fanChoiceFact(const std::vector<FanOffer>& fans, bool own) {
  QStringList titles{SuctionFacts::tr("not chosen")};
  std::vector<std::string> ids{""};
  for (const FanOffer& fan : fans) {
    titles << fan.title;
    ids.push_back(fan.id);
  }
  const int own_at = static_cast<int>(ids.size());
  if (own) titles << SuctionFacts::tr("own curve");
  Fact fact;
  fact.key = "/design/fan/id";
  fact.label = fact.says = SuctionFacts::tr("Fan");
  fact.kind = FactKind::choice;
  fact.choices = titles;
  fact.get = [ids, own_at](const Job& job) -> FactValue {
    if (hasOwnCurve(job)) return own_at;
    const auto it = std::find(ids.begin(), ids.end(), job.design.fan.id);
    return it == ids.end() ? -1 : static_cast<int>(it - ids.begin());
  };
  fact.set = [ids](const Job& job, const FactValue& v) -> base::Result<Job> {
    const int* chosen = std::get_if<int>(&v);
    if (chosen == nullptr || *chosen < 0 || *chosen >= static_cast<int>(ids.size())) return job;
    plan::FanPick fan;
    fan.id = ids[static_cast<std::size_t>(*chosen)];
    fan.speed = job.design.fan.speed;
    return plan::setFan(job, fan);
  };
  return fact;
}

/// The fan as it will be once it has this curve; without one, that of the tables again.
Fact ownCurveFact(tools::AirUnits air) {
  Fact fact;
  fact.key = "/design/fan/points";
  fact.label = SuctionFacts::tr("Own curve");
  fact.says = SuctionFacts::tr(
      "Own curve: pairs of flow and pressure in the units on display, each with more air and less "
      "pressure than the one before; the power in W as a third figure");
  fact.kind = FactKind::text;
  const bool metric = air == tools::AirUnits::metric;
  fact.example = metric ? SuctionFacts::tr("0 400; 100 300; 250 50")
                        : SuctionFacts::tr("0 1.6; 60 1.2; 150 0.2");
  fact.unknown =
      metric ? SuctionFacts::tr("The curve of the fan above is taken. Typed as m³/h and Pa.")
             : SuctionFacts::tr("The curve of the fan above is taken. Typed as cfm and in. w.c.");
  fact.get = [air](const Job& job) -> FactValue {
    if (!hasOwnCurve(job)) return {};
    return typedCurve(job.design.fan.points, air).toStdString();
  };
  fact.set = [air](const Job& job, const FactValue& v) -> base::Result<Job> {
    plan::FanPick fan = job.design.fan;
    const auto* text = std::get_if<std::string>(&v);
    if (text == nullptr) {
      fan.points.clear();
      fan.title.clear();
      return plan::setFan(job, fan);
    }
    const tools::CurveReading reading = tools::readCurve(*text, air);
    if (!reading.unread.empty()) {
      return base::Problem{
          base::Message("suction.typed.curve", {base::text("part", reading.unread)}), "",
          base::Gravity::unsound};
    }
    fan.points = reading.points;
    return plan::setFan(job, fan);
  };
  return fact;
}

/// Of the own curve: its name, and its power where that is the same at every point or not said.
void addOwnFan(FactTable<Design>& t, tools::AirUnits air) {
  t.add(ownCurveFact(air));
  Fact& name = t.text(
      "/design/fan/title", SuctionFacts::tr("Its name"),
      [](auto& d) -> auto& { return d.fan.title; });
  name.says = SuctionFacts::tr("Name of the fan with the own curve, as it stands on papers");
  name.unknown = SuctionFacts::tr("It is called own fan.");
  name.applies = hasOwnCurve;
  Fact& power = t.add(
      "/design/fan/points/0/power_w", SuctionFacts::tr("Its power, W"), FactKind::number,
      [](const Design& d) -> FactValue {
        if (d.fan.points.empty() || !d.fan.points.front().power_w) return {};
        return *d.fan.points.front().power_w;
      },
      [](Design& d, const FactValue& v) {
        const double* watts = std::get_if<double>(&v);
        for (plan::FanPickPoint& p : d.fan.points) {
          p.power_w = watts == nullptr ? std::nullopt : std::optional(*watts);
        }
      });
  power.says = SuctionFacts::tr(
      "Electric power of the fan with the own curve, W: at every point of it; where it differs, "
      "type it as the third figure of each point");
  power.unknown = SuctionFacts::tr("Without it no power and no kWh a year are told.");
  power.applies = [](const Job& job) {
    const auto& points = job.design.fan.points;
    return !points.empty() &&
           std::all_of(points.begin(), points.end(), [&](const plan::FanPickPoint& p) {
             return p.power_w == points.front().power_w;
           });
  };
}

/// What the cost of a year is counted with.
void addRunning(FactTable<Design>& t) {
  Fact& days = t.measure(
      "/design/running/degree_days", SuctionFacts::tr("Degree days"),
      [](auto& d) -> auto& { return d.running.degree_days; }, FactKind::number);
  days.says = SuctionFacts::tr("Heating degree days of the place, in a year");
  days.unknown = SuctionFacts::tr("2200 are taken (own figure).");
  Fact& share = t.add(
      "/design/running/house_air", SuctionFacts::tr("House air, %"), FactKind::number,
      [](const Design& d) -> FactValue {
        return d.running.house_air ? FactValue(100.0 * *d.running.house_air) : FactValue();
      },
      [](Design& d, const FactValue& v) {
        const double* percent = std::get_if<double>(&v);
        d.running.house_air = percent == nullptr ? std::nullopt : std::optional(*percent / 100.0);
      });
  share.says = SuctionFacts::tr("House air: share of what the sump draws that was heated, %");
  share.unknown = SuctionFacts::tr("50, within 20 to 80, is taken (assumption).");
  Fact& price = t.text(
      "/design/running/per_kwh", SuctionFacts::tr("Price of a kWh"),
      [](auto& d) -> auto& { return d.running.per_kwh; });
  price.says = SuctionFacts::tr("Price of a kilowatt hour of electricity");
  price.unknown = SuctionFacts::tr("The price book's, if the quote has one.");
  Fact& heat = t.text(
      "/design/running/heat_per_kwh", SuctionFacts::tr("… of heat"),
      [](auto& d) -> auto& { return d.running.heat_per_kwh; });
  heat.says = SuctionFacts::tr("Price of a kilowatt hour of heat as it is made in this house");
  heat.unknown = SuctionFacts::tr("Counted as electricity.");
}

}  // namespace

std::vector<Fact> groundFacts() {
  std::vector<Fact> facts;
  const suction::Target usual;
  facts.push_back(targetFact("target_pa", SuctionFacts::tr("Target"),
                             &plan::SuctionFacts::target_pa,
                             SuctionFacts::tr("Target: suction asked for under the whole floor"),
                             SuctionFacts::tr("%1 is taken (own figure)."), usual.design_pa));
  facts.push_back(
      targetFact("limit_pa", SuctionFacts::tr("Limit"), &plan::SuctionFacts::limit_pa,
                 SuctionFacts::tr("Limit: the least that counts as held"),
                 SuctionFacts::tr("%1 is taken (own figure), or the target where that is less."),
                 usual.limit_pa));
  facts.push_back(targetFact("pit_l", SuctionFacts::tr("Hollow, litres"),
                             &plan::SuctionFacts::pit_l,
                             SuctionFacts::tr("Hollow: litres of fill taken out for each sump"),
                             SuctionFacts::tr("A bucket of 12 l is taken (common practice).")));
  facts.push_back(fillFact());
  facts.push_back(useTestsFact());
  FactTable<GroundGuess> ground([](const Job& job) { return std::optional(job.suction.ground); },
                                plan::setGroundGuess);
  addSpread(ground, "permeability_m2", SuctionFacts::tr("Permeability, m²"),
            &GroundGuess::permeability_m2,
            SuctionFacts::tr("Permeability of the fill, low to high, m²"));
  addSpread(ground, "fill_depth_m", SuctionFacts::tr("Fill depth"), &GroundGuess::fill_depth_m,
            SuctionFacts::tr("Depth of the fill, low to high"), SpreadOf::length);
  addSpread(ground, "leakage_m_s_pa", SuctionFacts::tr("Ground leak, m/(s Pa)"),
            &GroundGuess::leakage_m_s_pa,
            SuctionFacts::tr("Air up through the ground per area and Pa, low to high, m/(s Pa)"));
  addSpread(ground, "joint_width_mm", SuctionFacts::tr("Floor joint, mm"),
            &GroundGuess::joint_width_mm,
            SuctionFacts::tr("Width of the joint of slab and wall, low to high, mm"));
  addSpread(ground, "footing_m2_s_pa", SuctionFacts::tr("Footings, m²/(s Pa)"),
            &GroundGuess::footing_m2_s_pa,
            SuctionFacts::tr("Air through inner walls on a footing of their own, per metre and Pa, "
                             "low to high, m²/(s Pa)"));
  addSpread(
      ground, "exposed_m_s_pa", SuctionFacts::tr("Bare wall leak, m/(s Pa)"),
      &GroundGuess::exposed_m_s_pa,
      SuctionFacts::tr("Air through foundation wall above the ground, per area and Pa, low to "
                       "high, m/(s Pa)"));
  for (Fact& fact : ground.take()) facts.push_back(std::move(fact));
  return facts;
}

QString fanTitle(const std::string& title, bool invented) {
  const QString words = QString::fromStdString(title);
  const bool says = !invented || words.contains(QStringLiteral("(invented)"));
  return says ? words : SuctionFacts::tr("%1 (invented)").arg(words);
}

std::vector<Fact> fanFacts(const std::vector<FanOffer>& fans, tools::AirUnits air, bool own) {
  FactTable<Design> t = designTable();
  t.add(fanChoiceFact(fans, own));
  addOwnFan(t, air);
  Fact& speed = t.add(
      "/design/fan/speed", SuctionFacts::tr("Fan speed, %"), FactKind::number,
      [](const Design& d) -> FactValue { return 100.0 * d.fan.speed; },
      [](Design& d, const FactValue& v) {
        if (const double* percent = std::get_if<double>(&v)) d.fan.speed = *percent / 100.0;
      });
  speed.says = SuctionFacts::tr("Fan speed: share of the speed its curve was drawn for, %");
  speed.required = true;
  Fact& shared = t.choice("/design/shared_fan", SuctionFacts::tr("One fan for all"),
                          &Design::shared_fan, noYesWords());
  shared.says = SuctionFacts::tr("One fan for all sumps, with a valve in each leg");
  shared.applies = [](const Job& job) { return job.design.sumps.size() > 1; };
  const auto length = [&](const char* key, const QString& label,
                          std::optional<double> plan::PipeRun::*part, const QString& says) {
    Fact& fact = t.measure(
        std::string("/design/pipe/") + key,
        label, [part](auto& d) -> auto& { return d.pipe.*part; });
    fact.says = says;
    fact.unknown = SuctionFacts::tr("Assumed from the outlet.");
  };
  const auto bends = [&](const char* key, const QString& label,
                         std::optional<int> plan::PipeRun::*part, const QString& says) {
    Fact& fact = t.whole(
        std::string("/design/pipe/") + key,
        label, [part](auto& d) -> auto& { return d.pipe.*part; });
    fact.says = says;
    fact.unknown = SuctionFacts::tr("Assumed from the outlet.");
  };
  length("before_m", SuctionFacts::tr("Pipe to the fan"), &plan::PipeRun::before_m,
         SuctionFacts::tr("Length of pipe from the hole to the fan"));
  bends("bends_before", SuctionFacts::tr("Bends before"), &plan::PipeRun::bends_before,
        SuctionFacts::tr("Bends before the fan"));
  length("after_m", SuctionFacts::tr("Pipe after it"), &plan::PipeRun::after_m,
         SuctionFacts::tr("Length of pipe from the fan to the open air"));
  bends("bends_after", SuctionFacts::tr("Bends after"), &plan::PipeRun::bends_after,
        SuctionFacts::tr("Bends after the fan"));
  Fact& seal =
      t.choice("/design/annulus", SuctionFacts::tr("Pipe sealed"), &Design::annulus, sealWords());
  seal.says = SuctionFacts::tr("Whether the pipe is sealed to the inner leaf of the wall");
  t.choice("/design/silencer", SuctionFacts::tr("Silencer"), &Design::silencer, yesNoWords());
  addRunning(t);
  return t.take();
}

namespace {

/// Where the sump stood; emptied: where it stands.
void addStood(FactTable<PressureTest>& t, const std::string& id) {
  const auto stoodIn = [id](const Job& job) -> std::optional<plan::SumpPlace> {
    for (const PressureTest& test : job.suction.tests) {
      if (test.id == id) return test.stood;
    }
    return std::nullopt;
  };
  const auto inside = [stoodIn](const Job& job) {
    const auto stood = stoodIn(job);
    return stood && stood->at_m;
  };
  Fact& along = t.add(
      "stood/chainage_m", SuctionFacts::tr("Sump stood at"), FactKind::length,
      [](const PressureTest& test) -> FactValue {
        return test.stood ? FactValue(test.stood->chainage_m) : FactValue();
      },
      [](PressureTest& test, const FactValue& v) {
        const double* chainage = std::get_if<double>(&v);
        if (chainage == nullptr) return test.stood.reset();
        if (!test.stood) test.stood = plan::SumpPlace{};
        test.stood->chainage_m = *chainage;
      });
  along.says = SuctionFacts::tr(
      "Where the sump stood while it was measured, along the outside face from its first corner");
  along.unknown = SuctionFacts::tr("Where the sump stands now.");
  along.applies = [inside](const Job& job) { return !inside(job); };
  Fact& ring = t.add(
      "stood/ring", SuctionFacts::tr("On ring"), FactKind::whole,
      [](const PressureTest& test) -> FactValue {
        return test.stood ? FactValue(test.stood->ring) : FactValue();
      },
      [](PressureTest& test, const FactValue& v) {
        const int* number = std::get_if<int>(&v);
        if (number != nullptr && test.stood) test.stood->ring = *number;
      });
  ring.says = SuctionFacts::tr("0: the outer walls; 1 and on: the courtyards");
  ring.applies = [inside, stoodIn](const Job& job) {
    return job.plan.rings.size() > 1 && stoodIn(job) && !inside(job);
  };
  Fact at;
  at.key = "stood/at_m";
  at.label = SuctionFacts::tr("Sump stood at");
  at.says = SuctionFacts::tr("Where the sump stood while it was measured, along the plan : up it");
  at.kind = FactKind::list;
  at.example = SuctionFacts::tr("3.20 : 1.05");
  at.unknown = SuctionFacts::tr("Where the sump stands now.");
  at.applies = inside;
  at.get = [stoodIn](const Job& job) -> FactValue {
    const auto stood = stoodIn(job);
    if (!stood || !stood->at_m) return {};
    return listShown(std::vector<plan::Point>{*stood->at_m}, job);
  };
  at.set = [id](const Job& job, const FactValue& v) -> base::Result<Job> {
    for (PressureTest test : job.suction.tests) {
      if (test.id != id) continue;
      std::vector<plan::Point> before;
      if (test.stood && test.stood->at_m) before = {*test.stood->at_m};
      const auto read = listRead<plan::Point>(v, job, before);
      if (!read) return read.problems();
      test.stood.reset();
      if (!read->empty()) test.stood = plan::SumpPlace{0, 0.0, read->front()};
      return plan::changePressureTest(job, test);
    }
    return job;
  };
  t.add(std::move(at));
}

}  // namespace

std::vector<Fact> pressureTestFacts(const std::string& id) {
  FactTable<PressureTest> t(
      [id](const Job& job) -> std::optional<PressureTest> {
        for (const PressureTest& test : job.suction.tests) {
          if (test.id == id) return test;
        }
        return std::nullopt;
      },
      plan::changePressureTest);
  t.text("date", SuctionFacts::tr("Date"), &PressureTest::date).unknown =
      SuctionFacts::tr("as 2026-03-14");
  addStood(t, id);
  t.text("fan", SuctionFacts::tr("Test fan"), &PressureTest::fan);
  Fact& flow = t.add(
      "flow_m3_s", SuctionFacts::tr("Flow"), FactKind::flow,
      [](const PressureTest& test) -> FactValue {
        return test.flow_m3_s ? FactValue(*test.flow_m3_s * kFactSecondsAnHour) : FactValue();
      },
      [](PressureTest& test, const FactValue& v) {
        const double* hourly = std::get_if<double>(&v);
        test.flow_m3_s =
            hourly == nullptr ? std::nullopt : std::optional(*hourly / kFactSecondsAnHour);
      });
  flow.says = SuctionFacts::tr("Air drawn while it was measured");
  flow.unknown = SuctionFacts::tr("Without it only the shape of the field can be told.");
  Fact& pit = t.measure("pit_pa", SuctionFacts::tr("At the pit"), &PressureTest::pit_pa,
                        FactKind::pressure);
  pit.says = SuctionFacts::tr("Suction in the pipe at the pit");
  t.text("notes", SuctionFacts::tr("Notes"), &PressureTest::notes, FactKind::note);
  return t.take();
}

}  // namespace sumpwright::stages
