#include "stages/ChanceList.h"

#include <QEvent>
#include <QLayout>
#include <cmath>

#include "siting/ReachAsked.h"
#include "stages/NoteOnTop.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {

namespace {

/// Nearer than a tape can tell (own figure).
constexpr double kSamePlace_m = 0.005;

bool isAt(std::optional<Place> here, Place place) {
  return here && here->ring == place.ring &&
         std::abs(here->chainage_m - place.chainage_m) < kSamePlace_m;
}

QString wholePercent(double share) { return ChanceList::tr("≈ %1 %").arg(percentDown(share)); }

}  // namespace

ChanceList::ChanceList(session::Session& session, session::SuctionDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk), m_note(noteOnTop(this)) {
  setAccessibleName(tr("Places by chance of reach"));
}

void ChanceList::addRow() {
  auto* row = new RuleCell(this);
  const std::size_t index = m_rows.size();
  row->setObjectName(QStringLiteral("chancePlace%1").arg(index));
  row->installEventFilter(this);
  layout()->addWidget(row);
  connect(row, &RuleCell::clicked, this, [this, index] {
    if (m_session.study() == nullptr || isAt(m_session.place(), m_best[index].place)) return;
    m_session.hover(std::nullopt);
    m_session.putAt(m_best[index].place);
  });
  m_rows.push_back(row);
}

/// A row that is pointed at, or has the keys, is shown on plan and tape.
bool ChanceList::eventFilter(QObject* watched, QEvent* event) {
  const bool begins = event->type() == QEvent::Enter || event->type() == QEvent::FocusIn;
  const bool ends = event->type() == QEvent::Leave || event->type() == QEvent::FocusOut;
  if (ends) m_session.hover(std::nullopt);
  for (std::size_t k = 0; begins && k < m_best.size(); ++k) {
    if (watched == m_rows[k]) m_session.hover(m_best[k].place);
  }
  return QWidget::eventFilter(watched, event);
}

void ChanceList::look() {
  const auto along = m_desk.sharedAlong();
  const bool has = m_session.study() != nullptr && along != nullptr && along->hasChance();
  m_of = has ? along : nullptr;
  m_best =
      has ? siting::placesByChance(*m_session.study(), along) : std::vector<siting::BestPlace>();
  if (m_best.size() > kMost) m_best.resize(kMost);
}

QString ChanceList::why() const {
  if (m_session.study() == nullptr) return tr("The plan cannot be studied yet.");
  if (m_desk.along() != nullptr && !m_desk.along()->computed()) {
    return tr("Without granular fill no reach is predicted.");
  }
  if (m_of == nullptr) {
    return m_desk.isWorking() ? tr("Being worked out with the guesses at the ground.")
                              : tr("Not worked out.");
  }
  if (m_best.empty()) return tr("No stretch is clear or only advised against.");
  const bool beside = !m_of->others().empty();
  return (beside
              ? tr("Chance that a sump there, with the others on its fan, holds the whole floor;")
              : tr("Chance that one sump alone holds the whole floor from there;")) +
         QLatin1Char(' ') +
         tr("in the line below, the share held on the middle guess. Press one to move the sump.") +
         QLatin1Char(' ') + reachInScoreText(*m_session.study());
}

void ChanceList::showRow(std::size_t index) {
  const siting::BestPlace& best = m_best[index];
  const siting::Study& study = *m_session.study();
  RuleLine line;
  line.title = wallText(study, best.place);
  line.figure = wholePercent(best.chance.value_or(0.0));
  line.state = best.run.state;
  line.close = best.close;
  const QString where = isAt(m_session.place(), best.place)
                            ? tr("here: %1").arg(chainageText(study, best.place))
                            : chainageText(study, best.place);
  line.second = where;
  line.third = tr("%1 of the floor, score %2")
                   .arg(wholePercent(best.floor.value_or(0.0)))
                   .arg(std::lround(best.score));
  m_rows[index]->show(line);
}

void ChanceList::refresh() {
  if (!m_session.hasJob() || m_session.isMoving() || m_session.isPreviewing()) return;
  look();
  while (m_rows.size() < m_best.size()) addRow();
  for (std::size_t k = 0; k < m_rows.size(); ++k) {
    m_rows[k]->setVisible(k < m_best.size());
    if (k < m_best.size()) showRow(k);
  }
  m_note->setText(why());
}

}  // namespace sumpwright::stages
