#include "files/UnderlayPicture.h"

#include <QBuffer>
#include <QImageReader>
#include <QPainter>
#include <QPdfDocument>
#include <QSvgRenderer>
#include <algorithm>
#include <cmath>

#include "files/JobFile.h"

namespace sumpwright::files {

namespace {

using base::Message;

constexpr double kPointsPerInch = 72.0;
constexpr double kSvgPxPerInch = 96.0;
constexpr double kMetrePerInch = 0.0254;

base::Problem underlayTrouble(const char* id, const std::string& path,
                              std::vector<base::Arg> more = {}) {
  Message message(id, {base::text("file", path)});
  for (base::Arg& arg : more) message.args.push_back(std::move(arg));
  return {message, "", base::Gravity::unreadable};
}

base::Problem pictureTooLarge(const std::string& path) {
  return underlayTrouble("underlay.too-large", path,
                         {base::number("most", std::round(kMostPixelsRead / 1e6)),
                          base::count("side", kLongestSide_px)});
}

base::Problem noSuchPage(const std::string& path, int page, int pages) {
  return underlayTrouble("underlay.page", path,
                         {base::count("page", page + 1), base::count("pages", pages)});
}

/// Of a sheet: at the usual density, or as many pixels as are allowed.
struct SheetSize {
  QSize px;
  double px_per_inch = 0.0;
};

std::optional<SheetSize> sheetSize(QSizeF inches) {
  if (!(inches.width() > 0) || !(inches.height() > 0)) return std::nullopt;
  const double square_inches = inches.width() * inches.height();
  double density = std::min(kSheetPxPerInch, std::sqrt(kMostPixels / square_inches));
  density = std::min(density, kLongestSide_px / std::max(inches.width(), inches.height()));
  const QSize px(static_cast<int>(inches.width() * density),
                 static_cast<int>(inches.height() * density));
  if (px.isEmpty()) return std::nullopt;
  return SheetSize{px, density};
}

QImage whiteSheet(QSize px) {
  QImage sheet(px, QImage::Format_ARGB32_Premultiplied);
  sheet.fill(Qt::white);
  return sheet;
}

base::Result<UnderlayPicture> photoFrom(QByteArray& bytes, const char* format,
                                        const std::string& path) {
  QBuffer buffer(&bytes);
  QImageReader reader(&buffer, format);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (size.isEmpty()) {
    return underlayTrouble("underlay.broken", path,
                           {base::text("reason", reader.errorString().toStdString())});
  }
  const double pixels = static_cast<double>(size.width()) * size.height();
  if (pixels > kMostPixelsRead || std::max(size.width(), size.height()) > kLongestSide_px) {
    return pictureTooLarge(path);
  }
  UnderlayPicture picture;
  picture.reduced = std::max(1, static_cast<int>(std::ceil(std::sqrt(pixels / kMostPixels))));
  if (picture.reduced > 1) {
    reader.setScaledSize({size.width() / picture.reduced, size.height() / picture.reduced});
  }
  const QImage image = reader.read();
  if (image.isNull()) {
    return underlayTrouble("underlay.broken", path,
                           {base::text("reason", reader.errorString().toStdString())});
  }
  picture.image = image.convertToFormat(QImage::Format_ARGB32_Premultiplied);
  return picture;
}

base::Result<UnderlayPicture> svgFrom(const QByteArray& bytes, const std::string& path) {
  QSvgRenderer renderer;
  const bool is_valid = renderer.load(bytes) && renderer.isValid();
  const auto size = sheetSize(QSizeF(renderer.defaultSize()) / kSvgPxPerInch);
  if (!is_valid || !size) {
    return underlayTrouble("underlay.broken", path, {base::text("reason", "SVG")});
  }
  renderer.setAspectRatioMode(Qt::KeepAspectRatio);
  UnderlayPicture picture;
  picture.image = whiteSheet(size->px);
  picture.sheet_m_per_px = kMetrePerInch / size->px_per_inch;
  QPainter painter(&picture.image);
  renderer.render(&painter, QRectF(QPointF(), QSizeF(size->px)));
  return picture;
}

base::Result<UnderlayPicture> pdfFrom(QByteArray& bytes, int page, const std::string& path) {
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::ReadOnly);
  QPdfDocument document;
  document.load(&buffer);
  if (document.error() == QPdfDocument::Error::IncorrectPassword) {
    return underlayTrouble("underlay.locked", path);
  }
  if (document.status() != QPdfDocument::Status::Ready) {
    return underlayTrouble("underlay.broken", path, {base::text("reason", "PDF")});
  }
  if (page < 0 || page >= document.pageCount()) {
    return noSuchPage(path, page, document.pageCount());
  }
  const auto size = sheetSize(document.pagePointSize(page) / kPointsPerInch);
  const QImage drawn = size ? document.render(page, size->px) : QImage();
  if (drawn.isNull()) {
    return underlayTrouble("underlay.broken", path, {base::text("reason", "PDF")});
  }
  UnderlayPicture picture;
  picture.image = whiteSheet(size->px);
  picture.pages = document.pageCount();
  picture.sheet_m_per_px = kMetrePerInch / size->px_per_inch;
  QPainter(&picture.image).drawImage(0, 0, drawn);
  return picture;
}

/// Near the beginning: some files carry a few bytes before it.
bool beginsWith(const QByteArray& bytes, const char* mark, qsizetype within) {
  const qsizetype at = bytes.left(within).indexOf(mark);
  return at >= 0;
}

base::Result<std::string> pictureBytes(const std::string& path) {
  base::Result<std::string> bytes = readBytes(path, kMaxPictureBytes);
  if (!bytes.ok() && bytes.problems().front().message.id == "file.not-found") {
    return underlayTrouble("underlay.not-found", path);
  }
  return bytes;
}

}  // namespace

base::Result<UnderlayPicture> loadPicture(const std::string& path, int page) {
  const base::Result<std::string> read = pictureBytes(path);
  if (!read.ok()) return read.problems();
  QByteArray bytes = QByteArray::fromStdString(*read);
  constexpr qsizetype kFewBytes = 1024;     // as PDF readers allow before the mark
  constexpr qsizetype kProlog = 64 * 1024;  // comments and entities before the svg element
  if (beginsWith(bytes, "%PDF-", kFewBytes)) return pdfFrom(bytes, page, path);
  const char* format = nullptr;
  if (bytes.startsWith("\x89PNG")) format = "png";
  if (bytes.startsWith("\xFF\xD8\xFF")) format = "jpeg";
  const bool is_svg = format == nullptr && beginsWith(bytes, "<svg", kProlog);
  if (format == nullptr && !is_svg) return underlayTrouble("underlay.kind", path);
  if (page != 0) return noSuchPage(path, page, 1);
  return is_svg ? svgFrom(bytes, path) : photoFrom(bytes, format, path);
}

}  // namespace sumpwright::files
