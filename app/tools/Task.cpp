#include "tools/Task.h"

namespace sumpwright::tools {

namespace {

/// The kinds stand in the order of their own lists.
template <class Kind>
std::optional<Kind> kindFrom(Task task, Task first, Task last) {
  if (task < first || task > last) return std::nullopt;
  return static_cast<Kind>(static_cast<int>(task) - static_cast<int>(first));
}

}  // namespace

TaskGroup groupOf(Task task) {
  if (openingKindOf(task)) return TaskGroup::opening;
  if (serviceKindOf(task)) return TaskGroup::service;
  if (task == Task::lay_radiator || featureKindOf(task)) return TaskGroup::on_wall;
  if (task >= Task::lay_house && task <= Task::split_wall) return TaskGroup::outline;
  if (task >= Task::lay_socket && task <= Task::lay_standby_sump) return TaskGroup::at_point;
  if (task >= Task::run_gas && task <= Task::lay_overhead_line) return TaskGroup::line;
  if (task >= Task::lay_room && task <= Task::lay_carport) return TaskGroup::area;
  if (task == Task::measure || task == Task::dimension) return TaskGroup::measure;
  return TaskGroup::choose;
}

std::optional<plan::OpeningKind> openingKindOf(Task task) {
  return kindFrom<plan::OpeningKind>(task, Task::lay_window, Task::lay_roof_window);
}

std::optional<plan::ServiceKind> serviceKindOf(Task task) {
  return kindFrom<plan::ServiceKind>(task, Task::lay_gas, Task::lay_waste);
}

std::optional<plan::WallFeatureKind> featureKindOf(Task task) {
  return kindFrom<plan::WallFeatureKind>(task, Task::lay_pier, Task::lay_stepped_footing);
}

}  // namespace sumpwright::tools
