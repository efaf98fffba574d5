#include "stages/SuctionPanel.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "drawing/FieldLegend.h"
#include "files/FanTables.h"
#include "files/FirmFile.h"
#include "files/PriceBooks.h"
#include "geometry/Distance.h"
#include "paint/Look.h"
#include "paint/QtVoice.h"
#include "plan/PlanCheck.h"
#include "plan/SuctionEdits.h"
#include "plan/SumpList.h"
#include "plan/ThingEdits.h"
#include "price/RunningYear.h"
#include "siting/SuctionWords.h"
#include "stages/ProposedHoles.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"
#include "stages/SteadyScroll.h"
#include "stages/SuctionFacts.h"
#include "stages/SumpSwitch.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

namespace {

constexpr double kBar_px = 18.0;
constexpr double kLegend_px = 46.0;
constexpr int kHoles = 3;  // proposed at once, of the two to five that are worth drilling
constexpr int kFewestHoles = 2;
constexpr int kMostHoles = 5;

QLabel* headingOf(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setFont(paint::sized(parent->font(), 1.05, true));
  return label;
}

QLabel* proseOf(QWidget* parent, double factor, const char* name) {
  auto* label = new QLabel(parent);
  label->setObjectName(QLatin1String(name));
  label->setWordWrap(true);
  label->setProperty("tone", QStringLiteral("second"));
  label->setFont(paint::sized(parent->font(), factor));
  label->setTextFormat(Qt::RichText);
  return label;
}

QString dotted(const QStringList& lines) {
  QString html;
  for (const QString& line : lines) {
    html += QStringLiteral("<tr><td>•&nbsp;</td><td>%1</td></tr>").arg(line.toHtmlEscaped());
  }
  return QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\">%1</table>").arg(html);
}

/// What is shown large: of the answer where it is of now, so that all figures agree to the last
/// one; of the field while it follows a drag.
double heldFloor(const session::SuctionDesk& desk) {
  const bool answered = desk.answer() != nullptr && !desk.isAnswerStale() &&
                        desk.answer()->state == siting::SuctionState::answered;
  return answered ? siting::middleFloor(*desk.answer()) : desk.field()->reach.floor;
}

/// What a kilowatt hour costs, by the price of the job, its price book or the firm.
base::Result<price::Tariff> tariffHere(const plan::Job& job) {
  const auto book = files::priceBookOf(job);
  if (!book) return book.problems();
  const auto firm = files::userFirm();
  const price::Tariff own =
      firm ? price::firmTariff(firm->price_per_kwh, firm->currency) : price::Tariff{};
  return price::tariffOf(job.design.running, *book ? &(*book)->book : nullptr, own);
}

/// What a fan that never stops and the heat of the air cost in a year.
QStringList yearOf(const siting::SuctionAnswer& answer, const plan::Job& job,
                   const base::Result<price::Tariff>& tariff) {
  QStringList lines;
  if (!tariff) return {said(tariff.problems().front().message, job)};
  const auto year = price::runningYear(answer, job.design.running, *tariff);
  if (!year) return lines;
  for (const base::Message& line : year->lines) lines << said(line, job);
  for (const base::Message& line : year->how) lines << said(line, job);
  return lines;
}

}  // namespace

SuctionPanel::SuctionPanel(session::Session& session, session::SuctionDesk& desk,
                           const SuctionActions& actions, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setAccessibleName(tr("Suction"));
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  const int margin = qRound(20 * k);
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.6 * margin));
  column->setSpacing(qRound(6 * k));
  column->addWidget(new SumpSwitch(session, this));
  column->addWidget(makeShare());
  column->addWidget(makeScroll(), 1);
  m_primary = new ActionButton(ActionButton::Role::primary, this);
  m_primary->bind(actions.best);
  m_primary->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addWidget(m_primary);

  const auto outdate = [this] {
    m_old = true;
    m_asked.reset();
    m_no_hole->hide();
    if (isVisible()) refresh();
  };
  connect(&session, &session::Session::studyChanged, this, outdate);
  connect(&session, &session::Session::jobChanged, this, [this, outdate] {
    m_scroll->ensureVisible(0, 0);
    outdate();
  });
  connect(&session, &session::Session::moveFinished, this, outdate);
  connect(&desk, &session::SuctionDesk::fieldChanged, this, [this] {
    if (isVisible()) refreshField();
  });
  connect(&desk, &session::SuctionDesk::answerChanged, this, [this] {
    if (isVisible()) refreshAnswer();
  });
  connect(&desk, &session::SuctionDesk::workChanged, this, [this] {
    if (isVisible()) refreshWork();
  });
  refresh();
}

