#include "drawing/Bands.h"

#include <algorithm>

#include "drawing/Clip.h"
#include "drawing/Hatch.h"

namespace sumpwright::drawing {
namespace {

constexpr double kEndRing_mm = 4.2 * kPx;
constexpr double kClearInset_mm = 0.5 * kPx;  // 7 px of 8

Pen dotted(const Colour& colour) {
  Pen pen = dashed(colour, 1.4, {0.01, 3.0});
  pen.cap = Cap::round;
  return pen;
}

void lines(Sketch& sketch, const std::vector<Point>& area, const HatchStyle& style,
           const Pen& pen) {
  for (const auto& line : hatch({area}, style)) sketch.line(line.a, line.b, pen);
}

void arrow(Sketch& sketch, const Theme& theme, const BandEnd& end, double depth_mm) {
  const Vec across = geometry::left(end.into);
  const double half = 5.2 * kPx;
  const std::vector<Point> head{end.at + half * across, end.at - half * across,
                                end.at + depth_mm * end.into};
  sketch.fill(head, theme.paper);
  sketch.outline(head, solid(theme.advised.band, 1.8));
}

void halfRing(Sketch& sketch, const Theme& theme, const BandEnd& end, double radius_mm) {
  const Vec across = geometry::left(end.into);
  std::vector<Point> half;
  for (int i = -6; i <= 6; ++i) {
    const double angle = 15.0 * i * 3.14159265358979323846 / 180.0;
    half.push_back(end.at + radius_mm * (std::sin(angle) * across) -
                   radius_mm * (std::cos(angle) * end.into));
  }
  sketch.fill(half, theme.paper);
  sketch.path(half, solid(theme.not_proven.band, 1.8));
}

struct Band {
  siting::Run run;
  std::vector<Point> area;
  std::vector<BandEnd> ends;
  double length_mm = 0.0;
};

Band bandOf(const siting::Run& run, const PageRing& ring) {
  const double inset = run.state == rules::State::clear ? kClearInset_mm : 0.0;
  Band band{run,
            ring.strip(run.from_m, run.to_m, kBandNear_mm + inset, kBandFar_mm - inset),
            {},
            (run.to_m - run.from_m) * ring.mm_per_m};
  if (run.to_m - run.from_m >= ring.length_m - 1e-9) return band;  // all round: no ends
  // strip() runs out along the far side and back along the near one, so its ends are known.
  const std::size_t n = band.area.size();
  if (n < 4) return band;
  const auto middle = [&](std::size_t i, std::size_t j) {
    return geometry::lerp(band.area[i], band.area[j], 0.5);
  };
  band.ends.push_back({middle(0, n - 1), unit(band.area[1] - band.area[0])});
  band.ends.push_back(
      {middle(n / 2 - 1, n / 2), unit(band.area[n / 2 - 2] - band.area[n / 2 - 1])});
  return band;
}

}  // namespace

void bandArea(Sketch& sketch, const Theme& theme, rules::State state,
              const std::vector<Point>& area, const Box& view) {
  const StateColours& colours = theme.of(state);
  const std::vector<Point> seen = clipped(area, grown(view, 2.0));
  switch (state) {
    case rules::State::clear:
      sketch.fill(area, colours.band);
      break;
    case rules::State::advised_against:
      sketch.fill(area, colours.tint);
      lines(sketch, seen, {45.0, 2.0}, solid(colours.band, 1.8));
      sketch.outline(area, solid(colours.band, 1.2));
      break;
    case rules::State::not_proven: {
      // Dots this small look fainter than their colour: in the dark they take the words'.
      const Colour& dot = theme.paper.r < 128 ? colours.text : colours.band;
      sketch.fill(area, colours.tint);
      for (const Point& p : dots(seen, 2.2, 0.35)) sketch.disc(p, 0.95 * kPx, dot);
      sketch.outline(area, dotted(dot));
      break;
    }
    case rules::State::refused:
      sketch.fill(area, colours.tint);
      lines(sketch, seen, {-45.0, 1.15}, solid(colours.band, 1.25));
      break;
  }
}

void bandEnds(Sketch& sketch, const Theme& theme, rules::State state,
              const std::vector<BandEnd>& ends, double length_mm) {
  if (ends.empty()) return;
  const bool cramped = length_mm < 2.0 * kEndRing_mm;
  switch (state) {
    case rules::State::clear:
      if (cramped && ends.size() == 2) {
        sketch.ring(geometry::lerp(ends[0].at, ends[1].at, 0.5), kEndRing_mm,
                    solid(theme.clear.band, 2.2), theme.paper);
        break;
      }
      for (const BandEnd& end : ends) {
        sketch.ring(end.at, kEndRing_mm, solid(theme.clear.band, 2.2), theme.paper);
      }
      break;
    case rules::State::advised_against:
      for (const BandEnd& end : ends) {
        arrow(sketch, theme, end, std::min(8.5 * kPx, 0.45 * length_mm));
      }
      break;
    case rules::State::not_proven:
      if (length_mm < 1.2) break;  // nothing of the band would be left between them
      for (const BandEnd& end : ends) {
        halfRing(sketch, theme, end, std::min(kEndRing_mm, 0.45 * length_mm));
      }
      break;
    case rules::State::refused:
      break;
  }
}

void bandSample(Sketch& sketch, const Theme& theme, rules::State state, double left, double right,
                double middle_y, double height_mm) {
  const double inset = state == rules::State::clear ? kClearInset_mm : 0.0;
  const auto area =
      rectangle(left, middle_y - height_mm / 2.0 + inset, right - left, height_mm - 2.0 * inset);
  bandArea(sketch, theme, state, area, boxOf(area));
  bandEnds(sketch, theme, state, {{{left, middle_y}, {1.0, 0.0}}, {{right, middle_y}, {-1.0, 0.0}}},
           right - left);
}

void bands(Sketch& sketch, const Theme& theme, const siting::Study& study,
           const std::vector<PageRing>& rings, const Box& view) {
  std::vector<Band> all;
  for (const siting::Run& run : study.runs()) {
    all.push_back(bandOf(run, rings[static_cast<std::size_t>(run.ring)]));
  }
  // The wall's normal state lies under the others, and every end mark on top of all areas.
  std::stable_sort(all.begin(), all.end(),
                   [](const Band& a, const Band& b) { return a.run.state > b.run.state; });
  sketch.tagged("band");
  for (const Band& band : all) bandArea(sketch, theme, band.run.state, band.area, view);
  for (const Band& band : all) {
    bandEnds(sketch, theme, band.run.state, band.ends, band.length_mm);
  }
}

}  // namespace sumpwright::drawing
