#pragma once
// Needs of invented houses, and ways to ask them.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "airflow/FanTable.h"
#include "price/Quote.h"
#include "resources/BuiltIn.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"

namespace sumpwright::price {

inline Needs needsOfJob(const plan::Job& job) {
  const auto study = siting::Study::of(job, support::builtInSheet("ie-practice"));
  EXPECT_TRUE(study.ok());
  const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text);
  return needsOf(*study, siting::usualSystem(study->site(), *fans->find("demo-medium"), true));
}

/// "": not needed.
inline std::string quantityOf(const Needs& needs, const std::string& item) {
  const auto found = std::find_if(needs.rows.begin(), needs.rows.end(),
                                  [&](const Need& need) { return need.item == item; });
  return found == needs.rows.end() ? "" : found->quantity.text();
}

inline bool remarked(const std::vector<base::Message>& remarks, const std::string& id) {
  return std::any_of(remarks.begin(), remarks.end(),
                     [&](const base::Message& remark) { return remark.id == id; });
}

}  // namespace sumpwright::price
