#include "drawing/FieldLegend.h"

#include <algorithm>
#include <cmath>

#include "drawing/FieldParts.h"
#include "drawing/Hatch.h"
#include "drawing/Sketch.h"

namespace sumpwright::drawing {
namespace {

constexpr double kBar_mm = 4.2;
constexpr double kTick_mm = 0.8;
constexpr double kTargetTick_mm = 1.5;
constexpr double kKeyLine_mm = 6.6;  // length of the sample lines

/// Where a value stands on the bar: class by class alike, in between by its logarithm (a chance by
/// itself). Beyond the outer levels at their boxes' middles.
double placeOnBar(const FieldScale& scale, FieldKind kind, double value) {
  const std::size_t k = scale.classOf(value);
  const auto base = static_cast<double>(k);
  if (k == 0 || k == scale.levels.size()) return base + (value == scale.levels.back() ? 0.0 : 0.5);
  const double low = scale.levels[k - 1];
  const double high = scale.levels[k];
  if (kind == FieldKind::chance) return base + (value - low) / (high - low);
  return base + std::log(value / low) / std::log(high / low);
}

bool isLevel(const FieldScale& scale, double value) {
  return std::find(scale.levels.begin(), scale.levels.end(), value) != scale.levels.end();
}

class LegendBar {
 public:
  LegendBar(FieldKind kind, ThemeName name, double width_mm, const Voice& voice)
      : m_kind(kind),
        m_theme(theme(name)),
        m_scale(fieldScale(kind, name)),
        m_width(width_mm),
        m_step(width_mm / static_cast<double>(m_scale.colours.size())),
        m_voice(voice) {}

  DrawList drawn(double target, bool stale) {
    const double cap = m_voice.capHeight_mm(type::second);
    DrawList list{m_width, kBar_mm + kTargetTick_mm + 1.0 + 1.4 * cap, {}};
    Sketch sketch(list);
    sketch.tagged("scale");
    for (std::size_t k = 0; k < m_scale.colours.size(); ++k) {
      const Colour colour = m_scale.colours[k];
      sketch.fill(rectangle(m_step * static_cast<double>(k), 0.0, m_step, kBar_mm),
                  stale ? drained(colour, m_theme.paper) : colour);
    }
    sketch.outline(rectangle(0.125, 0.125, m_width - 0.25, kBar_mm - 0.25),
                   solid(m_theme.control_edge, 1.0));
    const double base = kBar_mm + kTargetTick_mm + 0.6 + cap;
    const double target_x = m_step * placeOnBar(m_scale, m_kind, target);
    const std::string bold = m_voice.say(levelWords(m_kind, target));
    const double half = m_voice.width_mm(bold, type::strong) / 2.0 + 1.0;
    for (std::size_t k = 0; k < m_scale.levels.size(); ++k) {
      if (m_scale.levels[k] == target) continue;
      const double x = m_step * static_cast<double>(k + 1);
      sketch.line({x, kBar_mm}, {x, kBar_mm + kTick_mm}, solid(m_theme.ink2, 1.0));
      const std::string words = m_voice.say(levelWords(m_kind, m_scale.levels[k]));
      const double own = m_voice.width_mm(words, type::second) / 2.0;
      if (std::abs(x - target_x) < half + own) continue;  // the target's own figure stands there
      sketch.text({std::min(x, m_width - own), base}, words, type::second, m_theme.ink2,
                  HAlign::centre);
    }
    // Within a class the tick runs through the bar, since no edge of a box shows it.
    sketch.line({target_x, isLevel(m_scale, target) ? kBar_mm : 0.4},
                {target_x, kBar_mm + kTargetTick_mm}, solid(m_theme.ink, 2.6));
    sketch.text({std::clamp(target_x, half, m_width - half), base}, bold, type::strong, m_theme.ink,
                HAlign::centre);
    return list;
  }

