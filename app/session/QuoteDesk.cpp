#include "session/QuoteDesk.h"

#include <algorithm>
#include <utility>

#include "files/FanTables.h"
#include "files/JobFile.h"
#include "plan/SumpEdits.h"
#include "words/Words.h"

namespace sumpwright::session {

QuoteDesk::QuoteDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  connect(&session, &Session::jobChanged, this, [this] {
    m_taken_back.clear();  // of the former job's book; an empty stack of undo tells nothing
    m_since_job = 0;
    outdate();
  });
  connect(&session, &Session::studyChanged, this, &QuoteDesk::outdate);
  connect(&session.undoStack(), &QUndoStack::indexChanged, this, [this] {
    m_since_job = 0;
    m_taken_back.clear();
  });
}

void QuoteDesk::outdate() {
  m_old = true;
  if (!m_session.isMoving() && !m_session.isPreviewing()) Q_EMIT changed();
}

void QuoteDesk::reload() { outdate(); }

const price::PricedQuote* QuoteDesk::quote() {
  make();
  return m_quote ? &*m_quote : nullptr;
}

const base::Problems& QuoteDesk::problems() {
  make();
  return m_problems;
}

const std::optional<files::LoadedPrices>& QuoteDesk::book() {
  make();
  return m_book;
}

bool QuoteDesk::isBookOwn() { return book() && !book()->path.empty(); }

void QuoteDesk::make() {
  if (!m_old) return;
  m_old = false;
  m_book.reset();
  m_quote.reset();
  m_problems.clear();
  const siting::Study* study = m_session.study();
  if (study == nullptr) return;
  const plan::Design& design = study->job().design;
  auto book = files::priceBookFor(design.quote.price_book);
  if (book.ok()) {
    m_book = std::move(book).value();
  } else {
    m_problems = book.problems();
  }
  const auto fan = files::pickedFan(design.fan);
  if (!fan.ok()) {
    const base::Problems own = fan.problems();
    m_problems.insert(m_problems.end(), own.begin(), own.end());
    return;
  }
  const auto system = siting::usualSystem(study->site(), fan->fan, fan->invented);
  const price::Needs needs = price::needsOf(*study, system);
  auto quote = price::priced(needs, m_book ? m_book->book : price::PriceBook(), design.quote);
  if (quote.ok()) {
    m_quote = std::move(quote).value();
  } else {
    m_problems = quote.problems();
  }
}

base::Problems QuoteDesk::put(const QString& text, plan::Quote quote) {
  if (!m_session.hasJob()) return {};
  return m_session.edit(text, plan::setQuote(m_session.job(), std::move(quote)));
}

base::Problems QuoteDesk::setPart(const price::PricedLine& line, price::LinePart part,
                                  const std::string& text) {
  return put(tr("Change a line of the quote"),
             price::withPart(m_session.job().design.quote, line, part, text));
}

base::Problems QuoteDesk::tick(const price::PricedLine& line, bool in) {
  return put(in ? tr("Take a line into the quote") : tr("Leave a line out of the quote"),
             price::withTick(m_session.job().design.quote, line, in));
}

base::Problems QuoteDesk::giveUp(const price::PricedLine& line) {
  return put(tr("Give up a change of the quote"),
             price::withoutChange(m_session.job().design.quote, line));
}

base::Problems QuoteDesk::setUnit(const price::PricedLine& line, price::PriceUnit unit) {
  return put(tr("Change a line of the quote"),
             price::withUnit(m_session.job().design.quote, line, unit));
}

base::Problems QuoteDesk::addLine(const std::string& item, const std::string& text,
                                  plan::QuoteKind kind) {
  return put(tr("Add a line to the quote"),
             price::withNewLine(m_session.job().design.quote, item, text, kind));
}

base::Problems QuoteDesk::chooseBook(const std::string& id) {
  plan::Quote quote = m_session.job().design.quote;
  quote.price_book = id;
  return put(tr("Choose a price book"), std::move(quote));
}

base::Problems QuoteDesk::changeBook(
    const QString& what, const std::function<base::Problems(price::PriceBook&)>& change) {
  if (!isBookOwn()) {
    return {{base::Message("file.prices-built-in"), "", base::Gravity::unsound}};
  }
  // As it stands in the file now: somebody else may have written it.
  auto now = files::priceBookFromFile(m_book->path);
  if (!now.ok()) return now.problems();
  const auto before = files::readBytes(m_book->path, price::kMostPriceBytes);
  if (!before.ok()) return before.problems();
  files::LoadedPrices loaded = std::move(now).value();
  base::Problems problems = change(loaded.book);
  if (problems.empty()) problems = files::savePriceBook(loaded);
  if (!problems.empty()) return problems;
  std::string after = price::priceBookText(loaded.book);
  if (after != *before) {
    m_book_changes.push_back({loaded.path, *before, std::move(after), what});
    ++m_since_job;
    m_taken_back.clear();
  }
  reload();
  Q_EMIT bookChanged();
  return {};
}

