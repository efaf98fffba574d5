#pragma once
// Where things stand on the wall tape. From the top: score curve, verdict lane, one lane per rule,
// axis with figures, corner letters and wall names.

#include <optional>

#include "drawing/Box.h"
#include "drawing/TapeDrawing.h"

namespace sumpwright::drawing {

/// One lane: a rule of the sheet, or a built-in note whose rule index is -1.
struct Lane {
  std::string rule;
  std::string title;  ///< from the sheet; empty for built-in notes
  std::optional<double> needed_m;
};

class TapeLayout {
 public:
  TapeLayout(const siting::Study& study, const TapeView& view);

  double x(perimeter::Place place) const;
  /// Not wrapped: to_m of a run may pass the ring's end and is cut there by the caller.
  double xOf(int ring, double chainage_m) const;
  perimeter::Place place(double x_mm) const;
  double left(int ring) const { return xOf(ring, 0.0); }
  double right(int ring) const;
  double mmPerM() const { return m_mm_per_m; }

  const std::vector<Lane>& lanes() const { return m_lanes; }
  /// Top of a lane as drawn; nothing when it is out of view.
  std::optional<double> laneTop(std::size_t lane) const;
  /// The lane that is kept in view although it would be scrolled out; nothing if none is.
  std::optional<std::size_t> pinned() const;
  std::optional<std::size_t> laneAt(double y_mm) const;
  std::size_t hidden() const;  ///< lanes out of view

  double scoreTop() const { return m_view.reach ? 4.0 : 2.0; }
  double scoreBottom() const;
  double verdictTop() const;
  double verdictHeight() const { return m_view.lanes ? 4.0 : 5.0; }
  double lanesTop() const { return verdictTop() + verdictHeight() + (m_view.lanes ? 0.75 : 0.0); }
  double lanesBottom() const { return axisTop() - 0.5; }
  double axisTop() const;
  double fullHeight() const;

 private:
  double lanesRoom() const;
  double scroll() const;

  const siting::Study& m_study;
  const TapeView& m_view;
  double m_mm_per_m = 1.0;
  std::vector<double> m_left;  ///< by ring
  std::vector<Lane> m_lanes;
};

inline constexpr double kLane_mm = 4.25;
inline constexpr double kRingGap_mm = 5.0;
inline constexpr double kAxis_mm = 9.5;
inline constexpr double kReachTape_mm = 34.0;  ///< height of a tape of reach that shows it well

}  // namespace sumpwright::drawing
