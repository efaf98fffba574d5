#include "paint/Export.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QImageWriter>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <QXmlStreamWriter>

#include "paint/Painting.h"

namespace sumpwright::paint {
namespace {

using Written = base::Result<std::vector<std::string>>;

constexpr int kPdfDpi = 1200;
constexpr int kSvgUnitsPerMm = 10;

QString q(const std::string& text) { return QString::fromStdString(text); }

base::Problem problem(const char* id, const QString& path, const QString& reason = {}) {
  base::Problem p;
  p.message = base::Message(
      id, {base::text("path", path.toStdString()), base::text("reason", reason.toStdString())});
  p.gravity = base::Gravity::unreadable;
  return p;
}

/// XMP packet with title, author and subject (ISO 16684-1:2019, Dublin Core schema).
QByteArray xmpOf(const Pages& pages) {
  static const QString kRdf = QStringLiteral("http://www.w3.org/1999/02/22-rdf-syntax-ns#");
  static const QString kDc = QStringLiteral("http://purl.org/dc/elements/1.1/");
  static const QString kPdf = QStringLiteral("http://ns.adobe.com/pdf/1.3/");
  static const QString kMeta = QStringLiteral("adobe:ns:meta/");
  QByteArray out("<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n");
  QByteArray body;
  QXmlStreamWriter xml(&body);
  xml.writeNamespace(kMeta, QStringLiteral("x"));
  xml.writeNamespace(kRdf, QStringLiteral("rdf"));
  xml.writeNamespace(kDc, QStringLiteral("dc"));
  xml.writeNamespace(kPdf, QStringLiteral("pdf"));
  xml.writeStartElement(kMeta, QStringLiteral("xmpmeta"));
  xml.writeStartElement(kRdf, QStringLiteral("RDF"));
  xml.writeStartElement(kRdf, QStringLiteral("Description"));
  xml.writeAttribute(kRdf, QStringLiteral("about"), QString());
  const auto list = [&](const QString& name, const QString& kind, const std::string& value) {
    if (value.empty()) return;
    xml.writeStartElement(kDc, name);
    xml.writeStartElement(kRdf, kind);
    xml.writeStartElement(kRdf, QStringLiteral("li"));
    if (kind == QLatin1String("Alt")) {
      xml.writeAttribute(QStringLiteral("xml:lang"), QStringLiteral("x-default"));
    }
    xml.writeCharacters(q(value));
    xml.writeEndElement();
    xml.writeEndElement();
    xml.writeEndElement();
  };
  list(QStringLiteral("title"), QStringLiteral("Alt"), pages.title);
  list(QStringLiteral("creator"), QStringLiteral("Seq"), pages.author);
  list(QStringLiteral("description"), QStringLiteral("Alt"), pages.subject);
  xml.writeTextElement(kPdf, QStringLiteral("Producer"),
                       QStringLiteral("Sumpwright, Qt " QT_VERSION_STR));
  xml.writeEndElement();
  xml.writeEndElement();
  xml.writeEndElement();
  out += body;
  out += "\n<?xpacket end=\"w\"?>";
  return out;
}

QPageSize sheetOf(const drawing::DrawList& page) {
  return QPageSize(QSizeF(page.width_mm, page.height_mm), QPageSize::Millimeter, {},
                   QPageSize::FuzzyMatch);
}

bool paintPdf(const Pages& pages, QIODevice& device) {
  QPdfWriter writer(&device);
  writer.setTitle(q(pages.title));
  writer.setCreator(QStringLiteral("Sumpwright"));
  writer.setResolution(kPdfDpi);
  writer.setPageSize(sheetOf(pages.pages.front()));
  writer.setPageMargins(QMarginsF());
  writer.setDocumentXmpMetadata(xmpOf(pages));
  QPainter painter;
  if (!painter.begin(&writer)) return false;
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    if (i > 0) {
      writer.setPageSize(sheetOf(pages.pages[i]));  // a paper that lies may follow one that stands
      if (!writer.newPage()) return false;
    }
    paintDrawList(painter, pages.pages[i], kPdfDpi / 25.4);
    paintPictures(painter, pages.pictures, i, kPdfDpi / 25.4);
  }
  return painter.end();
}

bool paintSvg(const Pages& pages, std::size_t number, QIODevice& device) {
  const drawing::DrawList& page = pages.pages[number];
  // Into memory first: the generator closes the device it is given.
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setTitle(q(pages.title));
  generator.setDescription(q(pages.subject));
  generator.setResolution(qRound(kSvgUnitsPerMm * 25.4));
  const QSize size(qRound(page.width_mm * kSvgUnitsPerMm), qRound(page.height_mm * kSvgUnitsPerMm));
  generator.setSize(size);
  generator.setViewBox(QRect(QPoint(0, 0), size));
  QPainter painter;
  if (!painter.begin(&generator)) return false;
  painter.fillRect(QRect(QPoint(0, 0), size), Qt::white);
  paintDrawList(painter, page, kSvgUnitsPerMm);
  paintPictures(painter, pages.pictures, number, kSvgUnitsPerMm);
  if (!painter.end()) return false;
  return device.write(bytes) == bytes.size();
}

bool paintPng(const Pages& pages, std::size_t number, QIODevice& device) {
  const drawing::DrawList& page = pages.pages[number];
  const double dots = kPngDpi / 25.4;
  QImage image(qRound(page.width_mm * dots), qRound(page.height_mm * dots), QImage::Format_RGB32);
  image.setDotsPerMeterX(qRound(dots * 1000.0));
  image.setDotsPerMeterY(qRound(dots * 1000.0));
  image.fill(Qt::white);
  QPainter painter(&image);
  paintDrawList(painter, page, dots);
  paintPictures(painter, pages.pictures, number, dots);
  painter.end();
  return QImageWriter(&device, "png").write(image);
}

/// Writes one file whole or not at all.
template <class Paint>
std::optional<base::Problem> save(const QString& path, Paint paint) {
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return problem("paper.write", path, file.errorString());
  if (!paint(file)) {
    file.cancelWriting();
    return problem("paper.write", path, file.errorString());
  }
  if (!file.commit()) return problem("paper.write", path, file.errorString());
  return std::nullopt;
}

/// NAME.svg, NAME-2.svg, ...
QString pagePath(const QString& path, std::size_t page) {
  if (page == 0) return path;
  const QString ending = QFileInfo(path).suffix();
  return path.chopped(ending.size() + 1) + QLatin1Char('-') + QString::number(page + 1) +
         QLatin1Char('.') + ending;
}

}  // namespace

