#pragma once
// How a drawing gets its words and their sizes. The core holds no sentences: the program passes
// in a Voice made of app/words and real font metrics; tests pass a fixed table of letter widths.

#include <string>
#include <vector>

#include "base/Message.h"
#include "drawing/DrawList.h"

namespace sumpwright::drawing {

class Voice {
 public:
  virtual ~Voice() = default;
  virtual std::string say(const base::Message& message) const = 0;
  virtual double width_mm(const std::string& text, const Font& font) const = 0;
  /// Height of capitals; line spacing is 1.35 times the font size.
  virtual double capHeight_mm(const Font& font) const = 0;
  /// Lengths are said in feet and inches: axes and scale bars are marked in feet then.
  virtual bool inFeet() const { return false; }
  /// Of the unit that axes are marked in, metres.
  double markedIn_m() const;

 protected:
  Voice() = default;
  Voice(const Voice&) = default;
  Voice& operator=(const Voice&) = default;
};

/// Greedy line breaking at spaces, but not between a figure and its unit; a word longer than the
/// width is broken between letters, so that no line is wider unless a single letter is.
std::vector<std::string> wrap(const Voice& voice, const std::string& text, const Font& font,
                              double width_mm);

}  // namespace sumpwright::drawing
