#include "stages/SitingText.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "drawing/Ties.h"
#include "siting/Scoring.h"
#include "suction/SumpPerArea.h"

namespace sumpwright::stages {

namespace {

using rules::State;
using rules::Weight;

class SitingText {
  Q_DECLARE_TR_FUNCTIONS(SitingText)
};

/// The worst of a rule that no waiver accepts, or the worst where all are accepted; its place in
/// the list, past the end where the rule finds nothing.
std::size_t findingOf(const Assessment& a, const std::string& rule) {
  std::size_t worst = a.findings.size();
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    if (a.findings[i].rule != rule) continue;
    if (!a.accepted[i]) return i;
    worst = std::min(worst, i);
  }
  return worst;
}

const rules::Margin* marginOf(const Assessment& a, const std::string& rule) {
  const auto it = std::find_if(a.margins.begin(), a.margins.end(),
                               [&](const rules::Margin& m) { return m.rule == rule; });
  return it == a.margins.end() ? nullptr : &*it;
}

QString floorText(const Study& study, Place place) {
  const Place at = study.perimeter().wrapped(place);
  const auto& edge = study.perimeter().edgeAt(at);
  const auto& edges = study.site().zones_behind[static_cast<std::size_t>(edge.ring)];
  for (const perimeter::Span& span : edges[static_cast<std::size_t>(edge.edge)]) {
    if (span.from_m <= at.chainage_m && at.chainage_m < span.to_m) {
      return said(study.labelOf(span.id), study.job());
    }
  }
  return SitingText::tr("no floor drawn");
}

/// What a rule without a finding and without a distance looked at.
QString metText(const Study& study, const Assessment& a, const rules::Rule& rule) {
  switch (rule.kind) {
    case rules::RuleKind::room_behind:
    case rules::RuleKind::fitting_behind:
      if (a.rooms_behind.empty()) return SitingText::tr("no room drawn");
      return said(study.labelOf(a.rooms_behind.front()), study.job());
    case rules::RuleKind::wall: {
      const auto& edge = study.perimeter().edgeAt(a.place);
      return said(study.perimeter().wallLabel(edge), study.job());
    }
    case rules::RuleKind::floor_behind:
      return floorText(study, a.place);
    case rules::RuleKind::supply:
      return study.job().plan.supplies.empty() ? SitingText::tr("no socket or spur drawn")
                                               : SitingText::tr("near enough");
    case rules::RuleKind::section:
      return SitingText::tr("a hole can be drilled, as far as known");
    case rules::RuleKind::suction: {
      const auto idle = suction::whyNoThumb(study.job());
      return idle ? said(*idle, study.job()) : SitingText::tr("within what one sump serves");
    }
    case rules::RuleKind::discharge:
      return SitingText::tr("nothing stands against it");
    case rules::RuleKind::clearance:
    case rules::RuleKind::along_wall:
    case rules::RuleKind::drill_line:
      break;
  }
  return SitingText::tr("none drawn");
}

void fillFinding(const Study& study, const Assessment& a, std::size_t index, RuleLine& line) {
  const rules::Finding& f = a.findings[index];
  line.state = stateOf(f.weight);
  line.thing = f.thing;
  line.waivable = f.waivable;
  line.waived = a.accepted[index];
  if (f.distance_m && f.needed_m) {
    const bool of_thing = !f.thing_label.id.empty();  // else the ground or the eaves
    line.second = said(of_thing ? f.thing_label : f.reason, study.job());
    line.figure = length(*f.distance_m - *f.needed_m, study.job(), true);
  } else {
    line.second = said(f.reason, study.job());
  }
}

/// Rounded down, as in the verdict, so that the two never differ by a centimetre.
QString spare(double metres, const plan::Job& job) {
  words::QuantityStyle style;
  style.down = true;
  return QString::fromStdString(words::print({metres, base::Unit::metre}, unitsOf(job), style));
}

const char* sideOf(double bearing_deg) {
  static constexpr const char* kSides[] = {
      QT_TRANSLATE_NOOP("SitingText", "north"), QT_TRANSLATE_NOOP("SitingText", "north-east"),
      QT_TRANSLATE_NOOP("SitingText", "east"),  QT_TRANSLATE_NOOP("SitingText", "south-east"),
      QT_TRANSLATE_NOOP("SitingText", "south"), QT_TRANSLATE_NOOP("SitingText", "south-west"),
      QT_TRANSLATE_NOOP("SitingText", "west"),  QT_TRANSLATE_NOOP("SitingText", "north-west")};
  const int eighth = static_cast<int>(std::lround(bearing_deg / 45.0)) % 8;
  return kSides[(eighth + 8) % 8];
}

}  // namespace

