#pragma once
// A Voice for tests without words or fonts: messages print plainly, letters have fixed widths, so
// that golden drawings do not change with sentences or fonts.
//
// A message of one quantity prints its number; one with other arguments the last part of its id and
// its arguments; "text" and "thing.named" the text alone; one without arguments the last part of
// its id. Widths: 0.35 of the size for narrow letters, 0.85 for wide ones, 0.58 for the others, 5 %
// more in bold (figures of this file's own).

#include "drawing/Voice.h"

namespace sumpwright::support {

class FixedVoice final : public drawing::Voice {
 public:
  std::string say(const base::Message& message) const override;
  double width_mm(const std::string& text, const drawing::Font& font) const override;
  double capHeight_mm(const drawing::Font& font) const override;
};

}  // namespace sumpwright::support