 private:
  FieldKind m_kind;
  const Theme& m_theme;
  const FieldScale& m_scale;
  double m_width;
  double m_step;
  const Voice& m_voice;
};

}  // namespace

DrawList fieldLegend(FieldKind kind, double target, ThemeName name, double width_mm,
                     const Voice& voice, bool stale) {
  return LegendBar(kind, name, width_mm, voice).drawn(target, stale);
}

DrawList targetKey(FieldKind kind, double target, bool dotted, ThemeName name, double width_mm,
                   const Voice& voice) {
  const Theme& t = theme(name);
  DrawList list{width_mm, 0.0, {}};
  Sketch sketch(list);
  sketch.tagged("key");
  const double left = kKeyLine_mm + 2.6;
  const auto row = [&](const Pen& pen, const base::Message& words) {
    const double cap = voice.capHeight_mm(type::body);
    const double y = list.height_mm + 0.6 + cap / 2.0;
    sketch.line({0.0, y}, {kKeyLine_mm, y}, pen);
    for (const std::string& line :
         wrap(voice, voice.say(words), type::body, std::max(10.0, width_mm - left))) {
      sketch.text({left, list.height_mm + 0.6 + cap}, line, type::body, t.ink2);
      list.height_mm += leading_mm(type::body);
    }
  };
  const base::Arg level = base::phrase("level", targetWords(kind, target));
  row(solid(t.ink, 3.0), base::Message("drawing.field.key-target", {level}));
  if (dotted) row(dottedTarget(t.ink), base::Message("drawing.field.key-likewise"));
  return list;
}

DrawList colourKey(FieldKind kind, ThemeName name, double width_mm, const Voice& voice) {
  constexpr double kHigh_mm = 2.4;
  const Theme& t = theme(name);
  const FieldScale& scale = fieldScale(kind, name);
  DrawList list{width_mm, 0.0, {}};
  Sketch sketch(list);
  sketch.tagged("key");
  const double left = kKeyLine_mm + 2.6;
  const auto row = [&](const char* id, const auto& sample) {
    const double cap = voice.capHeight_mm(type::body);
    const double top = list.height_mm + 0.6 + (cap - kHigh_mm) / 2.0;
    sample(std::max(0.0, top));
    for (const std::string& line :
         wrap(voice, voice.say(base::Message(id)), type::body, std::max(10.0, width_mm - left))) {
      sketch.text({left, list.height_mm + 0.6 + cap}, line, type::body, t.ink2);
      list.height_mm += leading_mm(type::body);
    }
  };
  row(kind == FieldKind::suction ? "drawing.field.key-stronger" : "drawing.field.key-likelier",
      [&](double top) {
        const double step = kKeyLine_mm / 3.0;
        const std::size_t last = scale.colours.size() - 1;
        for (int k = 0; k < 3; ++k) {
          const Colour& colour = scale.colours[last * static_cast<std::size_t>(k) / 2];
          sketch.fill(rectangle(k * step, top, step, kHigh_mm), colour);
        }
        sketch.outline(rectangle(0.125, top + 0.125, kKeyLine_mm - 0.25, kHigh_mm - 0.25),
                       solid(t.control_edge, 1.0));
      });
  row("drawing.field.key-bare", [&](double top) {
    const auto box = rectangle(0.125, top + 0.125, kKeyLine_mm - 0.25, kHigh_mm - 0.25);
    sketch.fill(box, t.room_hall);
    bareHatch(sketch, t, {box});
    sketch.outline(box, solid(t.control_edge, 1.0));
  });
  return list;
}

DrawList shareBar(const ShareOfFloor& share, ThemeName name, double width_mm) {
  constexpr double kInset_mm = 1.0;
  const Theme& t = theme(name);
  const FieldScale& scale = fieldScale(FieldKind::suction, name);
  const Colour colour = scale.colours[5];
  DrawList list{width_mm, kShareBar_mm, {}};
  Sketch sketch(list);
  sketch.tagged("share");
  const auto at = [&](double value) { return width_mm * std::clamp(value, 0.0, 1.0); };
  const double low = at(share.low);
  const double high = std::max(low, at(share.high));
  const double thick = kShareBar_mm - 2.0 * kInset_mm;
  sketch.fill(rectangle(0.0, kInset_mm, width_mm, thick), t.hairline);
  if (high > low) {
    sketch.fill(rectangle(low, kInset_mm, high - low, thick), scale.colours[1]);
    const double inset = std::min(0.15, (high - low) / 2.0);  // half a line of the hatch
    const auto lined = rectangle(low + inset, kInset_mm, high - low - 2.0 * inset, thick);
    for (const auto& line : hatch({lined}, {45.0, 1.0})) {
      sketch.line(line.a, line.b, solid(colour, 1.2));
    }
  }
  if (low > 0.0) sketch.fill(rectangle(0.0, kInset_mm, low, thick), colour);
  const double mark = std::clamp(at(share.predicted), 0.65, width_mm - 0.65);
  sketch.line({mark, 0.65}, {mark, kShareBar_mm - 0.65}, solid(t.paper, 5.0));
  sketch.line({mark, 0.4}, {mark, kShareBar_mm - 0.4}, solid(t.ink, 3.0));
  return list;
}

}  // namespace sumpwright::drawing
