#include "stages/QuoteTable.h"

#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QTimer>
#include <algorithm>
#include <functional>

#include "paint/Look.h"
#include "stages/TickBox.h"

namespace sumpwright::stages {

namespace {

constexpr double kTickRoom_px = 34.0;
constexpr double kLineRow_px = 44.0;
constexpr double kHeadRow_px = 34.0;

/// Knows whether it is being chosen in by keys.
class UnitBox final : public QComboBox {
 public:
  using QComboBox::QComboBox;
  bool isTyped() const { return m_typed; }

 protected:
  void keyPressEvent(QKeyEvent* event) override {
    m_typed = true;
    QComboBox::keyPressEvent(event);
    m_typed = false;
  }

 private:
  bool m_typed = false;
};

/// Draws a cell in two sizes and the tick before the first column; takes the click on the tick.
class QuoteCells final : public QStyledItemDelegate {
 public:
  using Refused = std::function<void(const QModelIndex& index, const QString& typed)>;
  QuoteCells(Refused refused, QObject* parent)
      : QStyledItemDelegate(parent), m_refused(std::move(refused)) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override {
    const drawing::Theme& t = paint::look(option.palette);
    const double k = paint::uiScale(option.font);
    painter->save();
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    if (chosen) painter->fillRect(option.rect, paint::colour(t.selection_tint));
    QRectF room = QRectF(option.rect).adjusted(8 * k, 0, -8 * k, 0);
    if (index.data(QuoteLines::head_role).toBool()) {
      painter->setFont(paint::sized(option.font, 1.05, true));
      painter->setPen(paint::colour(t.ink));
      painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter, index.data().toString());
      painter->restore();
      return;
    }
    if (index.column() == QuoteLines::what) {
      const QRectF box(option.rect.left() + 8 * k, room.center().y() - 9 * k, 18 * k, 18 * k);
      paintTick(*painter, box, index.data(Qt::CheckStateRole).toInt() == Qt::Checked, true,
                option.palette);
      room.setLeft(option.rect.left() + kTickRoom_px * k);
    }
    paintWords(*painter, room, option, index);
    if (chosen && option.state.testFlag(QStyle::State_HasFocus)) {
      painter->setPen(QPen(paint::colour(t.selection), 2.0));
      painter->setBrush(Qt::NoBrush);
      painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
    }
    painter->restore();
  }

  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&,
                        const QModelIndex& index) const override {
    if (index.data(QuoteLines::choice_role).toBool()) return unitEditor(parent, index);
    auto* field = new QLineEdit(parent);
    field->setFrame(false);
    field->setMaxLength(2000);
    field->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    if (index.column() != QuoteLines::what) field->setAlignment(Qt::AlignRight);
    return field;
  }

  /// What is not taken stays typed, to be put right or given up with Escape.
  void setModelData(QWidget* editor, QAbstractItemModel* model,
                    const QModelIndex& index) const override {
    const auto* field = qobject_cast<QLineEdit*>(editor);
    if (field == nullptr) return QStyledItemDelegate::setModelData(editor, model, index);
    if (!model->setData(index, field->text(), Qt::EditRole)) m_refused(index, field->text());
  }

  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const override {
    QRect room = option.rect;
    if (index.column() == QuoteLines::what)
      room.setLeft(room.left() + qRound((kTickRoom_px - 8) * paint::uiScale(option.font)));
    editor->setGeometry(room);
  }

