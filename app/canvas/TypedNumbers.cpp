#include "canvas/TypedNumbers.h"

#include <QKeyEvent>
#include <string>

#include "tools/PairText.h"

namespace sumpwright::canvas {

namespace {

constexpr char kNext[] = "; ";  // as tools/PairText.h parts two lengths

/// Without blanks at its ends and a mark behind which nothing is typed yet.
std::string begunText(const QString& typed) {
  QString text = typed.trimmed();
  while (text.endsWith(QLatin1Char(';'))) text = text.chopped(1).trimmed();
  return text.toStdString();
}

/// All of it as one length or two; else nothing.
std::vector<double> wholeLengths(const std::string& text, tools::BareUnit bare) {
  // A blank stands within a length too: 12' 6" is one.
  const tools::LengthReading one = tools::readLength(text, bare);
  if (one.ok()) return {one.metres.front()};
  const auto pair = tools::readPair(text, bare);
  if (pair) return {pair->first_m, pair->second_m};
  return {};
}

}  // namespace

bool takeNumberKey(QString& typed, const QKeyEvent& event) {
  if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
  if (event.key() == Qt::Key_Backspace) {
    if (typed.isEmpty()) return false;
    typed.chop(1);
    return true;
  }
  if (event.key() == Qt::Key_Tab) {
    if (typed.isEmpty()) return false;
    if (!typed.contains(QLatin1Char(';'))) typed += QLatin1String(kNext);
    return true;
  }
  if (event.key() == Qt::Key_Space) {
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
  const std::string text = begunText(typed);
  std::vector<double> lengths = wholeLengths(text, bare);
  if (!lengths.empty()) return lengths;
  const auto end = text.find_last_of("; ");
  if (end != std::string::npos) {
    lengths = wholeLengths(begunText(QString::fromStdString(text.substr(0, end))), bare);
  }
  if (lengths.size() > 1) lengths.resize(1);
  return lengths;
}

bool typedWhole(const QString& typed, tools::BareUnit bare) {
  const std::string text = begunText(typed);
  return text.empty() || !wholeLengths(text, bare).empty();
}

}  // namespace sumpwright::canvas
