#include "stages/ThingsPage.h"

#include <QKeyEvent>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "plan/RoomEdits.h"
#include "plan/ThingEdits.h"
#include "stages/KindWords.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "tools/ThingPlace.h"

namespace sumpwright::stages {

namespace {

double wallLength(const plan::Ring& ring, std::size_t edge) {
  return geometry::distance(ring.corners[edge], ring.corners[(edge + 1) % ring.corners.size()]);
}

QString kindIn(const QStringList& words, const tools::ThingLine& line) {
  return line.which >= 0 && line.which < words.size() ? words[line.which] : QString();
}

QString whatItIs(const tools::ThingLine& line) {
  switch (line.kind) {
    case tools::LineKind::opening:
      return kindIn(openingKindWords(), line);
    case tools::LineKind::service:
      return kindIn(serviceKindWords(), line);
    case tools::LineKind::radiator:
      return thingKind(plan::Radiator{});
    case tools::LineKind::inner_wall:
      return thingKind(plan::InnerWall{});
    case tools::LineKind::rising_wall:
      return thingKind(plan::RisingWall{});
    case tools::LineKind::inner_door:
      return thingKind(plan::InnerDoor{});
    case tools::LineKind::heating_pipe:
      return thingKind(plan::HeatingPipe{});
    case tools::LineKind::supply:
      return kindIn(supplyKindWords(), line);
    case tools::LineKind::fitting:
      return kindIn(fittingKindWords(), line);
    case tools::LineKind::test_hole:
      return thingKind(plan::TestHole{});
    case tools::LineKind::outside:
      return kindIn(outsideKindWords(), line);
    case tools::LineKind::feature:
      return kindIn(featureKindWords(), line);
    case tools::LineKind::floor:
      return kindIn(floorKindWords(), line);
    case tools::LineKind::courtyard:
      return ThingsPage::tr("Courtyard");
  }
  return {};
}

bool isOutside(const tools::ThingLine& line) { return line.kind == tools::LineKind::outside; }

/// Of the things outside those that are lines.
bool runsAlong(plan::OutsideKind kind) {
  return kind == plan::OutsideKind::boundary || kind == plan::OutsideKind::path ||
         kind == plan::OutsideKind::neighbour_opening || kind == plan::OutsideKind::overhead_line;
}

/// What is still to be typed.
QString whatIsNext(const tools::ThingLine& line) {
  using K = tools::LineKind;
  switch (line.kind) {
    case K::opening:
    case K::radiator:
      return ThingsPage::tr("how far from the left corner, then how wide");
    case K::inner_door:
      return ThingsPage::tr("where its inner wall starts, how far along that wall, then how wide");
    case K::heating_pipe:
      return ThingsPage::tr(
          "how far from the left corner, how far in from the inner face, then how long");
    case K::test_hole:
      return ThingsPage::tr("how far from the left corner, then how far in from the inner face");
    case K::outside:
      return ThingsPage::tr(
          "how far from the left corner, how far out from the wall, then how "
          "long or how wide and deep");
    case K::courtyard:
      return ThingsPage::tr("how far from the left corner, how far in, how wide, then how deep");
    case K::service:
    case K::inner_wall:
    case K::rising_wall:
    case K::supply:
    case K::fitting:
    case K::feature:
    case K::floor:
      break;
  }
  return ThingsPage::tr("how far from the left corner");
}

/// "Gully, 2.10 m from the left corner, 0.40 m out".
QString whatItMeans(const tools::ThingLine& line, const plan::Job& job) {
  using K = tools::LineKind;
  if (line.kind == K::floor) {
    return line.room.empty() ? ThingsPage::tr("%1: the whole floor").arg(whatItIs(line))
                             : ThingsPage::tr("%1 under %2")
                                   .arg(whatItIs(line), QString::fromStdString(line.room));
  }
  QString text = ThingsPage::tr("%1, %2 from the %3 corner")
                     .arg(whatItIs(line), tapedLength(line.offset_m, job),
                          line.from_right ? ThingsPage::tr("right") : ThingsPage::tr("left"));
  const bool off = isOutside(line) || line.kind == K::supply || line.kind == K::fitting ||
                   line.kind == K::test_hole || line.kind == K::heating_pipe ||
                   line.kind == K::courtyard;
  if (off && (isOutside(line) || line.off_m > 0.0)) {
    text += (isOutside(line) ? ThingsPage::tr(", %1 out") : ThingsPage::tr(", %1 in"))
                .arg(tapedLength(line.off_m, job));
  }
  if (line.kind == K::inner_door) {
    text += ThingsPage::tr(", %1 along").arg(tapedLength(line.off_m, job));
  }
  if (line.width_m) {
    const QString width = tapedLength(*line.width_m, job);
    const bool is_long = line.kind == K::inner_wall || line.kind == K::rising_wall ||
                         line.kind == K::heating_pipe ||
                         (isOutside(line) && runsAlong(static_cast<plan::OutsideKind>(line.which)));
    text += line.kind == K::service ? ThingsPage::tr(", run straight out for %1").arg(width)
            : is_long               ? ThingsPage::tr(", %1 long").arg(width)
                                    : ThingsPage::tr(", %1 wide").arg(width);
  }
  if (line.depth_m) text += ThingsPage::tr(", %1 deep").arg(tapedLength(*line.depth_m, job));
  if (line.times > 1) text += ThingsPage::tr(", %1 times").arg(line.times);
  return text;
}

/// "w window, d door, ...": every word of the line; one that is its own meaning stands alone.
QString allWords() {
  QStringList words;
  for (const tools::ThingWord& word : tools::thingWords()) {
    tools::ThingLine line;
    line.kind = word.kind;
    line.which = word.which;
    const QString brief =
        QString::fromLatin1(word.brief.data(), static_cast<int>(word.brief.size()));
    const QString meaning =
        line.kind == tools::LineKind::floor ? ThingsPage::tr("floor") : whatItIs(line).toLower();
    words << (brief == meaning
                  ? brief
                  : ThingsPage::tr("%1 %2", "word, what it means").arg(brief, meaning));
  }
  return words.join(ThingsPage::tr(", "));
}

}  // namespace

ThingsPage::ThingsPage(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("Things on the plan"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* row = new QHBoxLayout;
  auto* on = new QLabel(tr("On wall"), this);
  on->setFont(paint::sized(font(), 1.0, true));
  m_walls = new SteadyCombo(this);
  m_walls->setAccessibleName(tr("Wall"));
  // A wall of a long name must not widen the page.
  m_walls->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_walls->setMinimumContentsLength(8);
  m_walls->setToolTip(tr("Page up and Page down choose the wall while you type"));
  row->addWidget(on);
  row->addWidget(m_walls, 1);
  column->addLayout(row);
  auto* entry = new QHBoxLayout;
  m_line = new QLineEdit(this);
  m_line->setAccessibleName(tr("What, where, how wide"));
  m_line->setPlaceholderText(tr("w 1.20 1.05"));
  m_line->setFont(paint::sized(font(), 1.3, true));
  m_line->setMinimumHeight(qRound(44 * paint::uiScale(font())));
  m_line->setToolTip(
      tr("%1. Then how far from the left corner seen from outside (r1.20 from the right), how wide "
         "or how far out. t4 in front of an opening: four of them.")
          .arg(allWords()));
  m_line->installEventFilter(this);
  m_add = new QPushButton(tr("Add"), this);
  m_add->setProperty("role", QStringLiteral("primary"));
  entry->addWidget(m_line, 1);
  entry->addWidget(m_add);
  column->addLayout(entry);
  m_message = new QLabel(this);
  m_message->setWordWrap(true);
  m_message->setMinimumHeight(qRound(2.2 * QFontMetrics(font()).lineSpacing()));
  m_message->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  column->addWidget(m_message);
  m_list = new QListWidget(this);
  m_list->setAccessibleName(tr("Things on the plan"));
  m_list->setFrameShape(QFrame::NoFrame);
  m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_list->setTextElideMode(Qt::ElideRight);
  m_list->installEventFilter(this);
  column->addWidget(m_list, 1);
  // In a low window the forms scroll rather than press each other flat.
  m_forms = new QScrollArea(this);
  m_forms->setWidgetResizable(true);
  m_forms->setFrameShape(QFrame::NoFrame);
  m_forms->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_forms->setFocusPolicy(Qt::NoFocus);
  auto* forms = new QWidget(m_forms);
  auto* form_column = new QVBoxLayout(forms);
  form_column->setContentsMargins(3, 3, qRound(10 * paint::uiScale(font())), 3);
  m_form = new ThingForm(session, forms);
  m_wall_form = new WallForm(session, forms);
  for (FactForm* facts : {m_form->facts(), m_wall_form->facts()}) {
    connect(facts, &FactForm::entered, m_forms,
            [this](QWidget* field) { m_forms->ensureWidgetVisible(field, 0, 30); });
  }
  form_column->addWidget(m_form);
  form_column->addWidget(m_wall_form);
  form_column->addStretch();
  m_forms->setWidget(forms);
  m_list->setMinimumHeight(qRound(62 * paint::uiScale(font())));
  column->addWidget(m_forms, 2);
  auto* buttons = new QHBoxLayout;
  m_rooms = new QPushButton(tr("Rooms from walls"), this);
  m_rooms->setToolTip(tr("Makes a room of every area that walls close off"));
  m_remove = new QPushButton(tr("Take out"), this);
  m_remove->setToolTip(tr("Takes the chosen thing off the plan (Delete in the list)"));
  buttons->addWidget(m_rooms, 1);
  buttons->addWidget(m_remove);
  column->addLayout(buttons);

  connect(m_line, &QLineEdit::returnPressed, this, &ThingsPage::submit);
  connect(m_line, &QLineEdit::textEdited, this, &ThingsPage::preview);
  connect(m_add, &QPushButton::clicked, this, &ThingsPage::submit);
  connect(m_rooms, &QPushButton::clicked, this, &ThingsPage::findRooms);
  connect(m_remove, &QPushButton::clicked, this, &ThingsPage::removeSelected);
  // Not the current row: that changes as soon as the list gets the keys.
  connect(m_list, &QListWidget::itemSelectionChanged, this, [this] {
    if (!m_filling && chosenRow() >= 0) m_session.show(listed(chosenRow()));
  });
  connect(m_walls, &QComboBox::activated, this, [this](int) {
    const QPoint at = m_walls->currentData().toPoint();
    m_session.show(m_session.job()
                       .plan.rings[static_cast<std::size_t>(at.x())]
                       .walls[static_cast<std::size_t>(at.y())]
                       .id);
  });
  connect(&session, &session::Session::studyChanged, this, &ThingsPage::refresh);
  connect(&session, &session::Session::jobChanged, this, &ThingsPage::refresh);
  connect(&session, &session::Session::selectionChanged, this, &ThingsPage::showSelected);
  refresh();
}

void ThingsPage::takeFocusAt(const std::string& pointer) {
  const bool there = (!m_form->isHidden() && m_form->facts()->takeFocusAt(pointer)) ||
                     (!m_wall_form->isHidden() && m_wall_form->facts()->takeFocusAt(pointer));
  if (!there) takeFocus();
}

bool ThingsPage::asks(const std::string& id) const {
  if (!m_session.hasJob()) return false;
  return plan::thingOf(m_session.job(), id).has_value() || wallOf(m_session.job(), id).has_value();
}

int ThingsPage::chosenRow() const {
  const QList<QListWidgetItem*> chosen = m_list->selectedItems();
  return chosen.isEmpty() ? -1 : m_list->row(chosen.front());
}

std::string ThingsPage::listed(int row) const {
  return m_list->item(row)->data(Qt::UserRole).toString().toStdString();
}

void ThingsPage::refresh() {
  if (m_session.isPreviewing()) return;
  m_filling = true;
  refreshWalls();
  refreshList();
  m_filling = false;
  showSelected();
  preview();
}

void ThingsPage::refreshWalls() {
  const int before = m_walls->currentIndex();
  m_walls->clear();
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const plan::Ring& ring = job.plan.rings[r];
    const std::size_t walls =
        ring.closed || ring.corners.empty() ? ring.corners.size() : ring.corners.size() - 1;
    for (std::size_t w = 0; w < walls && w < ring.walls.size(); ++w) {
      QString text = wallTitle(job, static_cast<int>(r), static_cast<int>(w));
      text += QStringLiteral(" ") + tapedLength(wallLength(ring, w), job);
      m_walls->addItem(text, QPoint(static_cast<int>(r), static_cast<int>(w)));
    }
  }
  m_walls->setCurrentIndex(std::clamp(before, m_walls->count() > 0 ? 0 : -1, m_walls->count() - 1));
}

void ThingsPage::refreshList() {
  m_list->clear();
  m_rooms->setEnabled(m_session.hasJob());
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  for (const std::string& id : thingIds(job)) {
    const auto thing = plan::thingOf(job, id);
    if (!thing) continue;
    const QString where = thingWhere(*thing, job);
    auto* item = new QListWidgetItem(where.isEmpty()
                                         ? thingTitle(*thing)
                                         : QStringLiteral("%1   %2").arg(thingTitle(*thing), where),
                                     m_list);
    item->setData(Qt::UserRole, QString::fromStdString(id));
    item->setToolTip(item->text());
    item->setSizeHint(QSize(10, qRound(30 * paint::uiScale(font()))));
  }
}

void ThingsPage::showSelected() {
  m_filling = true;
  const QString id = QString::fromStdString(m_session.selected());
  int row = -1;
  for (int i = 0; i < m_list->count(); ++i) {
    if (m_list->item(i)->data(Qt::UserRole).toString() == id) row = i;
  }
  if (row < 0)
    m_list->clearSelection();
  else
    m_list->setCurrentRow(row);
  for (int i = 0; m_session.hasJob() && i < m_walls->count(); ++i) {
    const QPoint at = m_walls->itemData(i).toPoint();
    const auto& walls = m_session.job().plan.rings[static_cast<std::size_t>(at.x())].walls;
    if (walls[static_cast<std::size_t>(at.y())].id == m_session.selected()) {
      m_walls->setCurrentIndex(i);
    }
  }
  m_remove->setEnabled(row >= 0);
  m_form->refresh();
  m_wall_form->refresh();
  m_forms->setVisible(!m_form->isHidden() || !m_wall_form->isHidden());
  // The forms take room from the list: once they have it, the chosen line is looked for again.
  QTimer::singleShot(0, m_list, [this] {
    if (chosenRow() >= 0) m_list->scrollToItem(m_list->item(chosenRow()));
  });
  m_filling = false;
}

void ThingsPage::say(const QString& text, bool warning) {
  setTone(m_message, warning);
  m_message->setText(text);
}

/// What the line means so far, before Enter.
void ThingsPage::preview() {
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  const bool feet = job.display_units == plan::DisplayUnits::imperial;
  if (m_line->text().trimmed() == QLatin1String("?")) return say(allWords(), false);
  const tools::ThingLine line = tools::readThingLine(
      m_line->text().toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  switch (line.fault) {
    case tools::LineFault::none:
      return say(whatItMeans(line, job), false);
    case tools::LineFault::few:
      return say(tr("%1: %2").arg(whatItIs(line), whatIsNext(line)), false);
    case tools::LineFault::empty:
      return say(tr("w window, d door, gas, el, dr, so socket, gu gully, iw inner wall, floor …: "
                    "then how far from the left corner, and how wide. ? lists all words"),
                 false);
    case tools::LineFault::unknown_word:
    case tools::LineFault::not_a_length:
    case tools::LineFault::ambiguous:
    case tools::LineFault::many:
    case tools::LineFault::no_repeat:
      return say({}, false);
  }
}

void ThingsPage::submit() {
  if (!m_session.hasJob()) return;
  if (m_line->text().trimmed() == QLatin1String("?")) return preview();
  const plan::Job& job = m_session.job();
  const bool feet = job.display_units == plan::DisplayUnits::imperial;
  const tools::ThingLine line = tools::readThingLine(
      m_line->text().toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  switch (line.fault) {
    case tools::LineFault::none:
      break;
    case tools::LineFault::unknown_word:
      return say(
          tr("“%1” is no thing this line knows. Try w for a window, d for a door; ? lists all.")
              .arg(QString::fromStdString(line.word)),
          true);
    case tools::LineFault::ambiguous:
      return say(tr("One of the lengths can mean two things: write its decimals with a dot."),
                 true);
    case tools::LineFault::not_a_length:
      return say(tr("One of these is not a length. Type them as 1.20, 120cm or 3'11\"."), true);
    case tools::LineFault::many:
      return say(tr("There are more lengths than a %1 has.").arg(whatItIs(line).toLower()), true);
    case tools::LineFault::no_repeat:
      return say(tr("Only openings can be repeated, up to fifty times."), true);
    case tools::LineFault::few:
    case tools::LineFault::empty:
      return preview();
  }
  if (m_walls->currentIndex() < 0) return say(tr("Tape the outline first."), true);
  const QPoint wall = m_walls->currentData().toPoint();
  base::Result<plan::Job> after = tools::placed(job, wall.x(), wall.y(), line);
  const std::string added = after ? tools::lastAdded(job, *after) : std::string();
  const base::Problems problems =
      m_session.edit(tr("Add: %1").arg(whatItIs(line).toLower()), std::move(after));
  if (!problems.empty()) return say(saidNamed(problems.front().message, m_session.job()), true);
  m_line->setText({});  // not clear(): Ctrl+Z now takes the thing back, not the text
  m_session.select(added);
  m_session.show(added);
}

void ThingsPage::removeSelected() {
  if (!m_session.hasJob() || chosenRow() < 0) return;
  const std::string id = listed(chosenRow());
  const auto thing = plan::thingOf(m_session.job(), id);
  const QString what = thing ? thingTitle(*thing) : QString();
  const base::Problems problems =
      m_session.edit(tr("Take out: %1").arg(what), plan::removeThing(m_session.job(), id));
  if (!problems.empty()) say(saidNamed(problems.front().message, m_session.job()), true);
}

void ThingsPage::findRooms() {
  if (!m_session.hasJob()) return;
  const auto before = m_session.job().plan.rooms.size();
  const base::Problems problems =
      m_session.edit(tr("Rooms from walls"), plan::roomsFromWalls(m_session.job()));
  if (!problems.empty()) return say(saidNamed(problems.front().message, m_session.job()), true);
  const auto found = m_session.job().plan.rooms.size() - before;
  say(found == 0   ? tr("No new room: every area that walls close off has one.")
      : found == 1 ? tr("One room found. Say what it is for.")
                   : tr("%1 rooms found. Choose each and say what it is for.").arg(found),
      false);
}

bool ThingsPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && watched == m_line) {
    const auto* key = static_cast<QKeyEvent*>(event);
    // With nothing typed there is nothing to take back here: undo is the plan's.
    if (m_line->text().isEmpty() &&
        (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
      event->ignore();
      return true;
    }
    if (!(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && key->key() != Qt::Key_F1) {
      event->accept();
      return true;
    }
  }
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  const auto* key = static_cast<QKeyEvent*>(event);
  const int step = key->key() == Qt::Key_PageDown ? 1 : key->key() == Qt::Key_PageUp ? -1 : 0;
  if (watched == m_line && step != 0 && m_walls->count() > 0) {
    m_walls->setCurrentIndex((m_walls->currentIndex() + step + m_walls->count()) %
                             m_walls->count());
    Q_EMIT m_walls->activated(m_walls->currentIndex());
    return true;
  }
  if (watched == m_line && key->key() == Qt::Key_Escape && !m_line->text().isEmpty()) {
    m_line->clear();
    preview();
    return true;
  }
  if (watched == m_list && key->key() == Qt::Key_Delete) {
    removeSelected();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
