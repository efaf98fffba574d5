#pragma once
// Colours by role, for light and dark screens and for paper (white, wall fill solid).

#include "drawing/DrawList.h"
#include "plan/Kinds.h"
#include "rules/Finding.h"

namespace sumpwright::drawing {

enum class ThemeName { light, dark, paper };

struct StateColours {
  Colour band;  ///< solid or hatch
  Colour text;
  Colour tint;
};

struct Theme {
  Colour paper, panel, desk, raised;
  Colour hairline, rule, control_edge;
  Colour ink, ink2, ink3;
  Colour wall, wall_edge, inner_wall;
  Colour grid1, grid5;
  StateColours clear, advised, not_proven, refused;
  Colour selection, selection_tint;
  Colour warning_text, warning_tint;
  Colour stale_line, stale_text;
  Colour primary, primary_text;
  Colour electricity, gas, water, telecom, oil, drain;
  Colour heating, pipe_pair, outside;
  Colour soil, soil_lines, hardcore, concrete, leaf, glass, roof;  ///< elevation and section
  Colour room_dwelling, room_hall, room_wet, room_utility, wet_lines;
  const StateColours& of(rules::State state) const;
  Colour service(plan::ServiceKind kind) const;
  Colour room(plan::RoomUse use) const;
};

const Theme& theme(ThemeName name);

}  // namespace sumpwright::drawing
