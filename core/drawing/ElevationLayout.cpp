// Where things stand on the unrolled elevation.

#include <algorithm>
#include <cmath>

#include "build/Levels.h"
#include "drawing/ElevationParts.h"

namespace sumpwright::drawing {
namespace {

constexpr double kRingGap_m = 1.5;
constexpr double kUsualEaves_m = 2.4;  // drawn where nobody measured them
constexpr double kHeadRoom_m = 0.3;    // from the highest opening to eaves nobody measured
constexpr double kPitch = 0.35;        // rise of a gable over its width: some 35 degrees
constexpr double kMostRoof_m = 2.4;    // what is drawn of a high roof
constexpr double kUsualRoof_m = 1.2;   // where no gable is marked
constexpr double kMost_mm_per_m = 14.0;
constexpr double kUnderWalls_mm = 13.5;  // lane, letters and names

double startOf(const siting::Study& study, int ring) {
  double start = 0.0;
  for (int r = 0; r < ring; ++r) start += study.perimeter().length_m(r) + kRingGap_m;
  return start;
}

double usualEaves(const plan::Plan& plan) {
  double eaves = kUsualEaves_m;
  for (const plan::Opening& o : plan.openings) {
    if (!plan::isOfRoof(o.kind) && o.head_m) eaves = std::max(eaves, *o.head_m + kHeadRoom_m);
  }
  return eaves;
}

bool isGable(const siting::Study& study, const perimeter::Edge& e) {
  return study.perimeter().wall(e).elevation == plan::Elevation::gable;
}

double roofRise(const siting::Study& study) {
  double rise = 0.0;
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : study.perimeter().edges(r)) {
      if (isGable(study, e)) rise = std::max(rise, kPitch * e.length_m);
    }
  }
  return rise > 0.0 ? std::min(rise, kMostRoof_m) : kUsualRoof_m;
}

}  // namespace

std::vector<std::vector<WallProfile>> wallProfiles(const siting::Study& study) {
  const double usual = usualEaves(study.job().plan);
  const double rise = roofRise(study);
  std::vector<std::vector<WallProfile>> rings;
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    auto& walls = rings.emplace_back();
    for (const perimeter::Edge& e : study.perimeter().edges(r)) {
      const auto eaves = build::eavesOf(study.site(), e);
      const bool gable = isGable(study, e);
      walls.push_back({eaves.value_or(usual), !eaves,
                       gable ? std::min(kPitch * e.length_m, kMostRoof_m) : rise, gable});
    }
  }
  return rings;
}

geometry::Interval heightsOf(const siting::Study& study) {
  double top = 0.0;
  double bottom = -0.6;
  const auto profiles = wallProfiles(study);
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : study.perimeter().edges(r)) {
      const auto& p = profiles[static_cast<std::size_t>(r)][static_cast<std::size_t>(e.edge)];
      top = std::max(top, p.eaves_m + p.roof_m);
      for (const auto& at : build::groundAlong(study.site(), e).points) {
        bottom = std::min(bottom, at.level_m - 0.6);
      }
    }
  }
  for (const plan::Opening& o : study.job().plan.openings)
    top = std::max(top, o.head_m.value_or(0.0));
  if (study.job().house.footing_top_low_m) {
    bottom = std::min(bottom, *study.job().house.footing_top_low_m - 0.3);
  }
  for (const plan::Sump& s : study.job().design.sumps) {
    if (s.discharge) top = std::max(top, s.discharge->height_m + 0.5);
  }
  return {std::max(bottom, -3.0), std::min(top, 15.0) + 0.2};
}

ElevationContext::ElevationContext(const siting::Study& s, const ElevationView& v, const Voice& w)
    : study(s),
      view(v),
      voice(w),
      theme(drawing::theme(v.theme)),
      profiles(wallProfiles(s)),
      bottom_m(v.strip ? -0.25 : heightsOf(s).from) {}

double ElevationContext::x(int ring, double chainage_m) const {
  return xOf(startOf(study, ring) + chainage_m);
}

