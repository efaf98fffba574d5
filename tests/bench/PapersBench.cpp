// All papers of a sample with a placed discharge as PDF, prices and suction on them, beside a bare
// file of one page by the same writer. The suction study, which the caller makes once, is not
// timed. Times are printed, never asserted.

#include <QBuffer>
#include <QFile>
#include <QGuiApplication>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "airflow/FanTable.h"
#include "dossier/Papers.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"
#include "plan/JobText.h"
#include "price/Quote.h"
#include "resources/BuiltIn.h"
#include "siting/SuctionStudy.h"
#include "siting/SuctionSystem.h"

namespace sumpwright {
namespace {

constexpr int kRounds = 7;

template <class Work>
double median_ms(Work work) {
  std::vector<double> times;
  for (int k = 0; k < kRounds; ++k) {
    const auto begun = std::chrono::steady_clock::now();
    work();
    times.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun)
            .count());
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

void bareFile(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return;
  QPdfWriter writer(&file);
  writer.setPageSize(QPageSize(QPageSize::A4));
  QPainter painter(&writer);
  painter.drawText(500, 500, QStringLiteral("One page"));
}

siting::Study studyOfSample() {
  QFile file(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/semi-detached.sump.json"));
  if (!file.open(QIODevice::ReadOnly)) std::abort();
  const auto job = plan::readJob(file.readAll().toStdString()).value().job;
  const auto sheet = rules::readRuleSheet(resources::builtInRuleSheets()[0].text).value();
  return siting::Study::of(job, sheet).value();
}

/// With the suction as predicted and the invented prices, both made once.
dossier::ClientPlanOptions withEverything(const siting::Study& study) {
  const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text).value();
  const auto book = price::readPriceBook(resources::builtInPriceBooks()[0].text).value();
  const airflow::Fan& fan = fans.fans.front();
  const auto system = siting::usualSystem(study.site(), fan, true);
  dossier::ClientPlanOptions options;
  options.date = "2026-03-01";
  dossier::Outlook outlook;
  outlook.fan = fan.title;
  outlook.invented = true;
  outlook.answer =
      siting::studySuction(study, system, siting::suctionOptionsOf(study.job())).value();
  options.outlook = std::make_shared<const dossier::Outlook>(std::move(outlook));
  dossier::Pricing pricing;
  pricing.quote =
      price::priced(price::needsOf(study, system), book, study.job().design.quote).value();
  options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  return options;
}

void allPapers(const siting::Study& study, const dossier::ClientPlanOptions& options,
               const QString& file) {
  const paint::QtVoice voice(study.job().display_units);
  std::vector<dossier::Document> documents;
  for (const dossier::Paper paper : dossier::allPapers()) {
    documents.push_back(dossier::paperOf(paper, study, voice, options));
  }
  const auto bound = dossier::bound(std::move(documents), "Papers");
  if (!paint::exportPages(paint::pagesOf(bound), file.toStdString()).ok()) std::abort();
}

void benchPapers() {
  const QTemporaryDir folder;
  const auto study = studyOfSample();
  const auto options = withEverything(study);
  const double bare = median_ms([&] { bareFile(folder.filePath(QStringLiteral("bare.pdf"))); });
  std::printf("bare file of one page             %7.1f ms\n", bare);
  const double all =
      median_ms([&] { allPapers(study, options, folder.filePath(QStringLiteral("all.pdf"))); });
  std::printf("all papers, suction worked out    %7.1f ms (own target: < 1000), %.0f times it\n",
              all, all / bare);
}

}  // namespace
}  // namespace sumpwright

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication app(argc, argv);
  sumpwright::benchPapers();
}
