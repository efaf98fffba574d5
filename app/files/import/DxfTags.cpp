#include "files/import/DxfTags.h"

#include <QByteArray>
#include <QString>
#include <QStringDecoder>
#include <charconv>
#include <cmath>

namespace sumpwright::files {

namespace {

constexpr int kComment = 999;

std::string_view withoutBlanks(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

template <class Number>
std::optional<Number> numberOf(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

}  // namespace

DxfTags::DxfTags(std::string_view bytes) : m_rest(bytes) {
  if (m_rest.starts_with("\xEF\xBB\xBF")) m_rest.remove_prefix(3);
  if (m_rest.find('\n') == std::string_view::npos) m_line_end = '\r';
}

std::optional<std::string_view> DxfTags::nextLine() {
  if (m_rest.empty()) return std::nullopt;
  const std::size_t end = m_rest.find(m_line_end);
  const std::string_view line = m_rest.substr(0, end);
  m_rest.remove_prefix(end == std::string_view::npos ? m_rest.size() : end + 1);
  ++m_line;
  return withoutBlanks(line);
}

std::optional<DxfTag> DxfTags::next() {
  while (!m_whole && !m_broken) {
    const auto code_line = nextLine();
    // Blank lines after the last pair are no broken pair.
    if (!code_line || (code_line->empty() && withoutBlanks(m_rest).empty())) return std::nullopt;
    const auto code = dxfInteger(*code_line);
    m_broken = !code;
    if (m_broken) return std::nullopt;
    const bool cut_off = m_rest.find(m_line_end) == std::string_view::npos;
    const auto value = nextLine();
    if (!value) return std::nullopt;
    m_whole = *code == 0 && *value == "EOF";
    // The last line may be cut in the middle of a number.
    if (m_whole || cut_off) return std::nullopt;
    if (*code != kComment) return DxfTag{*code, *value};
  }
  return std::nullopt;
}

std::optional<double> dxfNumber(std::string_view text) {
  const auto value = numberOf<double>(text);
  return value && std::isfinite(*value) ? value : std::nullopt;
}

std::optional<int> dxfInteger(std::string_view text) { return numberOf<int>(text); }

std::string dxfName(std::string_view text) {
  const QByteArrayView bytes(text.data(), static_cast<qsizetype>(text.size()));
  QStringDecoder utf8(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
  QString name = utf8(bytes);
  if (utf8.hasError()) name = QString::fromLatin1(bytes);
  for (qsizetype at = 0; (at = name.indexOf(QLatin1String("\\U+"), at)) >= 0; ++at) {
    bool is_code = false;
    const ushort code = name.mid(at + 3, 4).toUShort(&is_code, 16);
    if (is_code && !QChar::isSurrogate(code)) name.replace(at, 7, QChar(code));
  }
  return name.toStdString();
}

}  // namespace sumpwright::files
