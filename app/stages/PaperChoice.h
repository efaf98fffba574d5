#pragma once
// Which papers are wanted and how: a habit of the firm, so it is kept with the window's settings
// and not in the job.

#include <QSettings>
#include <vector>

#include "dossier/Papers.h"

namespace sumpwright::stages {

struct PaperChoice {
  std::vector<dossier::Paper> papers{dossier::Paper::plan};
  dossier::PaperSize size = dossier::PaperSize::a4;
  bool landscape = false;  ///< of those that may lie (dossier::mayLie())
  bool one_file = true;    ///< all in one PDF; else one for each

  bool has(dossier::Paper paper) const;
  void set(dossier::Paper paper, bool wanted);
  bool operator==(const PaperChoice&) const = default;
};

/// As it was left; what cannot be understood is as if never chosen.
PaperChoice rememberedPapers(const QSettings& settings);
void rememberPapers(QSettings& settings, const PaperChoice& choice);

}  // namespace sumpwright::stages
