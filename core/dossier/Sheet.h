#pragma once
// What one client's plan is about, gathered once: the sump, its assessment, its ties and waivers.

#include <functional>
#include <optional>
#include <string>

#include "build/CableRoute.h"
#include "build/DrillSection.h"
#include "dossier/ClientPlan.h"
#include "dossier/Flow.h"
#include "drawing/Ties.h"

namespace sumpwright::dossier {

class Folio;

/// What a paper is called, and whom it says it is for: message ids.
struct Front {
  const char* title = "paper.title";
  const char* for_client = "paper.for-client";
  const char* for_nobody = "paper.for-householder";
};

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
  /// The answer to print; nothing where there is none yet, none at all, or no sump that it is of.
  const siting::SuctionAnswer* answer() const;
  drawing::Ties ties;
  std::vector<plan::Waiver> waivers;  ///< of this sump, those that hold first
  Front front;

  const plan::Job& job() const { return study.job(); }
  /// Accepts what it is for: the sump stands where it did, and the rule sheet lets it.
  bool holds(const plan::Waiver& waiver) const;
  bool isLeftBehind(const plan::Waiver& waiver) const;
  const rules::Rule* rule(const std::string& id) const { return study.sheet().find(id); }
  /// The rule's title, or what a built-in note is called.
  std::string ruleTitle(const std::string& id) const;
  /// Whether a rule's distance is the sheet's own figure.
  bool isOwn(const std::string& rule_id) const;
};

inline constexpr double kMargin_mm = 13.0;

// Head.cpp
/// First page: the letterhead if there is one, title, address, for whom; and further pages.
Rows headRows(const Sheet& sheet, double width_mm, const std::string& title,
              const std::string& under);
