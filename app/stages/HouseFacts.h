#pragma once
// What can be said of job and house apart from the drawing, by sections; keys are places in the job
// file.

#include "stages/Fact.h"

namespace sumpwright::stages {

struct FactSection {
  QString title;
  std::vector<Fact> facts;
};

std::vector<FactSection> houseSections(const plan::Job& job);

}  // namespace sumpwright::stages
