// What else the survey recorded: field book, features in walls, dimensions, underlay, leave to
// work.

#include <array>
#include <cmath>

#include "plan/Blank.h"
#include "plan/Checks.h"
#include "plan/Dimensions.h"
#include "plan/PlanGeometry.h"
#include "plan/TapeEdits.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

/// A closed ring all of whose walls were taped; a last wall that was drawn hides the error.
void checkClosing(const Ring& ring, const std::string& pointer, ProblemList& problems) {
  if (!ring.closed || ring.taped.size() != ring.corners.size()) return;
  const geometry::Closing closing = geometry::closingOf(legsOf(ring.taped));
  if (!closing.one_in || *closing.one_in >= kGoodClosing) return;
  problems.add(Gravity::missing, "plan.taped.poor", pointer + "/taped",
               {base::millimetres("gap", 1000.0 * closing.gap_m),
                base::count("one_in", std::llround(*closing.one_in)),
                base::count("least", std::llround(kGoodClosing))});
}

void checkTaped(const Ring& ring, const std::string& pointer, ProblemList& problems) {
  if (ring.taped.empty()) return;
  bool readable = true;
  for (std::size_t i = 0; i < ring.taped.size(); ++i) {
    const TapedWall& wall = ring.taped[i];
    if (wall.length_m > 0.0 && std::isfinite(wall.length_m) && std::isfinite(wall.bearing_deg)) {
      continue;
    }
    readable = false;
    problems.add("plan.taped.wall", at(pointer + "/taped", i),
                 {base::count("wall", static_cast<std::int64_t>(i) + 1),
                  base::metres("length", wall.length_m)});
  }
  if (readable) checkClosing(ring, pointer, problems);
  // The last wall of a closed ring may be left to close it, untaped.
  const std::size_t walls = ring.taped.size();
  if (!ring.closed || walls == ring.corners.size() || walls + 1 == ring.corners.size()) return;
  problems.add(Gravity::missing, "plan.taped.count", pointer + "/taped",
               {base::count("taped", static_cast<std::int64_t>(walls)),
                base::count("walls", static_cast<std::int64_t>(ring.corners.size()))});
}

void checkFeature(const Plan& plan, const WallFeature& feature, const std::string& pointer,
                  ProblemList& problems) {
  if (feature.width_m < 0.0) {
    problems.add("plan.feature.width", at(pointer, "width_m"),
                 {base::text("thing", labelOf(feature)), base::metres("width", feature.width_m)});
  }
  checkOnWall(plan, feature.at, std::max(0.0, feature.width_m), "plan.feature.", pointer,
              labelOf(feature), problems);
}

void checkDimension(const Job& job, const Dimension& dimension, const std::string& pointer,
                    ProblemList& problems) {
  const auto checkEnd = [&](const DimensionEnd& end, const char* key) {
    if (placeOf(job, end)) return;
    problems.add("plan.dimension.no-thing", at(at(pointer, key), "thing"),
                 {base::text("dimension", dimension.id), base::text("thing", end.thing)});
  };
  checkEnd(dimension.from, "from");
  checkEnd(dimension.to, "to");
}

/// Relative, forward slashes, within the job file's folder: then job and picture travel together.
bool travels(const std::string& path) {
  if (isBlank(path) || path.front() == '/' || path.find('\\') != std::string::npos) return false;
  if (path.find(':') != std::string::npos) return false;
  return ("/" + path + "/").find("/../") == std::string::npos;
}

void checkUnderlay(const Underlay& underlay, ProblemList& problems) {
  const std::string pointer = "/plan/underlay";
  if (!travels(underlay.path)) {
    problems.add(Gravity::missing, "plan.underlay.path", pointer + "/path",
                 {base::text("path", underlay.path)});
  }
  if (!(underlay.m_per_px > 0.0)) {
    problems.add("plan.underlay.scale", pointer + "/m_per_px",
                 {base::number("scale", underlay.m_per_px)});
  }
  if (!underlay.straighten) return;
  const Straighten& s = *underlay.straighten;
  if (s.width_m > 0.0 && s.height_m > 0.0) return;
  problems.add("plan.underlay.rectangle", pointer + "/straighten",
               {base::metres("width", s.width_m), base::metres("height", s.height_m)});
}

struct Leave {
  const char* key;
  YesNo Permissions::*answer;
};

constexpr auto kLeaves = std::to_array<Leave>({
    {"protected_structure", &Permissions::protected_structure},
    {"conservation_area", &Permissions::conservation_area},
    {"flats", &Permissions::flats},
    {"tenanted", &Permissions::tenanted},
});

/// Who has to give leave: asked first, since all work waits for it.
void checkPermissions(const Permissions& permissions, ProblemList& problems) {
  bool asked = true;
  const Leave* wanted = nullptr;
  for (const Leave& leave : kLeaves) {
    const YesNo answer = permissions.*leave.answer;
    asked = asked && answer != YesNo::unknown;
    if (answer == YesNo::yes && wanted == nullptr) wanted = &leave;
  }
  if (!asked) problems.add(Gravity::missing, "plan.permissions.unknown", "/permissions");
  if (wanted == nullptr || !isBlank(permissions.consent)) return;
  problems.add(Gravity::missing, "plan.permissions.no-consent", "/permissions/consent",
               {base::phrase("what", base::Message(std::string("permission.") + wanted->key))});
}

void checkEaves(const Job& job, ProblemList& problems) {
  const Looked found = job.house.eaves_wildlife;
  if (found == Looked::present) {
    problems.add(Gravity::missing, "plan.eaves.wildlife", "/house/eaves_wildlife");
  } else if (found == Looked::not_looked && job.design.outlet == OutletMode::riser) {
    problems.add(Gravity::missing, "plan.eaves.not-looked", "/house/eaves_wildlife");
  }
}

}  // namespace

void checkSurvey(const Job& job, ProblemList& problems) {
  const Plan& plan = job.plan;
  checkPermissions(job.permissions, problems);
  checkEaves(job, problems);
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    checkTaped(plan.rings[r], at("/plan/rings", r), problems);
  }
  for (std::size_t i = 0; i < plan.wall_features.size(); ++i) {
    checkFeature(plan, plan.wall_features[i], at("/plan/wall_features", i), problems);
  }
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i) {
    checkDimension(job, plan.dimensions[i], at("/plan/dimensions", i), problems);
  }
  if (plan.underlay) checkUnderlay(*plan.underlay, problems);
}

}  // namespace sumpwright::plan
