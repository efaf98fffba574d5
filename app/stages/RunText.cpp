#include "stages/RunText.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <optional>

#include "build/Discharge.h"
#include "build/Run.h"
#include "files/FanTables.h"
#include "stages/KindWords.h"
#include "stages/SitingText.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

namespace {

struct RunText {
  Q_DECLARE_TR_FUNCTIONS(RunText)
};

using build::DrillSection;
using build::Fit;
using build::LimitKind;
using build::Margin;

/// Whole millimetres, or inches to the eighth.
QString mm(double metres, const plan::Job& job, bool down = false) {
  return QString::fromStdString(words::print({1000.0 * metres, base::Unit::millimetre},
                                             unitsOf(job), {.decimals = 0, .down = down}));
}

QString degreesText(double degrees, const plan::Job& job) {
  return QString::fromStdString(words::print({degrees, base::Unit::degree}, unitsOf(job)));
}

const Margin* marginOf(const DrillSection& section, LimitKind kind) {
  const auto it = std::find_if(section.margins.begin(), section.margins.end(),
                               [kind](const Margin& m) { return m.kind == kind; });
  return it == section.margins.end() ? nullptr : &*it;
}

bool advised(const DrillSection& section) {
  return std::any_of(section.margins.begin(), section.margins.end(),
                     [](const Margin& m) { return m.advisory && !m.passes; });
}

RunLine floorLine(const DrillSection& section, const plan::Job& job) {
  QStringList parts;
  const auto add = [&](double thickness, const QString& words) {
    if (thickness > 0.0) parts << words.arg(mm(thickness, job));
  };
  add(section.up.screed_m, RunText::tr("%1 screed"));
  add(section.up.insulation_m, RunText::tr("%1 insulation"));
  add(section.up.slab_m, RunText::tr("%1 slab"));
  return {RunText::tr("Floor"), parts.join(QStringLiteral(", "))};
}

RunLine marginLine(const DrillSection& section, const plan::Job& job) {
  const Margin* slab = marginOf(section, LimitKind::slab);
  const Margin* footing = marginOf(section, LimitKind::footing);
  if (slab == nullptr || footing == nullptr) return {RunText::tr("Margins"), {}};
  return {RunText::tr("Margins"),
          RunText::tr("%1 to slab, %2 to footing")
              .arg(mm(slab->clear, job, true), mm(footing->clear, job, true)),
          !slab->passes || !footing->passes};
}

RunLine fanLine(const plan::Job& job, const plan::Sump& sump) {
  QString where = fanPlaceWords().value(static_cast<int>(sump.fan_place)).toLower();
  if (sump.fan_height_m) {
    where = RunText::tr("%1, at %2").arg(where, length(*sump.fan_height_m, job));
  }
  const plan::FanPick& fan = job.design.fan;
  if (fan.id.empty() && fan.points.empty()) {
    return {RunText::tr("Fan"), RunText::tr("not chosen; %1").arg(where), true};
  }
  const std::string& title = fan.title.empty() ? fan.id : fan.title;
  const QString name = fan.title.empty() && !fan.points.empty() ? RunText::tr("own fan")
                                                                : QString::fromStdString(title);
  return {RunText::tr("Fan"), RunText::tr("%1; %2").arg(name, where)};
}

/// What the placed outlet, fan and riser are nearest to, of all rules by what is left over.
struct Tight {
  build::RunNearest nearest;
  double needed_m = 0.0;
};
std::optional<Tight> tightestOfRun(const siting::Study& study, perimeter::Place hole) {
  std::optional<Tight> tightest;
  for (const rules::Rule& rule : study.sheet().rules) {
    if (!rule.enabled || !rule.needed_m) continue;
    const auto nearest = build::nearestOfRun(rule, study.site(), hole);
    if (!nearest) continue;
    const double needed = rule.needed_m->value;
    if (tightest &&
        nearest->distance_m - needed >= tightest->nearest.distance_m - tightest->needed_m)
      continue;
    tightest = Tight{*nearest, needed};
  }
  return tightest;
}

RunLine dischargeLine(const siting::Study& study, const plan::Sump& sump, perimeter::Place hole) {
  const plan::Job& job = study.job();
  if (!sump.discharge) return {RunText::tr("Discharge"), RunText::tr("not placed"), true};
  QString text = RunText::tr("%1 above the floor").arg(length(sump.discharge->height_m, job));
  const auto& run = study.site().run;
  if (!run || run->sump != sump.id) return {RunText::tr("Discharge"), text};
  const auto tight = tightestOfRun(study, hole);
  if (!tight) return {RunText::tr("Discharge"), text};
  const QString distance = length(tight->nearest.distance_m, job);
  const QString thing = said(tight->nearest.label, job);
  text += tight->needed_m > 0.0 ? RunText::tr("; %1 from %2, %3 needed")
                                      .arg(distance, thing, length(tight->needed_m, job))
                                : RunText::tr("; %1 from %2").arg(distance, thing);
  return {RunText::tr("Discharge"), text, tight->nearest.distance_m < tight->needed_m};
}

QString routeText(const build::CableRoute& route, const plan::Job& job) {
  QString text = RunText::tr("%1 to %2").arg(length(route.length_m, job), said(route.label, job));
  if (route.drillings == 1) text += RunText::tr(", 1 inner wall drilled");
  if (route.drillings > 1) text += RunText::tr(", %1 inner walls drilled").arg(route.drillings);
  return text;
}

/// Length and way of the chosen route, or why there is none.
RunLine cableLine(const build::CableAnswer& cable, const plan::Job& job) {
  if (!cable.chosen) return {RunText::tr("Cable"), said(cable.sentence, job), true};
  return {RunText::tr("Cable"), routeText(cable.routes[*cable.chosen], job)};
}

QString quantity(double value, base::Unit unit, const plan::Job& job, int decimals) {
  return QString::fromStdString(words::print({value, unit}, unitsOf(job), {.decimals = decimals}));
}

RunLine pipeLine(const RunAir& air, const plan::Job& job) {
  QString text = RunText::tr("%1 to the fan, %2 on to the open air, ")
                     .arg(length(air.before_m, job), length(air.after_m, job));
  text += air.bends == 1 ? RunText::tr("1 bend") : RunText::tr("%1 bends").arg(air.bends);
  if (air.exposed_m) {
    text += RunText::tr("; %1 in the open").arg(length(*air.exposed_m, job));
    if (*air.exposed_m > build::kLagOver_m) text += RunText::tr(", to be lagged");
  }
  if (air.assumed) text += RunText::tr(" (assumed: the discharge is not placed)");
  return {RunText::tr("Run"), text};
}

RunLine speedLine(const siting::RunDuty& duty, const plan::Job& job) {
  const airflow::SpeedLimits limits;
  const auto said = [&](double m_s) { return quantity(m_s, base::Unit::metrePerSecond, job, 1); };
  const QString speed = duty.at_most
                            ? RunText::tr("at most %1 in the pipe").arg(said(duty.speed_m_s))
                            : RunText::tr("≈ %1 in the pipe").arg(said(duty.speed_m_s));
  switch (duty.verdict) {
    case siting::PipeSpeed::quiet:
      return {RunText::tr("Speed"), RunText::tr("%1: under the %2 from which the outlet is heard")
                                        .arg(speed, said(limits.noise_m_s))};
    case siting::PipeSpeed::noisy:
      return {RunText::tr("Speed"),
              RunText::tr("%1: from %2 on the rush at the outlet is heard")
                  .arg(speed, said(limits.noise_m_s)),
              !duty.at_most};
    case siting::PipeSpeed::condensate:
      break;
  }
  return {RunText::tr("Speed"),
          RunText::tr("%1: from %2 on condensate does not run back; a wider pipe or a smaller fan")
              .arg(speed, said(limits.condensate_m_s)),
          !duty.at_most};
}

std::vector<RunLine> dutyLines(const siting::RunDuty& duty, const plan::Job& job) {
  using base::Unit;
  const QString flow = quantity(duty.flow.m3PerH(), Unit::cubicMetrePerHour, job, 0);
  std::vector<RunLine> lines;
  lines.push_back(
      {RunText::tr("Air"),
       duty.at_most ? RunText::tr("at most %1, with nothing in the way under the floor").arg(flow)
                    : RunText::tr("≈ %1, %2 in the pit, %3 at the fan (predicted)")
                          .arg(flow, quantity(duty.pit.pa(), Unit::pascal, job, 0),
                               quantity(duty.fan.pa(), Unit::pascal, job, 0))});
  lines.push_back(speedLine(duty, job));
  if (duty.power_w && duty.running) {
    const QString power = quantity(*duty.power_w, Unit::watt, job, 0);
    const QString energy = quantity(duty.running->energy_kwh, Unit::kilowattHour, job, 0);
    lines.push_back({RunText::tr("Power"), RunText::tr("≈ %1, ≈ %2 a year").arg(power, energy)});
    if (duty.shared) lines.back().value += RunText::tr(", for all sumps on this fan");
  }
  return lines;
}

}  // namespace

