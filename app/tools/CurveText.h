#pragma once
// A fan's curve as a person types it: points of flow and pressure in the units on display, with the
// electric power in W behind them where it is known: "0 400; 100 300; 250 50", "0 400 45, 100 300
// 52, 250 50 60". A figure with its unit close to it ("60cfm") is in that one (AirText.h).
//
// Points are parted by semicolons or new lines; without either, by commas. Figures of a point are
// parted by blanks or colons, or by commas where nothing else parts them; a comma within a
// figure stands for its dot where semicolons part the points and blanks the figures. Total: any
// text gives points or says which part it stops at.

#include <string>
#include <vector>

#include "plan/Design.h"
#include "tools/AirText.h"

namespace sumpwright::tools {

struct CurveReading {
  std::vector<plan::FanPickPoint> points;
  std::string unread;  ///< the first part that is no point; empty: all were read
};

/// Whether the points make a curve is not looked at.
CurveReading readCurve(const std::string& text, AirUnits air);

}  // namespace sumpwright::tools