QString capital(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

words::Units unitsOf(const plan::Job& job) {
  return job.display_units == plan::DisplayUnits::imperial ? words::Units::imperial
                                                           : words::Units::metric;
}

QString said(const base::Message& message, const plan::Job& job) {
  return QString::fromStdString(words::say(message, unitsOf(job)));
}

QString length(double metres, const plan::Job& job, bool with_sign) {
  words::QuantityStyle style;
  style.has_sign = with_sign;
  style.down = with_sign;  // what falls short never reads as enough
  style.bare = with_sign;
  return QString::fromStdString(words::print({metres, base::Unit::metre}, unitsOf(job), style));
}

QString pressure(double pa, const plan::Job& job) {
  constexpr double kWhole_pa = 9.95;  // from here on without decimals
  const bool whole = pa >= kWhole_pa || pa == std::round(pa);
  return QString::fromStdString(
      words::print({pa, base::Unit::pascal}, unitsOf(job), {.decimals = whole ? 0 : 1}));
}

QString flow(double m3_h, const plan::Job& job) {
  return QString::fromStdString(words::print({m3_h, base::Unit::cubicMetrePerHour}, unitsOf(job)));
}

int percentDown(double share) { return static_cast<int>(std::floor(100.0 * share + 1e-9)); }

tools::AirUnits airUnitsOf(const plan::Job& job) {
  return job.display_units == plan::DisplayUnits::imperial ? tools::AirUnits::customary
                                                           : tools::AirUnits::metric;
}

QString stateWord(State state, bool waived) {
  if (waived) return SitingText::tr("Accepted by waiver");
  switch (state) {
    case State::clear:
      return SitingText::tr("Clear");
    case State::advised_against:
      return SitingText::tr("Advised against");
    case State::not_proven:
      return SitingText::tr("Not proven");
    case State::refused:
      break;
  }
  return SitingText::tr("Refused");
}

QString verdictBody(const Study& study, const Assessment& assessment) {
  const QString whole = said(assessment.sentence, study.job());
  const qsizetype dash = whole.indexOf(QStringLiteral(" — "));
  return capital(dash < 0 ? whole : whole.mid(dash + 3));
}

QString outletText(const Study& study) {
  if (const auto& run = study.site().run) {
    return SitingText::tr("for an outlet %1 above the floor")
        .arg(length(run->outlet_m, study.job()));
  }
  return study.site().outlet == plan::OutletMode::low
             ? SitingText::tr("for an outlet low at the hole")
             : SitingText::tr("for a riser to the eaves");
}

QString wallText(const Study& study, Place place) {
  const auto& perimeter = study.perimeter();
  return capital(said(perimeter.wallLabel(perimeter.edgeAt(place)), study.job()));
}

QString chainageText(const Study& study, Place place) {
  // Chainage runs on round the corners: "from A", lest it read as a distance along this wall.
  return SitingText::tr("%1 from %2")
      .arg(length(place.chainage_m, study.job()),
           QString::fromStdString(study.perimeter().cornerLetter(place.ring, 0)));
}

QString tieText(const Study& study, Place place) {
  const drawing::Ties ties = drawing::tiesOf(study, place);
  QStringList parts;
  for (const auto* tie : {&ties.before, &ties.after, &ties.check}) {
    if (!*tie) continue;
    parts << SitingText::tr("%1 from %2")
                 .arg(length((*tie)->length_m, study.job()), said((*tie)->label, study.job()));
  }
  if (parts.isEmpty()) return {};
  return SitingText::tr("Set out %1.").arg(parts.join(SitingText::tr(", ")));
}

QString moveText(const Study& study, Place from, Place to) {
  const auto& p = study.perimeter();
  const auto& here = p.edgeAt(from);
  const auto& there = p.edgeAt(to);
  if (here.ring == there.ring && here.edge == there.edge) {
    const geometry::Vec way = p.pointAt(to) - p.pointAt(from);
    const double bearing =
        std::atan2(way.x, way.y) * 180.0 / 3.14159265358979323846 - study.job().plan.north_deg;
    return SitingText::tr("Move %1 %2")
        .arg(length(geometry::norm(way), study.job()), SitingText::tr(sideOf(bearing)));
  }
  const double ring = p.length_m(from.ring);
  const double on = std::fmod(to.chainage_m - from.chainage_m + ring, ring);
  const bool right = on <= ring - on;
  return (right ? SitingText::tr("Move %1 to the right") : SitingText::tr("Move %1 to the left"))
      .arg(length(right ? on : ring - on, study.job()));
}

std::vector<RuleLine> ruleLines(const Study& study, const Assessment& a) {
  std::vector<RuleLine> lines;
  for (const rules::Rule& rule : study.sheet().rules) {
    if (!rule.enabled || rule.severity == rules::Severity::preference) continue;
    const rules::Margin* margin = marginOf(a, rule.id);
    // Of a rule on the run that measures nothing here there is nothing to read.
    const bool silent = margin == nullptr && findingOf(a, rule.id) == a.findings.size();
    if (rule.kind == rules::RuleKind::discharge && silent) continue;
    RuleLine line;
    line.rule = rule.id;
    line.title = QString::fromStdString(rule.title);
    if (const std::size_t finding = findingOf(a, rule.id); finding < a.findings.size()) {
      fillFinding(study, a, finding, line);
    } else if (margin != nullptr) {
      line.thing = margin->thing;
      line.second = said(margin->thing_label, study.job());
      line.figure = length(margin->margin_m, study.job(), true);
    } else {
      line.second = metText(study, a, rule);
    }
    line.close = margin != nullptr && margin->close;
    lines.push_back(std::move(line));
  }
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    const rules::Finding& f = a.findings[i];
    if (study.sheet().find(f.rule) != nullptr) continue;
    RuleLine line;
    line.rule = f.rule;
    line.title = SitingText::tr("Outlet");
    fillFinding(study, a, i, line);
    lines.push_back(std::move(line));
  }
  return lines;
}

