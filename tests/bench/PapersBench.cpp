// All papers of a sample as PDF, beside a bare file of one page by the same writer. The suction
// study, which the caller makes once, is left out. Times are printed, never asserted.

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

#include "dossier/Papers.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"
#include "plan/JobText.h"
#include "resources/BuiltIn.h"

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
  QFile file(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/bungalow.sump.json"));
  if (!file.open(QIODevice::ReadOnly)) std::abort();
  const auto job = plan::readJob(file.readAll().toStdString()).value().job;
  const auto sheet = rules::readRuleSheet(resources::builtInRuleSheets()[0].text).value();
  return siting::Study::of(job, sheet).value();
}

void benchPapers() {
  const QTemporaryDir folder;
  const auto study = studyOfSample();
  const paint::QtVoice voice(study.job().display_units);
  dossier::ClientPlanOptions options;
  options.date = "2026-03-01";
  const double bare = median_ms([&] { bareFile(folder.filePath(QStringLiteral("bare.pdf"))); });
  std::printf("bare file of one page            %7.1f ms\n", bare);
  const double all = median_ms([&] {
    std::vector<dossier::Document> documents;
    for (const dossier::Paper paper : dossier::allPapers()) {
      documents.push_back(dossier::paperOf(paper, study, voice, options));
    }
    const auto bound = dossier::bound(std::move(documents), "Papers");
    const auto path = folder.filePath(QStringLiteral("all.pdf")).toStdString();
    if (!paint::exportPages(paint::pagesOf(bound), path).ok()) std::abort();
  });
  std::printf("all papers, without the suction  %7.1f ms (own target: < 1000)\n", all);
}

}  // namespace
}  // namespace sumpwright

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication app(argc, argv);
  sumpwright::benchPapers();
}
