#include "stages/Leading.h"

#include <QCoreApplication>
#include <array>
#include <string_view>

#include "plan/PlanCheck.h"

namespace sumpwright::stages {

namespace {

struct Leading {
  Q_DECLARE_TR_FUNCTIONS(Leading)
};

enum class MattersFor { siting, works, survey };

struct Theme {
  std::string_view begins;
  MattersFor matters;
};

/// The first that a problem's id begins with.
constexpr auto kThemes = std::to_array<Theme>({
    {"plan.looked.", MattersFor::siting},
    {"plan.wall.external-insulation", MattersFor::works},
    {"plan.wall.timber-frame", MattersFor::works},
    {"plan.wall.stone", MattersFor::works},
    {"plan.wall.", MattersFor::siting},
    {"plan.zone.", MattersFor::siting},
    {"plan.room.", MattersFor::siting},
    {"plan.service.", MattersFor::siting},
    {"plan.ring.", MattersFor::siting},
    {"plan.permissions.", MattersFor::works},
    {"plan.standby.", MattersFor::siting},
    {"plan.house.year-unknown", MattersFor::siting},
    {"plan.flue.", MattersFor::works},
    {"plan.eaves.", MattersFor::works},
    {"plan.outside.overhead", MattersFor::works},
    {"plan.opening.own-floor", MattersFor::siting},
    {"plan.opening.upstairs", MattersFor::siting},
    {"plan.barrel.", MattersFor::works},
    {"plan.ground.", MattersFor::works},
    {"plan.house.", MattersFor::works},
});

struct WallFactOf {
  std::string_view id;
  const char* key;
};

constexpr auto kWallFacts = std::to_array<WallFactOf>({
    {"plan.wall.thickness-unknown", "thickness_m"},
    {"plan.wall.foundation-unknown", "foundation"},
    {"plan.wall.ground-unknown", "ground"},
    {"plan.wall.free-depth-unknown", "free_depth_m"},
    {"plan.wall.external-insulation", "layers"},
    {"plan.wall.timber-frame", "layers"},
    {"plan.wall.stone", "layers"},
});

/// The wall that has this name, or this id.
std::string wallCalled(const plan::Job& job, const std::string& label) {
  for (const plan::Ring& ring : job.plan.rings) {
    for (const plan::Wall& wall : ring.walls) {
      if (wall.id == label || wall.name == label) return wall.id;
    }
  }
  return {};
}

}  // namespace

std::string thingAnswering(const plan::Job& job, const base::Problem& problem) {
  std::string thing = plan::thingAt(job, problem.pointer);
  const base::Arg* walls = problem.message.find("walls");
  if (!thing.empty() || walls == nullptr) return thing;
  const auto* list = std::get_if<std::string>(&walls->value);
  return list == nullptr ? thing : wallCalled(job, list->substr(0, list->find(", ")));
}

std::string factAnswering(const base::Problem& problem) {
  for (const WallFactOf& fact : kWallFacts) {
    if (problem.message.id == fact.id) return fact.key;
  }
  return {};
}

QString stageOf(const base::Problem& problem) {
  if (problem.gravity != base::Gravity::missing) return {};
  MattersFor matters = MattersFor::survey;
  for (const Theme& theme : kThemes) {
    if (!problem.message.id.starts_with(theme.begins)) continue;
    matters = theme.matters;
    break;
  }
  switch (matters) {
    case MattersFor::siting:
      return Leading::tr("Siting");
    case MattersFor::works:
      return Leading::tr("Works");
    case MattersFor::survey:
      break;
  }
  return Leading::tr("Survey");
}

}  // namespace sumpwright::stages
