#include "stages/OutlinePage.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QVBoxLayout>
#include <cmath>

#include "paint/Look.h"
#include "perimeter/Perimeter.h"
#include "plan/TapeEdits.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

using Outcome = session::TapeDesk::Outcome;

constexpr int kQuarters = 4;
constexpr double kNearStart = 0.3;   // own figure: of the way round; further off walls are missing
constexpr double kErrorGap_m = 0.5;  // own figure: a wall shorter than this is rarely missing
constexpr const char* kArrowSigns[kQuarters] = {"\u2191", "\u2192", "\u2193", "\u2190"};

/// Letter of a corner of the ring in hand, courtyards after the rings before them.
QString letterOf(const plan::Job& job, int ring, std::size_t corner) {
  for (int r = 0; r < ring && r < static_cast<int>(job.plan.rings.size()); ++r) {
    corner += job.plan.rings[static_cast<std::size_t>(r)].corners.size();
  }
  return QString::fromStdString(perimeter::letterOfCorner(corner));
}

/// The corner a wall of the book ends at: the last of a ring that closes ends at the first.
std::size_t endOf(const plan::Ring& ring, std::size_t wall) {
  const std::size_t next = wall + 1;
  return ring.closed && next == ring.corners.size() ? 0 : next;
}

}  // namespace

OutlinePage::OutlinePage(session::Session& session, session::TapeDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk) {
  setAccessibleName(tr("Outline"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  auto* head = new QHBoxLayout;
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.6, true));
  m_from = new QLabel(this);
  m_from->setProperty("tone", QStringLiteral("second"));
  m_from->setAlignment(Qt::AlignRight | Qt::AlignBottom);
  head->addWidget(m_title);
  head->addWidget(m_from, 1);
  column->addLayout(head);
  column->addWidget(makeEntry());
  m_hint = new SideNote(SideNote::Kind::warning, this);
  m_hint->hide();
  connect(m_hint, &SideNote::curePressed, this, [this] {
    if (m_misread && !m_desk.setLength(m_misread->leg, m_misread->length_m)) sayWhy();
    takeFocus();
  });
  m_book = new QTableWidget(0, 4, this);
  m_book->setAccessibleName(tr("Field book: the walls as taped"));
  m_book->setToolTip(tr("Enter corrects a wall, Insert puts one in before it"));
  m_book->horizontalHeader()->hide();
  m_book->verticalHeader()->hide();
  m_book->setShowGrid(false);
  m_book->setProperty("bare", true);
  m_book->setFrameShape(QFrame::NoFrame);
  m_book->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_book->setSelectionMode(QAbstractItemView::SingleSelection);
  m_book->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_book->setTabKeyNavigation(false);
  m_book->installEventFilter(this);
  connect(m_book, &QTableWidget::cellClicked, this, [this](int row, int) {
    m_desk.correct(static_cast<std::size_t>(row));
    takeFocus();
  });
  column->addWidget(m_book, 1);
  m_picture = new QPushButton(tr("Picture or outline from a file…"), this);
  m_picture->setProperty("role", QStringLiteral("quiet"));
  m_picture->setToolTip(
      tr("Lays a plan or photo under the drawing to trace, or takes the outline "
         "from a drawing or map"));
  connect(m_picture, &QPushButton::clicked, this, &OutlinePage::pictureAsked);
  column->addWidget(m_picture, 0, Qt::AlignLeft);
  column->addWidget(m_hint);
  column->addWidget(makeClosing());
  connect(&desk, &session::TapeDesk::changed, this, &OutlinePage::refresh);
  refresh();
}