bool ElevationContext::sees(const perimeter::Edge& e) const {
  return x(e.ring, e.end_m()) > view.label_mm && x(e.ring, e.start_m) < view.width_mm;
}

double unrolled_m(const siting::Study& study, perimeter::Place place) {
  return startOf(study, place.ring) + study.perimeter().wrapped(place).chainage_m;
}

double unrolledLength_m(const siting::Study& study) {
  const int last = study.perimeter().ringCount() - 1;
  return startOf(study, last) + study.perimeter().length_m(last);
}

ElevationView elevationStrip(const siting::Study& study, double width_mm, double height_mm,
                             ThemeName theme) {
  constexpr double kEdge_mm = 3.0;   // half a corner's letter
  constexpr double kNames_mm = 9.5;  // lane, letters and names
  ElevationView view;
  view.width_mm = width_mm;
  view.height_mm = height_mm;
  view.theme = theme;
  view.strip = true;
  view.head_mm = 0.8;
  view.label_mm = kEdge_mm;
  const auto heights = heightsOf(study);
  const double across = (width_mm - 2.0 * kEdge_mm) / unrolledLength_m(study);
  const double up = (height_mm - kNames_mm - view.head_mm) / (heights.to + 0.25);
  view.mm_per_m = std::max(0.2, std::min(across, up));
  const double spare = (width_mm - 2.0 * kEdge_mm) / view.mm_per_m - unrolledLength_m(study);
  view.left_m = -0.5 * std::max(0.0, spare);
  view.top_m = heights.to;
  const double used = (heights.to + 0.25) * view.mm_per_m + kNames_mm;
  view.head_mm = std::max(0.8, 0.5 * (height_mm - used));
  return view;
}

ElevationView elevationAbout(const siting::Study& study, perimeter::Place place, double width_mm,
                             double height_mm, ThemeName theme, double zoom) {
  ElevationView view;
  view.width_mm = width_mm;
  view.height_mm = height_mm;
  view.theme = theme;
  const auto heights = heightsOf(study);
  const double room = height_mm - view.head_mm - kUnderWalls_mm;
  const double fits = std::clamp(room / (heights.to - heights.from), 0.5, kMost_mm_per_m);
  view.mm_per_m = std::clamp(fits * zoom, 0.5, 60.0);
  view.top_m = heights.to;
  const double used = (heights.to - heights.from) * view.mm_per_m;
  if (used < room) view.head_mm += 0.4 * (room - used);
  const double shown = (width_mm - view.label_mm - 4.0) / view.mm_per_m;
  const double length = unrolledLength_m(study);
  if (length <= shown) {
    view.left_m = -0.5 * (shown - length);
  } else {
    constexpr double kBeyond_m = 0.4;
    view.left_m =
        std::clamp(unrolled_m(study, place) - 0.5 * shown, -kBeyond_m, length - shown + kBeyond_m);
  }
  return view;
}

geometry::Interval elevationShown(const ElevationView& view) {
  return {view.left_m, view.left_m + (view.width_mm - view.label_mm) / view.mm_per_m};
}

Point elevationPoint(const siting::Study& study, const ElevationView& view, ElevationSpot spot) {
  return {view.label_mm + (unrolled_m(study, spot.place) - view.left_m) * view.mm_per_m,
          view.head_mm + (view.top_m - spot.height_m) * view.mm_per_m};
}

ElevationSpot elevationSpot(const siting::Study& study, const ElevationView& view, Point at_mm) {
  const double along = view.left_m + (at_mm.x - view.label_mm) / view.mm_per_m;
  ElevationSpot spot;
  spot.height_m = view.top_m - (at_mm.y - view.head_mm) / view.mm_per_m;
  double nearest = 1e300;
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    const double start = startOf(study, r);
    const double length = study.perimeter().length_m(r);
    const double on = std::clamp(along - start, 0.0, length);
    const double off = std::abs(along - start - on);
    if (off >= nearest) continue;
    nearest = off;
    // The far end is the near one of the same ring: stay on the side that was meant.
    spot.place = {r, on >= length ? std::nextafter(length, 0.0) : on};
  }
  return spot;
}

}  // namespace sumpwright::drawing
