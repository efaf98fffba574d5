#pragma once
// What a crew is sent to do, and what of it is signed for or sealed.

#include "dossier/Sheet.h"

namespace sumpwright::dossier {

inline constexpr double kSignature_mm = 8.0;  ///< height of a line to sign or write on

/// What kinds of sump a sheet sends a crew to: those where nobody may drill are none.
struct Works {
  bool cored = false;
  bool internal = false;
  bool standby = false;
  bool digs() const { return cored || internal; }
  bool any() const { return digs() || standby; }
};

// HoldSteps.cpp
/// The hold points of those works in order, each with the rule that stops the work and a line to
/// sign.
Rows holdRows(const Sheet& sheet, const Works& works, double width_mm);
// SealPaper.cpp
/// What leaks, room by room, before anybody thinks of a second sump.
Rows sealRows(const Sheet& sheet, double width_mm);

}  // namespace sumpwright::dossier