QWidget* OutlinePage::makeEntry() {
  auto* entry = new QWidget(this);
  auto* grid = new QGridLayout(entry);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(4);
  const int side = qRound(44 * paint::uiScale(font()));
  const QString names[kQuarters] = {tr("Up the sheet"), tr("To the right"), tr("Down the sheet"),
                                    tr("To the left")};
  constexpr int kRow[kQuarters] = {0, 1, 2, 1};
  constexpr int kColumn[kQuarters] = {1, 2, 1, 0};
  for (int i = 0; i < kQuarters; ++i) {
    m_arrows[i] = new QToolButton(entry);
    m_arrows[i]->setText(QString::fromUtf8(kArrowSigns[i]));
    m_arrows[i]->setFont(paint::sized(font(), 1.5, true));
    m_arrows[i]->setAccessibleName(names[i]);
    m_arrows[i]->setToolTip(tr("%1: the arrow key does the same while you type").arg(names[i]));
    m_arrows[i]->setCheckable(true);
    m_arrows[i]->setFocusPolicy(Qt::NoFocus);
    m_arrows[i]->setFixedSize(side, side);
    m_arrows[i]->setProperty("role", QStringLiteral("arrow"));
    connect(m_arrows[i], &QToolButton::clicked, this, [this, i] {
      m_desk.setHeading(90.0 * i);
      takeFocus();
    });
    grid->addWidget(m_arrows[i], kRow[i], kColumn[i]);
  }
  m_bearing = new QLabel(entry);
  m_bearing->setAlignment(Qt::AlignCenter);
  m_bearing->setFont(paint::sized(font(), 1.0, true));
  m_bearing->setMinimumWidth(side);
  grid->addWidget(m_bearing, 1, 1);

  auto* typed = new QVBoxLayout;
  typed->setSpacing(4);
  m_length_label = new QLabel(entry);
  m_length_label->setProperty("tone", QStringLiteral("second"));
  m_field = new QLineEdit(entry);
  m_field->setAccessibleName(tr("Length of the wall"));
  m_field->setFont(paint::sized(font(), 1.7, true));
  m_field->setMinimumHeight(qRound(48 * paint::uiScale(font())));
  m_field->setToolTip(
      tr("12.40, 1240cm, 40'8\"; with a direction in front: n 12.40, l 3.20 square to the left, "
         "r45 3.20, b 123.5 3.20 by bearing. 12.4 x 8.6 begins with a rectangle."));
  m_field->installEventFilter(this);
  m_length_label->setBuddy(m_field);
  m_add = new QPushButton(entry);
  m_add->setProperty("role", QStringLiteral("primary"));
  typed->addStretch();
  typed->addWidget(m_length_label);
  typed->addWidget(m_field);
  typed->addWidget(m_add);
  typed->addStretch();
  grid->addLayout(typed, 0, 3, 3, 1);
  grid->setColumnStretch(3, 1);

  m_message = new QLabel(entry);
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  m_message->hide();
  grid->addWidget(m_message, 3, 0, 1, 4);
  auto* choice = new QHBoxLayout;
  for (int i = 0; i < 2; ++i) {
    m_reading[i] = new QPushButton(entry);
    m_reading[i]->hide();
    choice->addWidget(m_reading[i]);
    connect(m_reading[i], &QPushButton::clicked, this, [this, i] {
      const std::vector<double> both = m_desk.readings();
      if (static_cast<std::size_t>(i) < both.size()) {
        told(m_desk.submitReading(both[static_cast<std::size_t>(i)]));
      }
      takeFocus();
    });
  }
  choice->addStretch();
  grid->addLayout(choice, 4, 0, 1, 4);
  connect(m_field, &QLineEdit::textEdited, this, [this](const QString& text) {
    say({});
    m_desk.setText(text);
  });
  connect(m_field, &QLineEdit::returnPressed, this, &OutlinePage::submit);
  connect(m_add, &QPushButton::clicked, this, &OutlinePage::submit);
  return entry;
}

QWidget* OutlinePage::makeClosing() {
  m_closing = new QWidget(this);
  auto* column = new QVBoxLayout(m_closing);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  m_gap_title = new QLabel(tr("Closing error"), m_closing);
  m_gap_title->setFont(paint::sized(font(), 0.98, true));
  column->addWidget(m_gap_title);
  auto* row = new QHBoxLayout;
  m_gap = new QLabel(m_closing);
  m_gap->setFont(paint::sized(font(), 1.9, true));
  m_one_in = new QLabel(m_closing);
  m_one_in->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  row->addWidget(m_gap);
  row->addWidget(m_one_in, 1);
  column->addLayout(row);
  m_bar = new ClosingBar(m_closing);
  column->addWidget(m_bar);
  m_sharing = new Segments(tr("How the closing error is shared out"),
                           {tr("Compass rule"), tr("Least squares"), tr("Last wall drawn")},
                           m_closing, Segments::Spacing::close);
  m_sharing->show(0);
  m_sharing->setToolTip(tr(
      "Compass rule (Bowditch): each wall takes its share by length. Least squares: right angles "
      "stay, lengths take what they must. Last wall drawn: what is missing becomes a wall."));
  connect(m_sharing, &Segments::picked, this, [this](int) { refreshClosing(); });
  column->addWidget(m_sharing);
  auto* buttons = new QHBoxLayout;
  m_close = new QPushButton(m_closing);
  m_close->setProperty("role", QStringLiteral("primary"));
  m_back = new QPushButton(m_closing);
  buttons->addWidget(m_close, 1);
  buttons->addWidget(m_back);
  column->addLayout(buttons);
  connect(m_close, &QPushButton::clicked, this, &OutlinePage::closeOrReopen);
  connect(m_back, &QPushButton::clicked, this, &OutlinePage::goBack);
  return m_closing;
}