  bool editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                   const QModelIndex& index) override {
    if (!index.flags().testFlag(Qt::ItemIsUserCheckable)) return false;
    const bool keyed =
        event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Space;
    bool clicked = false;
    const bool pointer = event->type() == QEvent::MouseButtonRelease ||
                         event->type() == QEvent::MouseButtonPress ||
                         event->type() == QEvent::MouseButtonDblClick;
    if (pointer) {
      const double room = kTickRoom_px * paint::uiScale(option.font);
      const auto* mouse = static_cast<QMouseEvent*>(event);
      const bool on = mouse->button() == Qt::LeftButton && option.rect.contains(mouse->pos()) &&
                      mouse->pos().x() < option.rect.left() + room;
      if (on && event->type() == QEvent::MouseButtonDblClick) return true;
      clicked = on && event->type() == QEvent::MouseButtonRelease;
    }
    if (!keyed && !clicked) return false;
    const bool ticked = index.data(Qt::CheckStateRole).toInt() == Qt::Checked;
    return model->setData(index, ticked ? Qt::Unchecked : Qt::Checked, Qt::CheckStateRole);
  }

 private:
  Refused m_refused;

  /// A unit is chosen, and taken with the choice.
  QWidget* unitEditor(QWidget* parent, const QModelIndex& index) const {
    auto* box = new UnitBox(parent);
    box->setFrame(false);
    box->addItems(QuoteLines::unitWords());
    box->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    auto* self = const_cast<QuoteCells*>(this);
    connect(box, &QComboBox::activated, self, [self, box] {
      if (box->isTyped()) return;  // "m" of "m2": it is taken when the cell is left
      Q_EMIT self->commitData(box);
      Q_EMIT self->closeEditor(box);
    });
    return box;
  }

  static void paintWords(QPainter& painter, const QRectF& room, const QStyleOptionViewItem& option,
                         const QModelIndex& index) {
    const drawing::Theme& t = paint::look(option.palette);
    const auto tone = static_cast<QuoteLines::Tone>(index.data(QuoteLines::tone_role).toInt());
    const bool left = index.column() == QuoteLines::what || index.column() == QuoteLines::unit;
    const int side = static_cast<int>((left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    const QString words = index.data(Qt::DisplayRole).toString();
    const QString second = index.data(QuoteLines::second_role).toString();
    const bool quiet = tone == QuoteLines::Tone::quiet;
    painter.setFont(paint::sized(option.font, 0.96, tone == QuoteLines::Tone::changed));
    painter.setPen(paint::colour(tone == QuoteLines::Tone::warning ? t.warning_text
                                 : quiet                           ? t.ink3
                                                                   : t.ink));
    const double half = room.height() / 2.0;
    const QRectF upper = second.isEmpty() ? room : room.adjusted(0, 3, 0, -half);
    const auto fit = [&](const QString& text) {
      return painter.fontMetrics().elidedText(text, Qt::ElideRight, qRound(room.width()));
    };
    painter.drawText(upper, side, fit(words));
    if (second.isEmpty()) return;
    painter.setFont(paint::sized(option.font, 0.85));
    painter.setPen(paint::colour(quiet ? t.ink3 : t.ink2));
    painter.drawText(room.adjusted(0, half, 0, -3), side, fit(second));
  }
};

}  // namespace

QuoteTable::QuoteTable(session::Session& session, session::QuoteDesk& desk, QWidget* parent)
    : QTableView(parent), m_session(session), m_desk(desk), m_lines(new QuoteLines(desk, this)) {
  setAccessibleName(tr("Lines of the quote"));
  setModel(m_lines);
  setItemDelegate(new QuoteCells(
      [this](const QModelIndex& index, const QString& typed) { keepTyped(index, typed); }, this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setSelectionMode(QAbstractItemView::SingleSelection);
  // Not at a click on the chosen cell: Qt waits for a second one before it opens the editor, and
  // keys typed meanwhile would not reach it.
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::EditKeyPressed |
                  QAbstractItemView::DoubleClicked);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  horizontalHeader()->setHighlightSections(false);
  connect(&desk, &session::QuoteDesk::changed, this, &QuoteTable::refresh);
  connect(m_lines, &QuoteLines::structureChanged, this, &QuoteTable::layOut);
  connect(selectionModel(), &QItemSelectionModel::currentChanged, this, &QuoteTable::chosen);
}

void QuoteTable::showEvent(QShowEvent* event) {
  QTableView::showEvent(event);
  refresh();
  layOut();
}

void QuoteTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  layOut();
}

