#include "dossier/Table.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "dossier/Wording.h"

namespace sumpwright::dossier {
namespace {

using drawing::HAlign;

constexpr double kCellGap_mm = 2.0;
constexpr double kCellPad_mm = 0.9;

struct TablePlace {
  double left;
  double width;
  HAlign align;
};

/// By their shares, but none narrower than its widest word as long as the others can give: what
/// they have above their own.
std::vector<double> widthsOf(const std::vector<TableColumn>& columns,
                             const std::vector<double>& least, double words_mm) {
  double needed = 0.0;
  for (const double one : least) needed += one;
  std::vector<double> widths(columns.size(), 0.0);
  std::vector<bool> fixed(columns.size(), false);
  if (needed > words_mm) {  // not even so: each gives in proportion
    for (std::size_t c = 0; c < widths.size(); ++c) widths[c] = words_mm * least[c] / needed;
    return widths;
  }
  for (bool changed = true; changed;) {
    changed = false;
    double left = words_mm;
    double shares = 0.0;
    for (std::size_t c = 0; c < widths.size(); ++c) {
      if (fixed[c]) left -= least[c];
      if (!fixed[c]) shares += columns[c].share;
    }
    for (std::size_t c = 0; c < widths.size(); ++c) {
      widths[c] = fixed[c] ? least[c] : left * columns[c].share / shares;
      if (fixed[c] || widths[c] >= least[c]) continue;
      fixed[c] = changed = true;
    }
  }
  return widths;
}

std::vector<TablePlace> placesOf(const Desk& desk, const std::vector<TableColumn>& columns,
                                 const std::vector<std::vector<Cell>>& cells, double width_mm,
                                 bool boxed) {
  constexpr double kHair_mm = 0.05;  // so that rounding breaks no word
  const auto n = static_cast<double>(columns.size());
  const double inset = boxed ? 1.2 : 0.0;
  const double gap = kCellGap_mm + 2.0 * inset;
  std::vector<double> least;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double widest = widestWord_mm(desk, columns[c].title, fonts::small);
    for (const auto& line : cells) {
      if (c < line.size())
        widest = std::max(widest, widestWord_mm(desk, line[c].words, line[c].font));
    }
    least.push_back(widest + kHair_mm);
  }
  const auto widths = widthsOf(columns, least, width_mm - gap * (n - 1.0) - 2.0 * inset);
  std::vector<TablePlace> out;
  double left = inset;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    out.push_back({left, widths[c], columns[c].align});
    left += widths[c] + gap;
  }
  return out;
}

struct TableLine {
  Point at;
  std::string words;
  Font font;
  HAlign align;
};

struct TableBody {
  std::vector<TableLine> lines;
  double height = 0.0;
};

TableBody bodyOf(const Desk& desk, const std::vector<TablePlace>& places,
                 const std::vector<Cell>& cells, double least_mm) {
  TableBody body;
  for (std::size_t c = 0; c < places.size() && c < cells.size(); ++c) {
    const Cell& cell = cells[c];
    const TablePlace& place = places[c];
    const double step = drawing::leading_mm(cell.font);
    const double cap = desk.voice.capHeight_mm(cell.font);
    double y = kCellPad_mm;
    const double x = place.left + (place.align == HAlign::left     ? 0.0
                                   : place.align == HAlign::centre ? place.width / 2.0
                                                                   : place.width);
    for (const auto& line : wrapped(desk, cell.words, cell.font, place.width)) {
      body.lines.push_back({{x, y + (step + cap) / 2.0}, line, cell.font, place.align});
      y += step;
    }
    body.height = std::max(body.height, y + kCellPad_mm);
  }
  body.height = std::max(body.height, std::max(least_mm, 2.0 * kCellPad_mm));
  return body;
}

/// A body too tall for a page as several, one below the other.
std::vector<TableBody> split(TableBody body) {
  constexpr double kTallest_mm = 120.0;  // less than any page has
  constexpr double kFirstLine_mm = 3.2;  // of a piece that goes on, below the rule above it
  if (body.height <= kTallest_mm) return {std::move(body)};
  std::vector<TableBody> out(static_cast<std::size_t>(std::ceil(body.height / kTallest_mm)));
  for (TableLine& line : body.lines) {
    const auto piece = std::min(out.size() - 1, static_cast<std::size_t>(line.at.y / kTallest_mm));
    line.at.y -= static_cast<double>(piece) * kTallest_mm - (piece > 0 ? kFirstLine_mm : 0.0);
    out[piece].height = std::max(out[piece].height, line.at.y + 2.0 * kCellPad_mm);
    out[piece].lines.push_back(std::move(line));
  }
  std::erase_if(out, [](const TableBody& piece) { return piece.lines.empty(); });
  return out;
}

Row rowOf(const Desk& desk, const std::vector<TablePlace>& places, const TableBody& body,
          double width_mm, const TableStyle& style, bool is_head, bool is_first) {
  const drawing::Theme& t = desk.theme;
  const drawing::Pen rule = drawing::solid(is_head || style.boxed ? t.rule : t.hairline, 1.0);
  return {body.height,
          [=, &t](Sketch& sketch, Point at) {
            for (const TableLine& line : body.lines) {
              sketch.text({at.x + line.at.x, at.y + line.at.y}, line.words, line.font,
                          is_head ? t.ink2 : t.ink, line.align);
            }
            const double bottom = at.y + body.height;
            sketch.line({at.x, bottom}, {at.x + width_mm, bottom}, rule);
            if (!style.boxed) return;
            if (is_first) sketch.line(at, {at.x + width_mm, at.y}, rule);
            std::vector<double> uprights{0.0, width_mm};
            for (std::size_t c = 1; c < places.size(); ++c) {
              uprights.push_back((places[c - 1].left + places[c - 1].width + places[c].left) / 2.0);
            }
            for (const double x : uprights) {
              sketch.line({at.x + x, at.y}, {at.x + x, bottom}, rule);
            }
          },
          is_head};
}

}  // namespace

Rows tableRows(const Desk& desk, const std::vector<TableColumn>& columns,
               const std::vector<std::vector<Cell>>& cells, double width_mm,
               const TableStyle& style) {
  const auto places = placesOf(desk, columns, cells, width_mm, style.boxed);
  std::vector<Cell> titles;
  bool any = false;
  for (const TableColumn& c : columns) {
    titles.emplace_back(c.title, fonts::small);
    any = any || !c.title.empty();
  }
  Rows out;
  std::shared_ptr<const Row> head;
  if (any) {
    Row row = rowOf(desk, places, bodyOf(desk, places, titles, 0.0), width_mm, style, true, true);
    head = std::make_shared<const Row>(row);
    out.push_back(std::move(row));
  }
  for (const auto& line : cells) {
    for (const TableBody& body : split(bodyOf(desk, places, line, style.least_mm))) {
      Row row = rowOf(desk, places, body, width_mm, style, false, out.empty());
      if (any) row.head = head;
      row.keep_with_next = style.whole && &line != &cells.back();
      out.push_back(std::move(row));
    }
  }
  return out;
}

}  // namespace sumpwright::dossier
