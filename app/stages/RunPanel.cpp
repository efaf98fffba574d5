#include "stages/RunPanel.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "drawing/SectionDrawing.h"
#include "paint/Look.h"
#include "paint/QtVoice.h"
#include "stages/RunFacts.h"
#include "stages/SignLabel.h"
#include "stages/SitingText.h"
#include "stages/SteadyScroll.h"
#include "stages/SumpSwitch.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

constexpr double kPicture_px = 208.0;
constexpr double kLeastPicture_px = 130.0;
constexpr double kPictureShare = 0.37;

QLabel* heading(const QString& text, double factor, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setFont(paint::sized(parent->font(), factor, true));
  return label;
}

QLabel* wrapped(QWidget* parent, double factor) {
  auto* label = new QLabel(parent);
  label->setWordWrap(true);
  label->setProperty("tone", QStringLiteral("second"));
  label->setFont(paint::sized(parent->font(), factor));
  label->setTextFormat(Qt::RichText);
  return label;
}

/// Lines with a dot before each.
QString listed(const QStringList& lines) {
  QString html;
  for (const QString& line : lines) {
    html += QStringLiteral("<tr><td>•&nbsp;</td><td>%1</td></tr>").arg(line.toHtmlEscaped());
  }
  return QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\">%1</table>").arg(html);
}

}  // namespace

RunPanel::RunPanel(session::Session& session, session::SuctionDesk& suction,
                   const RunActions& actions, QWidget* parent)
    : QWidget(parent), m_session(session), m_suction(suction), m_actions(actions) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setAccessibleName(tr("Run"));
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  const int margin = qRound(20 * k);
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.6 * margin));
  column->setSpacing(qRound(7 * k));
  column->addWidget(makeHead());
  column->addWidget(new SumpSwitch(session, this));
  m_picture = new DrawnView(this);
  m_picture->setAccessibleName(tr("Drill section"));
  column->addWidget(m_picture);
  m_sentence = new QLabel(this);
  m_sentence->setObjectName(QStringLiteral("sectionSentence"));
  m_sentence->setWordWrap(true);
  column->addWidget(m_sentence);
  column->addWidget(makeScroll(), 1);
  m_scroll->setMinimumHeight(qRound(60 * k));
  m_primary = new ActionButton(ActionButton::Role::primary, this);
  m_primary->bind(m_actions.best);
  m_primary->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addWidget(m_primary);

  const auto outdate = [this] {
    m_old = true;
    if (isVisible()) refresh();
  };
  connect(&session, &session::Session::placeChanged, this, outdate);
  connect(&session, &session::Session::studyChanged, this, outdate);
  connect(&session, &session::Session::jobChanged, this, [this, outdate] {
    m_scroll->ensureVisible(0, 0);
    outdate();
  });
  connect(&suction, &session::SuctionDesk::answerChanged, this, outdate);
  refresh();
}

QWidget* RunPanel::makeHead() {
  auto* head = new QWidget(this);
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  row->addWidget(heading(tr("Drill section"), 1.2, head));
  row->addStretch();
  m_sign = new SignLabel(head);
  m_word = new QLabel(head);
  m_word->setObjectName(QStringLiteral("sectionWord"));
  row->addWidget(m_sign);
  row->addWidget(m_word);
  return head;
}

QWidget* RunPanel::makeScroll() {
  const double k = paint::uiScale(font());
  m_scroll = new SteadyScroll(this);
  auto* all = new QWidget(m_scroll);
  auto* column = new QVBoxLayout(all);
  column->setContentsMargins(3, 3, qRound(10 * k), 3);
  column->setSpacing(qRound(8 * k));
  m_lines = new QWidget(all);
  m_grid = new QGridLayout(m_lines);
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setHorizontalSpacing(qRound(10 * k));
  m_grid->setVerticalSpacing(qRound(7 * k));
  m_grid->setColumnStretch(1, 1);
  column->addWidget(m_lines);
  m_change_title = heading(tr("Change"), 1.05, all);
  column->addWidget(m_change_title);
  m_form = new FactForm(m_session, tr("Run"), all);
  connect(m_form, &FactForm::entered, m_scroll,
          [this](QWidget* field) { m_scroll->ensureWidgetVisible(field, 0, 40); });
  column->addWidget(m_form);
  m_supplies = makeBlock(tr("Cable to"), QStringLiteral("runSupplies"), column);
  m_notes = makeBlock(tr("To see to"), QStringLiteral("runNotes"), column);
  m_assumed = makeBlock(tr("Assumed"), QStringLiteral("runAssumed"), column);
  column->addStretch();
  m_scroll->setWidget(all);
  return m_scroll;
}

const plan::Sump* RunPanel::sump() const {
  if (!m_session.hasJob()) return nullptr;
  for (const plan::Sump& sump : m_session.job().design.sumps) {
    if (sump.id == m_session.sump()) return &sump;
  }
  return nullptr;
}