QWidget* SuctionPanel::makeShare() {
  const double k = paint::uiScale(font());
  auto* head = new QWidget(this);
  auto* column = new QVBoxLayout(head);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(qRound(4 * k));
  auto* row = new QHBoxLayout;
  row->setSpacing(qRound(14 * k));
  m_share = new QLabel(head);
  m_share->setObjectName(QStringLiteral("shareOfFloor"));
  QFont big = paint::sized(font(), 2.8, true);
  big.setItalic(true);  // a prediction
  m_share->setFont(big);
  m_of = proseOf(head, 0.96, "shareOf");
  row->addWidget(m_share);
  row->addWidget(m_of, 1);
  column->addLayout(row);
  m_bar = new DrawnView(head);
  m_bar->setAccessibleName(tr("Share of floor"));
  m_bar->setFixedHeight(qRound(kBar_px * k));
  column->addWidget(m_bar);
  m_band = proseOf(head, 0.92, "shareBand");
  column->addWidget(m_band);
  m_sentence = new QLabel(head);
  m_sentence->setObjectName(QStringLiteral("suctionSentence"));
  m_sentence->setWordWrap(true);
  column->addWidget(m_sentence);
  m_work = new QWidget(head);
  auto* work = new QHBoxLayout(m_work);
  work->setContentsMargins(0, 0, 0, 0);
  m_work_words = proseOf(m_work, 0.92, "suctionWork");
  m_progress = new QProgressBar(m_work);
  m_progress->setRange(0, 100);
  m_progress->setTextVisible(false);
  m_progress->setAccessibleName(tr("Guesses at the ground worked out"));
  m_stop = new QPushButton(tr("Stop"), m_work);
  connect(m_stop, &QPushButton::clicked, this,
          [this] { m_desk.isWorking() ? m_desk.stop() : m_desk.go(); });
  work->addWidget(m_work_words, 1);
  work->addWidget(m_progress, 1);
  work->addWidget(m_stop);
  column->addWidget(m_work);
  return head;
}

QWidget* SuctionPanel::makeScroll() {
  const double k = paint::uiScale(font());
  m_scroll = new SteadyScroll(this);
  auto* all = new QWidget(m_scroll);
  auto* column = new QVBoxLayout(all);
  column->setContentsMargins(3, 3, qRound(10 * k), 3);
  column->setSpacing(qRound(8 * k));
  m_legend = new DrawnView(all);
  m_legend->setFixedHeight(qRound(kLegend_px * k));
  m_legend_title = headingOf(QString(), all);
  column->addWidget(m_legend_title);
  column->addWidget(m_legend);
  m_key = new DrawnView(all);
  m_key->setAccessibleName(tr("What the colours mean"));
  m_key->fitHeight();
  column->addWidget(m_key);
  m_second = new SideNote(SideNote::Kind::warning, all);
  connect(m_second, &SideNote::curePressed, this, [this] {
    const base::Problems problems = m_desk.addSecond();
    if (!problems.empty()) m_second->setText(said(problems.front().message, m_session.job()));
  });
  column->addWidget(m_second);
  column->addWidget(headingOf(tr("Places by chance of reach"), all));
  m_places = new ChanceList(m_session, m_desk, all);
  column->addWidget(m_places);
  column->addWidget(makeHoles(all));
  column->addWidget(headingOf(tr("Fan duty"), all));
  m_duty = proseOf(all, 0.96, "fanDuty");
  column->addWidget(m_duty);
  m_ranges = proseOf(all, 0.92, "dutyRanges");
  column->addWidget(m_ranges);
  column->addWidget(headingOf(tr("Which fan suits"), all));
  m_fans = new FanList(m_session, m_desk, all);
  column->addWidget(m_fans);
  m_fan = new FactForm(m_session, tr("Fan and pipe"), all);
  column->addWidget(m_fan);
  column->addWidget(headingOf(tr("Asked for, and the ground"), all));
  m_ground = new FactForm(m_session, tr("Asked for, and the ground"), all);
  column->addWidget(m_ground);
  column->addWidget(headingOf(tr("Assumed"), all));
  m_assumed = proseOf(all, 0.92, "suctionAssumed");
  column->addWidget(m_assumed);
  m_cautions = proseOf(all, 0.92, "suctionCautions");
  column->addWidget(headingOf(tr("Mind"), all));
  column->addWidget(m_cautions);
  column->addStretch();
  for (FactForm* form : {m_ground, m_fan, m_test_form}) {
    connect(form, &FactForm::entered, m_scroll,
            [this](QWidget* field) { m_scroll->ensureWidgetVisible(field, 0, 40); });
  }
  m_scroll->setWidget(all);
  return m_scroll;
}

