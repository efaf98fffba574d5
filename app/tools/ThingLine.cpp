#include "tools/ThingLine.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace sumpwright::tools {

namespace {

template <class E>
ThingWord word(std::string_view brief, std::string_view full, LineKind kind, E which) {
  return {brief, full, kind, static_cast<int>(which)};
}

/// What its lengths are, in order.
enum class LinePart { offset, width, sill, head, off, depth };

struct LineShape {
  std::size_t least;
  std::vector<LinePart> parts;
};

LineShape outsideLineShape(plan::OutsideKind kind) {
  switch (kind) {
    case plan::OutsideKind::path:
    case plan::OutsideKind::neighbour_opening:
    case plan::OutsideKind::boundary:
    case plan::OutsideKind::overhead_line:
      return {3, {LinePart::offset, LinePart::off, LinePart::width}};
    case plan::OutsideKind::gully:
    case plan::OutsideKind::air_conditioner:
      return {2, {LinePart::offset, LinePart::off}};
    case plan::OutsideKind::inspection_chamber:
    case plan::OutsideKind::tank:
    case plan::OutsideKind::deck:
    case plan::OutsideKind::soakaway:
    case plan::OutsideKind::septic_tank:
    case plan::OutsideKind::sitting_place:
    case plan::OutsideKind::steps:
    case plan::OutsideKind::carport:
      break;
  }
  return {2, {LinePart::offset, LinePart::off, LinePart::width, LinePart::depth}};
}

LineShape lineShapeOf(const ThingLine& line) {
  switch (line.kind) {
    case LineKind::opening:
      return {2, {LinePart::offset, LinePart::width, LinePart::sill, LinePart::head}};
    case LineKind::service:
    case LineKind::inner_wall:
    case LineKind::rising_wall:
    case LineKind::feature:
      return {1, {LinePart::offset, LinePart::width}};
    case LineKind::radiator:
      return {2, {LinePart::offset, LinePart::width}};
    case LineKind::inner_door:
    case LineKind::heating_pipe:
      return {3, {LinePart::offset, LinePart::off, LinePart::width}};
    case LineKind::supply:
    case LineKind::fitting:
      return {1, {LinePart::offset, LinePart::off}};
    case LineKind::test_hole:
      return {2, {LinePart::offset, LinePart::off}};
    case LineKind::outside:
      return outsideLineShape(static_cast<plan::OutsideKind>(line.which));
    case LineKind::courtyard:
      return {4, {LinePart::offset, LinePart::off, LinePart::width, LinePart::depth}};
    case LineKind::floor:
      break;
  }
  return {0, {}};
}

constexpr std::size_t kMostTimes = 50;  // own figure: a slip of the finger, not a terrace

std::vector<std::string> tokensOf(std::string_view text) {
  std::vector<std::string> tokens;
  std::string token;
  for (const char c : text) {
    if (c == ' ' || c == '\t') {
      if (!token.empty()) tokens.push_back(std::move(token));
      token.clear();
    } else {
      token += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  if (!token.empty()) tokens.push_back(std::move(token));
  return tokens;
}

const ThingWord* wordOf(std::string_view text) {
  const auto& words = thingWords();
  const auto it = std::find_if(words.begin(), words.end(), [&](const ThingWord& known) {
    return known.brief == text || known.full == text;
  });
  return it == words.end() ? nullptr : &*it;
}

/// "w1.20" as "w" and "1.20".
void splitWord(std::vector<std::string>& tokens) {
  std::string& first = tokens.front();
  const std::size_t figure = first.find_first_of("0123456789.");
  if (figure == 0 || figure == std::string::npos) return;
  std::string rest = first.substr(figure);
  first.resize(
      figure);  // "wr1.20": the r belongs to the figure, unless the word ends in one ("door3.40").
  const bool right = first.size() > 1 && first.back() == 'r' && wordOf(first) == nullptr;
  if (right) {
    first.pop_back();
    rest.insert(rest.begin(), 'r');
  }
  tokens.insert(tokens.begin() + 1, std::move(rest));
}

/// "t4" in front; 0: no such count.
std::size_t timesIn(const std::string& token) {
  if (token.size() < 2 || token[0] != 't') return 0;
  std::size_t times = 0;
  const auto [end, error] = std::from_chars(token.data() + 1, token.data() + token.size(), times);
  return error == std::errc{} && end == token.data() + token.size() ? times : 0;
}

void setLinePart(ThingLine& line, LinePart part, double metres) {
  switch (part) {
    case LinePart::offset:
      line.offset_m = metres;
      break;
    case LinePart::width:
      line.width_m = metres;
      break;
    case LinePart::sill:
      line.sill_m = metres;
      break;
    case LinePart::head:
      line.head_m = metres;
      break;
    case LinePart::off:
      line.off_m = metres;
      break;
    case LinePart::depth:
      line.depth_m = metres;
      break;
  }
}

LineFault readLengths(const std::vector<std::string>& tokens, std::size_t from, BareUnit bare,
                      ThingLine& line) {
  std::vector<double> lengths;
  for (std::size_t i = from; i < tokens.size(); ++i) {
    std::string_view token = tokens[i];
    if (i == from && token.size() > 1 && token[0] == 'r') {
      line.from_right = true;
      token.remove_prefix(1);
    }
    const LengthReading reading = readLength(token, bare);
    if (reading.fault == LengthFault::ambiguous) return LineFault::ambiguous;
    if (!reading.ok()) return LineFault::not_a_length;
    lengths.push_back(reading.metres.front());
  }
  const LineShape shape = lineShapeOf(line);
  if (lengths.size() < shape.least) return LineFault::few;
  if (lengths.size() > shape.parts.size()) return LineFault::many;
  for (std::size_t i = 0; i < lengths.size(); ++i) setLinePart(line, shape.parts[i], lengths[i]);
  return LineFault::none;
}

/// "slab", then what room; a kind may be left out.
void readFloor(const std::vector<std::string>& tokens, ThingLine& line) {
  struct Floor {
    std::string_view name;
    plan::FloorKind kind;
  };
  static constexpr auto kFloors = std::to_array<Floor>({
      {"slab", plan::FloorKind::ground_bearing_slab},
      {"ground", plan::FloorKind::ground_bearing_slab},
      {"concrete", plan::FloorKind::suspended_concrete},
      {"timber", plan::FloorKind::suspended_timber},
      {"wood", plan::FloorKind::suspended_timber},
  });
  std::size_t from = 1;
  line.which = static_cast<int>(plan::FloorKind::unknown);
  for (const Floor& floor : kFloors) {
    if (tokens.size() < 2 || tokens[1] != floor.name) continue;
    line.which = static_cast<int>(floor.kind);
    from = 2;
  }
  for (std::size_t i = from; i < tokens.size(); ++i) {
    line.room += (line.room.empty() ? "" : " ") + tokens[i];
  }
}

}  // namespace

const std::vector<ThingWord>& thingWords() {
  using enum plan::OpeningKind;
  using S = plan::ServiceKind;
  using O = plan::OutsideKind;
  using W = plan::WallFeatureKind;
  static const std::vector<ThingWord> words{
      word("w", "window", LineKind::opening, window),
      word("d", "door", LineKind::opening, door),
      word("g", "glazed", LineKind::opening, glazed_door),
      word("gd", "garage", LineKind::opening, garage_door),
      word("v", "vent", LineKind::opening, air_vent),
      word("fl", "flue", LineKind::opening, flue_terminal),
      word("sv", "soffit", LineKind::opening, soffit_vent),
      word("rl", "rooflight", LineKind::opening, roof_window),
      word("gas", "gas", LineKind::service, S::gas),
      word("el", "electricity", LineKind::service, S::electricity),
      word("wa", "water", LineKind::service, S::water),
      word("tel", "telecom", LineKind::service, S::telecom),
      word("oil", "oil", LineKind::service, S::oil),
      word("dr", "drain", LineKind::service, S::drain),
      word("ws", "waste", LineKind::service, S::waste),
      word("iw", "inner", LineKind::inner_wall, 0),
      word("in", "innerdoor", LineKind::inner_door, 0),
      word("rw", "rising", LineKind::rising_wall, 0),
      word("rad", "radiator", LineKind::radiator, 0),
      word("hp", "pipe", LineKind::heating_pipe, 0),
      word("so", "socket", LineKind::supply, plan::SupplyKind::socket),
      word("sp", "spur", LineKind::supply, plan::SupplyKind::fused_spur),
      word("cu", "consumer", LineKind::supply, plan::SupplyKind::consumer_unit),
      word("si", "sink", LineKind::fitting, plan::FittingKind::sink),
      word("bath", "bath", LineKind::fitting, plan::FittingKind::bath),
      word("sh", "shower", LineKind::fitting, plan::FittingKind::shower),
      word("wc", "wc", LineKind::fitting, plan::FittingKind::wc),
      word("ba", "basin", LineKind::fitting, plan::FittingKind::basin),
      word("ap", "appliance", LineKind::fitting, plan::FittingKind::appliance),
      word("gu", "gully", LineKind::outside, O::gully),
      word("ic", "chamber", LineKind::outside, O::inspection_chamber),
      word("sk", "soakaway", LineKind::outside, O::soakaway),
      word("st", "septic", LineKind::outside, O::septic_tank),
      word("ta", "tank", LineKind::outside, O::tank),
      word("de", "deck", LineKind::outside, O::deck),
      word("se", "seat", LineKind::outside, O::sitting_place),
      word("stp", "steps", LineKind::outside, O::steps),
      word("cp", "carport", LineKind::outside, O::carport),
      word("ac", "aircon", LineKind::outside, O::air_conditioner),
      word("pa", "path", LineKind::outside, O::path),
      word("bo", "boundary", LineKind::outside, O::boundary),
      word("nb", "neighbour", LineKind::outside, O::neighbour_opening),
      word("oh", "overhead", LineKind::outside, O::overhead_line),
      word("pi", "pier", LineKind::feature, W::pier),
      word("cb", "chimney", LineKind::feature, W::chimney_breast),
      word("bb", "beam", LineKind::feature, W::beam_bearing),
      word("jo", "joint", LineKind::feature, W::movement_joint),
      word("we", "weep", LineKind::feature, W::weep_hole),
      word("sf", "stepped", LineKind::feature, W::stepped_footing),
      word("th", "testhole", LineKind::test_hole, 0),
      word("fz", "floor", LineKind::floor, 0),
      word("co", "court", LineKind::courtyard, 0),
  };
  return words;
}

ThingLine readThingLine(std::string_view text, BareUnit bare) {
  ThingLine line;
  std::vector<std::string> tokens = tokensOf(text);
  if (tokens.empty()) return line;
  if (const std::size_t times = timesIn(tokens.front()); times > 0) {
    line.times = static_cast<int>(std::min(times, kMostTimes + 1));
    tokens.erase(tokens.begin());
    if (tokens.empty()) return line;
  }
  splitWord(tokens);
  line.word = tokens.front();
  const ThingWord* known = wordOf(line.word);
  if (known == nullptr) {
    line.fault = LineFault::unknown_word;
    return line;
  }
  line.kind = known->kind;
  line.which = known->which;
  const bool repeats = line.times > 1;
  if (repeats && (line.kind != LineKind::opening || line.times > static_cast<int>(kMostTimes))) {
    line.fault = LineFault::no_repeat;
    return line;
  }
  if (line.kind == LineKind::floor) {
    readFloor(tokens, line);
    line.fault = LineFault::none;
    return line;
  }
  line.fault = readLengths(tokens, 1, bare, line);
  return line;
}

}  // namespace sumpwright::tools
