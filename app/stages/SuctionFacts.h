#pragma once
// What the stage Suction can be told: what is asked for, the ground, fan and pipe, and what was
// measured.

#include "stages/Fact.h"
#include "tools/AirText.h"

namespace sumpwright::stages {

/// Target, limit, pit, fill and ranges of the ground; keys are places in the job file.
std::vector<Fact> groundFacts();
/// Fan and pipe. `fans`: ids and titles to choose from; `air`: units on display; `own`: the design
/// has a curve of its own, which stands among them.
struct FanOffer {
  std::string id;
  QString title;
};
/// Of a fan; an invented one is marked, unless its own title says so.
QString fanTitle(const std::string& title, bool invented);
std::vector<Fact> fanFacts(const std::vector<FanOffer>& fans, tools::AirUnits air, bool own);
/// Of the pressure test with that id, without its readings.
std::vector<Fact> pressureTestFacts(const std::string& test);

}  // namespace sumpwright::stages
