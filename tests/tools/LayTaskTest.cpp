#include <gtest/gtest.h>

#include <set>

#include "tools/LayTask.h"

namespace sumpwright::tools {
namespace {

constexpr int kTasks = static_cast<int>(Task::dimension) + 1;

template <class T>
std::set<int> kindsLaid() {
  std::set<int> kinds;
  for (int i = 0; i < kTasks; ++i) {
    const auto model = layModelOf(static_cast<Task>(i));
    const auto* thing = model ? std::get_if<plan::Thing>(&*model) : nullptr;
    const auto* of_type = thing == nullptr ? nullptr : std::get_if<T>(thing);
    if (of_type != nullptr) kinds.insert(static_cast<int>(of_type->kind));
  }
  return kinds;
}

TEST(LayTask, EveryKindThatStandsByItselfCanBeLaid) {
  EXPECT_EQ(kindsLaid<plan::Supply>().size(), 3U);
  EXPECT_EQ(kindsLaid<plan::Fitting>().size(), 6U);
  EXPECT_EQ(kindsLaid<plan::Service>().size(), 7U);
  EXPECT_EQ(kindsLaid<plan::OutsideThing>().size(), 14U);
}

TEST(LayTask, TheGroupSaysHowItIsLaid) {
  for (int i = 0; i < kTasks; ++i) {
    const auto task = static_cast<Task>(i);
    const auto model = layModelOf(task);
    if (!model) continue;
    const auto shape = shapeOf(*model);
    ASSERT_TRUE(shape.has_value()) << i;
    switch (groupOf(task)) {
      case TaskGroup::at_point:
        EXPECT_EQ(*shape, LayShape::point) << i;
        break;
      case TaskGroup::line:
        EXPECT_EQ(*shape, LayShape::line) << i;
        break;
      case TaskGroup::area:
        EXPECT_EQ(*shape, LayShape::area) << i;
        break;
      default:
        break;
    }
  }
}

TEST(LayTask, WhatStandsOnWallsIsNotLaidHere) {
  for (const Task task : {Task::choose, Task::lay_window, Task::lay_gas, Task::lay_radiator,
                          Task::lay_gap, Task::split_wall, Task::measure, Task::dimension}) {
    EXPECT_FALSE(layModelOf(task).has_value());
  }
}

}  // namespace
}  // namespace sumpwright::tools
