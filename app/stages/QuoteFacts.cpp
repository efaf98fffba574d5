#include "stages/QuoteFacts.h"

#include <QCoreApplication>
#include <QStringList>

#include "plan/SumpEdits.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

struct QuoteFacts {
  Q_DECLARE_TR_FUNCTIONS(QuoteFacts)
};

/// A place of a price book's file, "/items/3/price", in words.
QString placeInBook(const std::string& pointer) {
  const QStringList steps =
      QString::fromStdString(pointer).split(QLatin1Char('/'), Qt::SkipEmptyParts);
  if (steps.size() > 1 && steps[0] == QLatin1String("items")) {
    const QString item = QuoteFacts::tr("item %1 of the book").arg(steps[1].toInt() + 1);
    return steps.size() > 2 ? QuoteFacts::tr("%1, “%2”", "item, key").arg(item, steps[2]) : item;
  }
  return QuoteFacts::tr("“%1” of the book").arg(steps.join(QLatin1Char('/')));
}

}  // namespace

QString toldWithPlace(const base::Problem& problem, const plan::Job& job) {
  const QString line = said(problem.message, job);
  if (problem.pointer.empty()) return line;
  // A fan table has places, too.
  if (!problem.message.id.starts_with("prices."))
    return QuoteFacts::tr("%1 (at %2)").arg(line, QString::fromStdString(problem.pointer));
  return QuoteFacts::tr("%1 (%2)", "problem, place").arg(line, placeInBook(problem.pointer));
}

std::vector<Fact> quoteFacts(const QString& number) {
  FactTable<plan::Quote> t(
      [](const plan::Job& job) { return std::optional(job.design.quote); },
      [](const plan::Job& job, const plan::Quote& quote) { return plan::setQuote(job, quote); });
  Fact& count = t.text("/design/quote/number", QuoteFacts::tr("Number"), &plan::Quote::number);
  count.says = QuoteFacts::tr("Number of the quote");
  if (!number.isEmpty()) count.unknown = QuoteFacts::tr("Printed: %1").arg(number);
  Fact& date = t.text("/design/quote/date", QuoteFacts::tr("Date"), &plan::Quote::date);
  date.says = QuoteFacts::tr("Date of the quote");
  date.example = QuoteFacts::tr("2026-03-31");
  date.unknown = QuoteFacts::tr("Without a date it holds to no day.");
  Fact& days =
      t.whole("/design/quote/valid_days", QuoteFacts::tr("Holds, days"), &plan::Quote::valid_days);
  days.says = QuoteFacts::tr("Days the quote holds, from its date");
  Fact& margin = t.text("/design/quote/margin_percent", QuoteFacts::tr("Margin, %"),
                        &plan::Quote::margin_percent);
  margin.says = QuoteFacts::tr("Overhead and margin of this job, in percent of its lines");
  margin.example = QuoteFacts::tr("12.5; empty: the book's");
  Fact& shown = t.choice("/design/quote/margin_shown", QuoteFacts::tr("Margin shown"),
                         &plan::Quote::margin_shown,
                         {QuoteFacts::tr("as the book says"), QuoteFacts::tr("as its own line"),
                          QuoteFacts::tr("within the lines")});
  shown.says = QuoteFacts::tr("How the client reads the margin");
  Fact& tax =
      t.text("/design/quote/tax_percent", QuoteFacts::tr("Tax, %"), &plan::Quote::tax_percent);
  tax.says = QuoteFacts::tr("Tax on this job, in percent");
  tax.example = QuoteFacts::tr("20; empty: the book's");
  Fact& aside = t.text("/design/quote/provisional", QuoteFacts::tr("Provisional sum"),
                       &plan::Quote::provisional);
  aside.says = QuoteFacts::tr("Provisional sum for what cannot be seen yet; bears no margin");
  aside.example = QuoteFacts::tr("250");
  return t.take();
}

}  // namespace sumpwright::stages
