#include "plan/PlanCheck.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "plan/Checks.h"
#include "plan/JobFields.h"
#include "plan/ProblemList.h"

namespace sumpwright::plan {

namespace {

template <class T>
void addKeys(std::vector<std::string_view>& keys) {
  forEachKey<T>([&](std::string_view key) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  });
}

/// Every key of the format in the order files are written.
const std::vector<std::string_view>& keyOrder() {
  static const std::vector<std::string_view> order = [] {
    std::vector<std::string_view> keys;
    addKeys<Job>(keys);
    // Plan before the survey's answers: both have "openings", which stands first among the answers.
    addKeys<Plan>(keys);
    addKeys<LookedFor>(keys);
    addKeys<House>(keys);
    addKeys<Design>(keys);
    addKeys<Ring>(keys);
    addKeys<Wall>(keys);
    addKeys<Opening>(keys);
    addKeys<Service>(keys);
    addKeys<FloorZone>(keys);
    addKeys<WallFeature>(keys);
    addKeys<Underlay>(keys);
    addKeys<Waiver>(keys);
    addKeys<SuctionFacts>(keys);
    addKeys<GroundGuess>(keys);
    addKeys<PressureTest>(keys);
    addKeys<SumpPlace>(keys);
    addKeys<HoleReading>(keys);
    addKeys<Sump>(keys);
    addKeys<Discharge>(keys);
    addKeys<FanPick>(keys);
    addKeys<PipeRun>(keys);
    addKeys<Running>(keys);
    addKeys<Quote>(keys);
    addKeys<QuoteLine>(keys);
    return keys;
  }();
  return order;
}

/// Where a pointer stands in a file as it is written.
std::vector<std::size_t> placeInFile(const std::string& pointer) {
  const std::vector<std::string_view>& order = keyOrder();
  std::vector<std::size_t> place;
  for (const std::string& token : tokensOf(pointer)) {
    const auto it = std::find(order.begin(), order.end(), token);
    const auto rank = static_cast<std::size_t>(it - order.begin());
    place.push_back(indexOf(token, rank));
  }
  return place;
}

}  // namespace

base::Problems checkJob(const Job& job) {
  ProblemList problems(base::Gravity::unsound);
  const CheckedRings rings = checkRings(job.plan, problems);
  checkIds(job, problems);
  checkRecords(job, problems);
  checkLookedFor(job, problems);
  checkHouse(job, problems);
  checkWalls(job, problems);
  checkMakeUp(job, problems);
  checkSurvey(job, problems);
  checkOpenings(job.plan, problems);
  checkServices(job.plan, problems);
  checkInnerWalls(job, problems);
  checkHeating(job.plan, problems);
  checkOutside(job.plan, problems);
  checkSuction(job, problems);
  checkEavesHeights(job, problems);
  checkDesign(job, rings, problems);
  checkRun(job, problems);
  checkQuote(job.design.quote, problems);
  checkRunning(job.design.running, problems);
  checkZones(job, problems);
  checkRoomsAndZones(job.plan, rings, problems);
  return problems.takeSorted(placeInFile);
}

}  // namespace sumpwright::plan
