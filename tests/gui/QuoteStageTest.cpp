// The quote in the window: lines, prices, the firm's own book, and what it comes to, reckoned again
// here in whole numbers.

#include <QComboBox>
#include <QDir>
#include <QLineEdit>

#include "files/PriceBooks.h"
#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

using stages::QuoteLines;
__extension__ using Whole = __int128;

constexpr Whole kMillion = 1'000'000;

/// "12.345" as millionths, digit by digit.
Whole millionthsOf(const std::string& text) {
  Whole value = 0;
  int after = -1;
  for (const char c : text) {
    if (c == '-') continue;
    if (c == '.') {
      after = 0;
      continue;
    }
    value = 10 * value + (c - '0');
    if (after >= 0) ++after;
  }
  for (int k = std::max(after, 0); k < 6; ++k) value *= 10;
  return text.starts_with('-') ? -value : value;
}

/// Half away from zero.
Whole divided(Whole value, Whole by) {
  const Whole half = by / 2;
  return value >= 0 ? (value + half) / by : -((-value + half) / by);
}

/// Of a currency of two digits after the point.
Whole coinsOf(const std::string& quantity, const std::string& price) {
  return divided(millionthsOf(quantity) * millionthsOf(price) * 100, kMillion * kMillion);
}

Whole shareOf(Whole coins, const std::string& percent) {
  return divided(coins * millionthsOf(percent), 100 * kMillion);
}

class QuoteStage : public WindowFixture {
 protected:
  QuoteStage() { forget(); }
  ~QuoteStage() override { forget(); }
  static void forget() { QDir(bookFolder()).removeRecursively(); }
  static QString bookFolder() { return QString::fromStdString(files::userPriceFolder()); }