QWidget* SuctionPanel::makeHoles(QWidget* parent) {
  const double k = paint::uiScale(font());
  auto* part = new QWidget(parent);
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(qRound(6 * k));
  m_holes = new HoleTable(m_session, m_desk, part);
  column->addWidget(m_holes);
  auto* row = new QHBoxLayout;
  m_propose = new QPushButton(tr("Propose holes"), part);
  m_propose->setToolTip(
      tr("Puts holes where what is measured would teach most about the ground: apart from each "
         "other and in different rooms if it can be."));
  m_hole_count = new SteadyCombo(part);
  m_hole_count->setAccessibleName(tr("Holes to propose"));
  for (int count = kFewestHoles; count <= kMostHoles; ++count) {
    m_hole_count->addItem(QString::number(count), count);
  }
  m_hole_count->setCurrentIndex(m_hole_count->findData(kHoles));
  m_new_test = new QPushButton(tr("New test"), part);
  m_new_test->setToolTip(tr("Begins another run of a test fan; the figures of the others stay."));
  row->addWidget(m_propose);
  row->addWidget(m_hole_count);
  row->addWidget(m_new_test);
  row->addStretch();
  column->addLayout(row);
  m_no_hole = proseOf(part, 0.92, "noHole");
  m_no_hole->hide();
  m_no_hole->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
  connect(m_no_hole, &QLabel::linkActivated, this, [this] {
    if (m_asked) Q_EMIT led(base::Problem(*m_asked));
  });
  column->addWidget(m_no_hole);
  m_tests = new SteadyCombo(part);
  m_tests->setAccessibleName(tr("Pressure test"));
  column->addWidget(m_tests);
  m_test_form = new FactForm(m_session, tr("Pressure test"), part);
  column->addWidget(m_test_form);
  m_fit = proseOf(part, 0.92, "fittedGround");
  column->addWidget(m_fit);
  connect(m_propose, &QPushButton::clicked, this, &SuctionPanel::proposeHoles);
  connect(m_new_test, &QPushButton::clicked, this, &SuctionPanel::newTest);
  connect(m_holes, &HoleTable::testBegun, this, [this] { refreshTests(); });
  connect(m_tests, &QComboBox::activated, this, [this](int index) {
    m_holes->setTest(m_tests->itemData(index).toString().toStdString());
    refreshTests();
  });
  return part;
}

void SuctionPanel::refresh() {
  m_old = false;
  refreshForms();
  refreshTests();
  refreshAnswer();
  refreshField();
}

