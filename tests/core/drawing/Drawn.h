#pragma once
// What the drawing tests share: a study of a built job, the Irish sheet, and looks into a list.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "drawing/Box.h"
#include "drawing/DrawList.h"
#include "resources/BuiltIn.h"
#include "siting/Study.h"
#include "support/FixedVoice.h"
#include "support/PlanBuilder.h"

namespace sumpwright::drawing {

inline siting::Study studyOf(const plan::Job& job, const siting::StudyOptions& options = {}) {
  static const rules::RuleSheet sheet =
      rules::readRuleSheet(resources::builtInRuleSheets()[0].text).value();
  return siting::Study::of(job, sheet, options).value();
}

inline const support::FixedVoice& voice() {
  static const support::FixedVoice fixed;
  return fixed;
}

/// The texts of a list, in order.
inline std::vector<std::string> textsOf(const DrawList& list) {
  std::vector<std::string> out;
  for (const Item& item : list.items) {
    if (const auto* text = std::get_if<Text>(&item.shape)) out.push_back(text->text);
  }
  return out;
}

inline bool says(const DrawList& list, const std::string& words) {
  for (const std::string& text : textsOf(list)) {
    if (text.find(words) != std::string::npos) return true;
  }
  return false;
}

inline int itemsTagged(const DrawList& list, const std::string& tag) {
  int count = 0;
  for (const Item& item : list.items) count += item.tag == tag ? 1 : 0;
  return count;
}

inline void expectInside(const DrawList& list, const Voice& words) {
  const Box page{-1e-6, -1e-6, list.width_mm + 1e-6, list.height_mm + 1e-6};
  for (const Item& item : list.items) {
    const Box box = boxOf(item.shape, words);
    EXPECT_TRUE(holds(page, box)) << item.tag << ": " << box.left << ' ' << box.top << ' '
                                  << box.right << ' ' << box.bottom;
  }
}

/// A bungalow with something of everything, for tests that need a full drawing.
inline support::PlanBuilder furnished() {
  using plan::OutsideKind;
  using plan::ServiceKind;
  auto b = support::PlanBuilder::lShape();
  b.window("kitchen window", 0, 6.5, 1.2)
      .door("front door", 0, 4.0)
      .vent("vent", 0, 1.0)
      .flue("flue", 4, 1.0)
      .window("rear window", 4, 2.5, 1.4)
      .service("gas", ServiceKind::gas, 5, 2.0)
      .run("gas", {{0.0, 6.0}, {-1.0, 6.0}, {-1.0, -4.0}})
      .service("water", ServiceKind::water, 0, 5.5)
      .service("electricity", ServiceKind::electricity, 1, 1.0)
      .outside("gully", OutsideKind::gully, {{4.0, 8.3}})
      .outside("chamber", OutsideKind::inspection_chamber, {{2.0, 9.5}})
      .outside("boundary", OutsideKind::boundary, {{-3.0, -3.0}, {13.0, -3.0}})
      .outside("path", OutsideKind::path, {{-2.0, -1.0}, {12.0, -1.0}})
      .radiator("radiator", 5, 5.0, 1.0)
      .supply("socket", plan::SupplyKind::socket, {3.0, 0.5})
      .fitting("sink", plan::FittingKind::sink, {7.0, 0.8})
      .innerWall("inner", {{5.0, 0.35}, {5.0, 7.6}})
      .heatingPipe("pipe", {{0.6, 2.0}, {4.0, 2.0}});
  return b;
}

}  // namespace sumpwright::drawing
