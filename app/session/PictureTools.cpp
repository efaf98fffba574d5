// PictureDesk: its gestures on the plan.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "files/Underlay.h"
#include "session/PictureDesk.h"

namespace sumpwright::session {

namespace {

using geometry::Point;
using geometry::Vec;

/// Where the corners stand before they are dragged: so far in from the photo's edges (own figure).
constexpr double kInset = 0.2;

double degreesOf(Vec v) { return std::atan2(v.y, v.x) * 180.0 / std::numbers::pi; }

double roundedTo(double value, double step) { return std::round(value / step) * step; }

}  // namespace

std::optional<PictureDesk::Layer> PictureDesk::layer() const {
  if (underlay() == nullptr || !m_shown || !m_wanted) return std::nullopt;
  // Pixels of what was there before are not shown as what is there now.
  if (*m_wanted != wantedNow()) return std::nullopt;
  if (m_sampling && m_sample) return m_sample;
  Layer layer{*underlay(), &m_shown->halves, m_revision};
  if (m_tool == Tool::straighten) {
    layer.placed = placedPhoto();
  } else if (underlay()->straighten) {
    const plan::Straighten& s = *underlay()->straighten;
    const auto frame = files::straightFrame(m_shown->photo, {s.corners_px, s.width_m, s.height_m});
    if (!frame.ok()) return std::nullopt;
    layer.placed.m_per_px = frame->m_per_px;
  }
  if (!(layer.placed.m_per_px > 0.0)) return std::nullopt;
  return layer;
}

void PictureDesk::setAtWork(bool at_work) {
  if (at_work == m_at_work) return;
  m_at_work = at_work;
  if (!at_work) giveUp();
  Q_EMIT changed();
  touchMarks();
}

void PictureDesk::touchMarks() { Q_EMIT marksChanged(); }

void PictureDesk::dropTool() {
  m_tool = Tool::move;
  m_points.clear();
  m_corners_set = false;
  m_sampling = false;
  m_sample.reset();
  m_sample_image.clear();
  m_move_from.reset();
}

void PictureDesk::begin(Tool tool) {
  if (underlay() == nullptr) return;
  giveUp();
  m_tool = tool;
  if (tool == Tool::straighten) {
    const auto& known = underlay()->straighten;
    m_width_m = known ? known->width_m : 0.0;
    m_height_m = known ? known->height_m : 0.0;
    if (m_shown && m_wanted == wantedNow()) beginCorners();
  }
  m_told.reset();
  follow();
  touchMarks();
}

/// As they were set last, or somewhere in sight.
void PictureDesk::beginCorners() {
  m_corners_set = true;
  if (underlay()->straighten) {
    m_corners = tools::FourCorners(underlay()->straighten->corners_px);
  } else {
    const double w = m_shown->photo.width();
    const double h = m_shown->photo.height();
    const double left = kInset * w;
    const double top = kInset * h;
    m_corners =
        tools::FourCorners({{{left, top}, {w - left, top}, {w - left, h - top}, {left, h - top}}});
  }
  touchMarks();
}

void PictureDesk::giveUp() {
  cancelMove();
  if (m_tool == Tool::move) return;
  dropTool();
  m_told.reset();
  follow();
  touchMarks();
}

/// The photo on the plan while its corners are set: where it is, or, straightened before, so that
/// the first side of the rectangle lies where it lay.
plan::Underlay PictureDesk::placedPhoto() const {
  plan::Underlay placed = *underlay();
  if (!placed.straighten) return placed;
  const plan::Straighten s = *placed.straighten;
  const auto frame = files::straightFrame(m_shown->photo, {s.corners_px, s.width_m, s.height_m});
  if (!frame.ok()) return placed;
  placed.m_per_px = frame->m_per_px;
  const Point kept = files::planPoint(placed, frame->first_corner_px);
  const Vec side = s.corners_px[1] - s.corners_px[0];
  placed.straighten.reset();
  placed.m_per_px = s.width_m / geometry::norm(side);
  placed.turn_deg = std::remainder(placed.turn_deg - degreesOf({side.x, -side.y}), 360.0);
  placed.at_m = placed.at_m + (kept - files::planPoint(placed, s.corners_px[0]));
  return placed;
}

bool PictureDesk::mayMove() const {
  return isAtWork() && m_tool == Tool::move && !underlay()->locked && underlay()->shown &&
         layer().has_value();
}

void PictureDesk::beginMove(Point at) {
  if (!mayMove()) return;
  m_move_from = at;
  m_before_move = *underlay();
  m_moved = {};
  m_session.beginPreview();
}

void PictureDesk::moveTo(Point at) {
  if (!m_move_from) return;
  if (!m_session.isPreviewing()) return cancelMove();  // undone under the hand
  m_moved = at - *m_move_from;
  plan::Job live = m_session.jobBeforePreview();
  live.plan.underlay = m_before_move;
  live.plan.underlay->at_m = m_before_move.at_m + m_moved;
  m_session.preview(std::move(live));
}

void PictureDesk::finishMove() {
  if (!m_move_from) return;
  m_move_from.reset();
  m_session.finishPreview(tr("Move the picture"));
  touchMarks();
}

void PictureDesk::cancelMove() {
  if (!m_move_from) return;
  m_move_from.reset();
  m_session.cancelPreview();
  touchMarks();
}

void PictureDesk::nudge(Vec by_m) {
  if (!mayMove() || m_move_from) return;
  plan::Underlay moved = *underlay();
  moved.at_m = moved.at_m + by_m;
  put(tr("Move the picture"), moved, gestureOf(Small::nudge));
}

void PictureDesk::turnTo(double degrees) {
  const auto now = layer();
  if (underlay() == nullptr || !now || !std::isfinite(degrees)) return;
  plan::Underlay turned = *underlay();
  turned.turn_deg = std::remainder(degrees, 360.0);
  if (turned.turn_deg == underlay()->turn_deg) return;
  const QImage& image = now->halves->front();
  const Point middle{0.5 * image.width(), 0.5 * image.height()};
  plan::Underlay placed = now->placed;
  const Point stays = files::planPoint(placed, middle);
  placed.turn_deg = turned.turn_deg;
  turned.at_m = turned.at_m + (stays - files::planPoint(placed, middle));
  put(tr("Turn the picture"), turned, gestureOf(Small::turn));
}

bool PictureDesk::applyScale(double length_m, Lie lie) {
  const auto line = m_points.line();
  if (underlay() == nullptr || !line) return false;
  std::optional<double> direction;
  if (lie != Lie::as_it_is) {
    // To the nearer of the two ways it can lie.
    const double now = degreesOf(line->b - line->a);
    const double first = lie == Lie::level ? 0.0 : 90.0;
    direction = first + roundedTo(now - first, 180.0);
  }
  const auto scaled = files::scaledTo(*underlay(), line->a, line->b, length_m, direction);
  if (!scaled) return false;
  if (!put(tr("Scale the picture"), *scaled)) return false;
  giveUp();
  return true;
}

plan::Straighten PictureDesk::rectangle() const {
  return {m_corners.corners(), m_width_m, m_height_m};
}

void PictureDesk::setSides(double width_m, double height_m) {
  if (width_m == m_width_m && height_m == m_height_m) return;
  m_width_m = width_m;
  m_height_m = height_m;
  if (m_sampling) setSampling(false);
  Q_EMIT changed();
}

bool PictureDesk::mayStraighten() const {
  return m_tool == Tool::straighten && m_corners_set && m_shown && m_corners.isProper() &&
         m_width_m > 0.0 && m_height_m > 0.0;
}

bool PictureDesk::showsCorners() const {
  return m_tool == Tool::straighten && m_corners_set && !m_sampling && layer().has_value();
}

void PictureDesk::setSampling(bool sampling) {
  if (sampling && !mayStraighten()) sampling = false;
  if (sampling == m_sampling) return;
  if (sampling) {
    auto made = straightSample(*m_shown, rectangle());
    if (!made.ok()) {
      m_problems = made.problems();
      Q_EMIT changed();
      return;
    }
    m_sample_image = {made->image};
    const plan::Underlay photo = placedPhoto();
    plan::Underlay straight = *underlay();
    straight.m_per_px = made->m_per_px;
    const Point kept = files::planPoint(photo, m_corners.corners()[0]);
    straight.at_m = straight.at_m + (kept - files::planPoint(straight, made->first_corner_px));
    m_sample = Layer{straight, &m_sample_image, ++m_revision};
  } else {
    m_sample.reset();
    ++m_revision;
  }
  m_sampling = sampling;
  Q_EMIT changed();
  Q_EMIT layerChanged();
}

bool PictureDesk::applyStraighten() {
  if (!mayStraighten()) return false;
  const plan::Underlay photo = placedPhoto();
  const plan::Straighten s = rectangle();
  const auto straight =
      files::straightenedBy(photo, m_shown->photo, {s.corners_px, s.width_m, s.height_m});
  if (!straight.ok()) {
    m_problems = straight.problems();
    Q_EMIT changed();
    return false;
  }
  // It lies as the picture lay, its first corner where the photo has it now.
  plan::Underlay laid = *straight;
  const auto frame = files::straightFrame(m_shown->photo, {s.corners_px, s.width_m, s.height_m});
  laid.turn_deg = underlay()->turn_deg;
  const Point kept = files::planPoint(photo, s.corners_px[0]);
  laid.at_m = laid.at_m + (kept - files::planPoint(laid, frame->first_corner_px));
  m_problems.clear();
  if (!put(tr("Straighten the picture"), laid)) return false;
  giveUp();
  return true;
}

void PictureDesk::applyUnstraighten() {
  if (underlay() == nullptr || !underlay()->straighten || !m_shown) return;
  const plan::Underlay photo = placedPhoto();
  if (put(tr("Take the photo as it is"), photo)) giveUp();
}

}  // namespace sumpwright::session
