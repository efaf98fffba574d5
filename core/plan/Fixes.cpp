#include "plan/Fixes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "geometry/Areas.h"
#include "geometry/Polylines.h"
#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/JobIds.h"
#include "plan/LookedKinds.h"
#include "plan/OnWalls.h"
#include "plan/OutlineEdits.h"
#include "plan/PlanCheck.h"
#include "plan/PlanGeometry.h"
#include "plan/TapeEdits.h"
#include "plan/ThingEdits.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

using base::Problem;
using geometry::Polygon;

/// The job put right, or nothing. `tokens`: the problem's pointer.
using Mend = std::optional<Job> (*)(const Job& job, const Problem& problem,
                                    const std::vector<std::string>& tokens);

constexpr std::size_t kNowhere = static_cast<std::size_t>(-1);

/// The number at `place` of a pointer, if the list has such an element.
template <class List>
std::size_t elementAt(const List& list, const std::vector<std::string>& tokens, std::size_t place) {
  const std::size_t index = place < tokens.size() ? indexOf(tokens[place], kNowhere) : kNowhere;
  return index < list.size() ? index : kNowhere;
}

/// False for what is wider than its wall: either figure may be the wrong one.
bool pushBack(double& offset_m, double width_m, double length) {
  if (!(width_m <= length)) return false;
  offset_m = std::clamp(offset_m, 0.0, length - width_m);
  return true;
}