void OutlinePage::takeFocus() {
  if (m_field->isEnabled()) {
    m_field->setFocus(Qt::OtherFocusReason);
  } else {
    m_close->setFocus(Qt::OtherFocusReason);
  }
}

void OutlinePage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) refresh();
  QWidget::changeEvent(event);
}

void OutlinePage::say(const QString& text) {
  m_message->setText(text);
  m_message->setVisible(!text.isEmpty());
  for (QPushButton* button : m_reading) button->hide();
}

void OutlinePage::ask() {
  say(tr("“%1” can mean two things. Which?").arg(m_desk.text()));
  const std::vector<double>& both = m_desk.readings();
  for (std::size_t i = 0; i < 2 && i < both.size(); ++i) {
    m_reading[i]->setText(tapedLength(both[i], m_session.job()));
    m_reading[i]->show();
  }
  m_reading[0]->setFocus(Qt::OtherFocusReason);
}

void OutlinePage::submit() {
  const bool was_closed = m_desk.isClosed();
  const Outcome outcome = m_desk.submit();
  told(outcome);
  // A rectangle is whole at once.
  if (outcome == Outcome::done && !was_closed && m_desk.isClosed()) Q_EMIT outlineClosed();
}

/// What became of a line, in words where it was not taken.
void OutlinePage::told(Outcome outcome) {
  switch (outcome) {
    case Outcome::done:
    case Outcome::turned:
      return say({});
    case Outcome::ambiguous:
      return ask();
    case Outcome::nothing_typed:
      // Enter once more at the start: that was the last wall.
      if (!m_desk.isClosed() && m_close->isEnabled() && closesWell()) return closeOrReopen();
      return say(
          tr("Type the length of the wall, along its outside: 4.20, n 4.20, l 4.20 square to the "
             "left, r45 4.20 slanting, b 123.5 4.20 by the compass."));
    case Outcome::not_a_length:
      return say(
          tr("“%1” is not a wall. Type a length such as 12.40, with a direction in front if it "
             "turns: n 12.40.")
              .arg(m_desk.text()));
    case Outcome::refused:
      return sayWhy();
  }
}

void OutlinePage::refresh() {
  if (!m_session.hasJob()) return;
  refreshHead();
  refreshBook();
  refreshClosing();
  refreshHint();
}

void OutlinePage::refreshHead() {
  const plan::Job& job = m_session.job();
  const bool open = m_desk.isOpen();
  if (open) {
    m_title->setText(m_desk.inserting() ? tr("New wall before %1").arg(m_desk.wall() + 1)
                                        : tr("Wall %1").arg(m_desk.wall() + 1));
    m_from->setText(tr("from corner %1, going %2")
                        .arg(letterOf(job, m_desk.ring(), m_desk.wall()),
                             directionText(m_desk.heading_deg(), job)));
  } else {
    m_title->setText(tr("Outline"));
    const plan::Ring* ring = m_desk.outline();
    m_from->setText(ring == nullptr ? QString() : tr("%1 walls, closed").arg(ring->corners.size()));
  }
  const double heading = m_desk.heading_deg();
  for (int i = 0; i < kQuarters; ++i) {
    m_arrows[i]->setChecked(open && std::abs(heading - 90.0 * i) < 1e-9);
    m_arrows[i]->setEnabled(open);
  }
  m_bearing->setText(
      open ? QString::fromStdString(words::print(
                 {std::fmod(heading - job.plan.north_deg + 720.0, 360.0), base::Unit::degree},
                 unitsOf(job)))
           : QString());
  m_length_label->setText(job.display_units == plan::DisplayUnits::imperial
                              ? tr("Length, feet and inches")
                              : tr("Length, m"));
  m_field->setEnabled(open);
  m_add->setEnabled(open);
  m_add->setText(m_desk.correcting()  ? tr("Correct  (Enter)")
                 : m_desk.inserting() ? tr("Put in  (Enter)")
                                      : tr("Add  (Enter)"));
  if (m_field->text() != m_desk.text()) m_field->setText(m_desk.text());
  QString hint = tr("12.40");
  if (m_desk.correcting() && m_desk.outline() != nullptr) {
    hint = typedLength(m_desk.outline()->taped[*m_desk.correcting()].length_m, job);
  }
  m_field->setPlaceholderText(hint);
}

