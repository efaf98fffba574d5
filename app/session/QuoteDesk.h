#pragma once
// What the open job costs: the design's needs by the price book the job names. Made when first
// asked for after a change, so that it costs nothing while nobody looks.

#include <QObject>
#include <optional>

#include "files/PriceBooks.h"
#include "price/Quote.h"
#include "session/Session.h"

namespace sumpwright::session {

class QuoteDesk final : public QObject {
  Q_OBJECT

 public:
  explicit QuoteDesk(Session& session, QObject* parent = nullptr);

  /// Of the job as it stands; where there are no prices (problems()), lines without any. nullptr
  /// without a study.
  const price::PricedQuote* quote();
  /// Why there are no prices: the fan, the book, or what it comes to.
  const base::Problems& problems();
  /// The book the job names; nothing where it cannot be read.
  const std::optional<files::LoadedPrices>& book();
  /// Reads the price books again.
  void reload();

 Q_SIGNALS:
  void changed();  ///< whoever wants it asks anew

 private:
  void outdate();
  void make();

  Session& m_session;
  bool m_old = true;
  std::optional<files::LoadedPrices> m_book;
  std::optional<price::PricedQuote> m_quote;
  base::Problems m_problems;
};

}  // namespace sumpwright::session
