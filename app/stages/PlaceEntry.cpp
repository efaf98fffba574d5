#include "stages/PlaceEntry.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"
#include "tools/LengthText.h"

namespace sumpwright::stages {

PlaceEntry::PlaceEntry(session::Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_field(new QLineEdit(this)),
      m_corner(new SteadyCombo(this)),
      m_go(new QPushButton(tr("Place"), this)),
      m_message(new QLabel(this)),
      m_reading{new QPushButton(this), new QPushButton(this)} {
  m_field->setAccessibleName(tr("Distance along the wall"));
  m_field->setPlaceholderText(tr("12.40"));
  m_field->setToolTip(tr("Metres, cm, mm, or feet and inches: 12.40, 1240cm, 40'8\""));
  m_field->setFont(paint::sized(font(), 1.2, true));
  m_corner->setAccessibleName(tr("From corner"));
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  row->addWidget(m_field, 3);
  row->addWidget(new QLabel(tr("from"), this));
  row->addWidget(m_corner, 2);
  row->addWidget(m_go);
  column->addLayout(row);
  column->addWidget(m_message);
  auto* choice = new QHBoxLayout;
  for (int i = 0; i < 2; ++i) {
    choice->addWidget(m_reading[i]);
    m_reading[i]->hide();
    connect(m_reading[i], &QPushButton::clicked, this, [this, i] { place(m_readings[i]); });
  }
  choice->addStretch();
  column->addLayout(choice);
  m_message->hide();
  connect(m_go, &QPushButton::clicked, this, &PlaceEntry::submit);
  connect(m_field, &QLineEdit::returnPressed, this, &PlaceEntry::submit);
  connect(m_field, &QLineEdit::textEdited, this, [this] { say({}); });
}

void PlaceEntry::fillCorners() {
  const auto& p = m_session.study()->perimeter();
  m_corner->clear();
  for (int ring = 0; ring < p.ringCount(); ++ring) {
    const int corners = static_cast<int>(p.edges(ring).size());
    for (int edge = 0; edge < corners; ++edge) {
      m_corner->addItem(tr("corner %1").arg(QString::fromStdString(p.cornerLetter(ring, edge))),
                        QPoint(ring, edge));
    }
  }
}

void PlaceEntry::open(const QString& typed) {
  if (m_session.study() == nullptr) return;
  fillCorners();
  say({});
  show();
  m_field->setFocus(Qt::ShortcutFocusReason);
  if (typed.isEmpty() && m_session.place()) {
    m_field->setText(length(m_session.place()->chainage_m, m_session.job()));
    m_field->selectAll();
  } else {
    m_field->setText(typed);
  }
}

void PlaceEntry::submit() {
  const bool feet = m_session.job().display_units == plan::DisplayUnits::imperial;
  const tools::LengthReading reading = tools::readLength(
      m_field->text().toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  switch (reading.fault) {
    case tools::LengthFault::none:
      return place(reading.metres.front());
    case tools::LengthFault::ambiguous:
      return ask(reading.metres);
    case tools::LengthFault::empty:
      return say(tr("Type how far from the corner, along the outside of the wall."));
    case tools::LengthFault::not_a_length:
      break;
  }
  say(tr("“%1” is not a length. Type it as 12.40, 1240cm or 40'8\".").arg(m_field->text()));
}

void PlaceEntry::ask(const std::vector<double>& readings) {
  say(tr("“%1” can mean two things. Which?").arg(m_field->text()));
  for (int i = 0; i < 2; ++i) {
    m_readings[i] = readings[static_cast<std::size_t>(i)];
    m_reading[i]->setText(length(m_readings[i], m_session.job()));
    m_reading[i]->show();
  }
  m_reading[0]->setFocus(Qt::OtherFocusReason);
}

void PlaceEntry::place(double from_corner_m) {
  const QPoint corner = m_corner->currentData().toPoint();
  const auto& p = m_session.study()->perimeter();
  const double ring_length = p.length_m(corner.x());
  if (from_corner_m > ring_length) {
    return say(tr("The wall is only %1 long all round.").arg(length(ring_length, m_session.job())));
  }
  const double start = p.edges(corner.x())[static_cast<std::size_t>(corner.y())].start_m;
  m_session.putAt(p.wrapped({corner.x(), start + from_corner_m}));
  hide();
  Q_EMIT closed();
}

void PlaceEntry::say(const QString& text) {
  m_message->setText(text);
  m_message->setVisible(!text.isEmpty());
  for (QPushButton* button : m_reading) button->hide();
}

void PlaceEntry::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
  hide();
  Q_EMIT closed();
}

}  // namespace sumpwright::stages
