#pragma once
// What one client's plan is about, gathered once: the sump, its assessment, its ties and waivers.

#include <optional>

#include "dossier/ClientPlan.h"
#include "dossier/Flow.h"
#include "drawing/Ties.h"

namespace sumpwright::dossier {

struct Sheet {
  Sheet(const siting::Study& s, const drawing::Voice& voice, const ClientPlanOptions& o);

  const siting::Study& study;
  const ClientPlanOptions& options;
  Desk desk;
  double width_mm = 210.0;
  double height_mm = 297.0;
  const plan::Sump* sump = nullptr;  ///< a cored one, else none
  bool asked_inside = false;         ///< the sump asked for stands inside: nothing to judge here
  std::optional<siting::Assessment> assessment;
  drawing::Ties ties;
  std::vector<plan::Waiver> waivers;  ///< of this sump, those that hold first

  const plan::Job& job() const { return study.job(); }
  bool holds(const plan::Waiver& waiver) const;
  const rules::Rule* rule(const std::string& id) const { return study.sheet().find(id); }
  /// The rule's title, or what a built-in note is called.
  std::string ruleTitle(const std::string& id) const;
  /// Whether a rule's distance is the sheet's own figure.
  bool isOwn(const std::string& rule_id) const;
};

inline constexpr double kMargin_mm = 13.0;

// Head.cpp
Rows headRows(const Sheet& sheet, double width_mm);       ///< first page: title and address
Rows laterHeadRows(const Sheet& sheet, double width_mm);  ///< further pages
Rows verdictRows(const Sheet& sheet, double width_mm);
/// Foot of a page, painted at its place.
void paintFoot(Sketch& sketch, const Sheet& sheet, int page, int pages);
double footHeight_mm(const Sheet& sheet);
// Waivers.cpp
Rows waiverRows(const Sheet& sheet, double width_mm);  ///< ruled boxes; none without waivers
// PlanFigure.cpp
/// The plan with north point, scale bar and the ties to set it out by above it.
Rows planRows(const Sheet& sheet, double width_mm, double height_mm);
Rows stripRows(const Sheet& sheet, double width_mm);
// Findings.cpp
void writeFindings(Writer& w, const Sheet& sheet);
void writeMargins(Writer& w, const Sheet& sheet);
void writeScore(Writer& w, const Sheet& sheet);
void writePlaces(Writer& w, const Sheet& sheet);
// Unknowns.cpp
void writeNotLooked(Writer& w, const Sheet& sheet);
void writeUnjudged(Writer& w, const Sheet& sheet);
// SettingOut.cpp
Rows settingOutRows(const Sheet& sheet, double width_mm);  ///< none without a sump to set out
/// Whether a height stands anywhere on the paper.
bool tellsHeights(const Sheet& sheet);
// Cautions.cpp
void writeHoldPoints(Writer& w, const Sheet& sheet);
void writeCautions(Writer& w, const Sheet& sheet);

}  // namespace sumpwright::dossier