RunAir runAir(const siting::Study& study, const plan::Sump& sump, perimeter::Place hole,
              const siting::SuctionAnswer* answer) {
  RunAir air;
  const auto drawn = build::countedPipe(study.site(), sump, hole);
  if (drawn) air.exposed_m = drawn->exposed_m;
  const plan::PipeRun& stated = study.job().design.pipe;
  air.assumed = !drawn && !(stated.before_m && stated.after_m);
  const auto fan = files::pickedFan(study.job().design.fan);
  if (!fan) return air;
  const siting::SuctionSystem system =
      siting::systemWith(study.site(), fan->fan, fan->invented, drawn);
  air.before_m = system.before.length_m;
  air.after_m = system.after.length_m;
  for (const airflow::Pipe* pipe : {&system.before, &system.after}) {
    for (const airflow::Fitting& fitting : pipe->fittings) {
      if (fitting.kind == airflow::FittingKind::bend_90) air.bends += fitting.count;
    }
  }
  if (answer != nullptr) air.duty = siting::dutyIn(*answer, sump.id);
  if (!air.duty) air.duty = siting::mostAir(system);
  return air;
}

std::vector<RunLine> airLines(const RunAir& air, const plan::Job& job) {
  std::vector<RunLine> lines{pipeLine(air, job)};
  if (!air.duty) {
    lines.push_back(
        {RunText::tr("Air"), RunText::tr("the fan and this pipe have no duty point"), true});
    return lines;
  }
  for (RunLine& line : dutyLines(*air.duty, job)) lines.push_back(std::move(line));
  return lines;
}

