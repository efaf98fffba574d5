#include "paint/Fonts.h"

#include <QDirIterator>
#include <QFile>
#include <QFontDatabase>
#include <QStandardPaths>
#include <QtEndian>

namespace sumpwright::paint {
namespace {

// As long as "B612", so that it fits where that stood.
constexpr char kOurs[] = "Bsix";
constexpr char kTheirs[] = "B612";

QByteArray utf16(const char* ascii) {
  QByteArray out;
  for (const char* c = ascii; *c != '\0'; ++c) out.append('\0').append(*c);
  return out;
}

quint16 u16(const QByteArray& bytes, qsizetype at) {
  return at + 2 <= bytes.size() ? qFromBigEndian<quint16>(bytes.constData() + at) : quint16{0};
}

quint32 u32(const QByteArray& bytes, qsizetype at) {
  return at + 4 <= bytes.size() ? qFromBigEndian<quint32>(bytes.constData() + at) : quint32{0};
}

/// Gives the family name (name id 1) in the font's name table our own spelling (ISO/IEC
/// 14496-22:2019, 5.2.4). Left as it is where the table is not as expected.
QByteArray renamed(QByteArray font) {
  const int tables = u16(font, 4);
  for (int t = 0; t < tables; ++t) {
    const qsizetype entry = 12 + 16 * t;
    if (font.mid(entry, 4) != "name") continue;
    const qsizetype table = u32(font, entry + 8);
    const int records = u16(font, table + 2);
    const qsizetype strings = table + u16(font, table + 4);
    for (int r = 0; r < records; ++r) {
      const qsizetype record = table + 6 + 12 * r;
      if (u16(font, record + 6) != 1) continue;
      const qsizetype length = u16(font, record + 8);
      const qsizetype at = strings + u16(font, record + 10);
      const QByteArray value = font.mid(at, length);
      if (value == utf16(kTheirs)) font.replace(at, length, utf16(kOurs));
      if (value == kTheirs) font.replace(at, length, kOurs);
    }
  }
  return font;
}

/// The four cuts, as file names of the Debian package fonts-b612 and of the fonts' own release.
bool isCut(const QString& file) {
  static const QStringList cuts = {QStringLiteral("B612-Regular"), QStringLiteral("B612-Bold"),
                                   QStringLiteral("B612-Italic"),
                                   QStringLiteral("B612-BoldItalic")};
  const qsizetype dot = file.lastIndexOf(QLatin1Char('.'));
  const QString ending = file.mid(dot + 1).toLower();
  return cuts.contains(file.left(dot)) &&
         (ending == QLatin1String("otf") || ending == QLatin1String("ttf"));
}

bool addCuts() {
  QStringList added;
  for (const QString& folder : QStandardPaths::standardLocations(QStandardPaths::FontsLocation)) {
    QDirIterator files(folder, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
      files.next();
      if (!isCut(files.fileName()) || added.contains(files.fileName())) continue;
      QFile file(files.filePath());
      if (!file.open(QIODevice::ReadOnly)) continue;
      if (QFontDatabase::addApplicationFontFromData(renamed(file.readAll())) >= 0) {
        added.append(files.fileName());
      }
    }
  }
  return QFontDatabase::families().contains(QLatin1String(kOurs));
}

}  // namespace

QStringList drawingFamilies() {
  static const bool found = addCuts();
  QStringList families = publicFamilies();
  if (found) families.prepend(QLatin1String(kOurs));
  return families;
}

QStringList publicFamilies() { return {QLatin1String(kTheirs), QStringLiteral("DejaVu Sans")}; }

}  // namespace sumpwright::paint
