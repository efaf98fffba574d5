#pragma once
// Short lists as a person types them: entries parted by a semicolon (or a comma and a space).
//
//   layers          brick 0.103; cavity 0.10; block 100mm        outside to inside
//   ground levels   -0.15 at 0 paving; -0.30 at 4.20             level, place along the wall,
//   surface gaps            1.20 to 2.00; 3.40 to 4.00                   along a rising wall points
//   3.20 : 1.05; 3.20 : 4.00                     along +x : along +y
//
// Numbers are lengths of LengthText.h; levels and points may have a minus. Total: what is not
// understood is given back as typed.

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/Plan.h"
#include "tools/LengthText.h"

namespace sumpwright::tools {

template <class T>
struct ListReading {
  std::vector<T> entries;
  std::string wrong;  ///< first entry that is not understood
  bool ok() const { return wrong.empty(); }
};

/// A length that may have a minus before it ("-0.15", with a true minus too).
LengthReading readLevel(std::string_view text, BareUnit bare = BareUnit::metre);

ListReading<plan::Layer> readLayers(std::string_view text, BareUnit bare = BareUnit::metre);
ListReading<plan::GroundPoint> readGround(std::string_view text, BareUnit bare = BareUnit::metre);
ListReading<plan::Gap> readGaps(std::string_view text, BareUnit bare = BareUnit::metre);
ListReading<geometry::Point> readPoints(std::string_view text, BareUnit bare = BareUnit::metre);

/// A length as it would be typed.
using PrintLength = std::function<std::string(double metres)>;

// The other way; reading gives the list back to the precision of `print`.
std::string listText(const std::vector<plan::Layer>& layers, const PrintLength& print);
std::string listText(const std::vector<plan::GroundPoint>& points, const PrintLength& print);
std::string listText(const std::vector<plan::Gap>& gaps, const PrintLength& print);
std::string listText(const std::vector<geometry::Point>& points, const PrintLength& print);

}  // namespace sumpwright::tools
