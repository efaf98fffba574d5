#include "dossier/Flow.h"

#include <algorithm>
#include <utility>

#include "dossier/Wording.h"

namespace sumpwright::dossier {
namespace {

constexpr double kHair_mm = 1e-6;
constexpr int kPieces = 2;  // a table in more is hard to read

struct Placed {
  const Row* row;
  int column;
  double y;
};

/// Rows from i on that must stay together.
std::size_t unitEnd(const Rows& rows, std::size_t i) {
  while (i + 1 < rows.size() && rows[i].keep_with_next) ++i;
  return i + 1;
}

double tallestUnit(const Rows& rows, std::size_t from) {
  double tallest = 0.0;
  for (std::size_t i = from; i < rows.size();) {
    const std::size_t end = unitEnd(rows, i);
    double unit = 0.0;
    for (; i < end; ++i) unit += rows[i].height_mm;
    tallest = std::max(tallest, unit);
  }
  return tallest;
}

/// Whether a table that is broken between rows, its head repeated, ends within so many columns.
bool endsWithin(const Rows& rows, std::size_t from, std::size_t end, double height, int columns) {
  double y = 0.0;
  bool table = false;
  for (std::size_t i = from; i < end; ++i) {
    table = table || rows[i].head != nullptr;
    if (y + rows[i].height_mm > height) {
      if (--columns < 1) return false;
      y = rows[i].head != nullptr ? rows[i].head->height_mm : 0.0;
    }
    y += rows[i].height_mm;
  }
  return table;
}

/// Where the next row goes: a column of the region and a height in it.
struct Cursor {
  const Region& region;
  double height = 0.0;
  int column = 0;
  double y = 0.0;
  bool toNextColumn() {
    y = 0.0;
    return ++column < region.columns;
  }
  void put(const Row* row, std::vector<Placed>& out) {
    out.push_back({row, column, y});
    y += row->height_mm;
  }
};

double heightOf(const Rows& rows, std::size_t from, std::size_t end, const Row* head) {
  double height = head != nullptr ? head->height_mm : 0.0;
  for (std::size_t i = from; i < end; ++i) height += rows[i].height_mm;
  return height;
}

/// Rows [next, end), broken between columns where `broken`; false where the region is full.
bool placeUnit(const Rows& rows, std::size_t& next, std::size_t end, bool broken, Cursor& cursor,
               std::vector<Placed>& out) {
  for (std::size_t i = next; i < end; ++i) {
    if (broken && cursor.y + rows[i].height_mm > cursor.height) {
      if (cursor.y == 0.0 || !cursor.toNextColumn()) return false;
      if (rows[i].head != nullptr) cursor.put(rows[i].head.get(), out);
    }
    cursor.put(&rows[i], out);
    next = i + 1;
  }
  return true;
}

/// Greedy: column after column of the given height. `next` is the first row that found no place.
std::vector<Placed> place(const Rows& rows, std::size_t from, const Region& region, double height,
                          std::size_t& next) {
  std::vector<Placed> out;
  Cursor cursor{region, height};
  next = from;
  while (next < rows.size()) {
    const std::size_t end = unitEnd(rows, next);
    const Row* head = cursor.y == 0.0 ? rows[next].head.get() : nullptr;
    const double unit = heightOf(rows, next, end, head);
    if (rows[next].isGap() && (cursor.y == 0.0 || cursor.y + unit > height)) {
      ++next;  // a gap at the head or the foot of a column is no loss
      continue;
    }
    // A unit taller than a whole column is broken rather than lost.
    const bool too_tall = unit > height && cursor.y == 0.0;
    // Left to the taller region, unless it is a table that ends here in its next column.
    if (too_tall && region.more_follows &&
        !endsWithin(rows, next, end, height, std::min(kPieces, region.columns - cursor.column))) {
      return out;
    }
    if (cursor.y + unit > height && !too_tall) {
      if (!cursor.toNextColumn()) return out;
      continue;
    }
    if (head != nullptr) cursor.put(head, out);
    if (!placeUnit(rows, next, end, too_tall, cursor, out)) return out;
  }
  return out;
}

}  // namespace

std::string Desk::say(const char* id, std::vector<base::Arg> args) const {
  return voice.say(base::Message(id, std::move(args)));
}

void Writer::gap(double height_mm) { m_rows.emplace_back(height_mm, nullptr, false); }

void Writer::heading(const std::string& words) {
  if (!m_rows.empty()) gap(3.2);
  text(words, fonts::heading, m_desk.theme.ink);
  keepLastWithNext();
  m_rows.emplace_back(
      0.7, [](Sketch&, Point) {}, true);
}

void Writer::text(const std::string& words, const Font& font, const Colour& colour,
                  double indent_mm, double hang_mm) {
  const double step = drawing::leading_mm(font);
  const double cap = m_desk.voice.capHeight_mm(font);
  constexpr std::size_t kWhole = 5;  // a paragraph of no more lines is never broken
  const auto lines = wrapped(m_desk, words, font, m_width - indent_mm - hang_mm);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double x = indent_mm + (i == 0 ? 0.0 : hang_mm);
    m_rows.emplace_back(
        step,
        [=, line = lines[i]](Sketch& sketch, Point at) {
          sketch.text({at.x + x, at.y + (step + cap) / 2.0}, line, font, colour);
        },
        i + 1 < lines.size() && (lines.size() <= kWhole || i == 0 || i + 2 == lines.size()));
  }
}

