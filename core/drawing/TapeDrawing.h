#pragma once
// The wall tape: the unrolled perimeter, score curve, verdict lane, one lane per rule. Rings follow
// each other with a gap. Two layers, as for the plan.

#include <optional>
#include <string>

#include "drawing/DrawList.h"
#include "drawing/Theme.h"
#include "drawing/Voice.h"
#include "siting/ReachAlong.h"
#include "siting/Study.h"

namespace sumpwright::drawing {

struct TapeView {
  double width_mm = 270.0;
  double height_mm = 60.0;  ///< lanes that do not fit fold, the deciding one stays in view
  ThemeName theme = ThemeName::light;
  double label_mm = 31.0;     ///< column of lane names at the left
  double scroll_mm = 0.0;     ///< lanes scrolled up
  std::string deciding_rule;  ///< lane tinted and kept in view
  bool lanes = true;          ///< false: verdict lane only (paper)
  bool reach = false;         ///< tapeReach() and its marker: a high curve, no lanes of rules
};

/// x on the page of a place, and back (nearest ring position for x in the lanes' width).
double tapeX(const siting::Study& study, const TapeView& view, perimeter::Place place);
perimeter::Place tapePlace(const siting::Study& study, const TapeView& view, double x_mm);

DrawList tapeBase(const siting::Study& study, const TapeView& view, const Voice& voice);
/// The tape of the stage Suction: share of floor that one sump at each place is predicted to hold
/// at the target suction, verdict lane, axis; needs view.reach. The curve is bold and tinted where
/// the wall is clear or advised against, dotted elsewhere, broken where no floor is behind the
/// wall. Its scale ends at 100 % and begins at the quarter below its least, 50 % at most. nullptr,
/// or reach that does not fit the wall: worked out no more or not yet, and said, or `absence` where
/// it says more. Not computed: why stands there. With several sumps it says whether one alone is
/// meant.
DrawList tapeReach(const siting::Study& study, const siting::ReachAlong* reach,
                   const TapeView& view, const Voice& voice, const base::Message& absence = {});
/// `number` stands at the grip where it is not 0 (neededNumber() in plan/SumpList.h).
DrawList tapeMarker(const siting::Study& study, const siting::Assessment& assessment,
                    const TapeView& view, const Voice& voice, int number = 0);
/// The sumps in the wall but `marked`: a thin line each, its number on top.
DrawList tapeOthers(const siting::Study& study, const TapeView& view, const Voice& voice,
                    const std::string& marked);
/// Height at which every lane is in view.
double tapeFullHeight_mm(const siting::Study& study, const TapeView& view);
/// The rule whose lane is at height y; empty outside lanes.
std::string tapeRuleAt(const siting::Study& study, const TapeView& view, double y_mm);

}  // namespace sumpwright::drawing