QString QuoteDesk::bookChange() {
  if (!isBookOwn() || m_book_changes.empty()) return {};
  const BookChange& last = m_book_changes.back();
  return last.path == m_book->path ? last.what : QString();
}

base::Problems QuoteDesk::takeBookChangeBack() {
  if (bookChange().isEmpty()) return {};
  const BookChange last = m_book_changes.back();
  const base::Problems problems = rewriteBook(last.path, last.after, last.before);
  if (!problems.empty()) return problems;
  m_taken_back.push_back(last);
  m_book_changes.pop_back();
  m_since_job = std::max(0, m_since_job - 1);
  reload();
  Q_EMIT bookChanged();
  return {};
}

base::Problems QuoteDesk::makeBookChangeAgain() {
  if (!mayMakeBookChangeAgain()) return {};
  const BookChange last = m_taken_back.back();
  const base::Problems problems = rewriteBook(last.path, last.before, last.after);
  if (!problems.empty()) return problems;
  m_book_changes.push_back(last);
  m_taken_back.pop_back();
  ++m_since_job;
  reload();
  Q_EMIT bookChanged();
  return {};
}

base::Problems QuoteDesk::rewriteBook(const std::string& path, const std::string& from,
                                      const std::string& to) {
  const auto now = files::readBytes(path, price::kMostPriceBytes);
  if (!now.ok()) return now.problems();
  if (*now != from) {
    return {{base::Message("file.prices-changed", {base::text("file", path)}), "",
             base::Gravity::unsound}};
  }
  const auto written = files::writeBytes(path, to);
  return written.ok() ? base::Problems() : written.problems();
}

base::Problems QuoteDesk::setBookPrice(const price::PricedLine& line, const std::string& price) {
  const auto typed = price::typedDecimal(price);
  if (!typed.ok()) return typed.problems();
  const QString name = QString::fromStdString(words::say(line.text, words::Units::metric));
  const QString now = QString::fromStdString(typed->text());
  const QString what =
      line.book_price
          ? tr("%1: %2, was %3").arg(name, now, QString::fromStdString(line.book_price->text()))
          : tr("%1: %2, had none").arg(name, now);
  return changeBook(what, [&](price::PriceBook& book) -> base::Problems {
    const auto item =
        std::find_if(book.items.begin(), book.items.end(),
                     [&](const price::PriceItem& one) { return one.id == line.item; });
    if (item == book.items.end()) {
      // The firm's own title is the item's, not what one job calls it.
      const std::string id = "price.item." + line.item;
      const base::Message title = words::hasSentence(id) ? base::Message(id) : line.text;
      book.items.push_back(
          {line.item, words::say(title, words::Units::metric), line.unit, *typed, line.kind});
    } else {
      item->unit = line.unit;
      item->price = *typed;
    }
    return {};
  });
}

base::Problems QuoteDesk::setSoldIn(const price::PricedLine& line, const std::string& text) {
  const auto typed = price::typedSoldIn(text);
  if (!typed.ok()) return typed.problems();
  const QString name = QString::fromStdString(words::say(line.text, words::Units::metric));
  const QString what =
      *typed ? tr("%1: sold by %2").arg(name, QString::fromStdString((*typed)->text()))
             : tr("%1: sold as it is asked for").arg(name);
  return changeBook(what, [&](price::PriceBook& book) -> base::Problems {
    for (price::PriceItem& item : book.items) {
      if (item.id == line.item) item.sold_in = *typed;
    }
    return {};
  });
}

base::Problems QuoteDesk::setHourPrice(const std::string& price) {
  const auto typed = price::typedDecimal(price);
  if (!typed.ok()) return typed.problems();
  const QString what = tr("Hour of labour: %1").arg(QString::fromStdString(typed->text()));
  return changeBook(what, [&](price::PriceBook& book) -> base::Problems {
    for (price::PriceItem& item : book.items) {
      if (item.unit == price::PriceUnit::hour) item.price = *typed;
    }
    return {};
  });
}

std::optional<price::Decimal> QuoteDesk::hourPrice() {
  std::optional<price::Decimal> out;
  if (!book()) return out;
  for (const price::PriceItem& item : m_book->book.items) {
    if (item.unit != price::PriceUnit::hour) continue;
    if (out && *out != item.price) return std::nullopt;
    out = item.price;
  }
  return out;
}

base::Problems QuoteDesk::makeOwnBook() {
  if (!book()) return problems();
  const auto made = files::ownPriceBook(m_book->book);
  if (!made.ok()) return made.problems();
  return chooseBook(made->book.id);
}

base::Problems QuoteDesk::takeBook(const std::string& path) {
  const auto taken = files::takePriceBook(path);
  if (!taken.ok()) return taken.problems();
  const base::Problems problems = chooseBook(taken->book.id);
  reload();
  return problems;
}

}  // namespace sumpwright::session
