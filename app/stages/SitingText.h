#pragma once
// What the siting panel says of a place: plain values made of study and assessment, so that tests
// read them without a widget. Texts are in the user's language and the job's display units.

#include <QString>
#include <vector>

#include "session/Session.h"
#include "siting/Study.h"
#include "tools/AirText.h"
#include "words/Words.h"

namespace sumpwright::stages {

using perimeter::Place;
using siting::Assessment;
using siting::Study;

words::Units unitsOf(const plan::Job& job);
QString said(const base::Message& message, const plan::Job& job);
/// With its first letter a capital.
QString capital(QString text);
QString length(double metres, const plan::Job& job, bool with_sign = false);
/// With their units; a metric figure without decimals from 10 Pa on, or where it is whole.
QString pressure(double pa, const plan::Job& job);
QString flow(double m3_h, const plan::Job& job);
/// Down, so that what falls short never reads as enough.
int percentDown(double share);
tools::AirUnits airUnitsOf(const plan::Job& job);

/// "Refused", "Accepted by waiver", ...
QString stateWord(rules::State state, bool waived = false);
/// The verdict sentence without the word that stands above it already, with a capital.
QString verdictBody(const Study& study, const Assessment& assessment);
/// "for an outlet low at the hole".
QString outletText(const Study& study);
/// "Wing side wall", and "31.95 m from A": along the walls from the ring's first corner.
QString wallText(const Study& study, Place place);
QString chainageText(const Study& study, Place place);
/// "Set out 0.90 m from corner D, 1.70 m from corner E, ...": the ties of the paper.
QString tieText(const Study& study, Place place);
/// "Move 0.46 m north", or along the wall round a corner to the left or right of who faces it.
QString moveText(const Study& study, Place from, Place to);

/// One rule at a place.
struct RuleLine {
  std::string rule;
  std::string thing;  ///< what refuses or is nearest; may be empty
  QString title;
  QString second;  ///< the thing, or the reason
  QString third;   ///< a line of its own below; as a rule none
  QString figure;  ///< signed margin; empty where the rule has no distance
  rules::State state = rules::State::clear;
  bool close = false;
  bool waived = false;
  rules::Waivable waivable;
};

/// One line per rule in force but preferences, in the sheet's order; findings that belong to no
/// rule of the sheet (a riser whose end is not placed) come last.
std::vector<RuleLine> ruleLines(const Study& study, const Assessment& assessment);

/// Whether this finding may be waived here, with the distance taken in.
bool mayWaive(const rules::Finding& finding);
/// What a waiver must rest on, as an instruction.
QString evidenceText(plan::Evidence evidence);

/// How a sump is put where there is none: two sentences at most.
QString howToPutText(const session::Session& session);

/// That Best place goes by the score, and how much of it is reach.
QString reachInScoreText(const Study& study);

/// A few words for the stage's entry in the rail.
QString briefly(const Study& study, const Assessment& assessment);

}  // namespace sumpwright::stages