void QuoteTable::refresh() {
  if (!isVisible()) return;
  const QModelIndex now = currentIndex();
  const std::string held =
      now.isValid() && !m_lines->isHead(now.row()) ? m_lines->line(now.row()).item : std::string();
  const int column = now.column();
  m_lines->refresh(m_session.hasJob() ? &m_session.job() : nullptr);
  if (!currentIndex().isValid() && !held.empty()) {
    const int row = m_lines->rowOf(held);
    if (row >= 0) setCurrentIndex(m_lines->index(row, column));
  }
}

void QuoteTable::layOut() {
  const double k = paint::uiScale(font());
  clearSpans();
  for (int row = 0; row < m_lines->rowCount(); ++row) {
    const bool head = m_lines->isHead(row);
    setRowHeight(row, qRound((head ? kHeadRow_px : kLineRow_px) * k));
    if (head) setSpan(row, 0, 1, QuoteLines::column_count);
  }
  constexpr std::array kWidths_px{0.0, 92.0, 52.0, 84.0, 84.0, 104.0};
  int taken = 0;
  for (int column = 1; column < QuoteLines::column_count; ++column) {
    const int width = qRound(kWidths_px[static_cast<std::size_t>(column)] * k);
    setColumnWidth(column, width);
    taken += width;
  }
  setColumnWidth(0, std::max(qRound(180 * k), viewport()->width() - taken));
}

bool QuoteTable::mayGiveUp() const {
  const QModelIndex now = currentIndex();
  return now.isValid() && !m_lines->isHead(now.row()) && !m_lines->line(now.row()).change.empty();
}

void QuoteTable::giveUp() {
  if (!mayGiveUp()) return;
  const base::Problems problems = m_desk.giveUp(m_lines->line(currentIndex().row()));
  if (!problems.empty()) Q_EMIT m_lines->refused(problems, {});
}

void QuoteTable::editNewLine() {
  for (int row = m_lines->rowCount() - 1; row >= 0; --row) {
    if (m_lines->isHead(row) || m_lines->line(row).designed) continue;
    const bool own = m_lines->line(row).item.empty();
    const QModelIndex at = m_lines->index(row, own ? QuoteLines::what : QuoteLines::quantity);
    setFocus(Qt::OtherFocusReason);
    setCurrentIndex(at);
    scrollTo(at);
    return edit(at);
  }
}

void QuoteTable::settle() {
  if (state() != QAbstractItemView::EditingState) return;
  QWidget* editor = indexWidget(currentIndex());
  if (editor == nullptr) editor = QApplication::focusWidget();
  if (editor == nullptr || editor->parentWidget() != viewport()) return;
  commitData(editor);
  closeEditor(editor, QAbstractItemDelegate::NoHint);
}

/// Once the editor that is closing is gone; not where the keys have gone elsewhere meanwhile.
void QuoteTable::keepTyped(const QPersistentModelIndex& index, const QString& typed) {
  QTimer::singleShot(0, this, [this, index, typed] {
    if (!index.isValid() || !isVisible() || !hasFocus()) return;
    setCurrentIndex(index);
    edit(index);
    for (auto* field :
         viewport()->findChildren<QLineEdit*>(QString(), Qt::FindDirectChildrenOnly)) {
      if (!field->isVisible()) continue;
      field->setText(typed);
      field->selectAll();
    }
  });
}

QModelIndex QuoteTable::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
  QModelIndex next = QTableView::moveCursor(action, modifiers);
  if (action != MoveNext && action != MovePrevious) return next;
  const int columns = QuoteLines::column_count;
  const int cells = m_lines->rowCount() * columns;
  for (int tried = 0; tried < cells && next.isValid(); ++tried) {
    if (next.flags().testFlag(Qt::ItemIsEditable)) return next;
    const int at =
        (next.row() * columns + next.column() + (action == MoveNext ? 1 : cells - 1)) % cells;
    next = m_lines->index(at / columns, at % columns);
  }
  return next;
}

void QuoteTable::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Delete && state() != QAbstractItemView::EditingState) {
    return giveUp();
  }
  QTableView::keyPressEvent(event);
}

}  // namespace sumpwright::stages
