#pragma once
// The words of app/words in the sizes of the program's font. Needs a QGuiApplication (offscreen
// will do).

#include <QString>
#include <map>
#include <memory>

#include "drawing/Voice.h"
#include "words/Words.h"

namespace sumpwright::paint {

class QtVoice final : public drawing::Voice {
 public:
  explicit QtVoice(words::Units units) : m_units(units) {}
  /// For any closed list that holds `imperial`: the job's display units.
  template <class DisplayUnits>
  requires requires {
    DisplayUnits::imperial;
  } &&(!std::same_as<DisplayUnits, words::Units>)explicit QtVoice(DisplayUnits units)
      : m_units(units == DisplayUnits::imperial ? words::Units::imperial : words::Units::metric) {
  }

  std::string say(const base::Message& message) const override;
  double width_mm(const std::string& text, const drawing::Font& font) const override;
  double capHeight_mm(const drawing::Font& font) const override;
  bool inFeet() const override { return m_units == words::Units::imperial; }

 private:
  words::Units m_units;
};

/// Width of a line in millimetres; the same on every device.
double widthOf(const QString& text, const drawing::Font& font);

}  // namespace sumpwright::paint