void OutlinePage::refreshBook() {
  m_filling = true;
  const plan::Job& job = m_session.job();
  const plan::Ring* ring = m_desk.outline();
  const int rows = ring == nullptr ? 0 : static_cast<int>(ring->taped.size());
  m_book->setRowCount(rows);
  const int high = qRound(31 * paint::uiScale(font()));
  for (int i = 0; i < rows; ++i) {
    const auto wall = static_cast<std::size_t>(i);
    const plan::TapedWall& taped = ring->taped[wall];
    const QString cells[4] = {QString::number(i + 1),
                              tr("%1 to %2")
                                  .arg(letterOf(job, m_desk.ring(), wall),
                                       letterOf(job, m_desk.ring(), endOf(*ring, wall))),
                              capital(directionText(taped.bearing_deg, job)),
                              tapedLength(taped.length_m, job)};
    for (int c = 0; c < 4; ++c) {
      QTableWidgetItem* item = m_book->item(i, c);
      if (item == nullptr) {
        item = new QTableWidgetItem;
        m_book->setItem(i, c, item);
      }
      item->setText(cells[c]);
      item->setFont(paint::sized(font(), 1.0, c == 0 || c == 3));
      item->setTextAlignment((c == 3 ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    }
    m_book->setRowHeight(i, high);
  }
  m_book->horizontalHeader()->setMinimumSectionSize(qRound(26 * paint::uiScale(font())));
  for (int c : {0, 1, 3})
    m_book->horizontalHeader()->setSectionResizeMode(c, QHeaderView::ResizeToContents);
  m_book->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
  if (m_desk.correcting() || m_desk.inserting()) {
    m_book->selectRow(static_cast<int>(m_desk.wall()));
  } else {
    m_book->clearSelection();
    if (rows > 0) m_book->scrollToBottom();
  }
  m_filling = false;
}

void OutlinePage::refreshClosing() {
  const plan::Ring* ring = m_desk.outline();
  const std::size_t walls = ring == nullptr ? 0 : ring->taped.size();
  const bool closed = m_desk.isClosed();
  const geometry::Closing closing = m_desk.closing();
  m_closing->setVisible(walls > 0);
  // While the tape goes round, gap and closing need the room.
  m_picture->setVisible(walls < 3 || closed);
  m_close->setText(closed                     ? tr("Open again")
                   : m_sharing->chosen() == 2 ? tr("Draw the last wall")
                                              : tr("Close and share out"));
  // What is still a wall away is not shared out: tape on, or have the last wall drawn.
  const bool shareable = walls >= 3 && closing.gap_m <= kErrorGap_m;
  m_close->setEnabled(closed || (m_sharing->chosen() == 2 ? walls >= 2 : shareable));
  m_close->setToolTip(m_close->isEnabled()
                          ? QString()
                          : tr("Still too far from the start: tape the walls that are "
                               "missing, or choose “Last wall drawn”"));
  m_back->setText(tr("Take back"));
  m_back->setToolTip(tr("Takes the last wall out of the book"));
  m_back->setVisible(!closed);
  m_sharing->setVisible(!closed);
  const bool enough = walls >= 3;
  for (QWidget* w : std::initializer_list<QWidget*>{m_gap_title, m_gap, m_one_in, m_bar}) {
    w->setVisible(enough);
  }
  if (!enough) return;
  // While walls are still missing it is a way to go, not an error yet.
  const bool error = closed || closing.gap_m <= kErrorGap_m;
  m_gap_title->setText(error ? tr("Closing error") : tr("Still to the start"));
  for (QWidget* w : std::initializer_list<QWidget*>{m_one_in, m_bar}) w->setVisible(error);
  m_gap->setText(gapText(closing.gap_m, m_session.job()));
  m_one_in->setText(oneInText(closing, m_session.job()));
  if (m_desk.lastWallDrawn()) {
    // Nothing came back to the start, so nothing was checked.
    m_gap_title->setText(tr("Last wall drawn, not measured"));
    m_one_in->setText(tr("closing not checked"));
    m_one_in->show();
    m_bar->hide();
  }
  m_bar->show(closing.one_in);
}

void OutlinePage::refreshHint() {
  m_misread.reset();
  const std::vector<geometry::Misread> found = m_desk.misreads();
  // One outlying gap can be explained while walls are still missing only by chance: asked at the
  // end.
  const bool near_start = m_desk.closing().gap_m <= kNearStart * m_desk.closing().round_m;
  if (found.empty() || m_desk.isClosed() || !near_start || m_desk.outline() == nullptr) {
    m_hint->hide();
    return;
  }
  m_misread = found.front();
  m_hint->setText(misreadText(*m_misread, m_desk.outline()->taped[m_misread->leg].length_m,
                              found.size() - 1, m_session.job()));
  m_hint->setCure(tr("Take %1").arg(tapedLength(m_misread->length_m, m_session.job())));
  m_hint->show();
}

void OutlinePage::sayWhy() {
  if (!m_desk.problems().empty()) say(said(m_desk.problems().front().message, m_session.job()));
}

/// Well enough to be closed by Enter alone; a larger error is looked at and closed by its button.
bool OutlinePage::closesWell() const {
  const geometry::Closing closing = m_desk.closing();
  return !closing.one_in || *closing.one_in >= plan::kPoorClosing;
}

void OutlinePage::closeOrReopen() {
  if (m_desk.isClosed()) {
    if (!m_desk.reopen()) sayWhy();
    return takeFocus();
  }
  constexpr plan::Sharing kChoices[] = {plan::Sharing::compass_rule, plan::Sharing::least_squares,
                                        plan::Sharing::not_shared};
  if (m_desk.close(kChoices[m_sharing->chosen()])) {
    Q_EMIT outlineClosed();
  } else {
    sayWhy();
  }
}

void OutlinePage::goBack() {
  if (const plan::Ring* ring = m_desk.outline(); ring != nullptr && !ring->taped.empty()) {
    if (!m_desk.removeWall(ring->taped.size() - 1)) sayWhy();
  }
  takeFocus();
}

void OutlinePage::stepCorrection(int by) {
  const plan::Ring* ring = m_desk.outline();
  if (ring == nullptr || ring->taped.empty()) return;
  const int count = static_cast<int>(ring->taped.size());
  const int at = m_desk.correcting() ? static_cast<int>(*m_desk.correcting()) : count;
  const int next = at + by;
  if (next < 0) return;
  if (next >= count) return m_desk.correct(std::nullopt);
  m_desk.correct(static_cast<std::size_t>(next));
}

/// A wall that was left out is typed where it belongs; a closed book is opened first.
void OutlinePage::insertBefore(std::size_t wall) {
  if (m_desk.isClosed()) {
    say(tr("Open the outline again first: then a wall can be put in."));
    return;
  }
  say({});
  m_desk.insertBefore(wall);
  takeFocus();
}

/// Keys of the field that are not typing. True when taken.
bool OutlinePage::fieldKey(QKeyEvent* event) {
  const bool control = event->modifiers() & Qt::ControlModifier;
  switch (event->key()) {
    case Qt::Key_Up:
      return control ? stepCorrection(-1) : m_desk.setHeading(0.0), true;
    case Qt::Key_Right:
      return m_desk.setHeading(90.0), true;
    case Qt::Key_Down:
      return control ? stepCorrection(+1) : m_desk.setHeading(180.0), true;
    case Qt::Key_Left:
      return m_desk.setHeading(270.0), true;
    case Qt::Key_Delete:
      if (!control || !m_desk.correcting()) return false;
      if (!m_desk.removeWall(*m_desk.correcting())) sayWhy();
      return true;
    case Qt::Key_Insert:
      if (!m_desk.correcting()) return false;
      return insertBefore(*m_desk.correcting()), true;
    case Qt::Key_Escape:
      if (!m_desk.correcting() && !m_desk.inserting() && m_desk.text().isEmpty()) return false;
      return m_desk.correct(std::nullopt), say({}), true;
    default:
      return false;
  }
}

bool OutlinePage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && watched == m_field) {
    // Typing wins over the window's letters and arrows.
    const auto* key = static_cast<QKeyEvent*>(event);
    if (m_field->text().isEmpty() &&
        (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
      event->ignore();  // with nothing typed, undo is the plan's
      return true;
    }
    const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    const bool ours =
        plain ||
        ((key->modifiers() & Qt::ControlModifier) &&
         (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down || key->key() == Qt::Key_Delete));
    if (ours && key->key() != Qt::Key_F1) {
      event->accept();
      return true;
    }
  }
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  auto* key = static_cast<QKeyEvent*>(event);
  if (watched == m_field) return fieldKey(key) || QWidget::eventFilter(watched, event);
  if (watched == m_book && key->key() == Qt::Key_Insert && m_book->currentRow() >= 0) {
    insertBefore(static_cast<std::size_t>(m_book->currentRow()));
    return true;
  }
  if (watched == m_book && (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter)) {
    if (m_book->currentRow() >= 0) m_desk.correct(static_cast<std::size_t>(m_book->currentRow()));
    takeFocus();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
