#include "stages/HoleTable.h"

#include <QDate>
#include <QKeyEvent>
#include <algorithm>

#include "paint/Look.h"
#include "plan/SuctionEdits.h"
#include "plan/ThingEdits.h"
#include "siting/SuctionPlaces.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "stages/TypedText.h"
#include "suction/Field.h"

namespace sumpwright::stages {

namespace {

const plan::PressureTest* testOf(const plan::Job& job, const std::string& id) {
  for (const plan::PressureTest& test : job.suction.tests) {
    if (test.id == id) return &test;
  }
  return nullptr;
}

std::optional<double> readingOf(const plan::PressureTest* test, const std::string& hole) {
  if (test == nullptr) return std::nullopt;
  for (const plan::HoleReading& reading : test->readings) {
    if (reading.hole == hole) return reading.suction_pa;
  }
  return std::nullopt;
}

/// Of a gauge: tenths of a pascal under 10, thousandths of an inch of water.
QString gauged(double pa, const plan::Job& job) {
  words::QuantityStyle style;
  style.bare = true;
  style.decimals = std::abs(pa) < 9.95 ? 1 : 0;
  return QString::fromStdString(words::print({pa, base::Unit::pascal}, unitsOf(job), style));
}

/// Where nothing reaches, a gauge may read a little under nothing.
std::optional<double> readGauge_pa(QString text, const plan::Job& job) {
  const bool below = text.startsWith(QLatin1Char('-')) || text.startsWith(QChar(0x2212));
  if (below) text.remove(0, 1);
  const auto pa = tools::readPressure_pa(text.toStdString(), airUnitsOf(job));
  return pa && below ? std::optional(-*pa) : pa;
}

}  // namespace

HoleTable::HoleTable(session::Session& session, session::SuctionDesk& desk, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_desk(desk),
      m_grid(new QGridLayout(this)),
      m_stood(new QLabel(this)) {
  setAccessibleName(tr("Test holes"));
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setColumnStretch(0, 1);
  m_stood->setWordWrap(true);
  m_stood->setProperty("tone", QStringLiteral("second"));
  m_grid->addWidget(m_stood, 0, 0, 1, 3);
  int column = 0;
  for (const QString& title : {tr("Test hole"), tr("predicted"), QString()}) {
    auto* head = new QLabel(title, this);
    if (column == 1) m_predicted = head;
    m_measured = head;  // the last one
    head->setProperty("tone", QStringLiteral("second"));
    if (column > 0) head->setAlignment(Qt::AlignRight);
    m_grid->addWidget(head, 1, column,
                      Qt::AlignBottom | (column == 0 ? Qt::AlignLeft : Qt::AlignRight));
    ++column;
  }
}

void HoleTable::setTest(const std::string& test) {
  if (test != m_test) {
    for (Row& row : m_rows) letGo(row);
  }
  m_test = test;
  refresh();
}

void HoleTable::addRow() {
  const double k = paint::uiScale(font());
  const std::size_t index = m_rows.size();
  Row row{new QLabel(this), new QLabel(this), new QLineEdit(this), new QLabel(this), {}};
  QFont italic = font();
  italic.setItalic(true);
  row.predicted->setFont(italic);
  row.name->setWordWrap(true);
  row.measured->setFixedWidth(qRound(86 * k));
  row.measured->setAlignment(Qt::AlignRight);
  row.note->setWordWrap(true);
  setTone(row.note, true);
  row.note->hide();
  row.measured->installEventFilter(this);
  setTabOrder(index == 0 ? static_cast<QWidget*>(this) : m_rows.back().measured, row.measured);
  const int line = 2 * static_cast<int>(index) + 2;
  m_grid->addWidget(row.name, line, 0);
  m_grid->addWidget(row.predicted, line, 1, Qt::AlignRight);
  m_grid->addWidget(row.measured, line, 2);
  m_grid->addWidget(row.note, line + 1, 0, 1, 3);
  connect(row.measured, &QLineEdit::editingFinished, this, [this, index] { take(index); });
  m_rows.push_back(row);
}

void HoleTable::refreshStood(const plan::PressureTest* test) {
  const siting::Study* study = m_session.study();
  QString text;
  if (test != nullptr && study != nullptr) {
    const plan::Job& job = m_session.job();
    const plan::Sump* sump = plan::testedSump(job, *test);
    const auto now = sump != nullptr ? plan::placeOf(*sump) : std::nullopt;
    if (const auto stood = test->stood ? test->stood : now) {
      const QString where = said(siting::placeOfSump(*study, *stood), job);
      text = stood == now ? tr("Measured on the sump %1.").arg(where)
                          : tr("Measured on a sump that stood %1.").arg(where);
    } else {
      text = tr("It is not said which sump was measured.");
    }
  }
  m_stood->setText(text);
  m_stood->setVisible(!text.isEmpty());
}

const siting::ExpectedTest* HoleTable::expected(const plan::PressureTest* test) const {
  const siting::SuctionLive* live = m_desk.live();
  return live == nullptr || test == nullptr ? nullptr
                                            : siting::expectedIn(live->expected(), test->id);
}

std::optional<double> HoleTable::predictedIn(const plan::TestHole& hole,
                                             const plan::PressureTest* test) const {
  if (const siting::ExpectedTest* in = expected(test)) return in->in(hole.id);
  const siting::SuctionLive* live = m_desk.live();
  if (test != nullptr || live == nullptr || !m_desk.field()) return std::nullopt;
  return suction::sampleAt(live->cases()[m_desk.field()->which].solver.network(),
                           m_desk.field()->suction, hole.at_m);
}

/// Under "predicted" the flow that it is for, and whether the plan was another one then.
void HoleTable::refreshHeads(const plan::PressureTest* test) {
  const plan::Job& job = m_session.job();
  std::optional<double> flow_m3_s;
  QString why = tr("For the sump and the fan as they are designed.");
  if (const siting::ExpectedTest* in = expected(test)) {
    flow_m3_s = in->flow_m3_s;
    why =
        tr("For the sump and the flow of this test, on the ground as it was guessed before "
           "anything was measured.");
  } else if (test != nullptr) {
    why =
        tr("Type the flow that the test fan drew: without it nothing measured can be compared "
           "with a prediction.");
  } else if (m_desk.field()) {
    flow_m3_s = 0.0;
    for (const airflow::LegDuty& leg : m_desk.field()->duty.legs) {
      *flow_m3_s += leg.ground.m3PerS();
    }
  }
  QStringList lines{tr("predicted")};
  if (flow_m3_s) {
    constexpr double kSecondsAnHour = 3600.0;
    words::QuantityStyle style;
    style.decimals = 0;
    lines << QString::fromStdString(words::print(
        {*flow_m3_s * kSecondsAnHour, base::Unit::cubicMetrePerHour}, unitsOf(job), style));
    if (m_desk.isStale()) lines << tr("old plan");
  }
  m_predicted->setText(lines.join(QLatin1Char('\n')));
  m_predicted->setToolTip(why);
  m_predicted->setAccessibleDescription(why);
  const QString unit = QString::fromUtf8(tools::pressureUnit(airUnitsOf(job)));
  m_measured->setText(tr("measured, %1").arg(unit));
}

void HoleTable::refresh() {
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  const plan::PressureTest* test = testOf(job, m_test);
  refreshStood(test);
  refreshHeads(test);
  m_shown = job.plan.test_holes.size();
  const QString unit = QString::fromUtf8(tools::pressureUnit(airUnitsOf(job)));
  while (m_rows.size() < m_shown) addRow();
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    Row& row = m_rows[i];
    for (QWidget* part : std::initializer_list<QWidget*>{row.name, row.predicted, row.measured}) {
      part->setVisible(i < m_shown);
    }
    row.note->setVisible(i < m_shown && !row.note->text().isEmpty());
    if (i >= m_shown) continue;
    const plan::TestHole& hole = job.plan.test_holes[i];
    if (row.hole != hole.id) letGo(row);
    row.hole = hole.id;
    const QString name = namedIn(hole.id, job);
    // The number that stands at its sign on the plan.
    row.name->setText(hole.name.empty() ? name : tr("%1: %2").arg(i + 1).arg(name));
    row.measured->setAccessibleName(tr("Measured in %1, %2").arg(row.name->text(), unit));
    const auto predicted = predictedIn(hole, test);
    row.predicted->setText(predicted ? tr("≈ %1").arg(gauged(*predicted, job)) : QString());
    const auto measured = readingOf(test, hole.id);
    // What could not be read stays until it is put right.
    const bool typing = row.measured->hasFocus() && row.measured->isModified();
    if (!typing && row.note->text().isEmpty()) {
      row.measured->setText(measured ? gauged(*measured, job) : QString());
      row.measured->setModified(false);
    }
  }
}

/// Forgets what was typed there and not understood.
void HoleTable::letGo(Row& row) {
  row.measured->setModified(false);
  row.note->clear();
  row.note->hide();
}

void HoleTable::refuse(Row& row, const QString& why) {
  row.measured->setModified(true);  // it is asked again when the field is left once more
  row.note->setText(why);
  row.note->show();
}

/// Escape goes back to what the job holds.
bool HoleTable::eventFilter(QObject* watched, QEvent* event) {
  if (isWindowsUndo(qobject_cast<QWidget*>(watched), event)) return true;
  if (event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    for (Row& row : m_rows) {
      if (row.measured != watched || !row.measured->isModified()) continue;
      letGo(row);
      refresh();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

/// One step: a figure where no test is yet begins one, of today and of this sump.
void HoleTable::take(std::size_t index) {
  QLineEdit* field = m_rows[index].measured;
  if (!field->isModified()) return;
  const std::string hole = m_rows[index].hole;
  const QString text = field->text().trimmed();
  const std::optional<double> value = readGauge_pa(text, m_session.job());
  if (!value && !text.isEmpty()) {
    return refuse(m_rows[index],
                  tr("“%1” is no suction. Type it as 5, 5 Pa or 0.02 in. w.c.").arg(text));
  }
  letGo(m_rows[index]);
  base::Result<plan::Job> after = m_session.job();
  std::string test = m_test;
  if (testOf(m_session.job(), test) == nullptr) {
    if (!value) return;
    plan::PressureTest begun;
    begun.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    begun.sump = m_session.sump();
    after = plan::addPressureTest(*after, begun);
    if (after) test = after->suction.tests.back().id;
  }
  if (after) after = plan::setReading(*after, test, hole, value);
  const base::Problems problems = m_session.edit(tr("Measured in a test hole"), std::move(after));
  if (!problems.empty()) {
    return refuse(m_rows[index], saidNamed(problems.front().message, m_session.job()));
  }
  if (test != m_test) {
    m_test = test;
    Q_EMIT testBegun(test);
  }
  forgetTyping(field);
  refresh();
}

}  // namespace sumpwright::stages