void SuctionPanel::refreshField() {
  const auto& field = m_desk.field();
  const bool has = field.has_value() && m_session.hasJob();
  m_primary->setVisible(m_session.hasJob() && !m_session.place() &&
                        m_session.bestPlace().has_value());
  const bool moving = m_session.isMoving();
  const double held = !has ? 0.0 : moving ? field->reach.floor : heldFloor(m_desk);
  m_share->setVisible(has);
  m_of->setVisible(has);
  m_share->setText(has ? tr("≈ %1 %").arg(percentDown(held)) : QString());
  const double target = m_desk.live() != nullptr ? m_desk.live()->target().design_pa : 5.0;
  m_of->setText(
      has ? tr("of the floor held at <b>%1 or more</b> on the middle guess at the ground%2")
                .arg(pressure(target, m_session.job()),
                     m_desk.isStale() ? tr(", old plan") : QString())
          : QString());
  drawing::ShareOfFloor share;
  if (has) share.low = share.predicted = share.high = held;
  const siting::SuctionAnswer* answer = answerNow();
  if (moving) m_sentence->setText(tr("Let go, and the guesses at the ground are asked again."));
  m_second->setEnabled(!moving);
  const bool band =
      has && answer != nullptr && !moving && answer->state == siting::SuctionState::answered;
  if (band) {
    share.low = answer->floor_held.low;
    share.high = answer->floor_held.high;
  }
  m_bar->setVisible(has);
  m_bar->show([share](double width, double,
                      drawing::ThemeName theme) { return drawing::shareBar(share, theme, width); },
              m_share->text());
  m_band->setVisible(has);
  m_band->setText(band ? tr("<i>In eight of ten guesses %1 to %2 %. Predicted, not measured.</i>")
                             .arg(percentDown(share.low))
                             .arg(percentDown(share.high))
                       : tr("<i>Predicted on the middle guess, not measured.</i>"));
  m_duty->setText(dutyLines().join(QStringLiteral("<br>")));
  m_holes->refresh();
}

/// Of the field as it stands; with several fans each says of which sump it is.
QStringList SuctionPanel::dutyLines() const {
  const auto& field = m_desk.field();
  if (!field || !m_session.hasJob() || !field->duty.ok()) return {};
  std::vector<std::string> numbers;
  for (const std::string& id : field->sumps) {
    numbers.push_back(plan::sumpWord(m_session.job(), id));
  }
  QStringList lines;
  for (const base::Message& line : siting::dutySentences(field->duty, numbers)) {
    lines << QStringLiteral("<i>%1</i>").arg(said(line, m_session.job()).toHtmlEscaped());
  }
  return lines;
}

bool SuctionPanel::hasSump() const {
  return m_session.hasJob() && plan::hasPlacedSump(m_session.job());
}

/// Without a sump the study answers for the best place: that is not what stands on the plan.
const siting::SuctionAnswer* SuctionPanel::answerNow() const {
  return m_desk.isAnswerStale() || !hasSump() ? nullptr : m_desk.answer();
}

void SuctionPanel::refreshSentence() {
  if (!m_session.hasJob() || m_session.isMoving()) return;
  const plan::Job& job = m_session.job();
  if (const siting::SuctionAnswer* answer = answerNow()) {
    m_sentence->setText(said(answer->verdict, job));
  } else if (m_session.study() == nullptr) {
    m_sentence->setText(tr("The plan cannot be studied yet: see Check in the survey."));
  } else if (!hasSump()) {
    m_sentence->setText(tr("No sump yet. %1").arg(howToPutText(m_session)));
  } else if (!m_desk.problems().empty()) {
    m_sentence->setText(said(m_desk.problems().front().message, job));
  } else if (m_desk.isStopped()) {
    m_sentence->setText(
        tr("Stopped before all guesses at the ground were asked: how likely that "
           "is, is not told."));
  } else {
    m_sentence->setText(tr("Working out how likely that is …"));
  }
}

void SuctionPanel::refreshLines() {
  const plan::Job& job = m_session.job();
  const auto tariff = tariffHere(job);
  QStringList ranges;
  QStringList assumed;
  QStringList cautions;
  QStringList fit;
  if (const siting::SuctionAnswer* answer = answerNow()) {
    for (const base::Message& line : answer->ranges) ranges << said(line, job);
    for (const base::Message& line : answer->remarks) ranges << said(line, job);
    for (const siting::Assumption& one : answer->assumptions) {
      assumed << capital(said(one.what, job));
    }
    for (const base::Message& line : answer->cautions) cautions << said(line, job);
    if (answer->fitted) {
      for (const base::Message& line : answer->fitted->sentences) fit << said(line, job);
    }
    ranges << yearOf(*answer, job, tariff);
  }
  m_ranges->setText(dotted(ranges));
  m_assumed->setText(dotted(assumed));
  m_cautions->setText(dotted(cautions));
  m_fit->setText(dotted(fit));
  m_fit->setVisible(!fit.isEmpty());
  m_fans->refresh(tariff ? *tariff : price::Tariff{});
}

