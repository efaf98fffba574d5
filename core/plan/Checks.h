#pragma once
// The parts of checkJob(), one file per theme. Each adds what it finds. Internal to core/plan.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Assumed.h"
#include "plan/Job.h"
#include "plan/ProblemList.h"

namespace sumpwright::plan {

// Own figures, unless a comment says otherwise.

/// Corners nearer together than this are one corner typed twice.
inline constexpr double kShortestEdge_m = 0.001;
/// No wall is longer: a file holds places along it up to here.
inline constexpr double kLongestEdge_m = 10'000.0;
/// Offsets and widths are taped to the millimetre; that much over the end of a wall is rounding.
inline constexpr double kTapeRounding_m = 0.001;
/// Overlaps and overhangs of rooms and zones below this come from drawing, not from the house.
inline constexpr double kSliver_m2 = 0.01;
/// No wall of a house is thicker.
inline constexpr double kThickestWall_m = 2.0;
/// Ireland: a standby sump is required in new homes since 1 July 1998 (EPA Ireland, web page
/// "Fixing a radon problem").
inline constexpr int kStandbySince = 1998;
/// Cores that can be drilled through a house wall.
inline constexpr double kSmallestCore_mm = 40.0;
inline constexpr double kLargestCore_mm = 300.0;

/// Layers nobody lists (plaster, paint) may make this much of a wall.
inline constexpr double kUnlistedLayers_m = 0.02;
/// A pit holds at least what a fist leaves and at most what no crew digs through a core.
inline constexpr double kSmallestPit_l = 1.0;
inline constexpr double kLargestPit_l = 500.0;
/// A core is drilled level or nearly so.
inline constexpr double kSteepestCore_deg = 45.0;
inline constexpr double kHighestEaves_m = 50.0;
/// Eaves further off their wall are a roof of their own (own figure).
inline constexpr double kMostOverhang_m = 3.0;
/// No upper floor is nearer to the one below: what ends lower is not upstairs.
inline constexpr double kLeastStorey_m = 2.4;

struct CheckedRings {
  bool outer_sound = false;             ///< closed, simple, of the right turn
  std::vector<std::size_t> courtyards;  ///< those that are sound
};

/// The highest ground outside that anybody stated, of the house, a wall or a point of one.
std::optional<double> highestGround_m(const Job& job);
void checkIds(const Job& job, ProblemList& problems);
void checkRecords(const Job& job, ProblemList& problems);  ///< dates, sheet, survey
void checkLookedFor(const Job& job, ProblemList& problems);
void checkHouse(const Job& job, ProblemList& problems);
CheckedRings checkRings(const Plan& plan, ProblemList& problems);
void checkWalls(const Job& job, ProblemList& problems);
void checkMakeUp(const Job& job, ProblemList& problems);
void checkSurvey(const Job& job, ProblemList& problems);
void checkOpenings(const Plan& plan, ProblemList& problems);
void checkServices(const Plan& plan, ProblemList& problems);
void checkZones(const Job& job, ProblemList& problems);
void checkRoomsAndZones(const Plan& plan, const CheckedRings& rings, ProblemList& problems);
void checkInnerWalls(const Job& job, ProblemList& problems);
void checkHeating(const Plan& plan, ProblemList& problems);
void checkOutside(const Plan& plan, ProblemList& problems);
void checkSuction(const Job& job, ProblemList& problems);
void checkDesign(const Job& job, const CheckedRings& rings, ProblemList& problems);

void checkRun(const Job& job, ProblemList& problems);  ///< fan, pipe, discharge, supply
void checkEavesHeights(const Job& job, ProblemList& problems);
void checkQuote(const Quote& quote, ProblemList& problems);
void checkRunning(const Running& running, ProblemList& problems);

// Shared by several of them.

/// Adds plan.pit.size unless absent or within what a crew can dig.
void checkPit(std::optional<double> pit_l, const std::string& pointer, ProblemList& problems);

/// Adds `<theme>no-wall` or `<theme>off-wall` ("plan.opening.") unless [offset, offset + width]
/// lies on its edge. `pointer` is that of the object that holds ring, edge and offset_m.
void checkOnWall(const Plan& plan, const OnWall& at, double width_m, const std::string& theme,
                 const std::string& pointer, const std::string& label, ProblemList& problems);

/// Adds plan.barrel.short where the drill is shorter than the wall a cored sump goes through.
void checkBarrel(const Job& job, const Sump& sump, const std::string& pointer,
                 ProblemList& problems);

/// Whether the text is a date yyyy-mm-dd of the calendar (ISO 8601).
bool isDate(const std::string& text);
/// Adds plan.date.bad unless the text is empty or a date.
void checkDate(const std::string& date, const std::string& pointer, ProblemList& problems);

/// Adds `id` unless 0 < thickness <= kThickestWall_m.
void checkThickness(double thickness_m, const std::string& id, const std::string& pointer,
                    const std::string& label, ProblemList& problems);

/// Whether a line has a length: two points or more, not all in one place.
bool isLine(const geometry::Polyline& line);

}  // namespace sumpwright::plan
