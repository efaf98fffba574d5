// The colours' own promises: contrast, and four states that stay apart for everybody and in grey
// print. The limits are those of WCAG 2.1 where it has one; the others are the look's own figures.

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/Drawn.h"
#include "drawing/Theme.h"
#include "support/ColourScience.h"

namespace sumpwright::drawing {
namespace {

using rules::State;
using support::ciede2000;
using support::contrast;
using support::lab;
using support::Seen;
using support::seen;

constexpr std::array kThemes = {ThemeName::light, ThemeName::dark, ThemeName::paper};
constexpr std::array kStates = {State::clear, State::advised_against, State::not_proven,
                                State::refused};
constexpr double kText = 4.5;  // WCAG 2.1, 1.4.3
constexpr double kMark = 3.0;  // WCAG 2.1, 1.4.11

TEST(Theme, ColourDifferenceMatchesThePublishedPairs) {
  // Sharma, Wu, Dalal 2005, table 1, pairs 1, 2, 3, 7, 17 and 20.
  EXPECT_NEAR(ciede2000({50, 2.6772, -79.7751}, {50, 0, -82.7485}), 2.0425, 5e-5);
  EXPECT_NEAR(ciede2000({50, 3.1571, -77.2803}, {50, 0, -82.7485}), 2.8615, 5e-5);
  EXPECT_NEAR(ciede2000({50, 2.8361, -74.0200}, {50, 0, -82.7485}), 3.4412, 5e-5);
  EXPECT_NEAR(ciede2000({50, 0, 0}, {50, -1, 2}), 2.3669, 5e-5);
  EXPECT_NEAR(ciede2000({50, 2.5, 0}, {73, 25, -18}), 27.1492, 5e-5);
  EXPECT_NEAR(ciede2000({50, 2.5, 0}, {58, 24, 15}), 19.4535, 5e-5);
}

TEST(Theme, BlackOnWhiteIs21To1) {
  EXPECT_NEAR(contrast({0, 0, 0, 255}, {255, 255, 255, 255}), 21.0, 1e-9);
}

TEST(Theme, TextCanBeRead) {
  for (const ThemeName name : kThemes) {
    const Theme& t = theme(name);
    for (const Colour& ground : {t.paper, t.panel, t.room_dwelling, t.room_hall, t.room_wet}) {
      EXPECT_GE(contrast(t.ink, ground), kText);
      EXPECT_GE(contrast(t.ink2, ground), kText);
    }
    EXPECT_GE(contrast(t.ink3, t.paper), kText);
    for (const State s : kStates) {
      EXPECT_GE(contrast(t.of(s).text, t.paper), kText) << static_cast<int>(s);
      EXPECT_GE(contrast(t.of(s).text, t.panel), kText) << static_cast<int>(s);
    }
    EXPECT_GE(contrast(t.warning_text, t.warning_tint), kText);
    EXPECT_GE(contrast(t.primary_text, t.primary), kText);
    EXPECT_GE(contrast(t.stale_text, t.panel), kText);
  }
}

TEST(Theme, MarksCanBeSeen) {
  for (const ThemeName name : kThemes) {
    const Theme& t = theme(name);
    for (const State s : kStates) {
      EXPECT_GE(contrast(t.of(s).band, t.paper), kMark) << static_cast<int>(s);
      EXPECT_GE(contrast(t.of(s).band, t.panel), kMark) << static_cast<int>(s);
    }
    for (const Colour& mark : {t.electricity, t.gas, t.water, t.telecom, t.oil, t.drain, t.outside,
                               t.heating, t.wall, t.selection}) {
      EXPECT_GE(contrast(mark, t.paper), kMark);
    }
    EXPECT_GE(contrast(t.inner_wall, t.room_wet), kMark);
    EXPECT_GE(contrast(t.control_edge, t.panel), kMark);
  }
}

TEST(Theme, HatchesStandOnTheirTint) {
  for (const ThemeName name : kThemes) {
    const Theme& t = theme(name);
    for (const State s : {State::advised_against, State::not_proven, State::refused}) {
      EXPECT_GE(contrast(t.of(s).band, t.of(s).tint), 2.9) << static_cast<int>(s);
    }
  }
}

double least(const Theme& t, Seen as) {
  double out = 1e9;
  for (const State a : kStates) {
    for (const State b : kStates) {
      if (a < b) {
        out = std::min(out, ciede2000(lab(seen(t.of(a).band, as)), lab(seen(t.of(b).band, as))));
      }
    }
  }
  return out;
}

TEST(Theme, FourStatesStayApartForEverybody) {
  for (const ThemeName name : kThemes) {
    const Theme& t = theme(name);
    EXPECT_GE(least(t, Seen::as_drawn), 25.0);
    for (const Seen as : {Seen::protanopia, Seen::deuteranopia, Seen::tritanopia}) {
      EXPECT_GE(least(t, as), 9.5) << static_cast<int>(name) << ' ' << static_cast<int>(as);
    }
    EXPECT_GE(least(t, Seen::grey), 9.0) << static_cast<int>(name);
  }
}

TEST(Theme, FourStatesStandOnFourStepsOfLightness) {
  for (const ThemeName name : kThemes) {
    std::vector<double> steps;
    for (const State s : kStates) steps.push_back(lab(seen(theme(name).of(s).band, Seen::grey))[0]);
    std::sort(steps.begin(), steps.end());
    for (std::size_t i = 1; i < steps.size(); ++i) EXPECT_GE(steps[i] - steps[i - 1], 9.0);
  }
}

TEST(Theme, AKitchenIsNoWetRoom) {
  const Theme& t = theme(ThemeName::light);
  EXPECT_EQ(t.room(plan::RoomUse::kitchen), t.room_dwelling);
  EXPECT_EQ(t.room(plan::RoomUse::bathroom), t.room_wet);
  EXPECT_EQ(t.room(plan::RoomUse::wc), t.room_wet);
}

}  // namespace
}  // namespace sumpwright::drawing
