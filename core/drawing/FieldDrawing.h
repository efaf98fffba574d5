#pragma once
// The suction field on the plan. Painted in order:
//
//   sheet.under    paper                                   once for a plan and a view
//   layers.areas   the field: classes, contours, target    each frame
//   sheet.over     what hides the field beyond the floor, walls, bands, openings, other sumps
//   layers.labels  room names, contour labels, test holes  each frame
//   fieldMarker()  the sump, its grip where planMarker() has it
//
// so that a drag composes two short lists a frame (about 2 ms for 120 m2 at 10 cm). All are lists
// of the view's size. Nothing here decides anything; a prediction is drawn as one.

#include <optional>
#include <string>
#include <vector>

#include "drawing/FieldScale.h"
#include "drawing/PlanDrawing.h"
#include "suction/Model.h"
#include "suction/Network.h"

namespace sumpwright::drawing {

/// Values by cell of a grid; neither is owned. Empty where network is null.
struct FieldValues {
  const suction::Network* network = nullptr;
  const std::vector<double>* values = nullptr;  ///< Pa, or a chance 0..1
  bool has() const { return network != nullptr && values != nullptr; }
};

struct FieldShown {
  FieldValues field;  ///< empty: names and holes alone
  FieldKind kind = FieldKind::suction;
  double target = 5.0;                ///< Pa, or a chance
  std::vector<FieldValues> likewise;  ///< poorer and better fill: their target lines, dotted
  bool stale = false;                 ///< of an old plan: drained to grey
};

/// A hole through the floor and what is known there.
struct HoleMark {
  std::string id;  ///< tag of what is drawn
  Point at_m;
  std::optional<double> predicted_pa;  ///< shown where nothing is measured
  std::optional<double> measured_pa;
  bool stale = false;  ///< measured on an old plan, or for another sump
  int number = 0;      ///< stands before the value; 0: none
};

/// A room's name and where it stands.
struct FieldName {
  std::string room;
  std::vector<Text> lines;
  Box box;
};

struct FieldSheet {
  PlanView view;
  DrawList under;
  DrawList over;
  std::vector<std::vector<Point>> floor;  ///< outlines on the page, even-odd
  std::vector<FieldName> names;
  std::vector<Box> taken;  ///< labels keep off
};

/// `model`: as the field was solved with (floor, and the walls that shape it). `marked`: the sump
/// that fieldMarker() draws; the others of the design stand on the sheet. `plain`: walls,
/// openings and rooms alone, for a small figure on a paper.
FieldSheet fieldSheet(const siting::Study& study, const suction::SuctionModel& model,
                      const PlanView& view, const Voice& voice, const std::string& marked = {},
                      bool plain = false);

struct FieldLayers {
  DrawList areas;
  DrawList labels;
};
FieldLayers fieldLayers(const FieldSheet& sheet, const FieldShown& shown,
                        const std::vector<HoleMark>& holes, const Voice& voice);

/// All of it as one list, without the marker: for papers.
DrawList fieldPicture(const FieldSheet& sheet, const FieldShown& shown,
                      const std::vector<HoleMark>& holes, const Voice& voice);

/// planMarker() without distances: they are the siting's.
DrawList fieldMarker(const siting::Study& study, const siting::Assessment& assessment,
                     const PlanView& view, const Voice& voice, int number = 0);

/// Suction at the holes of a plan, for their marks; nothing off the floor.
std::vector<HoleMark> predictedAt(const plan::Plan& plan, const FieldValues& field);

}  // namespace sumpwright::drawing
