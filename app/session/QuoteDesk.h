#pragma once
// What the open job costs: the design's needs by the price book the job names; and the two places a
// price can be changed in. What is of this job goes into the job, by Session::edit(), with undo.
// What is of the firm goes into the firm's own price book, a file, with a way back of its own; a
// built-in book is never written.
//
// Made when first asked for after a change, so that it costs nothing while nobody looks.

#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "files/PriceBooks.h"
#include "price/QuoteEdits.h"
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
  /// Whether the book is a file of the firm's, and can be changed.
  bool isBookOwn();
  /// Reads the price books again.
  void reload();

  // The job's quote; each is one step of undo, or gives its problems and changes nothing.

  base::Problems setPart(const price::PricedLine& line, price::LinePart part,
                         const std::string& text);
  base::Problems tick(const price::PricedLine& line, bool in);
  /// The design's again, or, of a line the job has added, gone.
  base::Problems giveUp(const price::PricedLine& line);
  /// Of the job's own.
  base::Problems setUnit(const price::PricedLine& line, price::PriceUnit unit);
  base::Problems addLine(const std::string& item, const std::string& text,
                         plan::QuoteKind kind = plan::QuoteKind::material);
  base::Problems chooseBook(const std::string& id);

  // The firm's own book. Written at once; not on the stack of undo, since other jobs are priced by
  // it, but each change can be taken back while the program runs. Problems: what is wrong with the
  // entry (prices.*), file.prices-built-in, or those of writing.

  base::Problems setBookPrice(const price::PricedLine& line, const std::string& price);
  /// The length or pack a line with a price of the book is sold in; empty: as it is asked for.
  base::Problems setSoldIn(const price::PricedLine& line, const std::string& text);
  /// All that is by the hour.
  base::Problems setHourPrice(const std::string& price);
  /// The price of an hour; nothing where there is none, or where they differ.
  std::optional<price::Decimal> hourPrice();
  /// `what` is what it is called when it is offered to be taken back.
  base::Problems changeBook(const QString& what,
                            const std::function<base::Problems(price::PriceBook&)>& change);
  /// What the last change of the book in use was; empty: there is none to take back.
  QString bookChange();
  /// Whether that change is newer than any step of the job.
  bool isBookChangeLast() const { return m_since_job > 0; }
  /// The file as it was before. Problems: file.prices-changed where somebody else has written it
  /// since, or those of writing.
  base::Problems takeBookChangeBack();
  /// Whether one was taken back, and neither book nor job was changed since.
  bool mayMakeBookChangeAgain() const { return !m_taken_back.empty(); }
  /// That change again. Problems: as of takeBookChangeBack().
  base::Problems makeBookChangeAgain();
  /// A book of the firm's own with the prices of the one there is; the job names it then.
  base::Problems makeOwnBook();
  /// Puts a book from elsewhere among the firm's own; the job names it then.
  base::Problems takeBook(const std::string& path);

 Q_SIGNALS:
  void changed();      ///< whoever wants it asks anew
  void bookChanged();  ///< the firm's own book was written, or taken back

 private:
  struct BookChange {
    std::string path;
    std::string before;  ///< the whole file
    std::string after;
    QString what;
  };
  base::Problems put(const QString& text, plan::Quote quote);
  /// Writes a file that is as `from`; told where it is not.
  base::Problems rewriteBook(const std::string& path, const std::string& from,
                             const std::string& to);
  void outdate();
  void make();

  Session& m_session;
  bool m_old = true;
  std::optional<files::LoadedPrices> m_book;
  std::optional<price::PricedQuote> m_quote;
  base::Problems m_problems;
  std::vector<BookChange> m_book_changes;
  std::vector<BookChange> m_taken_back;  ///< since the last change of book or job, in that order
  int m_since_job = 0;                   ///< changes of the book since the last step of the job
};

}  // namespace sumpwright::session