void Writer::tick(const std::string& words) {
  constexpr double kBox_mm = 2.5;
  constexpr double kIndent_mm = 4.8;
  const std::size_t first = m_rows.size();
  text(words, fonts::body, m_desk.theme.ink, kIndent_mm);
  if (m_rows.size() == first) return;
  Row& row = m_rows[first];
  const auto line = row.paint;
  const double height = row.height_mm;
  const drawing::Pen pen = drawing::solid(m_desk.theme.ink, 1.2);
  row.paint = [=](Sketch& sketch, Point at) {
    sketch.outline(
        drawing::rectangle(at.x + 0.2, at.y + (height - kBox_mm) / 2.0, kBox_mm, kBox_mm), pen);
    line(sketch, at);
  };
}

void Writer::append(Rows rows) {
  m_rows.insert(m_rows.end(), std::make_move_iterator(rows.begin()),
                std::make_move_iterator(rows.end()));
}

void Writer::keepLastWithNext() {
  if (!m_rows.empty()) m_rows.back().keep_with_next = true;
}

double heightOf(const Rows& rows) {
  double sum = 0.0;
  for (const Row& row : rows) sum += row.height_mm;
  return sum;
}

double stack(Sketch& sketch, const Rows& rows, Point at) {
  for (const Row& row : rows) {
    if (row.paint) row.paint(sketch, at);
    at.y += row.height_mm;
  }
  return at.y;
}

std::size_t flow(Sketch& sketch, const Rows& rows, std::size_t from, const Region& region,
                 double& end_y) {
  const double whole = region.bottom - region.top;
  std::size_t next = from;
  auto placed = place(rows, from, region, whole, next);
  if (next == rows.size()) {
    // All fits: the lowest column height that still holds everything.
    // (and every unit whole that can be).
    double low = std::min(whole, tallestUnit(rows, from) - kHair_mm);
    double high = whole;
    for (int i = 0; i < 24; ++i) {
      const double middle = (low + high) / 2.0;
      std::size_t end = from;
      auto tried = place(rows, from, region, middle, end);
      if (end == rows.size()) {
        high = middle;
        placed = std::move(tried);
      } else {
        low = middle;
      }
    }
  }
  end_y = region.top;
  for (const Placed& p : placed) {
    const double x = region.left + p.column * (region.column_mm + region.gutter_mm);
    if (p.row->paint) p.row->paint(sketch, {x, region.top + p.y});
    end_y = std::max(end_y, region.top + p.y + p.row->height_mm);
  }
  return next;
}

}  // namespace sumpwright::dossier
