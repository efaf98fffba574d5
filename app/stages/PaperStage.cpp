#include "stages/PaperStage.h"

#include <QDate>
#include <QEvent>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "paint/QtVoice.h"
#include "stages/ActionButton.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {

PaperStage::PaperStage(session::Session& session, session::SuctionDesk& suction,
                       const PaperActions& actions, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_suction(suction),
      m_actions(actions),
      m_preview(new PaperPreview(this)) {
  connect(&suction, &session::SuctionDesk::answerChanged, this, &PaperStage::takeOutlook);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(m_preview, 1);
  auto* line = new QFrame(this);
  line->setProperty("line", true);
  line->setFixedWidth(1);
  row->addWidget(line);
  row->addWidget(makeSide(actions));
  connect(&session, &session::Session::studyChanged, this, &PaperStage::outdate);
  connect(&session, &session::Session::placeChanged, this, &PaperStage::outdate);
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_note->hide();
    m_page = 0;
  });
}

QWidget* PaperStage::makeSide(const PaperActions& actions) {
  const double k = paint::uiScale(font());
  auto* side = new QWidget(this);
  side->setProperty("surface", QStringLiteral("panel"));
  side->setAttribute(Qt::WA_StyledBackground);
  side->setFixedWidth(qRound(332 * k));
  auto* column = new QVBoxLayout(side);
  const int margin = qRound(20 * k);
  column->setContentsMargins(margin, margin, margin, margin);
  column->setSpacing(qRound(12 * k));
  auto* title = new QLabel(tr("Client plan"), side);
  title->setFont(paint::sized(font(), 1.6, true));
  column->addWidget(title);
  m_state = new QLabel(side);
  m_state->setWordWrap(true);
  column->addWidget(m_state);
  m_warning = new SideNote(SideNote::Kind::warning, side);
  m_warning->hide();
  column->addWidget(m_warning);

  auto* sizes = new QHBoxLayout;
  auto* size_label = new QLabel(tr("Sheet"), side);
  size_label->setProperty("tone", QStringLiteral("second"));
  m_sizes = new Segments(tr("Sheet"), {tr("A4"), tr("A3")}, side);
  m_sizes->show(0);
  sizes->addWidget(size_label);
  sizes->addStretch();
  sizes->addWidget(m_sizes);
  column->addLayout(sizes);
  connect(m_sizes, &Segments::picked, this, [this](int index) {
    m_size = index == 0 ? dossier::PaperSize::a4 : dossier::PaperSize::a3;
    m_page = 0;
    m_preview->fit();
    outdate();
  });

  auto* pages = new QHBoxLayout;
  m_pages = new QLabel(side);
  m_pages->setProperty("tone", QStringLiteral("second"));
  pages->addWidget(m_pages);
  pages->addStretch();
  for (QAction* action : {actions.previous_page, actions.next_page}) {
    auto* button = new ActionButton(ActionButton::Role::square, side);
    button->bind(action);
    pages->addWidget(button);
  }
  column->addLayout(pages);

  auto* pdf = new ActionButton(ActionButton::Role::primary, side);
  pdf->bind(actions.pdf);
  pdf->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addSpacing(qRound(4 * k));
  column->addWidget(pdf);
  auto* print = new ActionButton(ActionButton::Role::plain, side);
  print->bind(actions.print);
  print->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addWidget(print);
  auto* others = new QHBoxLayout;
  others->setSpacing(qRound(8 * k));
  for (QAction* action : {actions.svg, actions.png}) {
    auto* button = new ActionButton(ActionButton::Role::plain, side);
    button->bind(action);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    others->addWidget(button);
  }
  column->addLayout(others);
  m_note = new SideNote(SideNote::Kind::information, side);
  m_note->setDismissable();
  m_note->hide();
  column->addWidget(m_note);
  column->addStretch();
  auto* hint =
      new QLabel(tr("The paper is the same drawing as on screen, at a round scale, with the "
                    "setting-out, the reasons and the cautions."),
                 side);
  hint->setWordWrap(true);
  hint->setProperty("tone", QStringLiteral("second"));
  hint->setFont(paint::sized(font(), 0.9));
  column->addWidget(hint);
  return side;
}

const dossier::Document* PaperStage::document() {
  if (m_session.study() == nullptr) return nullptr;
  if (!m_document) {
    dossier::ClientPlanOptions options;
    options.size = m_size;
    options.sump = m_session.sump();
    options.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    options.suction = dossier::Suction::expected;
    options.outlook = m_outlook;
    const paint::QtVoice voice(m_session.job().display_units);
    m_document = dossier::clientPlan(*m_session.study(), voice, options);
  }
  return &*m_document;
}

/// What the suction study says, once it is there for the sumps as they stand.
void PaperStage::takeOutlook() {
  const bool had = m_outlook != nullptr;
  m_outlook.reset();
  if (m_suction.answer() != nullptr && !m_suction.isAnswerStale()) {
    auto outlook = std::make_shared<dossier::Outlook>();
    outlook->answer = *m_suction.answer();
    outlook->fan = m_suction.fanTitle();
    outlook->invented = m_suction.isFanInvented();
    m_outlook = std::move(outlook);
  } else if (!m_suction.isWorking() && !m_suction.problems().empty()) {
    auto outlook = std::make_shared<dossier::Outlook>();
    outlook->why_not = m_suction.problems();
    m_outlook = std::move(outlook);
  }
  if (had || m_outlook != nullptr) outdate();
}

void PaperStage::outdate() {
  if (m_session.isMoving()) return;
  m_preview->show(nullptr, 0);
  m_document.reset();
  if (isVisible()) refresh();
}

void PaperStage::showEvent(QShowEvent* event) {
  refresh();
  QWidget::showEvent(event);
}

void PaperStage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) refresh();
  QWidget::changeEvent(event);
}

void PaperStage::turnPage(int by) {
  m_page += by;
  m_preview->fit();
  refresh();
}

void PaperStage::refresh() {
  const dossier::Document* paper = document();
  const int pages = paper == nullptr ? 0 : static_cast<int>(paper->pages.size());
  m_page = std::clamp(m_page, 0, std::max(0, pages - 1));
  m_preview->show(paper, m_page);
  m_pages->setText(pages == 0 ? tr("No page") : tr("Page %1 of %2").arg(m_page + 1).arg(pages));
  m_actions.previous_page->setEnabled(m_page > 0);
  m_actions.next_page->setEnabled(m_page + 1 < pages);
  m_warning->hide();
  if (!m_session.hasJob()) {
    m_state->setText(tr("No job is open."));
  } else if (paper == nullptr) {
    m_state->setText(
        tr("The plan contradicts itself, so there is no paper. The list under Siting says what to "
           "put right."));
  } else if (const siting::Assessment* a = m_session.assessment()) {
    m_state->setText(said(a->sentence, m_session.job()));
    if (a->state != rules::State::clear && !a->waived) {
      m_warning->setText(a->state == rules::State::refused
                             ? tr("The sump stands at a refused place. The paper says so and why.")
                             : tr("The place is not clear. The paper says so and why."));
      m_warning->show();
    }
  } else {
    m_state->setText(tr("No sump yet: the paper shows where one may go."));
  }
}

void PaperStage::tell(const QString& text) {
  m_note->setText(text);
  m_note->show();
}

}  // namespace sumpwright::stages