bool mayWaive(const rules::Finding& f) {
  if (f.weight != Weight::binding || !f.waivable.allowed) return false;
  return !f.waivable.not_within_m || !f.distance_m || *f.distance_m > *f.waivable.not_within_m;
}

QString evidenceText(plan::Evidence evidence) {
  switch (evidence) {
    case plan::Evidence::reason:
      return SitingText::tr("Needs a reason.");
    case plan::Evidence::locating_record:
      return SitingText::tr(
          "Needs a locating record: who found the service, how, and where it runs.");
    case plan::Evidence::drains_located:
      return SitingText::tr("Needs a record that the drains of this room were located.");
    case plan::Evidence::engineers_note:
      return SitingText::tr("Needs an engineer’s note on this foundation.");
    case plan::Evidence::consent:
      break;
  }
  return SitingText::tr("Needs the consent of whoever owns the ground, on record.");
}

QString howToPutText(const session::Session& session) {
  const Study* study = session.study();
  if (study == nullptr) return SitingText::tr("The plan cannot be studied yet.");
  if (!study->best().empty()) {
    return SitingText::tr(
        "Best place puts one where the score is highest; a click on the tape, or on a wall of the "
        "plan, puts one there.");
  }
  if (session.bestPlace()) {
    return SitingText::tr(
        "Nothing is clear. Best place puts one where least stands against it; a click on the tape, "
        "or on a wall of the plan, puts one there.");
  }
  return SitingText::tr(
      "The rules leave no place to propose. Click the tape, or a wall on the plan, to put one "
      "there all the same.");
}

QString reachInScoreText(const Study& study) {
  double reach = 0.0;
  double all = 0.0;
  for (const rules::ScorePart& part : study.site().sheet.score) {
    all += part.weight;
    if (part.kind == rules::PartKind::reach) reach += part.weight;
  }
  if (!(reach > 0.0)) {
    return SitingText::tr("Best place goes by the score, in which reach does not count.");
  }
  return SitingText::tr("Best place goes by the score, in which reach is %1 of %2 points.")
      .arg(std::lround(reach))
      .arg(std::lround(all));
}

QString briefly(const Study& study, const Assessment& a) {
  if (a.waived) return SitingText::tr("Accepted by waiver");
  switch (a.state) {
    case State::clear: {
      const rules::Margin* least = siting::leastOfAll(study.site(), a.margins);
      if (least == nullptr) return SitingText::tr("Clear");
      if (least->close) return SitingText::tr("Clear, too close to call");
      return SitingText::tr("Clear, %1 spare").arg(spare(least->margin_m, study.job()));
    }
    case State::advised_against:
      return SitingText::tr("Advised against here");
    case State::not_proven:
      return SitingText::tr("Not proven here");
    case State::refused:
      break;
  }
  return SitingText::tr("Refused here");
}

}  // namespace sumpwright::stages
