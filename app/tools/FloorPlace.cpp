#include "tools/FloorPlace.h"

#include <algorithm>

#include "plan/KindNames.h"
#include "plan/RoomEdits.h"
#include "plan/ThingEdits.h"

namespace sumpwright::tools {

namespace {

base::Problem floorProblem(const char* id, std::vector<base::Arg> args = {}) {
  return {base::Message(id, std::move(args)), "", base::Gravity::unsound};
}

/// In small letters, "_" as a space: how a name is compared.
std::string plainName(std::string_view name) {
  std::string plain(name);
  for (char& c : plain) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == '_') c = ' ';
  }
  return plain;
}

base::Result<plan::Job> withKind(const plan::Job& job, plan::FloorKind kind) {
  base::Result<plan::Job> result = job;
  for (plan::FloorZone zone : job.plan.floor_zones) {
    if (!result || zone.kind != plan::FloorKind::unknown) continue;
    zone.kind = kind;
    result = plan::replaceThing(*result, zone);
  }
  return result;
}

base::Result<plan::Job> withWholeFloor(const plan::Job& job, plan::FloorKind kind) {
  const base::Result<plan::Job> laid = plan::floorZoneFromWalls(job);
  if (laid) return withKind(*laid, kind);
  // Nothing left to lay: what is there may still be of no known kind.
  base::Result<plan::Job> named = withKind(job, kind);
  return named && *named == job ? laid : named;
}

bool sameOutline(const plan::FloorZone& zone, const plan::Room& room) {
  return zone.outline_m == room.outline_m;
}

}  // namespace

const plan::Room* roomCalled(const plan::Job& job, const std::string& text) {
  const std::string wanted = plainName(text);
  const auto& rooms = job.plan.rooms;
  const auto called = [&](const plan::Room& room) {
    return !room.name.empty() && plainName(room.name) == wanted;
  };
  const auto used = [&](const plan::Room& room) {
    return room.use != plan::RoomUse::unknown && plainName(plan::nameOf(room.use)) == wanted;
  };
  if (const auto it = std::find_if(rooms.begin(), rooms.end(), called); it != rooms.end()) {
    return &*it;
  }
  if (const auto it = std::find_if(rooms.begin(), rooms.end(), used); it != rooms.end()) {
    return &*it;
  }
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    if (wanted == std::to_string(i + 1)) return &rooms[i];
  }
  return nullptr;
}

base::Result<plan::Job> withFloor(const plan::Job& job, const ThingLine& line) {
  const auto kind = static_cast<plan::FloorKind>(line.which);
  if (line.room.empty()) return withWholeFloor(job, kind);
  const plan::Room* room = roomCalled(job, line.room);
  if (room == nullptr) return floorProblem("place.no-room", {base::text("room", line.room)});
  const auto& zones = job.plan.floor_zones;
  const auto there = std::find_if(zones.begin(), zones.end(), [&](const plan::FloorZone& zone) {
    return sameOutline(zone, *room);
  });
  plan::FloorZone zone = there == zones.end() ? plan::FloorZone() : *there;
  zone.kind = kind;
  if (there != zones.end()) return plan::replaceThing(job, zone);
  zone.outline_m = room->outline_m;
  return plan::addThing(job, zone);
}

}  // namespace sumpwright::tools
