#pragma once
// The cable from the fan to a supply: the shortest way along walls, in plan, with what goes up and
// down counted in.
//
// The cable runs outside along the outer face from the fan, through one sleeve in an outside wall,
// then inside along skirtings, through inner walls by drilling, up to the supply. It goes over the
// head of doors, under the sill of windows where that is high enough and else over their head (and
// stays up to the next one in the same wall that is near), never through a door opening, and never
// through a room with a bath or shower, nor within 0.6 m of the edge of one that stands in no room
// that is drawn. Outside it keeps above the ground, the damp-proof course and off party and dwarf
// walls, and no sleeve is drilled beside the entry of a service. A supply outside is reached along
// the outer face without a sleeve.
//
// It starts at the fan, wherever that stands. A fan in the roof space is not outside: its cable
// goes straight through the roof space to over a skirting, down inside, and on as above; where the
// straight line leaves the house it is no way.
//
// All this is a route to price and to talk about: connection is for a competent or registered
// electrician, and local wiring rules decide.

#include <optional>
#include <string>
#include <vector>

#include "base/Source.h"
#include "rules/Judge.h"

namespace sumpwright::build {

/// Figures of the route; all own figures unless marked.
struct CableFigures {
  double sleeve_above_dpc_m = 0.15;  ///< never through the damp-proof course
  double above_ground_m = 0.15;      ///< run outside, over the highest ground along the walls
  double off_entry_m = 0.30;         ///< no sleeve nearer to where a service comes in
  double lowest_sleeve_m = 0.20;     ///< above finished floor
  double skirting_m = 0.10;          ///< height of the run inside
  double socket_m = 0.45;            ///< height of a socket or spur (common practice)
  double board_m = 1.40;             ///< height of a consumer unit (common practice)
  double over_head_m = 0.10;         ///< above a head, below a sill
  double stays_up_m = 1.00;          ///< over two openings no further apart the cable stays up
  double door_head_m = 2.10;         ///< of a door whose head is not known (common practice)
  double sill_m = 0.90;              ///< of a window whose sill is not known (common practice)
  double from_corner_m = 0.05;       ///< no drilling nearer to a corner or jamb
  double thickest_m = 0.90;          ///< no drilling through more
  double wet_m = 0.60;               ///< from the edge of a bath or shower (zone 2 of
                                     ///< IEC 60364-7-701, from memory)
  double bath_half_m = 0.85;         ///< middle to end of a bath (common practice: 1.7 m long)
  double shower_half_m = 0.65;       ///< middle to corner of a tray (common practice: 0.9 m square)
  double per_drilling_m = 0.50;      ///< cable that is gladly spent to save one
  double spare_share = 0.10;         ///< bought above what is laid
  double spare_m = 1.0;
  double volts = 230.0;      ///< nominal (EN 50160, from memory); cableAskOf(): the rule sheet's
  double section_mm2 = 1.5;  ///< of each core (common practice)
  double ohm_mm2_per_m = 0.0225;  ///< copper at 70 degrees C (from memory)
  bool operator==(const CableFigures&) const = default;
};

/// drop: outside, from the fan to the run; roof: straight through the roof space; descent: from
/// there down to the skirting; rise: from the run to the supply.
enum class CablePartKind {
  drop,
  outside,
  sleeve,
  skirting,
  over_opening,
  drilling,
  rise,
  roof,
  descent
};
/// The words of JSON for it.
std::string_view cablePartName(CablePartKind kind);

struct CablePart {
  CablePartKind kind = CablePartKind::skirting;
  double length_m = 0.0;
  geometry::Polyline line_m;        ///< in plan; drop, descent and rise: one point
  std::vector<std::string> things;  ///< ids of the openings gone over
  /// Above finished floor: that it runs at, of a sleeve at its outer end; drop, descent, rise:
  /// where it ends; over_opening: its level part.
  double height_m = 0.0;
  bool operator==(const CablePart&) const = default;
};

/// A hole for the cable through an outside wall, as it is set out from outside.
struct CableSleeve {
  perimeter::Place place;  ///< on the outer face
  double height_m = 0.0;   ///< of its middle there, above finished floor
};

struct CableRoute {
  std::string supply;  ///< id
  plan::SupplyKind kind = plan::SupplyKind::socket;
  base::Message label;
  std::vector<CablePart> parts;  ///< from the fan on; neighbours of one kind on one line are joined
  double length_m = 0.0;
  int drillings = 0;  ///< inner walls; the sleeve is not one of them
  int sleeves = 0;
  int over_openings = 0;
  double to_buy_m = 0.0;
  double drop_v = 0.0;  ///< 2 L I rho / A
  double drop_percent = 0.0;
  std::vector<base::Message> remarks;  ///< "cable.remark.*"
};

/// A supply that no route leads to, and why.
struct NoCable {
  std::string supply;
  base::Message label;
  base::Message reason;  ///< phrase "cable.no.*"
};

struct CableAsk {
  perimeter::Place fan;  ///< in the roof space: over the inner face there
  plan::FanPlace fan_place = plan::FanPlace::outside_low;
  double fan_height_m = 1.2;  ///< above finished floor; kLowFan_m of Run.h
  std::string wish;           ///< id of a supply chosen; empty: the best
  double power_w = 75.0;      ///< of the fan, for the voltage drop
  CableFigures figures;
  bool operator==(const CableAsk&) const = default;
};

/// Of the fan that belongs to a sump's hole at a place: low beside the hole, else where the
/// discharge stands; its height as stated, else that of Run.h, under an outlet as it would be
/// proposed where none is placed; the rule sheet's voltage. Contract: the place lies on the
/// perimeter.
CableAsk cableAskOf(const rules::Site& site, const plan::Sump& sump, perimeter::Place hole);

/// What the fan takes, where it is known of a design with one sump: else the figure of CableAsk.
void takePower(CableAsk& ask, const plan::Design& design, std::optional<double> power_w);

struct CableAnswer {
  /// Least cable and drilling first; consumer units, which ask for a circuit of their own, last.
  std::vector<CableRoute> routes;
  /// Into `routes`: the wish where it can be had, else the first; nothing without any.
  std::optional<std::size_t> chosen;
  std::vector<NoCable> none;
  std::vector<base::Message> assumptions;
  std::vector<base::Message> cautions;
  base::Message sentence;
};

/// Contract: the fan's place lies on the perimeter. Deterministic; the file's order decides between
/// equals.
CableAnswer cableRoutes(const rules::Site& site, const CableAsk& ask);

/// Its name, else what it is and in which room it stands.
base::Message supplyLabel(const rules::Site& site, const plan::Supply& supply);

/// From the fan on.
std::vector<CableSleeve> cableSleeves(const rules::Site& site, const CableRoute& route);

}  // namespace sumpwright::build
