#include "plan/SuctionEdits.h"

#include <algorithm>

#include "plan/CheckedEdit.h"
#include "plan/Checks.h"
#include "plan/JobIds.h"
#include "plan/ThingEdits.h"

namespace sumpwright::plan {

namespace {

base::Problem unknownTest(const std::string& test) {
  return editProblem("plan.test.unknown", {base::text("test", test)});
}

auto testCalled(std::vector<PressureTest>& tests, const std::string& id) {
  return std::find_if(tests.begin(), tests.end(),
                      [&](const PressureTest& t) { return t.id == id; });
}

base::Result<Job> testChecked(Job changed, std::size_t index) {
  return checkedAt(std::move(changed), at("/suction/tests", index), checkSuction);
}

/// The first reading that cannot be and was not in the test before, or was not one then.
std::optional<base::Problem> newlyUnlikely(const PressureTest& before, const PressureTest& test) {
  for (const HoleReading& reading : test.readings) {
    const auto why = whyNotRead(reading.hole, reading.suction_pa, test.pit_pa);
    const auto& all = before.readings;
    const bool was =
        before.pit_pa == test.pit_pa && std::find(all.begin(), all.end(), reading) != all.end();
    if (why && !was) return editProblem(why->id, why->args);
  }
  return std::nullopt;
}

base::Result<Job> putTest(const Job& job, const std::string& id, const PressureTest& test) {
  Job result = job;
  auto& tests = result.suction.tests;
  const auto it = testCalled(tests, id);
  if (it == tests.end()) return unknownTest(id);
  if (auto unlikely = newlyUnlikely(*it, test)) return *unlikely;
  *it = test;
  const auto index = static_cast<std::size_t>(it - tests.begin());
  return testChecked(std::move(result), index);
}

}  // namespace

const Sump* testedSump(const Job& job, const PressureTest& test) {
  const auto& sumps = job.design.sumps;
  if (test.sump.empty()) return sumps.size() == 1 ? &sumps.front() : nullptr;
  const auto it =
      std::find_if(sumps.begin(), sumps.end(), [&](const Sump& s) { return s.id == test.sump; });
  return it == sumps.end() ? nullptr : &*it;
}

std::optional<SumpPlace> placeOf(const Sump& sump) {
  if (sump.kind == SumpKind::cored) return SumpPlace{sump.ring, sump.chainage_m, std::nullopt};
  if (!sump.at_m) return std::nullopt;
  return SumpPlace{0, 0.0, sump.at_m};
}

bool hasMovedSince(const Job& job, const PressureTest& test) {
  if (!test.stood) return false;
  const Sump* sump = testedSump(job, test);
  return sump == nullptr || placeOf(*sump) != test.stood;
}

void keepWhereItStood(Job& job, const std::string& sump) {
  for (PressureTest& test : job.suction.tests) {
    const Sump* drew = test.stood ? nullptr : testedSump(job, test);
    if (drew != nullptr && drew->id == sump) test.stood = placeOf(*drew);
  }
}

std::optional<base::Message> whyNotRead(const std::string& hole, double suction_pa,
                                        std::optional<double> pit_pa) {
  constexpr double kMost_pa = 5000.0;
  constexpr double kGauges = 1.1;
  constexpr double kGauges_pa = 0.6;
  const auto read = std::vector{base::text("hole", hole),
                                base::pressure("suction", base::Pressure::ofPa(suction_pa))};
  if (suction_pa > kMost_pa) {
    base::Message message("plan.test.reading-most", read);
    message.args.push_back(base::pressure("most", base::Pressure::ofPa(kMost_pa)));
    return message;
  }
  if (!pit_pa || !(*pit_pa > 0.0) || suction_pa <= kGauges * *pit_pa + kGauges_pa) {
    return std::nullopt;
  }
  base::Message message("plan.test.over-pit", read);
  message.args.push_back(base::pressure("pit", base::Pressure::ofPa(*pit_pa)));
  return message;
}

base::Result<Job> setTarget(const Job& job, std::optional<double> target_pa,
                            std::optional<double> limit_pa) {
  Job result = job;
  result.suction.target_pa = target_pa;
  result.suction.limit_pa = limit_pa;
  // A file may say so and is read with the target raised; nobody shall do it without knowing.
  if (!target_pa && limit_pa && *limit_pa > kUsualTarget_pa) {
    return base::Problem{
        base::Message("plan.edit.limit-above-usual",
                      {base::pressure("limit", base::Pressure::ofPa(*limit_pa)),
                       base::pressure("target", base::Pressure::ofPa(kUsualTarget_pa))}),
        "/suction/limit_pa", base::Gravity::unsound};
  }
  const auto first = checkedAt(result, "/suction/target_pa", checkSuction);
  if (!first) return first.problems();
  return checkedAt(std::move(result), "/suction/limit_pa", checkSuction);
}

base::Result<Job> setUsualPit(const Job& job, std::optional<double> pit_l) {
  Job result = job;
  result.suction.pit_l = pit_l;
  return checkedAt(std::move(result), "/suction/pit_l", checkSuction);
}

base::Result<Job> setGroundGuess(const Job& job, const GroundGuess& ground) {
  Job result = job;
  result.suction.ground = ground;
  return checkedAt(std::move(result), "/suction/ground", checkSuction);
}

Job setUseTests(const Job& job, bool use) {
  Job result = job;
  result.suction.use_tests = use;
  return result;
}

base::Result<Job> addPressureTest(const Job& job, PressureTest test) {
  Job result = job;
  if (test.id.empty()) test.id = unusedId(job, "pressure-test");
  if (const auto bad = unfitId(job, test.id)) return *bad;
  if (auto unlikely = newlyUnlikely({}, test)) return *unlikely;
  if (!test.stood) {
    if (const Sump* drew = testedSump(job, test)) test.stood = placeOf(*drew);
  }
  result.suction.tests.push_back(std::move(test));
  return testChecked(std::move(result), job.suction.tests.size());
}

base::Result<Job> changePressureTest(const Job& job, const PressureTest& test) {
  return putTest(job, test.id, test);
}

base::Result<Job> removePressureTest(const Job& job, const std::string& test) {
  Job result = job;
  const auto it = testCalled(result.suction.tests, test);
  if (it == result.suction.tests.end()) return unknownTest(test);
  result.suction.tests.erase(it);
  return result;
}

base::Result<Job> setReading(const Job& job, const std::string& test, const std::string& hole,
                             std::optional<double> suction_pa, std::optional<double> sd_pa) {
  Job result = job;
  const auto it = testCalled(result.suction.tests, test);
  if (it == result.suction.tests.end()) return unknownTest(test);
  auto& readings = it->readings;
  const auto known = std::find_if(readings.begin(), readings.end(),
                                  [&](const HoleReading& r) { return r.hole == hole; });
  if (!suction_pa) {
    if (known != readings.end()) readings.erase(known);
    return result;
  }
  if (known == readings.end()) {
    readings.push_back({hole, *suction_pa, sd_pa});
  } else {
    known->suction_pa = *suction_pa;
    if (sd_pa) known->sd_pa = sd_pa;
  }
  const PressureTest changed = *it;
  return putTest(job, test, changed);
}

base::Result<Job> setFan(const Job& job, const FanPick& fan) {
  Job result = job;
  result.design.fan = fan;
  return checkedAt(std::move(result), "/design/fan", checkRun);
}

Job setSharedFan(const Job& job, bool shared) {
  Job result = job;
  result.design.shared_fan = shared;
  return result;
}

base::Result<Job> setPipeRun(const Job& job, const PipeRun& pipe) {
  Job result = job;
  result.design.pipe = pipe;
  return checkedAt(std::move(result), "/design/pipe", checkRun);
}

Job setAnnulus(const Job& job, AnnulusSeal seal) {
  Job result = job;
  result.design.annulus = seal;
  return result;
}

Job setSilencer(const Job& job, YesNo silencer) {
  Job result = job;
  result.design.silencer = silencer;
  return result;
}

}  // namespace sumpwright::plan
