#include "session/PictureLoad.h"

#include <algorithm>
#include <cmath>

#include "files/Underlay.h"
#include "files/UnderlayBeside.h"

namespace sumpwright::session {

namespace {

/// No smaller than what a small window shows (own figure).
constexpr int kSmallestHalf_px = 1000;
constexpr double kSamplePixels = 1e6;  // contract

std::vector<QImage> halvesOf(const QImage& image) {
  std::vector<QImage> halves{image};
  while (std::max(halves.back().width(), halves.back().height()) > kSmallestHalf_px) {
    const QSize half = (halves.back().size() + QSize(1, 1)) / 2;
    halves.push_back(halves.back()
                         .scaled(half, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                         .convertToFormat(QImage::Format_ARGB32_Premultiplied));
  }
  return halves;
}

files::KnownRectangle rectangleOf(const plan::Straighten& s) {
  return {s.corners_px, s.width_m, s.height_m};
}

}  // namespace

PictureWanted wantedOf(const plan::Underlay& underlay, const std::string& job_file) {
  PictureWanted wanted{files::besideJob(underlay.path, job_file), underlay.page,
                       underlay.straighten};
  if (wanted.straighten && wanted.straighten->width_m > 0.0) {
    // To nine digits, so that a picture scaled and scaled back is the same one.
    const double shape = wanted.straighten->height_m / wanted.straighten->width_m;
    wanted.straighten->height_m = std::round(shape * 1e9) / 1e9;
    wanted.straighten->width_m = 1.0;
  }
  return wanted;
}

std::optional<base::Result<PictureReady>> readPicture(const PictureWanted& wanted,
                                                      const std::optional<PictureReady>& photo,
                                                      const std::atomic<bool>& given_up) {
  PictureReady ready;
  QImage image;
  if (photo) {
    ready = *photo;
    image = photo->halves.front();
  } else {
    const auto read = files::loadPicture(wanted.file, wanted.page);
    if (!read.ok()) return base::Result<PictureReady>(read.problems());
    image = read->image;
    ready.photo = image.size();
    ready.pages = read->pages;
    ready.reduced = read->reduced;
    ready.sheet_m_per_px = read->sheet_m_per_px;
  }
  if (given_up) return std::nullopt;
  if (wanted.straighten) {
    auto straight = files::straightened(image, rectangleOf(*wanted.straighten));
    if (!straight.ok()) return base::Result<PictureReady>(straight.problems());
    image = straight->image;
    if (given_up) return std::nullopt;
  }
  ready.halves = halvesOf(image);
  if (given_up) return std::nullopt;
  return base::Result<PictureReady>(std::move(ready));
}

base::Result<StraightSample> straightSample(const PictureReady& photo,
                                            const plan::Straighten& rectangle) {
  // From the half that has about as many pixels as are wanted.
  std::size_t level = 0;
  const auto pixels = [](const QImage& i) { return 1.0 * i.width() * i.height(); };
  while (level + 1 < photo.halves.size() && pixels(photo.halves[level]) > 4.0 * kSamplePixels) {
    ++level;
  }
  const QImage& from = photo.halves[level];
  files::KnownRectangle known = rectangleOf(rectangle);
  for (geometry::Point& p : known.corners_px) {
    p.x *= 1.0 * from.width() / photo.photo.width();
    p.y *= 1.0 * from.height() / photo.photo.height();
  }
  const auto frame = files::straightFrame(from.size(), known);
  if (!frame.ok()) return frame.problems();
  const double whole = 1.0 * frame->size.width() * frame->size.height();
  const double density = std::min(1.0, std::sqrt(kSamplePixels / whole)) / frame->m_per_px;
  auto straight = files::straightened(from, known, density);
  if (!straight.ok()) return straight.problems();
  return StraightSample{straight->image, straight->frame.m_per_px, straight->frame.first_corner_px};
}

}  // namespace sumpwright::session