Rows laterHeadRows(const Sheet& sheet, double width_mm, const std::string& title);
/// "Plan for N. N., 2026-06-02": for whom, and the date if there is one.
std::string forWhom(const Sheet& sheet, const std::string& what);
/// "TITLE: ADDRESS", for a file's own title.
std::string documentTitle(const Sheet& sheet, const std::string& title);
Rows verdictRows(const Sheet& sheet, double width_mm);
/// Foot of a page, painted at its place.
void paintFoot(Sketch& sketch, const Sheet& sheet, int page, int pages);
double footHeight_mm(const Sheet& sheet);
// Waivers.cpp
Rows waiverRows(const Sheet& sheet, double width_mm);  ///< ruled boxes; none without waivers
/// Those of every cored sump: for papers that are about all of them.
Rows allWaiverRows(const Sheet& sheet, double width_mm);
// PlanFigure.cpp
struct PlanParts {
  Row key;  ///< north point and scale, for over or beside the plan
  Rows plan;
};
/// The plan at the largest round scale that fits.
PlanParts planParts(const Sheet& sheet, double width_mm, double height_mm);
/// The plan with north point, scale bar and, unless isStopped(), the ties to set it out by above
/// it.
Rows planRows(const Sheet& sheet, double width_mm, double height_mm);
Rows stripRows(const Sheet& sheet, double width_mm);
// Findings.cpp
void writeFindings(Writer& w, const Sheet& sheet);
void writeMargins(Writer& w, const Sheet& sheet);
void writeScore(Writer& w, const Sheet& sheet);
void writePlaces(Writer& w, const Sheet& sheet);
// Expect.cpp
/// What to expect of the suction, in a client's words: predicted, and measured where a test was
/// made.
void writeExpect(Writer& w, const Sheet& sheet);
/// What that was reckoned with: fan, rule of thumb, what was assumed. For who does the work.
void writeReckoned(Writer& w, const Sheet& sheet);
/// Suction that is predicted in a hole, to two figures: more would be pretended. Empty where the
/// field says nothing there.
std::string predictedIn(const Sheet& sheet, const plan::TestHole& hole);
// Proposal.cpp
void writeSeen(Writer& w, const Sheet& sheet);
void writeRunning(Writer& w, const Sheet& sheet);
void writeNeeds(Writer& w, const Sheet& sheet);
void writeRetest(Writer& w, const Sheet& sheet);
void writeTerms(Writer& w, const Sheet& sheet);
void writeCare(Writer& w, const Sheet& sheet);     ///< cautions as a client needs them
void writeConsent(Writer& w, const Sheet& sheet);  ///< lines to sign, never broken
// RunFigure.cpp
/// The walls unrolled with the run on them and where no outlet may end; none without a sump.
Rows elevationRows(const Sheet& sheet, double width_mm, double height_mm);
/// What the run is set out by; none before its discharge is placed.
Rows runRows(const Sheet& sheet, double width_mm);
void writeRunAdvice(Writer& w, const Sheet& sheet);
void writeNoise(Writer& w, const Sheet& sheet);
// CablePaper.cpp
struct ChosenCable {
  build::CableAsk ask;
  build::CableRoute route;
};
/// With the power of the study where there is one fan and it has a power.
build::CableAsk cableAskOf(const Sheet& sheet);
/// Nothing without a sump, or where no way leads to a supply.
std::optional<ChosenCable> chosenCable(const Sheet& sheet);
/// The cable's way part by part, with what the electrician must know; none without a sump.
Rows cableRows(const Sheet& sheet, double width_mm);
void writeCable(Writer& w, const Sheet& sheet);  ///< for the client
// CableFigure.cpp
/// How each hole for the cable through an outside wall is set out; none where it meets none.
Rows sleeveRows(const Sheet& sheet, const ChosenCable& cable, double width_mm);
/// The plan about the cable with its way and its supply.
Rows cablePlanRows(const Sheet& sheet, const ChosenCable& cable, double width_mm);
// Unknowns.cpp
void writeNotLooked(Writer& w, const Sheet& sheet);
void writeUnjudged(Writer& w, const Sheet& sheet);
// SettingOut.cpp
Rows settingOutRows(const Sheet& sheet, double width_mm);  ///< none without a sump to set out
/// Whether a height stands anywhere on the paper.
bool tellsHeights(const Sheet& sheet);
/// A level as a tape shows it from outside: "1.44 m below the sill of the kitchen window"; empty
/// where the datum's level is not known.
std::string fromDatum(const Sheet& sheet, double level_m);
/// Sumps of the design that the sheet is not about: verdict, ties and waivers of each.
void writeOtherSumps(Writer& w, const Sheet& sheet);
// SumpPart.cpp
/// Nobody drills there: refused without a waiver, or no hole is possible. Then no size is given on
/// any paper.
bool isStopped(const Sheet& sheet);
/// Why nobody can agree to it yet: it is stopped, or it is not proven and its riser ends nowhere.
/// Nothing where that is settled, and without a sump.
std::optional<base::Message> whatIsOpen(const Sheet& sheet);
/// Each cored sump of the design as a sheet of its own.
void eachCored(const Sheet& sheet, const std::function<void(const Sheet&)>& use);
/// Whether any of them isStopped().
bool anyStopped(const Sheet& sheet);
/// Whether of any of them whatIsOpen(): what a client agrees to or pays for is the whole design.
bool anyOpen(const Sheet& sheet);
/// Which sumps of the design may not be built as they are drawn or are not settled, and why: for
/// whoever prices or buys.
void writeStops(Writer& w, const Sheet& sheet);
/// What a crew has of one sump: setting out, section, run and cable.
class SumpPart {
 public:
  explicit SumpPart(const Sheet& sheet);  ///< which must outlive it; a cored sump
  /// Nobody drills there: refused without a waiver, or no hole is possible.
  bool stopped() const;
  base::Message whyStopped() const;      ///< where stopped()
  Rows stopRows(double width_mm) const;  ///< says so, and why
  void writeSizes(Writer& w) const;
  void addDrawings(Folio& folio) const;

 private:
  void addSection(Folio& folio) const;
  void addRun(Folio& folio) const;
  const Sheet& m_sheet;
  build::DrillSection m_section;
  bool m_refused = false;
};
// Cautions.cpp
/// A line of the rule sheet's practice with its source or mark.
std::string practiceWords(const Desk& desk, const rules::PracticeLine& line);
void writeHoldPoints(Writer& w, const Sheet& sheet);
void writeCautions(Writer& w, const Sheet& sheet);

}  // namespace sumpwright::dossier
