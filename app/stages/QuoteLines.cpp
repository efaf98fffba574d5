#include "stages/QuoteLines.h"

#include <algorithm>

#include "price/Sources.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {

namespace {

using price::LineState;
using price::NeedKind;
using price::PricedLine;

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

QStringList QuoteLines::unitWords() {
  QStringList words;
  for (const std::string_view name : price::kPriceUnitNames) words << unitWord(name);
  return words;
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
  if (column == unit && line.sold_in) return tr("by %1").arg(q(line.sold_in->text()));
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
  if (column == unit && !line.item.empty())
    return line.sold_in ? q(line.sold_in->text()) : QString();
  return words(line, column);
}

/// Of lines that have a price in the firm's book.
bool QuoteLines::maySetSoldIn(const PricedLine& line) const {
  return m_own && line.book_price && line.kind == NeedKind::material;
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
      if (column == unit && maySetSoldIn(one))
        return tr("The length or pack it is sold in, for the shopping list; empty: as asked for.");
      return column == what ? words(one, column) + QLatin1Char('\n') + second(one, column)
                            : QVariant();
    case Qt::CheckStateRole:
      return column == what ? QVariant(isIn(one) ? Qt::Checked : Qt::Unchecked) : QVariant();
    case second_role:
      return second(one, column);
    case tone_role:
      return static_cast<int>(tone(one, column));
    case choice_role:
      return column == unit && one.item.empty();
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
  if (column == unit && (line(index.row()).item.empty() || maySetSoldIn(line(index.row()))))
    flags |= Qt::ItemIsEditable;
  if (column == book_price && m_own && !line(index.row()).item.empty()) flags |= Qt::ItemIsEditable;
  return flags;
}

base::Problems QuoteLines::take(const PricedLine& line, Column column, const std::string& text) {
  if (column == book_price) return m_desk.setBookPrice(line, text);
  if (column == unit && !line.item.empty()) return m_desk.setSoldIn(line, text);
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
    Q_EMIT refused(problems, words(one, what));
    return false;
  }
  Q_EMIT taken();
  return true;
}

}  // namespace sumpwright::stages
