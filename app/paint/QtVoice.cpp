#include "paint/QtVoice.h"

#include <QFontMetricsF>
#include <array>

#include "paint/Painting.h"

namespace sumpwright::paint {
namespace {

// Measured large and scaled down: unhinted widths are proportional to the size.
constexpr int kMeasured_px = 200;

/// One set of metrics a style, made at first use; there are four.
const QFontMetricsF& metricsOf(const drawing::Font& font) {
  thread_local std::array<std::unique_ptr<QFontMetricsF>, 4> cache;
  auto& slot = cache[(font.bold ? 1U : 0U) + (font.italic ? 2U : 0U)];
  if (!slot) {
    QFont large = drawingFont(font);
    large.setPixelSize(kMeasured_px);
    slot = std::make_unique<QFontMetricsF>(large);
  }
  return *slot;
}

double scaleOf(const drawing::Font& font) { return font.size_pt * 25.4 / 72.0 / kMeasured_px; }

}  // namespace

std::string QtVoice::say(const base::Message& message) const {
  return words::say(message, m_units);
}

double QtVoice::width_mm(const std::string& text, const drawing::Font& font) const {
  return widthOf(QString::fromStdString(text), font);
}

double QtVoice::capHeight_mm(const drawing::Font& font) const {
  return metricsOf(font).capHeight() * scaleOf(font);
}

double widthOf(const QString& text, const drawing::Font& font) {
  return metricsOf(font).horizontalAdvance(text) * scaleOf(font);
}

}  // namespace sumpwright::paint