QString fitWord(const DrillSection& section) {
  switch (section.fit) {
    case Fit::fits:
      return advised(section) ? RunText::tr("passes, with advice") : RunText::tr("passes");
    case Fit::fits_if_footing:
      return RunText::tr("footing decides");
    case Fit::never:
      return RunText::tr("does not pass");
    case Fit::not_cored:
      break;
  }
  return RunText::tr("no core here");
}

rules::State fitState(const DrillSection& section) {
  switch (section.fit) {
    case Fit::fits:
      return advised(section) ? rules::State::advised_against : rules::State::clear;
    case Fit::fits_if_footing:
      return rules::State::not_proven;
    case Fit::never:
    case Fit::not_cored:
      break;
  }
  return rules::State::refused;
}

std::vector<RunLine> runLines(const siting::Study& study, const plan::Sump& sump,
                              perimeter::Place hole, const DrillSection& section,
                              const build::CableAnswer& cable, const RunAir& air) {
  const plan::Job& job = study.job();
  std::vector<RunLine> lines;
  if (section.bore) {
    lines.push_back(floorLine(section, job));
    lines.push_back({RunText::tr("Core"),
                     RunText::tr("%1 at %2, %3 down to the pit")
                         .arg(mm(section.up.core_m, job), length(section.bore->entry_m, job),
                              degreesText(build::degreesOfFall(section.bore->fall), job))});
    lines.push_back(marginLine(section, job));
    lines.push_back(
        {RunText::tr("Dig"), section.dig_m > 0.0
                                 ? RunText::tr("%1 deep outside").arg(length(section.dig_m, job))
                                 : RunText::tr("none: the hole is above the ground")});
    lines.push_back({RunText::tr("Hollow"), RunText::tr("%1 l, %2 across")
                                                .arg(qRound(1000.0 * section.hollow.volume_m3))
                                                .arg(mm(2.0 * section.hollow.radius_m, job))});
    lines.push_back(
        {RunText::tr("Pipe"), RunText::tr("%1, a gap of %2 to seal")
                                  .arg(mm(section.up.pipe_od_m, job), mm(section.annulus_m, job))});
  }
  lines.push_back(fanLine(job, sump));
  lines.push_back(dischargeLine(study, sump, hole));
  for (RunLine& line : airLines(air, job)) lines.push_back(std::move(line));
  lines.push_back(cableLine(cable, job));
  return lines;
}

QStringList runNotes(const siting::Study& study, const DrillSection& section,
                     const build::CableAnswer& cable) {
  const plan::Job& job = study.job();
  QStringList notes;
  for (const base::Message& note : section.notes) notes << said(note, job);
  if (job.looked_for.open_flue == plan::Looked::not_looked) {
    notes << RunText::tr("Open-flued appliance: not answered yet. Ask before the fan is ordered.");
  }
  for (const base::Message& caution : cable.cautions) notes << said(caution, job);
  return notes;
}

QStringList runAssumed(const siting::Study& study, const DrillSection& section,
                       const build::CableAnswer& cable) {
  QStringList lines;
  for (const build::Assumption& one : section.up.assumed) {
    lines << capital(said(one.what, study.job()));
  }
  for (const base::Message& one : cable.assumptions) lines << capital(said(one, study.job()));
  return lines;
}

QStringList runSupplies(const siting::Study& study, const build::CableAnswer& cable) {
  constexpr std::size_t kMost = 5;  // own figure
  const plan::Job& job = study.job();
  QStringList lines;
  for (std::size_t i = 0; i < std::min(cable.routes.size(), kMost); ++i) {
    const build::CableRoute& route = cable.routes[i];
    QString text = capital(routeText(route, job));
    text += RunText::tr("; %1 to buy, voltage drop %2 %")
                .arg(length(route.to_buy_m, job), QString::number(route.drop_percent, 'f', 2));
    for (const base::Message& remark : route.remarks)
      text += (text.endsWith(QLatin1Char('.')) ? QStringLiteral(" ") : QStringLiteral(". ")) +
              said(remark, job);
    lines << text;
  }
  for (const build::NoCable& none : cable.none) {
    lines << RunText::tr("No way to %1: %2").arg(said(none.label, job), said(none.reason, job));
  }
  return lines;
}

QString runBriefly(const DrillSection& section) {
  switch (section.fit) {
    case Fit::fits:
      return RunText::tr("Core passes");
    case Fit::fits_if_footing:
      return RunText::tr("See the footing first");
    case Fit::never:
      return RunText::tr("Core does not pass");
    case Fit::not_cored:
      break;
  }
  return RunText::tr("No core here");
}

}  // namespace sumpwright::stages
