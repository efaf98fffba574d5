// A lane per rule, and the axis below them.

#include <algorithm>
#include <cmath>

#include "drawing/Bands.h"
#include "drawing/Hatch.h"
#include "drawing/Signs.h"
#include "drawing/TapeParts.h"

namespace sumpwright::drawing {
namespace {

constexpr double kHalfLine_mm = 1.65;  // of two lines of a wall's words, off their middle
constexpr double kInset_mm = 0.4;

const Font kLaneFont = type::second;

/// In a lane the refused hatch is lighter than in the verdict lane: the sum outranks its parts.
void laneArea(Sketch& sketch, const TapeContext& c, rules::State state, double left, double right,
              double top) {
  const auto area = rectangle(left, top + kInset_mm, right - left, kLane_mm - 2.0 * kInset_mm);
  if (state != rules::State::refused) return bandArea(sketch, c.theme, state, area, boxOf(area));
  sketch.fill(area, c.theme.refused.tint);
  Pen pen = solid(c.theme.refused.band, 1.0);
  pen.colour.a = 204;
  for (const auto& line : hatch({area}, {-45.0, 1.3})) sketch.line(line.a, line.b, pen);
}

const plan::Service* serviceOf(const TapeContext& c, const std::string& id) {
  for (const plan::Service& s : c.study.job().plan.services) {
    if (s.id == id) return &s;
  }
  return nullptr;
}

/// The thing itself as a span of the ring it is seen from: its own ranges, or its shape's ends
/// dropped square onto the wall.
std::optional<std::pair<double, double>> footOf(const TapeContext& c,
                                                const rules::FindingSpan& span) {
  if (span.thing_index < 0) return std::nullopt;
  const rules::Thing& t = c.study.site().things[static_cast<std::size_t>(span.thing_index)];
  double low = span.to_m;
  double high = span.from_m;
  const bool entry_only = serviceOf(c, t.id) != nullptr;
  for (const auto& shape : t.shapes) {
    if (entry_only && shape.size() > 1) continue;  // a buried run has no foot on the wall
    for (const Point& p : shape) {
      const perimeter::Place on = c.study.perimeter().nearestOn(span.ring, p);
      low = std::min(low, on.chainage_m);
      high = std::max(high, on.chainage_m);
    }
  }
  for (const rules::RingRange& r : t.ranges) {
    if (r.ring != span.ring) continue;
    low = std::min(low, r.from_m);
    high = std::max(high, r.to_m);
  }
  low = std::max(low, span.from_m);
  high = std::min(high, span.to_m);
  if (low > high) return std::nullopt;
  return std::pair{low, high};
}

Colour groundOf(const TapeContext& c) {
  return c.view.theme == ThemeName::paper ? c.theme.paper : c.theme.panel;
}

/// Sign and name, so that the sign need not be known; the sign alone where there is no room.
void signAndName(Sketch& sketch, const TapeContext& c, const plan::Service& service,
                 const std::string& words, double left, double right, double top) {
  constexpr double kSign_mm = 3.8;
  if (right - left < kSign_mm + 0.6) return;
  const double name = c.voice.width_mm(words, kLaneFont) + 0.6;
  const bool named = kSign_mm + name + 1.0 <= right - left;
  const double whole = named ? kSign_mm + name : kSign_mm;
  const double from = (left + right - whole) / 2.0;
  const double middle = top + kLane_mm / 2.0;
  sketch.fill(rectangle(from, top + kInset_mm, whole, kLane_mm - 2 * kInset_mm), groundOf(c));
  serviceSign(sketch, service.kind, c.theme.service(service.kind), {from + kSign_mm / 2.0, middle},
              0.75);
  if (!named) return;
  sketch.text({from + kSign_mm, middle + c.voice.capHeight_mm(kLaneFont) / 2.0 - 0.15}, words,
              kLaneFont, c.theme.ink);
}

void plate(Sketch& sketch, const TapeContext& c, const rules::FindingSpan& span, double left,
           double right, double top) {
  const double middle = top + kLane_mm / 2.0;
  const double centre = (left + right) / 2.0;
  const base::Message& label =
      span.finding.thing_label.id.empty() ? span.finding.reason : span.finding.thing_label;
  const std::string words = c.voice.say(label);
  const double width = c.voice.width_mm(words, kLaneFont);
  const Colour ground = groundOf(c);
  if (const plan::Service* service = serviceOf(c, span.finding.thing)) {
    return signAndName(sketch, c, *service, words, left, right, top);
  }
  if (width + 1.6 > right - left) return;  // dropped; hovering and the verdict still say it
  sketch.fill(rectangle(centre - width / 2 - 0.6, top + kInset_mm, width + 1.2,
                        kLane_mm - 2 * kInset_mm - 0.45),
              ground);
  sketch.text({centre, middle + c.voice.capHeight_mm(kLaneFont) / 2.0 - 0.15}, words, kLaneFont,
              c.theme.ink, HAlign::centre);
}

void laneHead(Sketch& sketch, const TapeContext& c, const Lane& lane, double top, bool decides) {
  if (decides) {
    sketch.fill(rectangle(0.0, top, c.view.width_mm, kLane_mm), c.theme.refused.tint);
  }
  const Font font{kLaneFont.size_pt, decides, false};
  const Colour colour = decides ? c.theme.refused.text : c.theme.ink;
  const double base = top + kLane_mm / 2.0 + c.voice.capHeight_mm(font) / 2.0;
  double room = c.view.label_mm - 2.4;
  if (lane.needed_m) {
    const std::string needed =
        c.voice.say(base::Message("drawing.lane.needed", {base::metres("needed", *lane.needed_m)}));
    sketch.text({c.view.label_mm - 1.6, base}, needed, type::small, c.theme.ink2, HAlign::right);
    room -= c.voice.width_mm(needed, type::small) + 1.2;
  }
  const std::string title =
      lane.title.empty() ? c.voice.say(base::Message("drawing.lane.discharge")) : lane.title;
  sketch.text({0.5, base}, shortened(c.voice, title, font, room), font, colour);
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    sketch.line({c.at.left(r), top + kLane_mm}, {c.at.right(r), top + kLane_mm},
                solid(c.theme.hairline, 1.0));
  }
}

void paintLane(Sketch& sketch, const TapeContext& c, std::size_t index, double top) {
  const Lane& lane = c.at.lanes()[index];
  sketch.tagged("lane " + lane.rule);
  laneHead(sketch, c, lane, top, lane.rule == c.view.deciding_rule);
  std::vector<const rules::FindingSpan*> spans;
  for (const rules::FindingSpan& span : c.study.spans()) {
    if (span.finding.rule == lane.rule) spans.push_back(&span);
  }
  for (const auto* span : spans) {
    laneArea(sketch, c, stateOf(span->finding.weight), c.at.xOf(span->ring, span->from_m),
             c.at.xOf(span->ring, span->to_m), top);
  }
  double name_from = 0.0;  // the rightmost plate so far, so that names do not run into each other
  std::stable_sort(spans.begin(), spans.end(), [](const auto* a, const auto* b) {
    return std::pair(a->ring, a->from_m + a->to_m) < std::pair(b->ring, b->from_m + b->to_m);
  });
  for (const auto* span : spans) {
    const double left = c.at.xOf(span->ring, span->from_m);
    const double right = c.at.xOf(span->ring, span->to_m);
    if (const auto foot = footOf(c, *span)) {
      const double a = c.at.xOf(span->ring, foot->first);
      const double b = std::max(c.at.xOf(span->ring, foot->second), a + 0.5);
      sketch.fill(rectangle(a, top + kLane_mm - kInset_mm - 0.75, b - a, 0.75),
                  c.theme.of(stateOf(span->finding.weight)).text);
    }
    if ((left + right) / 2.0 < name_from) continue;
    plate(sketch, c, *span, std::max(left, name_from), right, top);
    name_from = right;
  }
}

/// In metres or feet.
double figureStep(double mm_per_unit) {
  double step = 5.0;
  for (double next : {10.0, 20.0, 50.0, 100.0, 200.0, 500.0}) {
    if (step * mm_per_unit < 12.0) step = next;
  }
  return step;
}

void axisOfRing(Sketch& sketch, const TapeContext& c, int ring, double top) {
  const double unit_m = c.voice.markedIn_m();
  const double length = c.study.perimeter().length_m(ring) / unit_m;
  const double step = figureStep(c.at.mmPerM() * unit_m);
  sketch.line({c.at.left(ring), top}, {c.at.right(ring), top}, solid(c.theme.ink2, 1.1));
  for (double s = 0.0; s <= length + 1e-9; s += step / 5.0) {
    const double x = c.at.xOf(ring, s * unit_m);
    const bool major = std::abs(std::remainder(s, step)) < 1e-6;
    sketch.line({x, top}, {x, top + (major ? 1.2 : 0.7)}, solid(c.theme.ink2, 1.0));
    if (!major || !c.view.lanes) continue;
    sketch.text(
        {x, top + 1.8 + c.voice.capHeight_mm(type::small)},
        c.voice.say(base::Message(c.voice.inFeet() ? "drawing.chainage-feet" : "drawing.chainage",
                                  {base::number("chainage", s)})),
        type::small, c.theme.ink2, HAlign::centre);
  }
}

/// A wall's name and length on one line where they fit; on paper one above the other where they do
/// not; else the length on paper, where nothing else tells it, or the name on screen.
void wallWords(Sketch& sketch, const TapeContext& c, double left, double right, double y,
               const std::string& name, const std::string& both, const std::string& length) {
  const double cap = c.voice.capHeight_mm(type::small);
  const auto fits = [&](const std::string& words) {
    return c.voice.width_mm(words, type::small) <= right - left;
  };
  const auto put = [&](const std::string& words, double middle) {
    sketch.text({(left + right) / 2.0, middle + cap / 2.0}, words, type::small, c.theme.ink2,
                HAlign::centre);
  };
  const bool paper = c.view.theme == ThemeName::paper;
  if (fits(both)) {
    put(both, y);
  } else if (paper && fits(name) && fits(length)) {
    put(name, y - kHalfLine_mm);
    put(length, y + kHalfLine_mm);
  } else if (!paper && fits(name)) {
    put(name, y);
  } else if (fits(length)) {
    put(length, y);
  }
}

/// Letters in rings at the corners, wall names and lengths between them where they fit.
void cornersOfRing(Sketch& sketch, const TapeContext& c, int ring, double y, double from_y) {
  const auto& edges = c.study.perimeter().edges(ring);
  constexpr double kLetter_mm = 1.9;
  double last = -1e9;
  const auto letter = [&](double x, const std::string& name) {
    sketch.line({x, from_y}, {x, y - kLetter_mm}, dashed(c.theme.ink3, 1.0, {1.0, 2.5}));
    if (x - last < 2.0 * kLetter_mm + 0.3) return;
    last = x;
    sketch.ring({x, y}, kLetter_mm, solid(c.theme.ink2, 1.1),
                c.view.theme == ThemeName::paper ? c.theme.paper : c.theme.panel);
    sketch.text({x, y + c.voice.capHeight_mm(type::small) / 2.0}, name,
                Font{type::small.size_pt, true, false}, c.theme.ink, HAlign::centre);
  };
  for (const perimeter::Edge& e : edges) {
    letter(c.at.xOf(ring, e.start_m), c.study.perimeter().cornerLetter(ring, e.edge));
  }
  letter(c.at.right(ring), c.study.perimeter().cornerLetter(ring, 0));
  for (const perimeter::Edge& e : edges) {
    const double left = c.at.xOf(ring, e.start_m) + kLetter_mm + 0.8;
    const double right = c.at.xOf(ring, e.end_m()) - kLetter_mm - 0.8;
    const base::Arg wall = base::phrase("wall", c.study.perimeter().wallLabel(e));
    const base::Arg length = base::metres("length", e.length_m);
    wallWords(sketch, c, left, right, y, c.voice.say(base::Message("drawing.wall", {wall})),
              c.voice.say(base::Message("drawing.wall-length", {wall, length})),
              c.voice.say(base::Message("drawing.length", {length})));
  }
}

}  // namespace

void paintLanes(Sketch& sketch, const TapeContext& c) {
  for (std::size_t i = 0; i < c.at.lanes().size(); ++i) {
    if (const auto top = c.at.laneTop(i)) paintLane(sketch, c, i, *top);
  }
  if (c.view.lanes && c.at.hidden() > 0) {
    sketch.tagged("hidden");
    const std::string words = c.voice.say(base::Message(
        "drawing.lane.hidden", {base::count("count", static_cast<std::int64_t>(c.at.hidden()))}));
    sketch.text({0.5, c.at.axisTop() + 1.8 + c.voice.capHeight_mm(type::small)}, words, type::small,
                c.theme.ink2);
  }
}

void paintAxis(Sketch& sketch, const TapeContext& c) {
  sketch.tagged("axis");
  const double top = c.at.axisTop();
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    axisOfRing(sketch, c, r, top);
    cornersOfRing(sketch, c, r, top + (c.view.lanes ? 7.0 : 4.4),
                  c.view.lanes ? c.at.scoreTop() : top);
  }
}

}  // namespace sumpwright::drawing
