#include "stages/QuoteTable.h"

#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

#include "paint/Look.h"
#include "price/Sources.h"
#include "stages/SitingText.h"
#include "stages/TickBox.h"

namespace sumpwright::stages {

namespace {

using price::LineState;
using price::NeedKind;
using price::PricedLine;

constexpr double kTickRoom_px = 34.0;
constexpr double kLineRow_px = 44.0;
constexpr double kHeadRow_px = 34.0;

QString q(const std::string& text) { return QString::fromStdString(text); }

QString unitWord(std::string_view name) {
  return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString unitWord(price::PriceUnit unit) {
  return unitWord(price::kPriceUnitNames[static_cast<std::size_t>(unit)]);
}

std::optional<price::PriceUnit> unitOfWord(const QString& word) {
  for (std::size_t i = 0; i < std::size(price::kPriceUnitNames); ++i) {
    if (unitWord(price::kPriceUnitNames[i]) == word) return static_cast<price::PriceUnit>(i);
  }
  return std::nullopt;
}

bool isIn(const PricedLine& line) {
  return line.state == LineState::counted || line.state == LineState::unpriced;
}

/// Draws a cell in two sizes and the tick before the first column; takes the click on the tick.
class QuoteCells final : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

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
    if (index.column() == QuoteLines::unit) return unitEditor(parent, index);
    auto* field = new QLineEdit(parent);
    field->setFrame(false);
    field->setMaxLength(2000);
    field->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    if (index.column() != QuoteLines::what) field->setAlignment(Qt::AlignRight);
    return field;
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
  /// A unit is chosen, and taken with the choice.
  QWidget* unitEditor(QWidget* parent, const QModelIndex& index) const {
    auto* box = new QComboBox(parent);
    box->setFrame(false);
    for (const std::string_view name : price::kPriceUnitNames) box->addItem(unitWord(name));
    box->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    auto* self = const_cast<QuoteCells*>(this);
    connect(box, &QComboBox::activated, self, [self, box] {
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

QuoteLines::QuoteLines(session::QuoteDesk& desk, QObject* parent)
    : QAbstractTableModel(parent), m_desk(desk) {}

const PricedLine& QuoteLines::line(int row) const {
  return m_quote.lines[static_cast<std::size_t>(m_rows[static_cast<std::size_t>(row)].line)];
}

int QuoteLines::rowOf(const std::string& item) const {
  for (int row = 0; row < rowCount(); ++row) {
    if (!isHead(row) && line(row).item == item) return row;
  }
  return -1;
}

void QuoteLines::addRows(std::vector<Row>& rows, const QString& head,
                         const std::function<bool(const PricedLine&)>& wanted) const {
  bool first = true;
  for (std::size_t i = 0; i < m_quote.lines.size(); ++i) {
    const PricedLine& line = m_quote.lines[i];
    if (!wanted(line)) continue;
    if (first) rows.push_back({-1, head, head.toStdString()});
    first = false;
    rows.push_back({static_cast<int>(i), {}, line.item.empty() ? line.change : line.item});
  }
}

/// Ticked or not, a line keeps its place: whoever ticks along a list must not lose it.
void QuoteLines::refresh(const plan::Job* job) {
  const price::PricedQuote* quote = m_desk.quote();
  m_own = m_desk.isBookOwn();
  if (job != nullptr) {
    m_job_quote = job->design.quote;
    m_units = job->display_units;
  }
  const price::PricedQuote now = quote != nullptr ? *quote : price::PricedQuote();
  const std::vector<Row> before = m_rows;
  m_quote = now;
  std::vector<Row> rows;
  addRows(rows, tr("Material"),
          [](const PricedLine& l) { return l.designed && l.kind == NeedKind::material; });
  addRows(rows, tr("Labour"),
          [](const PricedLine& l) { return l.designed && l.kind == NeedKind::labour; });
  addRows(rows, tr("Added in this job"), [](const PricedLine& l) { return !l.designed; });
  addRows(rows, tr("Offered on top; ticked, it is in the total"),
          [](const PricedLine& l) { return l.designed && l.kind == NeedKind::optional; });
  const bool same =
      std::equal(rows.begin(), rows.end(), before.begin(), before.end(),
                 [](const Row& a, const Row& b) { return a.key == b.key && a.line == b.line; });
  if (same) {
    if (!m_rows.empty()) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, column_count - 1));
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, column_count - 1);
    return;
  }
  beginResetModel();
  m_rows = std::move(rows);
  endResetModel();
  Q_EMIT structureChanged();
}

int QuoteLines::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int QuoteLines::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : column_count;
}

QVariant QuoteLines::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole) {
    const bool left = section == what || section == unit;
    return static_cast<int>((left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
  }
  if (role != Qt::DisplayRole) return {};
  switch (static_cast<Column>(section)) {
    case what:
      return tr("What, and where it comes from");
    case quantity:
      return tr("Quantity");
    case unit:
      return tr("Unit");
    case book_price:
      return tr("Book");
    case job_price:
      return tr("This job");
    case total:
      return m_quote.currency.empty() ? tr("Total") : q(m_quote.currency);
    case column_count:
      break;
  }
  return {};
}

QString QuoteLines::words(const PricedLine& line, Column column) const {
  const words::Units units =
      m_units == plan::DisplayUnits::imperial ? words::Units::imperial : words::Units::metric;
  switch (column) {
    case what:
      return q(words::say(line.text, units));
    case quantity:
      return q(line.quantity.text());
    case unit:
      return unitWord(line.unit);
    case book_price:
      return line.book_price ? q(line.book_price->text(m_quote.minor_digits)) : QString();
    case job_price:
      return q(price::partOf(m_job_quote, line, price::LinePart::unit_price));
    case total:
      return line.total ? q(price::moneyText(*line.total, m_quote.minor_digits))
                        : QStringLiteral("?");
    case column_count:
      break;
  }
  return {};
}

QString QuoteLines::second(const PricedLine& line, Column column) const {
  if (column == what) return q(words::say(price::sourceOf(line), words::Units::metric));
  if (column == quantity && line.designed && *line.designed != line.quantity)
    return tr("design: %1").arg(q(line.designed->text()));
  if (column != total) return {};
  if (line.state == LineState::left_out) return tr("left out");
  if (line.state == LineState::optional) return tr("not in the total");
  return line.state == LineState::unpriced ? tr("no price") : QString();
}

QuoteLines::Tone QuoteLines::tone(const PricedLine& line, Column column) const {
  if (column == total && line.state == LineState::unpriced) return Tone::warning;
  if (!isIn(line) && (line.state == LineState::left_out || column == total)) return Tone::quiet;
  const bool own_quantity = column == quantity && line.designed && *line.designed != line.quantity;
  if (own_quantity || column == job_price) return Tone::changed;
  const bool overruled = column == book_price && !words(line, job_price).isEmpty();
  return overruled || column == unit ? Tone::quiet : Tone::plain;
}

/// As it stands in the editor: what the job or the book says, exactly.
QString QuoteLines::typed(const PricedLine& line, Column column) const {
  if (column == job_price) return words(line, column);
  if (column == book_price) return line.book_price ? q(line.book_price->text()) : QString();
  return words(line, column);
}

QVariant QuoteLines::data(const QModelIndex& index, int role) const {
  const Row& row = m_rows[static_cast<std::size_t>(index.row())];
  if (row.line < 0) {
    if (role == head_role) return true;
    const bool said = role == Qt::DisplayRole || role == Qt::AccessibleTextRole;
    return said && index.column() == 0 ? row.head : QVariant();
  }
  const PricedLine& one = line(index.row());
  const auto column = static_cast<Column>(index.column());
  switch (role) {
    case Qt::DisplayRole:
      return words(one, column);
    case Qt::EditRole:
      return typed(one, column);
    case Qt::AccessibleTextRole:
      return words(one, column) + QLatin1Char(' ') + second(one, column);
    case Qt::ToolTipRole:
      if (column == book_price && !m_own)
        return tr("The price book is part of the program and stays as it is: make your own of it.");
      if (column == job_price) return tr("A price for this job alone; empty: the book's.");
      if (column == quantity) return tr("Empty: the design's.");
      if (column == unit && one.item.empty()) return tr("Double click or a key to choose.");
      return column == what ? words(one, column) + QLatin1Char('\n') + second(one, column)
                            : QVariant();
    case Qt::CheckStateRole:
      return column == what ? QVariant(isIn(one) ? Qt::Checked : Qt::Unchecked) : QVariant();
    case second_role:
      return second(one, column);
    case tone_role:
      return static_cast<int>(tone(one, column));
    default:
      return {};
  }
}

Qt::ItemFlags QuoteLines::flags(const QModelIndex& index) const {
  if (!index.isValid() || isHead(index.row())) return Qt::ItemIsEnabled;
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  const auto column = static_cast<Column>(index.column());
  if (column == what) flags |= Qt::ItemIsUserCheckable | Qt::ItemIsEditable;
  if (column == quantity || column == job_price) flags |= Qt::ItemIsEditable;
  if (column == unit && line(index.row()).item.empty()) flags |= Qt::ItemIsEditable;
  if (column == book_price && m_own && !line(index.row()).item.empty()) flags |= Qt::ItemIsEditable;
  return flags;
}

base::Problems QuoteLines::take(const PricedLine& line, Column column, const std::string& text) {
  if (column == book_price) return m_desk.setBookPrice(line, text);
  if (column == unit) {
    const auto chosen = unitOfWord(q(text));
    return chosen ? m_desk.setUnit(line, *chosen) : base::Problems();
  }
  const auto part = column == what       ? price::LinePart::text
                    : column == quantity ? price::LinePart::quantity
                                         : price::LinePart::unit_price;
  return m_desk.setPart(line, part, text);
}

bool QuoteLines::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid() || isHead(index.row())) return false;
  const PricedLine one = line(index.row());  // the lines are made anew by the change
  base::Problems problems;
  if (role == Qt::CheckStateRole) {
    problems = m_desk.tick(one, value.toInt() == Qt::Checked);
  } else if (role == Qt::EditRole) {
    const auto column = static_cast<Column>(index.column());
    const QString text = value.toString().trimmed();
    if (text == typed(one, column)) return true;  // only looked at
    problems = take(one, column, text.toStdString());
  } else {
    return false;
  }
  if (!problems.empty()) {
    Q_EMIT refused(problems);
    return false;
  }
  Q_EMIT taken();
  return true;
}

QuoteTable::QuoteTable(session::Session& session, session::QuoteDesk& desk, QWidget* parent)
    : QTableView(parent), m_session(session), m_desk(desk), m_lines(new QuoteLines(desk, this)) {
  setAccessibleName(tr("Lines of the quote"));
  setModel(m_lines);
  setItemDelegate(new QuoteCells(this));
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
  if (!problems.empty()) Q_EMIT m_lines->refused(problems);
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

void QuoteTable::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Delete && state() != QAbstractItemView::EditingState) {
    return giveUp();
  }
  QTableView::keyPressEvent(event);
}

}  // namespace sumpwright::stages
