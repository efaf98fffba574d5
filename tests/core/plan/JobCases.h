#pragma once
// One case per problem id: what brings it about, and where it must point. Tests of the reader, the
// check and the sentences share them, and fail when an id has no case.

#include <functional>
#include <string>
#include <vector>

#include "base/Problem.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {

/// A text that has this one problem and no other.
struct ReadCase {
  std::string id;
  std::string pointer;
  std::string text;
};

/// Unreadable texts, and readable ones whose single note is about the file.
std::vector<ReadCase> unreadableCases();
std::vector<ReadCase> notedCases();

/// A change to a job without problems that brings about this one and no other.
struct CheckCase {
  std::string id;
  std::string pointer;
  base::Gravity gravity;
  Job job;
};

std::vector<CheckCase> checkCases();
void addSurveyCases(std::vector<CheckCase>& cases);  ///< part of them, as the next
void addRunCases(std::vector<CheckCase>& cases);

/// A sound little job as text with `more` keys at the top and `plan` keys in the plan.
std::string jobText(const std::string& more = "", const std::string& plan = "");

}  // namespace sumpwright::plan
