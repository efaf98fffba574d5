#include "stages/PaperChoice.h"

#include <QStringList>
#include <algorithm>

namespace sumpwright::stages {

namespace {

constexpr const char* kPapersKey = "paper/papers";
constexpr const char* kSizeKey = "paper/size";
constexpr const char* kLandscapeKey = "paper/landscape";
constexpr const char* kFilesKey = "paper/files";

/// In the order of PaperSize.
const QStringList& sizeNames() {
  static const QStringList names{QStringLiteral("a4"), QStringLiteral("a3"),
                                 QStringLiteral("letter")};
  return names;
}

}  // namespace

bool PaperChoice::has(dossier::Paper paper) const {
  return std::find(papers.begin(), papers.end(), paper) != papers.end();
}

void PaperChoice::set(dossier::Paper paper, bool wanted) {
  std::erase(papers, paper);
  if (wanted) papers.push_back(paper);
  std::sort(papers.begin(), papers.end());
}

PaperChoice rememberedPapers(const QSettings& settings) {
  PaperChoice choice;
  if (settings.contains(QLatin1String(kPapersKey))) {
    choice.papers.clear();
    for (const QString& name : settings.value(QLatin1String(kPapersKey)).toStringList()) {
      if (const auto paper = dossier::paperNamed(name.toStdString())) choice.set(*paper, true);
    }
  }
  const auto size = sizeNames().indexOf(settings.value(QLatin1String(kSizeKey)).toString());
  if (size >= 0) choice.size = static_cast<dossier::PaperSize>(size);
  choice.landscape = settings.value(QLatin1String(kLandscapeKey)).toBool();
  choice.one_file = settings.value(QLatin1String(kFilesKey)).toString() != QLatin1String("each");
  return choice;
}

void rememberPapers(QSettings& settings, const PaperChoice& choice) {
  QStringList names;
  for (const dossier::Paper paper : choice.papers) {
    const std::string_view name = dossier::nameOf(paper);
    names << QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
  }
  settings.setValue(QLatin1String(kPapersKey), names);
  settings.setValue(QLatin1String(kSizeKey), sizeNames().at(static_cast<int>(choice.size)));
  settings.setValue(QLatin1String(kLandscapeKey), choice.landscape);
  settings.setValue(QLatin1String(kFilesKey),
                    choice.one_file ? QStringLiteral("one") : QStringLiteral("each"));
}

}  // namespace sumpwright::stages