/// Pushed back onto its wall.
template <class T>
std::optional<Job> pushedBack(const Job& job, const std::vector<std::string>& tokens) {
  Job result = job;
  std::vector<T>& list = listIn<T>(result);
  const std::size_t i = elementAt(list, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  OnWall* at = wallPlaceOf(list[i]);
  const auto edge = at == nullptr ? std::nullopt : edgeAt(job.plan, *at);
  if (!edge) return std::nullopt;
  if (!pushBack(at->offset_m, wallWidthOf(list[i]), length_m(*edge))) return std::nullopt;
  return result;
}

std::optional<Job> freshId(const Job& job, const Problem& problem,
                           const std::vector<std::string>& tokens) {
  if (tokens.size() < 3) return std::nullopt;  // the job's own id is its owner's to choose
  Job result = job;
  forEachId(result, [&](std::string& id, const std::string& pointer, bool) {
    if (at(pointer, "id") != problem.pointer) return;
    id = unusedId(job, id.empty() ? tokens[tokens.size() - 3] : id);
  });
  return result;
}

std::optional<Job> turnedRing(const Job& job, const Problem&,
                              const std::vector<std::string>& tokens) {
  const std::size_t r = elementAt(job.plan.rings, tokens, 2);
  if (r == kNowhere || job.plan.rings[r].walls.size() != job.plan.rings[r].corners.size()) {
    return std::nullopt;
  }
  return turnedRound(job, static_cast<int>(r));
}

std::optional<Job> cornerOut(const Job& job, const Problem&,
                             const std::vector<std::string>& tokens) {
  const std::size_t r = elementAt(job.plan.rings, tokens, 2);
  if (r == kNowhere) return std::nullopt;
  const std::size_t edge = elementAt(job.plan.rings[r].corners, tokens, 4);
  if (edge == kNowhere) return std::nullopt;
  const auto joined = removeCorner(job, static_cast<int>(r), static_cast<int>(edge));
  if (!joined) return std::nullopt;
  return *joined;
}

/// The one piece that is left but for slivers. Of two, which is meant is the surveyor's to say.
std::optional<Polygon> onePiece(const std::optional<std::vector<geometry::Face>>& faces) {
  if (!faces) return std::nullopt;
  const geometry::Face* piece = nullptr;
  for (const geometry::Face& face : *faces) {
    if (geometry::faceArea(face) <= kSliver_m2) continue;
    if (piece != nullptr || !face.holes.empty()) return std::nullopt;  // no outline says a hole
    piece = &face;
  }
  if (piece == nullptr) return std::nullopt;
  return piece->outline;
}

/// The outline without what lies outside the house, or without what an earlier one covers.
template <class T>
std::optional<Job> clipped(const Job& job, const std::vector<std::string>& tokens) {
  if (job.plan.rings.empty()) return std::nullopt;
  Job result = job;
  std::vector<T>& list = listIn<T>(result);
  const std::size_t i = elementAt(list, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  auto outline = onePiece(geometry::common(list[i].outline_m, job.plan.rings[0].corners));
  if (!outline) return std::nullopt;
  std::vector<Polygon> courts;
  for (std::size_t r = 1; r < job.plan.rings.size(); ++r) {
    courts.push_back(job.plan.rings[r].corners);
  }
  outline = onePiece(geometry::without(*outline, courts));
  if (!outline) return std::nullopt;
  list[i].outline_m = *outline;
  return result;
}

template <class T>
std::optional<Job> cutBack(const Job& job, const std::vector<std::string>& tokens) {
  Job result = job;
  std::vector<T>& list = listIn<T>(result);
  const std::size_t i = elementAt(list, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  std::vector<Polygon> earlier;
  for (std::size_t k = 0; k < i; ++k) earlier.push_back(list[k].outline_m);
  const auto outline = onePiece(geometry::without(list[i].outline_m, earlier));
  if (!outline) return std::nullopt;
  list[i].outline_m = *outline;
  return result;
}

/// What is drawn was found.
std::optional<Job> lookedAndFound(const Job& job, const Problem&,
                                  const std::vector<std::string>& tokens) {
  Job result = job;
  if (tokens.size() != 2 || !setLooked(result.looked_for, tokens[1], Looked::present)) {
    return std::nullopt;
  }
  return result;
}

std::optional<Job> heightsSwapped(const Job& job, const Problem&,
                                  const std::vector<std::string>& tokens) {
  const std::size_t i = elementAt(job.plan.openings, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  Job result = job;
  std::swap(result.plan.openings[i].sill_m, result.plan.openings[i].head_m);
  return result;
}

std::optional<Job> footingSwapped(const Job& job, const Problem&, const std::vector<std::string>&) {
  Job result = job;
  std::swap(result.house.footing_top_low_m, result.house.footing_top_high_m);
  return result;
}

std::optional<Job> doorPushedBack(const Job& job, const Problem&,
                                  const std::vector<std::string>& tokens) {
  const std::size_t i = elementAt(job.plan.inner_doors, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  Job result = job;
  InnerDoor& door = result.plan.inner_doors[i];
  for (const InnerWall& wall : job.plan.inner_walls) {
    if (wall.id != door.wall) continue;
    if (!pushBack(door.offset_m, door.width_m, geometry::lengthOf(wall.line_m)))
      return std::nullopt;
  }
  return result;
}

/// Taken out, as it speaks of something that is not there.
template <class T>
std::optional<Job> takenOut(const Job& job, const std::vector<std::string>& tokens) {
  Job result = job;
  std::vector<T>& list = listIn<T>(result);
  const std::size_t i = elementAt(list, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  const auto removed = removeThing(job, list[i].id);
  if (!removed) return std::nullopt;
  return *removed;
}

std::optional<Job> waiverOut(const Job& job, const Problem&,
                             const std::vector<std::string>& tokens) {
  const std::size_t i = elementAt(job.design.waivers, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  Job result = job;
  result.design.waivers.erase(result.design.waivers.begin() + static_cast<std::ptrdiff_t>(i));
  return result;
}

std::optional<Job> runDrawn(const Job& job, const Problem&,
                            const std::vector<std::string>& tokens) {
  const std::size_t i = elementAt(job.plan.services, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  Job result = job;
  result.plan.services[i].run = RunKnown::drawn;
  return result;
}

std::optional<Job> sumpOnRing(const Job& job, const Problem&,
                              const std::vector<std::string>& tokens) {
  const std::size_t i = elementAt(job.design.sumps, tokens, 2);
  if (i == kNowhere) return std::nullopt;
  Job result = job;
  Sump& sump = result.design.sumps[i];
  const auto ring = static_cast<std::size_t>(sump.ring);
  if (sump.ring < 0 || ring >= job.plan.rings.size()) return std::nullopt;
  sump.chainage_m = std::clamp(sump.chainage_m, 0.0, ringLength_m(job.plan.rings[ring]));
  for (Waiver& w : result.design.waivers) {
    if (w.sump == sump.id) w.lapsed = true;
  }
  return result;
}

template <auto Function>
std::optional<Job> byTokens(const Job& job, const Problem&,
                            const std::vector<std::string>& tokens) {
  return Function(job, tokens);
}

struct Remedy {
  const char* problem;
  const char* says;
  Mend mend;
};

constexpr auto kRemedies = std::to_array<Remedy>({
    {"plan.opening.off-wall", "fix.push-back", byTokens<pushedBack<Opening>>},
    {"plan.feature.off-wall", "fix.push-back", byTokens<pushedBack<WallFeature>>},
    {"plan.radiator.off-wall", "fix.push-back", byTokens<pushedBack<Radiator>>},
    {"plan.service.off-wall", "fix.push-back", byTokens<pushedBack<Service>>},
    {"plan.inner-door.off-wall", "fix.push-back", doorPushedBack},
    {"plan.id.twice", "fix.new-id", freshId},
    {"plan.id.empty", "fix.new-id", freshId},
    {"plan.ring.turned", "fix.turn-ring", turnedRing},
    {"plan.courtyard.turned", "fix.turn-ring", turnedRing},
    {"plan.ring.short-edge", "fix.join-corners", cornerOut},
    {"plan.room.outside", "fix.clip", byTokens<clipped<Room>>},
    {"plan.zone.outside", "fix.clip", byTokens<clipped<FloorZone>>},
    {"plan.room.overlap", "fix.cut-back", byTokens<cutBack<Room>>},
    {"plan.zone.overlap", "fix.cut-back", byTokens<cutBack<FloorZone>>},
    {"plan.looked.contradicted", "fix.say-present", lookedAndFound},
    {"plan.opening.sill-above-head", "fix.swap", heightsSwapped},
    {"plan.house.footing-reversed", "fix.swap", footingSwapped},
    {"plan.inner-door.no-wall", "fix.take-out", byTokens<takenOut<InnerDoor>>},
    {"plan.dimension.no-thing", "fix.take-out", byTokens<takenOut<Dimension>>},
    {"plan.waiver.no-sump", "fix.take-out", waiverOut},
    {"plan.service.run-contradicted", "fix.say-drawn", runDrawn},
    {"plan.sump.off-ring", "fix.push-back", sumpOnRing},
});

/// How often each problem comes, of those that are unsound or the one in hand.
std::map<std::string, int> counted(const base::Problems& problems, const std::string& mine) {
  std::map<std::string, int> counts;
  for (const Problem& p : problems) {
    if (p.gravity != base::Gravity::missing || p.message.id == mine) ++counts[p.message.id];
  }
  return counts;
}

bool isBetter(const base::Problems& before, const Job& after, const std::string& id) {
  auto was = counted(before, id);
  auto is = counted(checkJob(after), id);
  if (is[id] >= was[id]) return false;
  return std::all_of(is.begin(), is.end(),
                     [&](const auto& now) { return now.second <= was[now.first]; });
}

std::optional<Fix> remedyFor(const Job& job, const base::Problems& all, const Problem& problem) {
  const std::string& id = problem.message.id;
  for (const Remedy& remedy : kRemedies) {
    if (id != remedy.problem) continue;
    auto mended = remedy.mend(job, problem, tokensOf(problem.pointer));
    if (!mended || !isBetter(all, *mended, id)) return std::nullopt;
    return Fix{problem, base::Message(remedy.says), std::move(*mended)};
  }
  return std::nullopt;
}

}  // namespace

std::optional<Fix> fixFor(const Job& job, const Problem& problem) {
  return remedyFor(job, checkJob(job), problem);
}

std::vector<Fix> fixesOf(const Job& job) {
  const base::Problems problems = checkJob(job);
  std::vector<Fix> fixes;
  for (const Problem& p : problems) {
    if (auto fix = remedyFor(job, problems, p)) fixes.push_back(std::move(*fix));
  }
  return fixes;
}

}  // namespace sumpwright::plan
