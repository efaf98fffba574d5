#include "canvas/TypedNumbers.h"

#include <QKeyEvent>
#include <QStringList>

namespace sumpwright::canvas {

namespace {

QStringList partsOf(const QString& typed) {
  return typed.split(QLatin1Char(' '), Qt::SkipEmptyParts);
}

}  // namespace

bool takeNumberKey(QString& typed, const QKeyEvent& event) {
  if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
  if (event.key() == Qt::Key_Backspace) {
    if (typed.isEmpty()) return false;
    typed.chop(1);
    return true;
  }
  if (event.key() == Qt::Key_Tab || event.key() == Qt::Key_Space) {
    if (typed.isEmpty()) return false;
    if (!typed.endsWith(QLatin1Char(' '))) typed += QLatin1Char(' ');
    return true;
  }
  const QString text = event.text();
  if (text.isEmpty() || !text[0].isPrint()) return false;
  const bool figure =
      text[0].isDigit() || text[0] == QLatin1Char('.') || text[0] == QLatin1Char(',');
  if (typed.isEmpty() && !figure) return false;
  typed += text;
  return true;
}

std::vector<double> typedLengths(const QString& typed, tools::BareUnit bare) {
  std::vector<double> lengths;
  for (const QString& part : partsOf(typed)) {
    const tools::LengthReading reading = tools::readLength(part.toStdString(), bare);
    if (!reading.ok()) break;
    lengths.push_back(reading.metres.front());
  }
  return lengths;
}

bool typedWhole(const QString& typed, tools::BareUnit bare) {
  return typedLengths(typed, bare).size() == static_cast<std::size_t>(partsOf(typed).size());
}

}  // namespace sumpwright::canvas
