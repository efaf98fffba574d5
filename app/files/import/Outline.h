#pragma once
// Outlines of buildings taken from drawings and maps: what the readers of this folder give.
//
// A reader never guesses which outline is the house: it lists them, largest first, and says what it
// left out and why. Nothing here knows a plan: the first outline becomes its ring when the user
// says so. All figures that bound an outline are our own.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/Message.h"
#include "geometry/Point.h"

namespace sumpwright::files {

/// The most that is read of a drawing or a map.
inline constexpr std::size_t kMaxImportBytes = 16U * 1024U * 1024U;
/// Corners nearer than this to each other are one; corners nearer to the straight line are none.
inline constexpr double kCornerTolerance_m = 0.001;
/// Longest side of an outline's upright box: beyond, the unit is likely wrong.
inline constexpr double kLargestOutline_m = 1000.0;
/// Smaller ones are columns, symbols, letters.
inline constexpr double kSmallestOutline_m2 = 1.0;
/// Corners stand on multiples of this, so that a job's figures read well.
inline constexpr double kOutlineGrid_m = 0.0001;
/// A round house drawn fine has some hundreds.
inline constexpr std::size_t kMostCorners = 1000;
/// Of one outline; more are left out.
inline constexpr std::size_t kMostHoles = 100;
/// As many are listed; the largest.
inline constexpr std::size_t kMostOutlines = 200;

struct Outline {
  geometry::Polygon outer;               ///< counter-clockwise; simple; metres
  std::vector<geometry::Polygon> holes;  ///< clockwise; simple; each within `outer`
  std::string name;                      ///< its layer or its name in the file; UTF-8
  double area_m2 = 0.0;                  ///< outer less holes
  /// The smallest other outline of the list that its first corner lies in: the inner face of a
  /// wall, a courtyard, or a house on a plot.
  std::optional<std::size_t> within;
};

struct ImportedOutlines {
  std::vector<Outline> outlines;  ///< largest first; may be empty: left_out says why
  /// Of the first outline's upright box, the lower left corner stands at {0, 0}; in the reader's
  /// frame it stands here.
  geometry::Point origin;
  std::vector<base::Message> left_out;  ///< ids "import.*", each with its count {n}
};

/// Takes rings as they come, keeps what can be a house, and says what became of the rest.
class OutlineList {
 public:
  /// Either turn; first corner repeated at the end or not; metres.
  void add(const geometry::Polygon& outer, const std::vector<geometry::Polygon>& holes,
           const std::string& name);
  /// Counts `n` more of what is left out for this reason; a message of the same id and arguments.
  void leaveOut(const base::Message& reason, std::int64_t n = 1);
  ImportedOutlines finish() &&;

 private:
  std::vector<Outline> m_found;
  std::vector<base::Message> m_reasons;
  std::vector<std::int64_t> m_counts;
};

/// Without corners that say nothing: repeated, or on the straight line of their neighbours
/// (kCornerTolerance_m). Begins with the first that is left. May come out empty.
geometry::Polygon withoutIdleCorners(const geometry::Polygon& ring);

}  // namespace sumpwright::files
