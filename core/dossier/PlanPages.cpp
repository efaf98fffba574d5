#include "dossier/PlanPages.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sumpwright::dossier {

namespace {

constexpr double kLeastText_mm = 20.0;  // less than this below the plan is left white
constexpr double kColumn_mm = 87.5;     // half a page of A4

/// Two on A4 upright, three across its long side.
int columnsOf(const Sheet& sheet) {
  const double width = sheet.width_mm - 2 * kMargin_mm;
  return std::max(2,
                  static_cast<int>(std::lround((width + kGutter_mm) / (kColumn_mm + kGutter_mm))));
}

Rows laterHead(const Pages& pages) {
  const Sheet& sheet = pages.sheet;
  return laterHeadRows(sheet, pages.width(), sheet.desk.say(sheet.front.title));
}

Rows joined(const std::vector<Rows>& parts, double gap_mm) {
  Rows out;
  for (const Rows& part : parts) {
    if (!out.empty()) out.push_back({gap_mm, {}, false});
    out.insert(out.end(), part.begin(), part.end());
  }
  return out;
}

/// Whether rows stand whole in a region.
bool fits(const Rows& rows, const Region& region) {
  drawing::DrawList scratch;
  Sketch sketch(scratch);
  double end = 0.0;
  return flow(sketch, rows, 0, region, end) == rows.size();
}

/// Where the first part is too tall for what is left of the first page, the first of the others
/// that stands there whole goes before it rather than leaving the page white.
/// What comes last stays last.
void fillFirstPage(std::vector<Rows>& parts, const Region& region) {
  constexpr std::ptrdiff_t kLast = 2;
  if (parts.size() <= static_cast<std::size_t>(kLast)) return;
  drawing::DrawList scratch;
  Sketch sketch(scratch);
  double end = 0.0;
  if (flow(sketch, parts.front(), 0, region, end) > 0) return;
  const auto end_of_choice = parts.end() - kLast;
  const auto other = std::find_if(parts.begin(), end_of_choice,
                                  [&](const Rows& part) { return fits(part, region); });
  if (other != end_of_choice) std::rotate(parts.begin(), other, other + 1);
}

}  // namespace

double columnWidth_mm(const Sheet& sheet) {
  const int columns = columnsOf(sheet);
  const double width = sheet.width_mm - 2 * kMargin_mm;
  return std::min(kColumn_mm, (width - kGutter_mm * (columns - 1)) / columns);
}

bool textIsBeside(const Sheet& sheet) { return sheet.width_mm > sheet.height_mm; }

Region textRegion(const Pages& pages, double top) {
  const int columns = columnsOf(pages.sheet);
  const double column = columnWidth_mm(pages.sheet);
  const double gutter = (pages.width() - columns * column) / (columns - 1);
  return {kMargin_mm, top, pages.bottom() - 1.5, column, gutter, columns, true};
}

void flowAll(Pages& pages, std::vector<Rows> parts, Region region, Rows wide) {
  const bool room = region.bottom - region.top >= kLeastText_mm;
  if (room) fillFirstPage(parts, region);
  const Rows rows = joined(parts, pages.gap_mm);
  std::size_t next = 0;
  if (room) {
    Sketch sketch(pages.document.pages.back());
    sketch.tagged("text");
    pages.end_y = region.top;
    next = flow(sketch, rows, 0, region, pages.end_y);
  }
  while (next < rows.size()) {
    Sketch sketch = pages.add();
    region = textRegion(pages, stack(sketch, laterHead(pages), {kMargin_mm, kMargin_mm}));
    region.more_follows = false;
    if (!wide.empty()) {
      region.top = stack(sketch.tagged("text"), wide, {kMargin_mm, region.top}) + kPartGap_mm;
      wide.clear();
    }
    sketch.tagged("text");
    const std::size_t before = next;
    next = flow(sketch, rows, next, region, pages.end_y);
    pages.last_mm = pages.end_y - region.top;
    if (next == before) break;  // a row taller than a page: nothing can place it
  }
}

void addLast(Pages& pages, const Rows& rows) {
  if (rows.empty()) return;
  const bool room =
      pages.end_y > 0.0 && pages.end_y + 2.0 * kPartGap_mm + heightOf(rows) < pages.bottom();
  const bool beside = pages.document.pages.size() == 1 && textIsBeside(pages.sheet);
  if (room && !beside) {
    Sketch sketch(pages.document.pages.back());
    stack(sketch.tagged("text"), rows, {kMargin_mm, pages.end_y + 2.0 * kPartGap_mm});
    pages.last_mm += heightOf(rows);
    return;
  }
  Sketch sketch = pages.add();
  const double top = stack(sketch, laterHead(pages), {kMargin_mm, kMargin_mm});
  stack(sketch.tagged("text"), rows, {kMargin_mm, top});
  pages.last_mm = heightOf(rows);
  pages.last_alone = true;
}

}  // namespace sumpwright::dossier