/// One that would help little is told, not offered.
void SuctionPanel::refreshSecond() {
  const siting::SuctionAnswer* answer = answerNow();
  const bool told = answer != nullptr && answer->second.has_value();
  m_second->setVisible(told);
  if (!told) return;
  m_second->setText(said(answer->second->sentence, m_session.job()));
  m_second->setCure(
      answer->second->helps
          ? tr("Try a second sump, %1").arg(wallText(*m_session.study(), answer->second->place))
          : QString());
}

/// Where no field is drawn, and none is on its way, there is nothing to read off it.
void SuctionPanel::refreshScale() {
  const plan::Job& job = m_session.job();
  const bool field = m_desk.field().has_value() || (hasSump() && m_desk.isWorking());
  m_legend_title->setVisible(field);
  m_legend->setVisible(field);
  m_key->setVisible(field);
  const double target =
      m_desk.live() != nullptr ? m_desk.live()->target().design_pa : suction::Target{}.design_pa;
  const QString unit = QString::fromUtf8(tools::pressureUnit(airUnitsOf(job)));
  m_legend_title->setText(tr("Suction under the slab, %1").arg(unit));
  m_legend->setAccessibleName(m_legend_title->text());
  m_legend->show(
      [target, units = job.display_units](double width, double, drawing::ThemeName theme) {
        const paint::QtVoice voice(units);
        return drawing::fieldLegend(drawing::FieldKind::suction, target, theme, width, voice);
      },
      tr("Scale of suction, target %1").arg(pressure(target, job)));
  m_key->show(
      [units = job.display_units](double width, double, drawing::ThemeName theme) {
        const paint::QtVoice voice(units);
        return drawing::colourKey(drawing::FieldKind::suction, theme, width, voice);
      },
      tr("The stronger the colour, the more suction; a hatched floor has no figure, it is not on "
         "fill"));
}

void SuctionPanel::refreshAnswer() {
  if (!m_session.hasJob()) return;
  refreshLines();
  refreshSecond();
  refreshScale();
  m_places->refresh();
  refreshField();
  refreshWork();
}

void SuctionPanel::refreshWork() {
  const bool working = m_desk.isWorking();
  m_work->setVisible(working || m_desk.isStopped());
  m_progress->setVisible(working);
  m_progress->setValue(percentDown(m_desk.progress()));
  m_work_words->setText(working ? tr("Guessing the ground") : tr("Stopped."));
  m_stop->setText(working ? tr("Stop") : tr("Go on"));
  if (m_places->rows() == 0) m_places->refresh();
  refreshSentence();
}

void SuctionPanel::refreshForms() {
  if (!m_session.hasJob() || m_session.isPreviewing() || m_session.isMoving()) return;
  const files::FanTableList tables = files::availableFanTables();
  std::vector<FanOffer> fans;
  for (const files::LoadedFans& loaded : tables.tables) {
    for (const airflow::Fan& fan : loaded.table.fans) {
      fans.push_back({fan.id, fanTitle(fan.title, loaded.table.invented)});
    }
  }
  m_fan->setFacts(
      fanFacts(fans, airUnitsOf(m_session.job()), !m_session.job().design.fan.points.empty()),
      "design");
  m_ground->setFacts(groundFacts(), "suction");
}

