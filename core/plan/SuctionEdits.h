#pragma once
// Verbs on suction: what is asked for, the ground, pressure tests, the fan and its pipe. Test holes
// are things (ThingEdits.h). Each takes a job and gives back the changed job or the reason why not.
//
// Errors of all: plan.edit.not-text, plan.edit.not-a-place, plan.edit.too-many for a value that no
// job file may hold; the others are those of checkJob() that are unsound.

#include <optional>
#include <string>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Suction asked for and the least that counts as held; absent: the program's own figures. Errors:
/// plan.suction.none, plan.suction.limit-above-target, plan.edit.limit-above-usual (no target,
/// and a limit above the usual one).
base::Result<Job> setTarget(const Job& job, std::optional<double> target_pa,
                            std::optional<double> limit_pa);
/// Volume of a pit that states none. Error: plan.pit.size.
base::Result<Job> setUsualPit(const Job& job, std::optional<double> pit_l);
/// Error: plan.ground.spread.
base::Result<Job> setGroundGuess(const Job& job, const GroundGuess& ground);
Job setUseTests(const Job& job, bool use);

/// The sump a test drew from; where it names none and there is one only, that. nullptr: not known.
const Sump* testedSump(const Job& job, const PressureTest& test);
/// Nothing where it has none: inside, and not yet placed.
std::optional<SumpPlace> placeOf(const Sump& sump);
/// Whether its sump has been moved or taken away since.
bool hasMovedSince(const Job& job, const PressureTest& test);
/// Tests of that sump that do not say where it stood from now on say that it stood where it stands
/// now: called before the sump is moved or removed, so that it leaves its past where it was.
void keepWhereItStood(Job& job, const std::string& sump);

/// Why nobody can have read that in a hole: plan.test.over-pit (above the pit's own suction by more
/// than two gauges err: a tenth and 0.6 Pa) or plan.test.reading-most (above 5000 Pa, more than a
/// test fan leaves a metre from its pit); own figures. Nothing: it may be.
std::optional<base::Message> whyNotRead(const std::string& hole, double suction_pa,
                                        std::optional<double> pit_pa);

/// Adds a pressure test at the end; without an id it gets one, and where it does not say where its
/// sump stood, the place where that stands now. Errors: plan.id.twice, plan.date.bad, plan.test.*;
/// of readings those of whyNotRead() where they are new.
base::Result<Job> addPressureTest(const Job& job, PressureTest test);
/// Puts it in place of the one of that id. Errors: plan.test.unknown, as above.
base::Result<Job> changePressureTest(const Job& job, const PressureTest& test);
/// Error: plan.test.unknown.
base::Result<Job> removePressureTest(const Job& job, const std::string& test);
/// Puts what was read in a hole, added if the test has no reading of it; nothing takes the reading
/// out (which is no error where there is none). The deviation stays as it was where none is given.
/// Errors: plan.test.unknown, plan.test.no-hole, plan.test.sd, those of whyNotRead().
base::Result<Job> setReading(const Job& job, const std::string& test, const std::string& hole,
                             std::optional<double> suction_pa, std::optional<double> sd_pa = {});

/// Errors: plan.fan.*.
base::Result<Job> setFan(const Job& job, const FanPick& fan);
Job setSharedFan(const Job& job, bool shared);
/// Error: plan.pipe.length.
base::Result<Job> setPipeRun(const Job& job, const PipeRun& pipe);
Job setAnnulus(const Job& job, AnnulusSeal seal);
Job setSilencer(const Job& job, YesNo silencer);

}  // namespace sumpwright::plan
