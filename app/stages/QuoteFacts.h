#pragma once
// What a job's quote says beside its lines, as facts of a form, and what is wrong with a price book
// or a fan table, in words.

#include <QString>
#include <vector>

#include "base/Problem.h"
#include "stages/Fact.h"

namespace sumpwright::stages {

/// Its number, date, days it holds, margin, tax, provisional sum. `number` is what is printed where
/// the job gives none.
std::vector<Fact> quoteFacts(const QString& number = {});

/// With its place.
QString toldWithPlace(const base::Problem& problem, const plan::Job& job);

}  // namespace sumpwright::stages
