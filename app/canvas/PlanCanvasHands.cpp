// PlanCanvas: which hand works on the plan, and what it says.

#include <QKeyEvent>
#include <QLabel>

#include "base/Contract.h"
#include "canvas/DimensionHand.h"
#include "canvas/LayHand.h"
#include "canvas/MarkHand.h"
#include "canvas/MeasureHand.h"
#include "canvas/PictureHand.h"
#include "canvas/PlanCanvas.h"
#include "canvas/PointHand.h"
#include "canvas/SurveyHand.h"
#include "canvas/WallDragHand.h"
#include "canvas/WallLayHand.h"
#include "canvas/WallLengthHand.h"
#include "paint/Look.h"
#include "words/Words.h"

namespace sumpwright::canvas {

/// Those asked first come first.
void PlanCanvas::makeHands() {
  m_hands.push_back(std::make_unique<WallLengthHand>(m_session));
  m_hands.push_back(std::make_unique<PointHand>(m_session));
  m_hands.push_back(std::make_unique<DimensionDragHand>(m_session));
  m_hands.push_back(
      std::make_unique<WallDragHand>(m_session, [this](QPointF at) { return thingUnder(at); }));
  m_hands.push_back(std::make_unique<WallLayHand>(m_session));
  m_hands.push_back(std::make_unique<LayHand>(m_session, *m_tasks, *m_desk));
  m_hands.push_back(std::make_unique<MarkHand>(m_session));
  m_hands.push_back(std::make_unique<MeasureHand>(m_session));
  m_hands.push_back(std::make_unique<DimensionHand>(m_session));
  m_hands.push_back(std::make_unique<SurveyHand>(m_session, *m_desk));
  m_speech.sentence = [](const base::Message& message, const plan::Job& job) {
    return QString::fromStdString(words::say(message, job.display_units));
  };
  m_speech.task = [this] { return m_strip != nullptr ? m_strip->taskTitle() : QString(); };
  for (const auto& hand : m_hands) hand->speakBy(m_speech);
}

void PlanCanvas::setSentences(
    std::function<QString(const base::Message&, const plan::Job&)> sentence) {
  m_speech.sentence = std::move(sentence);
}

void PlanCanvas::setDesks(session::TapeDesk& tape, session::TaskDesk& tasks) {
  m_desk = &tape;
  m_tasks = &tasks;
  makeHands();
  m_hint = new QLabel(this);
  m_hint->setAttribute(Qt::WA_TransparentForMouseEvents);
  m_hint->setProperty("tone", QStringLiteral("second"));
  m_hint->setProperty("surface", QStringLiteral("paper"));  // read over whatever is drawn there
  m_hint->hide();
  connect(&tape, &session::TapeDesk::changed, this, [this] {
    if (m_surveying && m_session.study() == nullptr) lookAgain();
    refreshHint();
  });
  connect(&tasks, &session::TaskDesk::changed, this, &PlanCanvas::takeTask);
  connect(&m_session, &session::Session::jobChanged, this, &PlanCanvas::refreshHint);
}

void PlanCanvas::setPicture(session::PictureDesk& picture) {
  m_picture = &picture;
  m_hands.insert(m_hands.begin(), std::make_unique<PictureHand>(m_session, picture));
  m_hands.front()->speakBy(m_speech);
  connect(&picture, &session::PictureDesk::layerChanged, this, &PlanCanvas::lookAtPicture);
  const auto marks = [this] {
    refreshHint();
    update();
  };
  connect(&picture, &session::PictureDesk::marksChanged, this, marks);
  connect(&picture, &session::PictureDesk::changed, this, marks);
}

/// What of it is shown on the plan now.
std::optional<session::PictureDesk::Layer> PlanCanvas::pictureLayer() const {
  if (!m_surveying || m_picture == nullptr) return std::nullopt;
  auto layer = m_picture->layer();
  const bool shown =
      layer && (layer->placed.shown || m_picture->tool() != session::PictureDesk::Tool::move);
  return shown ? layer : std::nullopt;
}

/// A picture that was just laid is brought into sight where there is no house to look at.
void PlanCanvas::lookAtPicture() {
  const auto layer = pictureLayer();
  const bool other = layer && layer->revision != m_picture_seen;  // not where it is hidden
  if (layer) m_picture_seen = layer->revision;
  if (other && m_fitted && m_session.hasJob() && m_session.study() == nullptr &&
      m_picture->tool() == session::PictureDesk::Tool::move) {
    fit();
  }
  lookAgain();
}

void PlanCanvas::setTasks(const std::vector<TaskChoice>& choices) {
  SUMPWRIGHT_REQUIRE(m_tasks != nullptr);
  delete m_strip;
  m_strip = new TaskStrip(*m_tasks, choices, this);
  m_strip->setVisible(m_surveying);
  placeButtons();
}

PlanHand* PlanCanvas::activeHand() const {
  for (PlanHand* hand : hands()) {
    if (hand->isActive()) return hand;
  }
  return nullptr;
}

std::vector<PlanHand*> PlanCanvas::hands() const {
  std::vector<PlanHand*> serving;
  if (!m_surveying || !m_session.hasJob()) return serving;
  const bool traces = pictureLayer().has_value();
  for (const auto& hand : m_hands) {
    if (!hand->serves(m_tasks->task())) continue;
    hand->look({m_camera, size(), scale(), traces});
    serving.push_back(hand.get());
    if (hand->isAlone()) break;
  }
  return serving;
}

void PlanCanvas::takeTask() {
  cancelHands();
  for (PlanHand* hand : hands()) hand->begin(m_tasks->task());
  refreshHint();
  update();
}

void PlanCanvas::cancelHands() {
  for (const auto& hand : m_hands) hand->cancel();
}

bool PlanCanvas::handKey(QKeyEvent& event) {
  PlanHand* active = activeHand();
  for (PlanHand* hand : hands()) {
    if (active != nullptr && hand != active) continue;
    if (!hand->key(event)) continue;
    refreshHint();
    update();
    return true;
  }
  return false;
}

bool PlanCanvas::focusNextPrevChild(bool next) {
  const PlanHand* hand = activeHand();
  if (hand != nullptr && hand->isTyping()) return false;  // Tab goes on to the next number
  return QWidget::focusNextPrevChild(next);
}

QString PlanCanvas::hint() const {
  const PlanHand* active = activeHand();
  for (const PlanHand* hand : hands()) {
    if (active != nullptr && hand != active) continue;
    if (const QString hint = hand->hint(); !hint.isEmpty()) return hint;
  }
  return {};
}

void PlanCanvas::refreshHint() {
  if (m_hint == nullptr) return;
  QString text = hint();
  const bool kind = m_surveying && m_strip != nullptr && m_tasks->task() != tools::Task::choose;
  if (kind && !text.isEmpty()) text = QStringLiteral("%1: %2").arg(m_strip->taskTitle(), text);
  m_hint->setVisible(!text.isEmpty());
  m_hint->setText(text);
  m_hint->setAccessibleName(text);
  m_hint->setWordWrap(true);
  const int margin = qRound(16 * scale());
  const int most = std::max(80, width() - 2 * margin);
  const int wide = std::min(most, m_hint->fontMetrics().horizontalAdvance(text) + 4);
  const int high = m_hint->heightForWidth(wide);
  m_hint->setGeometry(margin, height() - high - qRound(6 * scale()), wide, high);
}

}  // namespace sumpwright::canvas
