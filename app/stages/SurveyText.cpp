#include "stages/SurveyText.h"

#include <QCoreApplication>
#include <QStyle>
#include <array>
#include <cmath>

#include "stages/SitingText.h"
#include "words/Words.h"

namespace sumpwright::stages {

namespace {

struct SurveyText {
  Q_DECLARE_TR_FUNCTIONS(SurveyText)
};

constexpr double kOnTheEighth_deg = 0.25;  // half a degree apart nobody reads off a compass (own)

QString quantity(double value, base::Unit unit, int decimals, bool bare, const plan::Job& job) {
  words::QuantityStyle style;
  style.decimals = decimals;
  style.bare = bare;
  return QString::fromStdString(words::print({value, unit}, unitsOf(job), style));
}

/// 3550 as "3 550", with a space that does not break.
QString grouped(double value) {
  QString digits = QString::number(std::llround(value));
  for (qsizetype at = digits.size() - 3; at > 0; at -= 3) digits.insert(at, QChar(0x202F));
  return digits;
}

}  // namespace

void setTone(QLabel* label, bool warning) {
  label->setProperty("tone", warning ? QStringLiteral("warning") : QStringLiteral("second"));
  label->style()->unpolish(label);
  label->style()->polish(label);
}

QString tapedLength(double metres, const plan::Job& job) {
  return quantity(metres, base::Unit::metre, 3, false, job);
}

QString typedLength(double metres, const plan::Job& job) {
  return quantity(metres, base::Unit::metre, 3, true, job);
}

QString directionText(double sheet_deg, const plan::Job& job) {
  const double compass = std::fmod(std::fmod(sheet_deg - job.plan.north_deg, 360.0) + 360.0, 360.0);
  const std::array<QString, 8> names{SurveyText::tr("north"), SurveyText::tr("north-east"),
                                     SurveyText::tr("east"),  SurveyText::tr("south-east"),
                                     SurveyText::tr("south"), SurveyText::tr("south-west"),
                                     SurveyText::tr("west"),  SurveyText::tr("north-west")};
  const double eighth = std::round(compass / 45.0);
  if (std::abs(compass - 45.0 * eighth) <= kOnTheEighth_deg) {
    return names[static_cast<std::size_t>(eighth) % 8];
  }
  return quantity(compass, base::Unit::degree, -1, false, job);
}

QString gapText(double gap_m, const plan::Job& job) {
  if (gap_m >= 1.0) return quantity(gap_m, base::Unit::metre, 3, false, job);
  return quantity(1000.0 * gap_m, base::Unit::millimetre, -1, false, job);
}

QString oneInText(const geometry::Closing& closing, const plan::Job& job) {
  if (!closing.one_in) return SurveyText::tr("closes exactly");
  return SurveyText::tr("1 in %1 of %2")
      .arg(grouped(*closing.one_in), quantity(closing.round_m, base::Unit::metre, 2, false, job));
}

QString misreadText(const geometry::Misread& misread, double as_taped_m, std::size_t more,
                    const plan::Job& job) {
  const QString why = misread.kind == geometry::MisreadKind::transposed
                          ? SurveyText::tr("two digits changed round")
                          : SurveyText::tr("a slip along the tape");
  QString text = SurveyText::tr(
                     "Wall %1 would close the outline at %2 instead of %3: %4. Measure it "
                     "again.")
                     .arg(misread.leg + 1)
                     .arg(tapedLength(misread.length_m, job), tapedLength(as_taped_m, job), why);
  if (more > 0) {
    text +=
        QLatin1Char(' ') +
        (more == 1 ? SurveyText::tr("One other wall running the same way would explain it as well.")
                   : SurveyText::tr("%1 other walls running the same way would explain it as well.")
                         .arg(more));
  }
  return text;
}

}  // namespace sumpwright::stages