void paintPictures(QPainter& painter, std::span<const PagePicture> pictures, std::size_t page,
                   double units_per_mm) {
  for (const PagePicture& one : pictures) {
    if (one.page != page) continue;
    const QImage image = QImage::fromData(
        QByteArray::fromRawData(one.bytes.data(), static_cast<qsizetype>(one.bytes.size())));
    if (image.isNull()) continue;
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(QRectF(one.left_mm * units_per_mm, one.top_mm * units_per_mm,
                             one.width_mm * units_per_mm, one.height_mm * units_per_mm),
                      image);
  }
}

std::optional<FileFormat> formatOf(const std::string& path) {
  const QString ending = QFileInfo(q(path)).suffix().toLower();
  if (ending == QLatin1String("pdf")) return FileFormat::pdf;
  if (ending == QLatin1String("svg")) return FileFormat::svg;
  if (ending == QLatin1String("png")) return FileFormat::png;
  return std::nullopt;
}

Written exportPages(const Pages& pages, const std::string& name) {
  const QString path = q(name);
  const auto format = formatOf(name);
  if (!format) return problem("paper.format", path);
  if (pages.pages.empty()) return problem("paper.no-pages", path);
  std::vector<std::string> written;
  if (*format == FileFormat::pdf) {
    const auto failed = save(path, [&](QIODevice& device) { return paintPdf(pages, device); });
    if (failed) return *failed;
    return std::vector<std::string>{name};
  }
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    const QString file = pagePath(path, i);
    const auto failed = save(file, [&](QIODevice& device) {
      return *format == FileFormat::svg ? paintSvg(pages, i, device) : paintPng(pages, i, device);
    });
    if (failed) return *failed;
    written.push_back(file.toStdString());
  }
  return written;
}

}  // namespace sumpwright::paint
