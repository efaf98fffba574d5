// Quote and shopping list of a sample in the program's own words: what a client reads, what a buyer
// can ask for, and when there is no quote.

#include <gtest/gtest.h>

#include <QFile>

#include "airflow/FanTable.h"
#include "dossier/Papers.h"
#include "paint/QtVoice.h"
#include "plan/JobText.h"
#include "resources/BuiltIn.h"
#include "rules/RuleSheet.h"

namespace sumpwright {
namespace {

plan::Job quotedJob(const char* sample = "bungalow") {
  QFile file(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/%1.sump.json").arg(QLatin1String(sample)));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return plan::readJob(file.readAll().toStdString()).value().job;
}

rules::RuleSheet quotedSheet(const std::string& id) {
  for (const auto& built_in : resources::builtInRuleSheets()) {
    auto sheet = rules::readRuleSheet(built_in.text);
    if (sheet.ok() && sheet->id == id) return *sheet;
  }
  ADD_FAILURE() << "no sheet " << id;
  return {};
}

dossier::Pricing pricedBySample(const siting::Study& study) {
  const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text).value();
  const auto system = siting::usualSystem(study.site(), fans.fans.front(), true);
  const auto book = price::readPriceBook(resources::builtInPriceBooks()[0].text).value();
  dossier::Pricing pricing;
  pricing.quote =
      price::priced(price::needsOf(study, system), book, study.job().design.quote).value();
  return pricing;
}

/// All that stands on a paper, in the program's own words.
enum class Asked { as_it_is, without_price_of_fan, with_suction };

std::string quoteOf(const plan::Job& job, const dossier::Paper paper,
                    Asked asked = Asked::as_it_is) {
  const auto study = siting::Study::of(job, quotedSheet(job.rule_sheet)).value();
  dossier::ClientPlanOptions options;
  options.date = "2026-06-02";
  dossier::Pricing pricing = pricedBySample(study);
  for (price::PricedLine& line : pricing.quote.lines) {
    if (asked == Asked::without_price_of_fan && line.item == "fan")
      line.state = price::LineState::unpriced;
  }
  if (asked == Asked::with_suction) {
    const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text).value();
    auto outlook = std::make_shared<dossier::Outlook>();
    outlook->answer =
        siting::studySuction(study, siting::usualSystem(study.site(), fans.fans.front(), true),
                             siting::suctionOptionsOf(job))
            .value();
    options.suction = dossier::Suction::expected;
    options.outlook = std::move(outlook);
  }
  options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  const paint::QtVoice voice(job.display_units);
  std::string out;
  for (const auto& page : dossier::paperOf(paper, study, voice, options).pages) {
    for (const drawing::Item& item : page.items) {
      if (const auto* text = std::get_if<drawing::Text>(&item.shape)) out += text->text + ' ';
    }
  }
  return out;
}

bool says(const std::string& paper, const char* words) {
  return paper.find(words) != std::string::npos;
}

TEST(QuotePaper, IsNumberedNamesTheClientAndCanBeAccepted) {
  plan::Job job = quotedJob();
  job.client = "N. Nobody";
  const std::string quote = quoteOf(job, dossier::Paper::quote);
  EXPECT_TRUE(says(quote, "20260602-")) << quote;
  EXPECT_TRUE(says(quote, "N. Nobody"));
  EXPECT_TRUE(says(quote, "Acceptance"));
  EXPECT_TRUE(says(quote, "signature"));
  EXPECT_TRUE(says(quote, "Total"));
  job.design.quote.number = "Q 17";
  EXPECT_TRUE(says(quoteOf(job, dossier::Paper::quote), "Number Q 17, for N. Nobody"));
}

TEST(QuotePaper, TellsTheClientNothingThatIsForTheFirm) {
  const std::string quote = quoteOf(quotedJob(), dossier::Paper::quote);
  for (const char* words : {"change them line by line", "supplier", "No day is stated", "work_"})
    EXPECT_FALSE(says(quote, words)) << words;
}

TEST(QuotePaper, WithALineThatHasNoPriceShowsNoTotal) {
  const std::string quote =
      quoteOf(quotedJob(), dossier::Paper::quote, Asked::without_price_of_fan);
  EXPECT_TRUE(says(quote, "not complete"));
  EXPECT_FALSE(says(quote, "Total"));
}

TEST(QuotePaper, SaysWhatItGuessesAndMarksIt) {
  const std::string quote = quoteOf(quotedJob(), dossier::Paper::quote);
  EXPECT_TRUE(says(quote, "\u2248 1.7 m")) << quote;
  EXPECT_TRUE(says(quote, "are taken for it"));
  EXPECT_TRUE(says(quote, "1.5 hours"));
}

TEST(QuotePaper, OfARiserThatEndsNowhereIsNoOffer) {
  const plan::Job job = quotedJob("mid-terrace");
  const std::string quote = quoteOf(job, dossier::Paper::quote);
  EXPECT_TRUE(says(quote, "Sump 1 is not settled")) << quote;
  EXPECT_FALSE(says(quote, "Acceptance"));
  const std::string proposal = quoteOf(job, dossier::Paper::proposal);
  EXPECT_TRUE(says(proposal, "Where it ends")) << proposal;
  EXPECT_FALSE(says(proposal, "blows out at"));
  EXPECT_FALSE(says(proposal, "I agree to the works"));
}

TEST(QuotePaper, WithoutASumpIsNone) {
  plan::Job job = quotedJob();
  job.design.sumps.clear();
  const std::string quote = quoteOf(job, dossier::Paper::quote);
  EXPECT_TRUE(says(quote, "No quote yet"));
  EXPECT_TRUE(says(quote, "no sump"));
  EXPECT_FALSE(says(quote, "0.00"));
  EXPECT_FALSE(says(quote, "Acceptance"));
}

TEST(ShoppingPaper, SaysWhatToAskFor) {
  const std::string list = quoteOf(quotedJob(), dossier::Paper::shopping);
  for (const char* words : {"110 mm outside diameter", "mm²", "Backer", "Mesh"})
    EXPECT_TRUE(says(list, words)) << words << list;
  EXPECT_FALSE(says(list, "duty"));  // not worked out yet
  const std::string told = quoteOf(quotedJob(), dossier::Paper::shopping, Asked::with_suction);
  EXPECT_TRUE(says(told, "m³/h at")) << told;
  EXPECT_TRUE(says(told, "a prediction")) << told;
}

}  // namespace
}  // namespace sumpwright