void RunPanel::refresh() {
  m_old = false;
  m_section.reset();
  m_cable = {};
  const siting::Study* study = m_session.study();
  const auto place = m_session.place();
  if (const plan::Sump* one = sump(); one != nullptr && study != nullptr && place) {
    m_section = build::drillSection(study->site(), *place, build::wishOf(study->job(), *one));
    build::CableAsk ask = build::cableAskOf(study->site(), *one, *place);
    const auto* answer = m_suction.isAnswerStale() ? nullptr : m_suction.answer();
    if (answer != nullptr) build::takePower(ask, study->job().design, answer->power_w);
    m_cable = build::cableRoutes(study->site(), ask);
  }
  refreshHead();
  refreshLines();
  refreshNotes();
  refreshForm();
}

void RunPanel::refreshHead() {
  m_primary->setVisible(!m_section);
  m_sign->show(m_section ? std::optional(fitState(*m_section)) : std::nullopt);
  m_word->setText(m_section ? fitWord(*m_section) : QString());
  if (!m_section) {
    m_sentence->setText(tr("No sump in an outside wall yet. %1").arg(howToPutText(m_session)));
    return m_picture->show({}, m_sentence->text());
  }
  const plan::Job& job = m_session.job();
  m_sentence->setText(said(m_section->verdict, job));
  m_picture->show(
      [section = *m_section, units = job.display_units](double width, double height,
                                                        drawing::ThemeName theme) {
        const paint::QtVoice voice(units);
        return drawing::sectionDrawing(section, {width, height, theme, false}, voice);
      },
      m_sentence->text());
}

void RunPanel::refreshLines() {
  std::vector<RunLine> lines;
  if (m_section) {
    const siting::Study& study = *m_session.study();
    const perimeter::Place hole = *m_session.place();
    const auto* answer = m_suction.isAnswerStale() ? nullptr : m_suction.answer();
    const RunAir air = runAir(study, *sump(), hole, answer);
    lines = runLines(study, *sump(), hole, *m_section, m_cable, air);
  }
  while (m_rows.size() < lines.size()) {
    auto* label = new QLabel(m_lines);
    label->setFont(paint::sized(font(), 0.96, true));
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* value = new QLabel(m_lines);
    value->setWordWrap(true);
    value->setFont(paint::sized(font(), 0.96));
    const int row = static_cast<int>(m_rows.size());
    m_grid->addWidget(label, row, 0);
    m_grid->addWidget(value, row, 1);
    m_rows.push_back({label, value});
  }
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    const bool shown = i < lines.size();
    m_rows[i].label->setVisible(shown);
    m_rows[i].value->setVisible(shown);
    if (!shown) continue;
    m_rows[i].label->setText(lines[i].label);
    m_rows[i].value->setText(lines[i].value);
    setTone(m_rows[i].value, lines[i].warning);
  }
}

RunPanel::Block RunPanel::makeBlock(const QString& title, const QString& name,
                                    QVBoxLayout* column) {
  QWidget* all = column->parentWidget();
  const Block block{heading(title, 1.05, all), wrapped(all, 0.92)};
  block.text->setObjectName(name);
  column->addWidget(block.title);
  column->addWidget(block.text);
  return block;
}

void RunPanel::Block::show(const QStringList& lines) const {
  title->setVisible(!lines.isEmpty());
  text->setVisible(!lines.isEmpty());
  text->setText(listed(lines));
}

void RunPanel::refreshNotes() {
  if (!m_section) {
    for (const Block& block : {m_supplies, m_notes, m_assumed}) block.show({});
    return;
  }
  const siting::Study& study = *m_session.study();
  m_supplies.show(runSupplies(study, m_cable));
  m_notes.show(runNotes(study, *m_section, m_cable));
  m_assumed.show(runAssumed(study, *m_section, m_cable));
}

void RunPanel::refreshForm() {
  const plan::Sump* one = sump();
  m_change_title->setVisible(one != nullptr);
  m_form->setVisible(one != nullptr);
  if (one == nullptr || m_session.isPreviewing() || m_session.isMoving()) return;
  m_form->setFacts(runFacts(m_session.job(), one->id), one->id);
}

QString RunPanel::line(const QString& label) const {
  for (const Row& row : m_rows) {
    if (!row.label->isHidden() && row.label->text() == label) return row.value->text();
  }
  return {};
}

void RunPanel::takeFocus() {
  if (QWidget* first = m_form->field("entry_m")) first->setFocus(Qt::OtherFocusReason);
}

/// In a low window the picture leaves room for what is changed below it.
void RunPanel::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const double k = paint::uiScale(font());
  m_picture->setFixedHeight(
      qRound(std::clamp(kPictureShare * height(), kLeastPicture_px * k, kPicture_px * k)));
}

void RunPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (m_old) refresh();
}

}  // namespace sumpwright::stages
