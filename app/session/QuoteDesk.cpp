#include "session/QuoteDesk.h"

#include <utility>

#include "files/FanTables.h"

namespace sumpwright::session {

QuoteDesk::QuoteDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  connect(&session, &Session::jobChanged, this, &QuoteDesk::outdate);
  connect(&session, &Session::studyChanged, this, &QuoteDesk::outdate);
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

}  // namespace sumpwright::session
