// PicturePage: what it does. How it is put together stands in PicturePageParts.cpp.

#include "stages/PicturePage.h"

#include <QFileInfo>
#include <QKeyEvent>
#include <cmath>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "tools/LengthText.h"

namespace sumpwright::stages {

namespace {

enum Body { kEmpty, kSettings, kScale, kStraighten };

bool isFeet(const session::Session& session) {
  return session.hasJob() && session.job().display_units == plan::DisplayUnits::imperial;
}

}  // namespace

QLineEdit* PicturePage::field() const {
  if (m_tool == Tool::scale) return m_length;
  if (m_tool != Tool::straighten) return nullptr;
  return m_width->text().isEmpty() || m_width->hasFocus() ? m_width : m_height;
}

QPushButton* PicturePage::applyButton() const { return m_apply[m_tool == Tool::straighten]; }
QPushButton* PicturePage::giveUpButton() const { return m_give_up[m_tool == Tool::straighten]; }

void PicturePage::takeFocus() {
  if (m_desk.isReading()) return m_stop->setFocus(Qt::OtherFocusReason);
  if (QLineEdit* line = field()) return line->setFocus(Qt::OtherFocusReason);
  firstButton()->setFocus(Qt::OtherFocusReason);
}

QPushButton* PicturePage::firstButton() const {
  if (m_desk.underlay() == nullptr) return m_choose;
  return m_scale->isEnabled() ? m_scale : m_trace;
}

void PicturePage::showEvent(QShowEvent* event) {
  m_desk.lookAgain();  // it may be back
  QWidget::showEvent(event);
}

void PicturePage::refresh() {
  if (!m_session.hasJob()) return;
  const plan::Underlay* u = m_desk.underlay();
  if (m_tool != m_desk.tool()) {
    m_tool = m_desk.tool();
    say({});
    m_length->clear();
    m_lie->show(0);
    const plan::Job& job = m_session.job();
    const auto typed = [&](double m) { return m > 0.0 ? typedLength(m, job) : QString(); };
    m_width->setText(typed(m_desk.width_m()));
    m_height->setText(typed(m_desk.height_m()));
  }
  m_title->setText(m_tool == Tool::scale        ? tr("Scale the picture")
                   : m_tool == Tool::straighten ? tr("Straighten the photo")
                                                : tr("Picture"));
  m_body->setCurrentIndex(u == nullptr                 ? kEmpty
                          : m_tool == Tool::scale      ? kScale
                          : m_tool == Tool::straighten ? kStraighten
                                                       : kSettings);
  m_reading->setVisible(m_desk.isReading());
  m_reading_text->setText(tr("Reading %1…").arg(m_desk.readingName()));
  refreshNotes();
  if (u != nullptr) refreshSettings();
  refreshTool();
}

void PicturePage::refreshNotes() {
  const plan::Underlay* u = m_desk.underlay();
  const base::Problems& problems = m_desk.problems();
  m_warning->setVisible(!problems.empty() && !m_desk.isReading());
  if (!problems.empty()) {
    m_warning->setText(said(problems.front().message, m_session.job()));
    const bool given_up = problems.front().message.id == "underlay.given-up";
    m_warning->setCure(u == nullptr || m_desk.picture() != nullptr ? QString()
                       : given_up                                  ? tr("Read it after all")
                                                                   : tr("Find it…"));
  }
  m_note->setVisible(!m_desk.note().isEmpty() && m_tool == Tool::move);
  m_note->setText(m_desk.note());
}

void PicturePage::refreshSettings() {
  const plan::Underlay& u = *m_desk.underlay();
  const session::PictureReady* picture = m_desk.picture();
  QString text = QFileInfo(QString::fromStdString(u.path)).fileName();
  m_file->setToolTip(QString::fromStdString(u.path));
  text =
      m_file->fontMetrics().elidedText(text, Qt::ElideMiddle, qRound(280 * paint::uiScale(font())));
  if (picture != nullptr) {
    text += QLatin1Char('\n') +
            tr("%1 × %2 pixels").arg(picture->photo.width()).arg(picture->photo.height());
    if (picture->reduced > 1) text += tr(", reduced to 1 in %1 each way").arg(picture->reduced);
    if (u.straighten) text += tr(", straightened");
  }
  m_file->setText(text);
  const int pages = picture == nullptr ? 1 : picture->pages;
  m_pages->setVisible(pages > 1);
  const QSignalBlocker quiet[] = {QSignalBlocker(m_page), QSignalBlocker(m_shown),
                                  QSignalBlocker(m_locked), QSignalBlocker(m_fade),
                                  QSignalBlocker(m_turn)};
  m_page->setRange(1, pages);
  m_page->setValue(u.page + 1);
  m_of_pages->setText(tr("of %1").arg(pages));
  m_shown->setChecked(u.shown);
  m_locked->setChecked(u.locked);
  if (!m_fade->isSliderDown()) m_fade->setValue(qRound(100.0 * u.fade));
  m_turn->setValue(u.turn_deg);
  const bool there = m_desk.layer().has_value();
  m_turn->setEnabled(there && !u.locked);
  for (QPushButton* b : {m_scale, m_straighten}) {
    b->setEnabled(there && !u.locked);
    b->setToolTip(u.locked ? tr("Unlock the picture first") : QString());
  }
  m_straighten->setText(u.straighten ? tr("Straighten it again…") : tr("Straighten a photo…"));
}

void PicturePage::refreshTool() {
  m_file->setVisible(m_desk.underlay() != nullptr && m_tool == Tool::move);
  const QString unit = isFeet(m_session) ? tr("feet and inches") : tr("m");
  m_length_label->setText(tr("Its true length, %1").arg(unit));
  m_width_label->setText(tr("From 1 to 2, %1").arg(unit));
  m_height_label->setText(tr("From 2 to 3, %1").arg(unit));
  m_apply[0]->setEnabled(m_desk.points().line().has_value());
  m_apply[1]->setEnabled(m_desk.mayStraighten());
  const QSignalBlocker quiet(m_sample);
  m_sample->setChecked(m_desk.isSampling());
  m_sample->setEnabled(m_desk.mayStraighten());
  m_as_photo->setVisible(m_desk.underlay() != nullptr && m_desk.underlay()->straighten);
}

void PicturePage::say(const QString& text) {
  m_message->setText(text);
  m_message->setVisible(!text.isEmpty());
}

std::optional<double> PicturePage::read(QLineEdit* field, bool aloud) {
  const tools::LengthReading reading =
      tools::readLength(field->text().toStdString(),
                        isFeet(m_session) ? tools::BareUnit::foot : tools::BareUnit::metre);
  if (reading.ok() && reading.metres.front() > 0.0) return reading.metres.front();
  if (!aloud) return std::nullopt;
  if (reading.fault == tools::LengthFault::ambiguous) {
    say(tr("“%1” can mean %2 or %3. Type it with its unit.")
            .arg(field->text(), tapedLength(reading.metres[0], m_session.job()),
                 tapedLength(reading.metres[1], m_session.job())));
  } else {
    say(tr("Type a length such as 3.45 or 11'4\"."));
  }
  field->setFocus(Qt::OtherFocusReason);
  return std::nullopt;
}

void PicturePage::apply() {
  if (m_tool == Tool::scale) return applyScale();
  if (m_tool == Tool::straighten) applyStraighten();
}

void PicturePage::applyScale() {
  if (!m_desk.points().line()) {
    return say(tr("First drag a line on the picture, along what you know the length of."));
  }
  const auto length = read(m_length, true);
  if (!length) return;
  const auto lie = static_cast<session::PictureDesk::Lie>(m_lie->chosen());
  if (!m_desk.applyScale(*length, lie)) {
    return say(tr("That makes the picture too large or too small to be a plan of a house."));
  }
  takeFocus();
}

void PicturePage::readSides() {
  m_desk.setSides(read(m_width, false).value_or(0.0), read(m_height, false).value_or(0.0));
}

void PicturePage::applyStraighten() {
  if (!m_desk.corners().isProper()) {
    return say(tr("The corners must go round the rectangle in order, 1 to 4, no three in a line."));
  }
  if (!read(m_width, true) || !read(m_height, true)) return;
  readSides();
  if (m_desk.applyStraighten()) takeFocus();
}

bool PicturePage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    // Typing wins over the window's letters and arrows.
    const auto* key = static_cast<QKeyEvent*>(event);
    const auto* line = qobject_cast<QLineEdit*>(watched);
    if (line != nullptr && line->text().isEmpty() &&
        (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
      event->ignore();  // with nothing typed, undo is the plan's
      return true;
    }
    if (!(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) &&
        (!key->text().isEmpty() || key->key() == Qt::Key_Left || key->key() == Qt::Key_Right)) {
      event->accept();
      return true;
    }
  }
  if (event->type() == QEvent::KeyPress) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Escape && m_tool != Tool::move) {
      m_desk.giveUp();
      takeFocus();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