  void openQuote(const QString& name = QStringLiteral("bungalow")) {
    open(name);
    trigger("view.paper");
    QTest::mouseClick(window->paper().pages()->button(1), Qt::LeftButton);
    QCoreApplication::processEvents();
    ASSERT_TRUE(table().isVisible());
    ASSERT_GT(lines().rowCount(), 20);
  }
  stages::QuoteTable& table() { return *window->paper().quoteTable(); }
  QuoteLines& lines() { return *table().lines(); }
  stages::QuotePage& page() { return *window->paper().quote(); }
  const price::PricedQuote& quote() { return *window->quoteDesk().quote(); }
  const plan::Quote& jobQuote() { return session().job().design.quote; }
  QModelIndex cell(const std::string& item, QuoteLines::Column column) {
    const int row = lines().rowOf(item);
    EXPECT_GE(row, 0) << item;
    const QModelIndex at = lines().index(row, column);
    table().scrollTo(at);
    return at;
  }
  QString words(const std::string& item, QuoteLines::Column column) {
    return cell(item, column).data().toString();
  }
  void clickOn(const QModelIndex& at) {
    QTest::mouseClick(table().viewport(), Qt::LeftButton, {}, table().visualRect(at).center());
  }
  /// The one that is open; one that was left may wait to be deleted.
  QLineEdit* editor() {
    for (QLineEdit* field : table().viewport()->findChildren<QLineEdit*>()) {
      if (field->isVisible()) return field;
    }
    return nullptr;
  }
  /// Clicks a cell, types into it and confirms.
  void type(const QModelIndex& at, const QString& text) {
    if (table().currentIndex() != at) clickOn(at);
    QTest::keyClick(&table(), Qt::Key_F2);
    QLineEdit* field = editor();
    ASSERT_NE(field, nullptr);
    field->selectAll();
    text.isEmpty() ? QTest::keyClick(field, Qt::Key_Delete) : QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
  /// The total by the cells as they are shown.
  Whole reckoned(const std::string& margin = "0", const std::string& tax = "0") {
    Whole work = 0;
    for (int row = 0; row < lines().rowCount(); ++row) {
      if (lines().isHead(row)) continue;
      const auto shown = [&](QuoteLines::Column column) {
        return lines().index(row, column).data().toString().toStdString();
      };
      const auto tick = lines().index(row, QuoteLines::what).data(Qt::CheckStateRole).toInt();
      if (tick != Qt::Checked) continue;
      const std::string own = shown(QuoteLines::job_price);
      work +=
          coinsOf(shown(QuoteLines::quantity), own.empty() ? shown(QuoteLines::book_price) : own);
    }
    const Whole net = work + shareOf(work, margin) + millionthsOf(jobQuote().provisional) / 10000;
    return net + shareOf(net, tax);
  }
  /// What the panel says, as coins.
  Whole said() {
    const QString amount = page().total().section(QLatin1Char(' '), 1);
    EXPECT_TRUE(amount.contains(QLatin1Char('.'))) << page().total().toStdString();
    return millionthsOf(amount.toStdString()) / 10000;
  }
  static long long small(Whole value) { return static_cast<long long>(value); }
  void expectTotal(const std::string& margin = "0", const std::string& tax = "0") {
    EXPECT_EQ(small(said()), small(reckoned(margin, tax))) << page().total().toStdString();
    EXPECT_EQ(small(said()), quote().total.coins);
  }
  void makeOwnBook() {
    QTest::mouseClick(page().ownBook(), Qt::LeftButton);
    QCoreApplication::processEvents();
    ASSERT_EQ(jobQuote().price_book, "our-prices") << page().told().toStdString();
  }
  QString put(const QString& name, const QByteArray& bytes) {
    QFile file(folder.filePath(name));
    EXPECT_TRUE(file.open(QFile::WriteOnly));
    file.write(bytes);
    return file.fileName();
  }
};

TEST_F(QuoteStage, LinesSayWhatHowManyAndWhereFrom) {
  openQuote();
  for (int row = 0; row < lines().rowCount(); ++row) {
    if (lines().isHead(row)) continue;
    const QModelIndex what = lines().index(row, QuoteLines::what);
    EXPECT_FALSE(what.data().toString().isEmpty());
    EXPECT_FALSE(what.data(QuoteLines::second_role).toString().isEmpty())
        << what.data().toString().toStdString();
  }
  EXPECT_TRUE(cell("cable", QuoteLines::what)
                  .data(QuoteLines::second_role)
                  .toString()
                  .contains(QStringLiteral("cable route")));
  EXPECT_TRUE(page().total().startsWith(QStringLiteral("EUR ")));
  expectTotal();
}

TEST_F(QuoteStage, AQuantityOverrulesTheDesignsAndIsUndone) {
  openQuote();
  const Whole before = said();
  const QString designed = words("pipe", QuoteLines::quantity);
  type(cell("pipe", QuoteLines::quantity), QStringLiteral("17.35"));
  EXPECT_EQ(words("pipe", QuoteLines::quantity), QStringLiteral("17.35"));
  EXPECT_TRUE(cell("pipe", QuoteLines::quantity)
                  .data(QuoteLines::second_role)
                  .toString()
                  .contains(designed));  // what it was stays to be seen
  expectTotal();
  const std::string price = words("pipe", QuoteLines::book_price).toStdString();
  EXPECT_EQ(small(said() - before),
            small(coinsOf("17.35", price) - coinsOf(designed.toStdString(), price)));
  ASSERT_EQ(jobQuote().lines.size(), 1U);
  trigger("edit.undo");
  EXPECT_EQ(small(said()), small(before));
  EXPECT_TRUE(jobQuote().lines.empty());
  trigger("edit.redo");
  type(cell("pipe", QuoteLines::quantity), QString());  // empty: the design's again
  EXPECT_EQ(words("pipe", QuoteLines::quantity), designed);
  EXPECT_TRUE(jobQuote().lines.empty());
}

TEST_F(QuoteStage, LinesAreTickedOutAndOfferedOnesIn) {
  openQuote();
  const Whole before = said();
  const std::string scaffold = "return_visit";
  const QModelIndex offered = cell(scaffold, QuoteLines::what);
  EXPECT_EQ(offered.data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
  const QRect place = table().visualRect(offered);
  QTest::mouseClick(table().viewport(), Qt::LeftButton, {},
                    QPoint(place.left() + 17, place.center().y()));
  EXPECT_EQ(cell(scaffold, QuoteLines::what).data(Qt::CheckStateRole).toInt(), Qt::Checked);
  EXPECT_GT(said(), before);
  expectTotal();
  clickOn(cell("fan", QuoteLines::what));
  QTest::keyClick(&table(), Qt::Key_Space);
  EXPECT_EQ(cell("fan", QuoteLines::what).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
  expectTotal();
  QTest::keyClick(&table(), Qt::Key_Space);
  trigger("edit.undo");
  trigger("edit.undo");
  trigger("edit.undo");
  EXPECT_EQ(small(said()), small(before));
  EXPECT_TRUE(jobQuote().lines.empty());
}

TEST_F(QuoteStage, APriceOfThisJobStandsInTheJobAlone) {
  openQuote();
  type(cell("fan", QuoteLines::job_price), QStringLiteral("199.95"));
  ASSERT_EQ(jobQuote().lines.size(), 1U);
  EXPECT_EQ(jobQuote().lines[0].unit_price, "199.95");
  EXPECT_FALSE(QDir(bookFolder()).exists(QStringLiteral("our-prices.json")));
  expectTotal();
  QTest::keyClick(&table(), Qt::Key_Delete);
  EXPECT_TRUE(jobQuote().lines.empty());
  expectTotal();
}

TEST_F(QuoteStage, WhatIsNoFigureIsSaidAndChangesNothing) {
  openQuote();
  const plan::Job before = session().job();
  for (const char* typed : {"twelve", "1,5", "-3"}) {
    type(cell("pipe", QuoteLines::quantity), QLatin1String(typed));
    EXPECT_TRUE(page().told().contains(QLatin1String(typed))) << typed;
    EXPECT_TRUE(page().told().contains(words("pipe", QuoteLines::what)));  // in which line
    EXPECT_EQ(session().job(), before);
    QTRY_VERIFY(editor() != nullptr);
    EXPECT_EQ(editor()->text(), QLatin1String(typed));  // stays, to be put right
  }
  QTest::keyClick(editor(), Qt::Key_Escape);
  EXPECT_EQ(session().job(), before);
  type(cell("pipe", QuoteLines::quantity), QStringLiteral("3"));
  EXPECT_EQ(page().told(), QString());
}

TEST_F(QuoteStage, TheBookOfTheProgramIsNeverWritten) {
  openQuote();
  EXPECT_FALSE(cell("fan", QuoteLines::book_price).flags().testFlag(Qt::ItemIsEditable));
  clickOn(cell("fan", QuoteLines::book_price));
  QTest::keyClick(&table(), Qt::Key_F2);
  EXPECT_EQ(editor(), nullptr);
  EXPECT_FALSE(page().bookTerms()->hour()->isVisible());
  EXPECT_FALSE(window->quoteDesk().setHourPrice("60").empty());
  EXPECT_FALSE(QDir(bookFolder()).exists(QStringLiteral("demo-prices.json")));
}

TEST_F(QuoteStage, PricesTypedGoIntoTheFirmsOwnBook) {
  openQuote();
  const Whole before = said();
  makeOwnBook();
  EXPECT_EQ(small(said()), small(before));
  EXPECT_TRUE(quote().invented);  // a copy of invented prices is invented
  type(cell("fan", QuoteLines::book_price), QStringLiteral("231.455"));
  EXPECT_EQ(page().told(), QString());
  const auto kept = files::priceBookById("our-prices");
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(kept->book.find("fan")->price.text(), "231.455");
  EXPECT_TRUE(jobQuote().lines.empty());
  expectTotal();
  EXPECT_EQ(small(said() - before), small(coinsOf("1", "231.455") - coinsOf("1", "214.00")));

  type(cell("fan", QuoteLines::book_price), QStringLiteral("-1"));
  EXPECT_TRUE(page().told().contains(QStringLiteral("negative")));
  EXPECT_EQ(files::priceBookById("our-prices")->book.find("fan")->price.text(), "231.455");

  page().bookTerms()->ours()->setFocus();
  QTest::mouseClick(page().bookTerms()->ours(), Qt::LeftButton);
  EXPECT_FALSE(quote().invented);
  trigger("edit.undo");  // whose prices they are, then the price
  EXPECT_TRUE(quote().invented);
  trigger("edit.undo");
  EXPECT_EQ(files::priceBookById("our-prices")->book.find("fan")->price.text(), "214");
  trigger("edit.undo");  // the job names the demo book again; the firm's stays
  EXPECT_EQ(jobQuote(), plan::Quote());
  EXPECT_EQ(small(said()), small(before));
  EXPECT_TRUE(files::priceBookById("our-prices").ok());
}

TEST_F(QuoteStage, RatesMarginTaxAndRoundingOfTheBook) {
  openQuote();
  makeOwnBook();
  const auto enter = [&](QLineEdit* field, const QString& text) {
    ASSERT_TRUE(field->isVisible());
    field->selectAll();
    QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
  };
  enter(page().bookTerms()->hour(), QStringLiteral("61.37"));
  EXPECT_EQ(words("work_core", QuoteLines::book_price), QStringLiteral("61.37"));
  EXPECT_EQ(words("work_fan", QuoteLines::book_price), QStringLiteral("61.37"));
  expectTotal();
  enter(page().bookTerms()->margin(), QStringLiteral("12.5"));
  expectTotal("12.5");
  enter(page().bookTerms()->tax(), QStringLiteral("13.5"));
  expectTotal("12.5", "13.5");
  const Whole exact = said();
  enter(page().bookTerms()->roundTo(), QStringLiteral("5"));
  EXPECT_EQ(small(said()), small(500 * divided(exact, 500)));
  enter(page().bookTerms()->roundTo(), QStringLiteral("0.003"));
  EXPECT_TRUE(page()
                  .bookTerms()
                  ->noteUnder(page().bookTerms()->roundTo())
                  .contains(QStringLiteral("least coin")));
  enter(page().bookTerms()->currency(), QStringLiteral("euros"));
  EXPECT_TRUE(page()
                  .bookTerms()
                  ->noteUnder(page().bookTerms()->currency())
                  .contains(QStringLiteral("euros")));
  enter(page().bookTerms()->currency(), QStringLiteral("GBP"));
  EXPECT_TRUE(page().total().startsWith(QStringLiteral("GBP ")));
}

TEST_F(QuoteStage, TermsOfTheJobGoBeforeTheBooksAndAreUndone) {
  openQuote();
  const Whole before = said();
  const auto enter = [&](const char* key, const char* text) {
    QLineEdit* field = page().terms()->line(std::string("/design/quote/") + key);
    ASSERT_NE(field, nullptr);
    field->selectAll();
    QTest::keyClicks(field, QLatin1String(text));
    QTest::keyClick(field, Qt::Key_Return);
  };
  enter("margin_percent", "7.25");
  expectTotal("7.25");
  enter("tax_percent", "20");
  expectTotal("7.25", "20");
  enter("provisional", "250");
  expectTotal("7.25", "20");
  enter("tax_percent", "much");
  EXPECT_TRUE(
      page().terms()->noteUnder("/design/quote/tax_percent").contains(QStringLiteral("much")));
  enter("date", "2026-03-01");
  enter("valid_days", "30");
  EXPECT_EQ(quote().expires, "2026-03-31");
  for (int k = 0; k < 5; ++k) trigger("edit.undo");
  EXPECT_EQ(small(said()), small(before));
  EXPECT_EQ(jobQuote(), plan::Quote());
}

TEST_F(QuoteStage, ALineOfTheJobsOwnIsAddedNamedPricedAndTakenOut) {
  openQuote();
  QTest::mouseClick(page().addLine(), Qt::LeftButton);
  QLineEdit* field = editor();
  ASSERT_NE(field, nullptr);
  field->selectAll();
  QTest::keyClicks(field, QStringLiteral("Discount of the season, invented"));
  QTest::keyClick(field, Qt::Key_Return);
  QCoreApplication::processEvents();
  ASSERT_EQ(jobQuote().lines.size(), 1U);
  EXPECT_EQ(jobQuote().lines[0].text, "Discount of the season, invented");
  const QModelIndex at = lines().index(table().currentIndex().row(), QuoteLines::job_price);
  type(at, QStringLiteral("-25.50"));
  expectTotal();
  EXPECT_EQ(jobQuote().lines[0].unit_price, "-25.50");
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_Delete);
  EXPECT_TRUE(jobQuote().lines.empty());
  expectTotal();
}

TEST_F(QuoteStage, ABookThatIsWrongIsSaidWithItsPlaceAndNotTaken) {
  openQuote();
  const plan::Job before = session().job();
  const auto opened = [&](const QByteArray& bytes) {
    dialogs.next_open = put(QStringLiteral("book.json"), bytes);
    QTest::mouseClick(page().openBook(), Qt::LeftButton);
    EXPECT_EQ(session().job(), before);
    return page().told();
  };
  const QByteArray head =
      R"({"format": "sumpwright.prices", "version": 1, "id": "mine", "title": "Invented", "currency": "EUR", "items": [)";
  EXPECT_TRUE(opened("{\"format\": ").contains(QStringLiteral("not JSON")));
  const QString negative =
      opened(head + R"({"id": "fan", "title": "Fan", "unit": "each", "price": "-2"}]})");
  EXPECT_TRUE(negative.contains(QStringLiteral("negative"))) << negative.toStdString();
  EXPECT_TRUE(negative.contains(QStringLiteral("item 1 of the book, “price”")))
      << negative.toStdString();
  const QString two = opened(
      head + R"({"id": "fan", "title": "Fan", "unit": "each", "price": "2", "currency": "GBP"}]})");
  EXPECT_TRUE(two.contains(QStringLiteral("one currency"))) << two.toStdString();
  EXPECT_TRUE(two.contains(QStringLiteral("item 1 of the book, “currency”")));

  dialogs.next_open =
      put(QStringLiteral("book.json"),
          head + R"({"id": "fan", "title": "Fan", "unit": "each", "price": "2.50"}]})");
  QTest::mouseClick(page().openBook(), Qt::LeftButton);
  EXPECT_EQ(page().told(), QString());
  EXPECT_EQ(jobQuote().price_book, "mine");
  EXPECT_EQ(words("fan", QuoteLines::book_price), QStringLiteral("2.50"));
  // What the book had not is of its own kind, under the item's own name.
  type(cell("work_core", QuoteLines::what), QStringLiteral("Coring by a friend"));
  type(cell("work_core", QuoteLines::book_price), QStringLiteral("50"));
  const auto kept = files::priceBookById("mine");
  ASSERT_NE(kept->book.find("work_core"), nullptr);
  EXPECT_EQ(kept->book.find("work_core")->kind, price::NeedKind::labour);
  EXPECT_EQ(kept->book.find("work_core")->title, "Coring");
  EXPECT_GT(quote().unpriced(), 0U);
}

TEST_F(QuoteStage, AKeyEditsTheMarkedCellAtOnceAndNeverLooksForALine) {
  openQuote();
  makeOwnBook();
  clickOn(cell("high_footing", QuoteLines::book_price));
  page().terms()->line("/design/quote/margin_percent")->setFocus();
  const QModelIndex marked = cell("high_footing", QuoteLines::book_price);
  ASSERT_EQ(table().currentIndex(), marked);
  clickOn(marked);  // and typed at once, as one does
  QTest::keyClick(&table(), Qt::Key_2);
  QLineEdit* field = editor();
  ASSERT_NE(field, nullptr);
  EXPECT_EQ(table().currentIndex(), marked);
  QTest::keyClicks(field, QStringLiteral("71"));
  QTest::keyClick(field, Qt::Key_Return);
  QCoreApplication::processEvents();
  const auto kept = files::priceBookById("our-prices");
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(kept->book.find("high_footing")->price.text(), "271");
  EXPECT_EQ(kept->book.find("fan")->price.text(), "214");
  // A letter in a cell that is not edited does nothing.
  const QModelIndex total = cell("pipe", QuoteLines::total);
  clickOn(total);
  for (const char letter : {'f', 'm', 'c'}) {
    QTest::keyClick(&table(), letter);
    EXPECT_EQ(table().currentIndex(), total) << letter;
  }
}

TEST_F(QuoteStage, WhatAThingIsSoldInStandsInTheFirmsBook) {
  openQuote();
  EXPECT_FALSE(cell("pipe", QuoteLines::unit).flags().testFlag(Qt::ItemIsEditable));
  makeOwnBook();
  const auto kept = [] { return files::priceBookById("our-prices")->book.find("pipe")->sold_in; };
  type(cell("pipe", QuoteLines::unit), QStringLiteral("3"));
  EXPECT_EQ(kept(), price::Decimal::of(3));
  EXPECT_EQ(cell("pipe", QuoteLines::unit).data(QuoteLines::second_role).toString(),
            QStringLiteral("by 3"));
  type(cell("pipe", QuoteLines::unit), QStringLiteral("0"));
  EXPECT_EQ(kept(), price::Decimal::of(3));
  type(cell("pipe", QuoteLines::unit), QString());
  EXPECT_EQ(kept(), std::nullopt);
  trigger("edit.undo");
  EXPECT_EQ(kept(), price::Decimal::of(3));
  // Of work there are no packs.
  EXPECT_FALSE(cell("work_core", QuoteLines::unit).flags().testFlag(Qt::ItemIsEditable));
}

TEST_F(QuoteStage, AChangeOfTheFirmsBookIsTakenBack) {
  openQuote();
  makeOwnBook();
  const auto price = [](const char* item) {
    return files::priceBookById("our-prices")->book.find(item)->price.text();
  };
  const Whole before = said();
  const plan::Job job = session().job();
  EXPECT_FALSE(page().bookTerms()->backButton()->isEnabled());
  type(cell("fan", QuoteLines::book_price), QStringLiteral("60"));
  type(cell("bend", QuoteLines::book_price), QStringLiteral("9"));
  EXPECT_TRUE(page().bookTerms()->lastChange().contains(QStringLiteral("9, was 7.25")))
      << page().bookTerms()->lastChange().toStdString();
  trigger("edit.undo");
  EXPECT_EQ(price("bend"), "7.25");
  EXPECT_EQ(price("fan"), "60");
  EXPECT_TRUE(page().bookTerms()->lastChange().contains(QStringLiteral("60, was 214")));
  trigger("edit.undo");
  EXPECT_EQ(price("fan"), "214");
  EXPECT_EQ(small(said()), small(before));
  EXPECT_EQ(session().job(), job);  // undo did not go past the book
  trigger("edit.redo");
  EXPECT_EQ(price("fan"), "60");
  trigger("edit.redo");
  EXPECT_EQ(price("bend"), "9");
  EXPECT_FALSE(window->action("edit.redo")->isEnabled());  // there is no more
  trigger("edit.undo");
  trigger("edit.undo");
  // A new change leaves nothing to make again.
  type(cell("bend", QuoteLines::book_price), QStringLiteral("8"));
  EXPECT_FALSE(window->action("edit.redo")->isEnabled());
  trigger("edit.undo");
  EXPECT_EQ(price("bend"), "7.25");

  // After a step of the job that is undone first; the book's has its button.
  type(cell("fan", QuoteLines::book_price), QStringLiteral("61"));
  type(cell("pipe", QuoteLines::quantity), QStringLiteral("3"));
  trigger("edit.undo");
  EXPECT_EQ(price("fan"), "61");
  EXPECT_EQ(session().job(), job);
  QTest::mouseClick(page().bookTerms()->backButton(), Qt::LeftButton);
  EXPECT_EQ(price("fan"), "214");

  // What somebody else has written since is not lost.
  type(cell("fan", QuoteLines::book_price), QStringLiteral("62"));
  auto elsewhere = files::priceBookById("our-prices").value();
  elsewhere.book.items.back().price = price::Decimal::of(5);
  ASSERT_TRUE(files::savePriceBook(elsewhere).empty());
  QTest::mouseClick(page().bookTerms()->backButton(), Qt::LeftButton);
  EXPECT_TRUE(page().told().contains(QStringLiteral("somebody else")));
  EXPECT_EQ(price("fan"), "62");
}

TEST_F(QuoteStage, TabGoesFromTheUnitOfAnOwnLineToItsPrice) {
  openQuote();
  QTest::mouseClick(page().addLine(), Qt::LeftButton);
  QTest::keyClick(editor(), Qt::Key_Return);
  QCoreApplication::processEvents();
  const int row = table().currentIndex().row();
  clickOn(lines().index(row, QuoteLines::unit));
  QTest::keyClick(&table(), Qt::Key_F2);
  auto* box = table().viewport()->findChild<QComboBox*>();
  ASSERT_NE(box, nullptr);
  QTest::keyClick(box, Qt::Key_Tab);
  QCoreApplication::processEvents();
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_EQ(table().currentIndex().column(), static_cast<int>(QuoteLines::job_price));
  QLineEdit* field = editor();
  ASSERT_NE(field, nullptr);
  QTest::keyClicks(field, QStringLiteral("12.5"));
  QTest::keyClick(field, Qt::Key_Return);
  QCoreApplication::processEvents();
  EXPECT_EQ(page().told(), QString());
  EXPECT_EQ(jobQuote().lines.back().unit_price, "12.5");
}

TEST_F(QuoteStage, AChangeTakenBackIsNotMadeAgainFromAnotherJob) {
  openQuote();
  makeOwnBook();
  const auto price = [] {
    return files::priceBookById("our-prices")->book.find("fan")->price.text();
  };
  type(cell("fan", QuoteLines::book_price), QStringLiteral("60"));
  trigger("edit.undo");
  ASSERT_EQ(price(), "214");
  session().undoStack().clear();  // as after opening: there is nothing to tell of
  openQuote(QStringLiteral("courtyard"));
  EXPECT_FALSE(window->action("edit.redo")->isEnabled());
  EXPECT_EQ(price(), "214");
}

TEST_F(QuoteStage, UndoRightAfterEnterTakesTheStepBack) {
  openQuote();
  const plan::Job before = session().job();
  QLineEdit* field = page().terms()->line("/design/quote/margin_percent");
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("7.25"));
  QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);  // not taken yet: the field's own
  EXPECT_EQ(field->text(), QString());
  QTest::keyClicks(field, QStringLiteral("7.25"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_EQ(jobQuote().margin_percent, "7.25");
  QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(session().job(), before);
  EXPECT_EQ(field->text(), QString());
  page().terms()->line("/design/quote/tax_percent")->setFocus();
  EXPECT_EQ(session().job(), before);
  EXPECT_TRUE(session().undoStack().canRedo());  // nothing was done anew by leaving
}

TEST_F(QuoteStage, WordsOfAnOfferedLineLeaveItsTickAlone) {
  openQuote();
  const Whole before = said();
  type(cell("high_footing", QuoteLines::what), QStringLiteral("If we meet rock, invented"));
  EXPECT_EQ(words("high_footing", QuoteLines::what), QStringLiteral("If we meet rock, invented"));
  EXPECT_EQ(cell("high_footing", QuoteLines::what).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
  EXPECT_EQ(small(said()), small(before));
  expectTotal();
}

TEST_F(QuoteStage, LinesOfTheJobsOwnHaveAUnitAndAreMaterialOrWork) {
  openQuote();
  const auto add = [&](QPushButton* button, const char* words) {
    QTest::mouseClick(button, Qt::LeftButton);
    QLineEdit* field = editor();
    ASSERT_NE(field, nullptr);
    field->selectAll();
    QTest::keyClicks(field, QLatin1String(words));
    QTest::keyClick(field, Qt::Key_Return);
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  };
  add(page().addLine(), "Skip, invented");
  const QModelIndex unit = lines().index(table().currentIndex().row(), QuoteLines::unit);
  ASSERT_EQ(unit.data().toString(), QStringLiteral("each"));
  clickOn(unit);
  QTest::keyClick(&table(), Qt::Key_F2);
  auto* box = table().viewport()->findChild<QComboBox*>();
  ASSERT_NE(box, nullptr);
  QTest::keyClick(box, Qt::Key_Down);
  QTest::keyClick(box, Qt::Key_Return);
  QCoreApplication::processEvents();
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  ASSERT_EQ(jobQuote().lines.size(), 1U);
  EXPECT_EQ(jobQuote().lines[0].unit, plan::QuoteUnit::metre);
  // Typed, more than its first letter counts.
  clickOn(lines().index(table().currentIndex().row(), QuoteLines::unit));
  QTest::keyClick(&table(), Qt::Key_M);
  box = table().viewport()->findChild<QComboBox*>();
  ASSERT_NE(box, nullptr);
  QTest::keyClick(box, Qt::Key_2);
  EXPECT_EQ(box->currentText(), QStringLiteral("m2"));
  QTest::keyClick(box, Qt::Key_Tab);
  QCoreApplication::processEvents();
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_EQ(jobQuote().lines[0].unit, plan::QuoteUnit::square_metre);
  if (auto* field = editor()) QTest::keyClick(field, Qt::Key_Escape);
  add(page().addWork(), "Moving furniture, invented");
  ASSERT_EQ(jobQuote().lines.size(), 2U);
  EXPECT_EQ(jobQuote().lines[1].unit, plan::QuoteUnit::hour);
  EXPECT_EQ(jobQuote().lines[1].kind, plan::QuoteKind::labour);
  const auto bought = price::shoppingOf(quote());
  EXPECT_EQ(bought.back().text, base::plainText("Skip, invented"));
  EXPECT_EQ(bought.back().unit, price::PriceUnit::square_metre);
}

TEST_F(QuoteStage, WhatTheBookDoesNotTakeStaysTypedWithTheReasonUnderIt) {
  openQuote();
  makeOwnBook();
  QLineEdit* margin = page().bookTerms()->margin();
  const auto enter = [&](const char* text) {
    margin->setFocus();
    margin->selectAll();
    QTest::keyClicks(margin, QLatin1String(text));
    QTest::keyClick(margin, Qt::Key_Return);
  };
  for (const char* text : {"abc", "12,5"}) {
    enter(text);
    EXPECT_EQ(margin->text(), QLatin1String(text));
    EXPECT_TRUE(page().bookTerms()->noteUnder(margin).contains(QLatin1String(text)));
    EXPECT_FALSE(page().bookTerms()->noteUnder(margin).contains(QStringLiteral("quotes")));
    EXPECT_EQ(page().told(), QString());
  }
  QTest::keyClick(margin, Qt::Key_Escape);
  EXPECT_EQ(margin->text(), QString());
  EXPECT_EQ(page().bookTerms()->noteUnder(margin), QString());
  enter("500");
  EXPECT_TRUE(page().bookTerms()->noteUnder(margin).contains(QStringLiteral("500 %")));
  enter("12.5");
  EXPECT_EQ(page().bookTerms()->noteUnder(margin), QString());
  QLineEdit* own = page().terms()->line("/design/quote/margin_percent");
  own->setFocus();
  QTest::keyClicks(own, QStringLiteral("300"));
  QTest::keyClick(own, Qt::Key_Return);
  EXPECT_TRUE(page().terms()->noteUnder("/design/quote/margin_percent").contains("300 %"));
}

TEST_F(QuoteStage, LongWordsAndLargeSumsStayInThePanel) {
  openQuote();
  makeOwnBook();
  QLineEdit* aside = page().terms()->line("/design/quote/provisional");
  aside->setFocus();
  QTest::keyClicks(aside, QStringLiteral("123456.78"));
  QTest::keyClick(aside, Qt::Key_Return);
  QCoreApplication::processEvents();
  EXPECT_LE(page().width(), page().parentWidget()->width());
  EXPECT_LE(page().minimumSizeHint().width(), page().parentWidget()->width());
}

TEST_F(QuoteStage, NothingMovesUnderAClickThatChangesTheBook) {
  openQuote();
  const auto heightOf = [&](const QWidget* widget) {
    QCoreApplication::processEvents();
    return widget->mapTo(window.get(), QPoint()).y();
  };
  page().ownBook()->setFocus();
  QTest::qWait(100);  // laid out with all its wrapped words
  const int own = heightOf(page().ownBook());
  makeOwnBook();
  EXPECT_EQ(heightOf(page().ownBook()), own);
  page().bookTerms()->ours()->setFocus();
  const int ours = heightOf(page().bookTerms()->ours());
  QTest::mouseClick(page().bookTerms()->ours(), Qt::LeftButton);
  ASSERT_FALSE(quote().invented);
  EXPECT_EQ(heightOf(page().bookTerms()->ours()), ours);
  QTest::mouseClick(page().bookTerms()->ours(), Qt::LeftButton);
  EXPECT_EQ(heightOf(page().bookTerms()->ours()), ours);
}

TEST_F(QuoteStage, ALogoComesAndGoesWithoutMovingWhatIsBelow) {
  open(QStringLiteral("bungalow"));
  trigger("view.paper");
  window->paper().showPage(stages::PaperPage::firm);
  QImage logo(80, 20, QImage::Format_RGB32);
  logo.fill(Qt::darkGreen);
  dialogs.next_open = folder.filePath(QStringLiteral("logo.png"));
  ASSERT_TRUE(logo.save(dialogs.next_open));
  stages::FirmPage& firm = *window->paper().firm();
  const auto top = [&] {
    QCoreApplication::processEvents();
    return firm.chooseLogo()->mapTo(window.get(), QPoint()).y();
  };
  const int before = top();
  QTest::mouseClick(firm.chooseLogo(), Qt::LeftButton);
  ASSERT_TRUE(firm.removeLogo()->isEnabled());
  EXPECT_EQ(top(), before);
  QTest::mouseClick(firm.removeLogo(), Qt::LeftButton);
  EXPECT_EQ(top(), before);
}

TEST_F(QuoteStage, ElectricityIsTheFirmsOwnFigureNotAnInventedOne) {
  openQuote();
  makeOwnBook();
  EXPECT_FALSE(files::priceBookById("our-prices")->book.per_kwh.has_value());
  EXPECT_EQ(page().bookTerms()->perKwh()->text(), QString());
  page().bookTerms()->perKwh()->setFocus();
  QTest::keyClicks(page().bookTerms()->perKwh(), QStringLiteral("0.42"));
  QTest::keyClick(page().bookTerms()->perKwh(), Qt::Key_Return);
  EXPECT_EQ(files::priceBookById("our-prices")->book.per_kwh, price::Decimal::parse("0.42"));
}

TEST_F(QuoteStage, ABookWithoutAPriceMakesNoTotal) {
  openQuote();
  dialogs.next_open = put(
      QStringLiteral("few.json"),
      R"({"format": "sumpwright.prices", "version": 1, "id": "few", "title": "Invented", "currency": "EUR", "items": []})");
  QTest::mouseClick(page().openBook(), Qt::LeftButton);
  QCoreApplication::processEvents();
  EXPECT_GT(quote().unpriced(), 20U);
  EXPECT_TRUE(page().standing().contains(QStringLiteral("Not complete")))
      << page().standing().toStdString();
}

TEST_F(QuoteStage, QuoteForASpreadsheet) {
  openQuote();
  dialogs.next_save = folder.filePath(QStringLiteral("quote.csv"));
  trigger("paper.quote_csv");
  QFile file(dialogs.next_save);
  ASSERT_TRUE(file.open(QFile::ReadOnly));
  EXPECT_TRUE(file.readAll().startsWith("\xEF\xBB\xBFgroup,state,item,text,"));
}

}  // namespace
}  // namespace sumpwright::gui