void SuctionPanel::refreshTests() {
  if (!m_session.hasJob()) return;
  const auto& tests = m_session.job().suction.tests;
  const bool known = std::any_of(tests.begin(), tests.end(), [this](const plan::PressureTest& t) {
    return t.id == m_holes->test();
  });
  if (!known) m_holes->setTest(tests.empty() ? std::string() : tests.back().id);
  m_tests->clear();
  for (const plan::PressureTest& test : tests) {
    const QString date = QString::fromStdString(test.date);
    m_tests->addItem(date.isEmpty() ? tr("Test without a date") : tr("Test of %1").arg(date),
                     QString::fromStdString(test.id));
    if (test.id == m_holes->test()) m_tests->setCurrentIndex(m_tests->count() - 1);
  }
  m_tests->setVisible(tests.size() > 1);
  m_new_test->setVisible(!tests.empty());
  m_test_form->setVisible(!tests.empty());
  if (!tests.empty()) m_test_form->setFacts(pressureTestFacts(m_holes->test()), m_holes->test());
  m_holes->refresh();
}

/// What nobody answered is answered in the room: the words lead there.
void SuctionPanel::tellForbidden(const base::Message& reason, geometry::Point at) {
  const plan::Job& job = m_session.job();
  m_asked.reset();
  QString text = tr("No place can be proposed: %1.").arg(said(reason, job)).toHtmlEscaped();
  const auto& rooms = job.plan.rooms;
  for (std::size_t k = 0; k < rooms.size() && reason.id == "suction.hole.old-tiles-unknown"; ++k) {
    const plan::Room& room = rooms[k];
    if (room.old_tiles != plan::YesNo::unknown) continue;
    if (m_asked && geometry::distanceToArea(at, room.outline_m) > 0.0) continue;
    m_asked = base::Problem{reason, "/plan/rooms/" + std::to_string(k) + "/old_tiles",
                            base::Gravity::missing};
  }
  if (m_asked) {
    const auto room = plan::thingOf(job, plan::thingAt(job, m_asked->pointer));
    const QString link = tr("Answer it for each room, first %1").arg(thingTitle(*room));
    text += QStringLiteral(" <a href=\"room\">%1</a>").arg(link.toHtmlEscaped());
  }
  m_no_hole->setText(text);
}

void SuctionPanel::tellHoles(const base::Problems& problems) {
  m_no_hole->setVisible(!problems.empty());
  if (!problems.empty()) m_no_hole->setText(said(problems.front().message, m_session.job()));
}

void SuctionPanel::newTest() {
  plan::PressureTest test;
  test.sump = m_session.sump();
  base::Result<plan::Job> after = plan::addPressureTest(m_session.job(), test);
  if (after) m_holes->setTest(after->suction.tests.back().id);
  tellHoles(m_session.edit(tr("Another pressure test"), std::move(after)));
  refreshTests();
}

/// One step.
void SuctionPanel::proposeHoles() {
  if (m_desk.live() == nullptr || !m_desk.field()) return;
  const plan::Job& job = m_session.job();
  const auto [holes, forbidden, there] =
      proposedHoles(m_session, m_desk, m_hole_count->currentData().toInt());
  m_no_hole->setVisible(holes.empty());
  if (holes.empty() && forbidden) return tellForbidden(*forbidden, there);
  if (holes.empty()) {
    return m_no_hole->setText(
        tr("No place is far enough from edges, sumps and other holes to teach anything."));
  }
  base::Result<plan::Job> after = job;
  for (const suction::ProposedHole& hole : holes) {
    if (after) after = plan::addThing(*after, plan::TestHole{"", "", hole.at});
  }
  tellHoles(m_session.edit(tr("Propose test holes"), std::move(after)));
}

void SuctionPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (m_old) refresh();
}

SuctionBrief suctionBriefly(const session::Session& session, const session::SuctionDesk& desk) {
  if (!session.hasJob()) return {SuctionPanel::tr("No job open"), 0};
  if (session.study() == nullptr || !session.place()) return {SuctionPanel::tr("Needs a sump"), 0};
  if (!desk.field()) return {SuctionPanel::tr("Not worked out"), 0};
  const double held = session.isMoving() ? desk.field()->reach.floor : heldFloor(desk);
  const QString words = SuctionPanel::tr("%1 % predicted").arg(percentDown(held));
  const bool measured =
      std::any_of(session.job().suction.tests.begin(), session.job().suction.tests.end(),
                  [](const plan::PressureTest& test) { return !test.readings.empty(); });
  return {words, measured ? 4 : 2};
}

}  // namespace sumpwright::stages
