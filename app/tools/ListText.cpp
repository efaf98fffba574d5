#include "tools/ListText.h"

#include <algorithm>
#include <optional>

#include "plan/KindNames.h"

namespace sumpwright::tools {

namespace {

constexpr std::string_view kTrueMinus = "\xE2\x88\x92";

std::string_view trimmedEntry(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

/// A comma alone may be a decimal one: it parts entries only with a space behind it.
std::vector<std::string_view> entriesOf(std::string_view text) {
  std::vector<std::string_view> entries;
  const auto take = [&](std::string_view entry) {
    entry = trimmedEntry(entry);
    if (!entry.empty()) entries.push_back(entry);
  };
  std::size_t from = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool comma = text[i] == ',' && i + 1 < text.size() && text[i + 1] == ' ';
    if (text[i] != ';' && text[i] != '\n' && !comma) continue;
    take(text.substr(from, i - from));
    from = i + 1;
  }
  take(text.substr(from));
  return entries;
}

struct EntryHalves {
  std::string_view before;
  std::string_view after;
};

std::optional<EntryHalves> splitAt(std::string_view text, std::string_view mark) {
  const auto at = text.find(mark);
  if (at == std::string_view::npos) return std::nullopt;
  return EntryHalves{trimmedEntry(text.substr(0, at)), trimmedEntry(text.substr(at + mark.size()))};
}

std::optional<double> lengthIn(std::string_view text, BareUnit bare) {
  const LengthReading reading = readLength(text, bare);
  return reading.ok() ? std::optional(reading.metres.front()) : std::nullopt;
}
std::optional<double> levelIn(std::string_view text, BareUnit bare) {
  const LengthReading reading = readLevel(text, bare);
  return reading.ok() ? std::optional(reading.metres.front()) : std::nullopt;
}

std::string spacedName(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

/// The kind of that name, in any case, "-", "_" and spaces alike.
template <class E>
std::optional<E> kindIn(std::string_view text) {
  std::string name(trimmedEntry(text));
  for (char& c : name) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ' ' || c == '-') c = '_';
  }
  return plan::valueOf<E>(name);
}

std::optional<plan::Layer> layerIn(std::string_view entry, BareUnit bare) {
  const auto figure = entry.find_first_of("0123456789.");
  if (figure == std::string_view::npos) return std::nullopt;
  const auto kind = kindIn<plan::LayerKind>(entry.substr(0, figure));
  const auto thickness = lengthIn(entry.substr(figure), bare);
  if (!kind || !thickness) return std::nullopt;
  return plan::Layer{*kind, *thickness};
}

std::optional<plan::GroundPoint> groundIn(std::string_view entry, BareUnit bare) {
  const auto halves = splitAt(entry, "at");
  if (!halves) return std::nullopt;
  plan::GroundPoint point;
  std::string_view place = halves->after;
  // A surface is the last word, where there is one.
  const auto space = place.find_last_of(' ');
  const std::string_view last = space == std::string_view::npos ? "" : place.substr(space + 1);
  if (const auto surface = kindIn<plan::GroundSurface>(last)) {
    point.surface = *surface;
    place = trimmedEntry(place.substr(0, space));
  }
  const auto level = levelIn(halves->before, bare);
  const auto offset = lengthIn(place, bare);
  if (!level || !offset) return std::nullopt;
  point.level_m = *level;
  point.offset_m = *offset;
  return point;
}

std::optional<plan::Gap> gapIn(std::string_view entry, BareUnit bare) {
  const auto halves = splitAt(entry, "to");
  if (!halves) return std::nullopt;
  const auto from = lengthIn(halves->before, bare);
  const auto to = lengthIn(halves->after, bare);
  if (!from || !to) return std::nullopt;
  return plan::Gap{*from, *to};
}

std::optional<geometry::Point> pointIn(std::string_view entry, BareUnit bare) {
  const auto halves = splitAt(entry, ":");
  if (!halves) return std::nullopt;
  const auto x = levelIn(halves->before, bare);
  const auto y = levelIn(halves->after, bare);
  if (!x || !y) return std::nullopt;
  return geometry::Point{*x, *y};
}

template <class T, class Read>
ListReading<T> readList(std::string_view text, BareUnit bare, Read read) {
  ListReading<T> result;
  for (const std::string_view entry : entriesOf(text)) {
    const auto one = read(entry, bare);
    if (!one) {
      result.wrong = std::string(entry);
      return result;
    }
    result.entries.push_back(*one);
  }
  return result;
}

template <class List, class Say>
std::string joinedList(const List& list, Say say) {
  std::string text;
  for (const auto& entry : list) text += (text.empty() ? "" : "; ") + say(entry);
  return text;
}

}  // namespace

LengthReading readLevel(std::string_view text, BareUnit bare) {
  std::string_view rest = trimmedEntry(text);
  const bool minus = rest.starts_with('-') || rest.starts_with(kTrueMinus);
  if (minus) rest.remove_prefix(rest.front() == '-' ? 1 : kTrueMinus.size());
  LengthReading reading = readLength(rest, bare);
  if (minus && reading.fault == LengthFault::empty) reading.fault = LengthFault::not_a_length;
  for (double& metres : reading.metres) {
    if (minus && metres != 0.0) metres = -metres;
  }
  return reading;
}

ListReading<plan::Layer> readLayers(std::string_view text, BareUnit bare) {
  return readList<plan::Layer>(text, bare, layerIn);
}
ListReading<plan::GroundPoint> readGround(std::string_view text, BareUnit bare) {
  return readList<plan::GroundPoint>(text, bare, groundIn);
}
ListReading<plan::Gap> readGaps(std::string_view text, BareUnit bare) {
  return readList<plan::Gap>(text, bare, gapIn);
}
ListReading<geometry::Point> readPoints(std::string_view text, BareUnit bare) {
  return readList<geometry::Point>(text, bare, pointIn);
}

std::string listText(const std::vector<plan::Layer>& layers, const PrintLength& print) {
  return joinedList(layers, [&](const plan::Layer& layer) {
    return spacedName(plan::nameOf(layer.kind)) + " " + print(layer.thickness_m);
  });
}
std::string listText(const std::vector<plan::GroundPoint>& points, const PrintLength& print) {
  return joinedList(points, [&](const plan::GroundPoint& point) {
    std::string text = print(point.level_m) + " at " + print(point.offset_m);
    if (point.surface != plan::GroundSurface::unknown) {
      text += " " + spacedName(plan::nameOf(point.surface));
    }
    return text;
  });
}
std::string listText(const std::vector<plan::Gap>& gaps, const PrintLength& print) {
  return joinedList(
      gaps, [&](const plan::Gap& gap) { return print(gap.from_m) + " to " + print(gap.to_m); });
}
std::string listText(const std::vector<geometry::Point>& points, const PrintLength& print) {
  return joinedList(points, [&](const geometry::Point& point) {
    return print(point.x) + " : " + print(point.y);
  });
}

}  // namespace sumpwright::tools
