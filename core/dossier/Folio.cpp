#include "dossier/Folio.h"

#include <algorithm>
#include <utility>

namespace sumpwright::dossier {
namespace {

constexpr double kFolioGutter_mm = 9.0;
constexpr double kBetween_mm = 3.2;
constexpr double kUneven_mm = 5.0;  // by which one column may be the longer

}  // namespace

Folio::Folio(const Sheet& sheet, std::string title, const std::string& under)
    : m_sheet(sheet), m_title(std::move(title)) {
  m_document.width_mm = sheet.width_mm;
  m_document.height_mm = sheet.height_mm;
  m_document.title = documentTitle(sheet, m_title);
  m_document.author = sheet.job().surveyor;
  m_document.subject = m_title;
  m_document.pages.push_back({sheet.width_mm, sheet.height_mm, {}});
  Sketch sketch(m_document.pages.back());
  m_y = stack(sketch, headRows(sheet, width_mm(), m_title, under), {kMargin_mm, kMargin_mm});
}

double Folio::columnWidth_mm(int columns) const {
  return (width_mm() - kFolioGutter_mm * (columns - 1)) / columns;
}

double Folio::bottom() const {
  return m_sheet.height_mm - kMargin_mm - footHeight_mm(m_sheet) - 1.5;
}

void Folio::newPage() {
  m_document.pages.push_back({m_sheet.width_mm, m_sheet.height_mm, {}});
  Sketch sketch(m_document.pages.back());
  m_y = stack(sketch, laterHeadRows(m_sheet, width_mm(), m_title), {kMargin_mm, kMargin_mm});
  m_fresh = true;
}

void Folio::add(const Rows& rows, int columns) {
  if (rows.empty()) return;
  if (!m_fresh) m_y += kBetween_mm;
  Region region{kMargin_mm, m_y, bottom(), columnWidth_mm(columns), kFolioGutter_mm, columns, true};
  std::size_t next = 0;
  while (next < rows.size()) {
    const std::size_t before = next;
    region.top = m_y;
    region.more_follows = !m_fresh;
    double end = m_y;
    if (region.bottom - region.top > 1.0) {
      Sketch sketch(m_document.pages.back());
      sketch.tagged("text");
      next = flow(sketch, rows, next, region, end);
    }
    if (next > before) {
      m_y = end;
      m_fresh = false;
    } else if (m_fresh) {
      ++next;  // taller than a page
    }
    if (next < rows.size() && !(m_fresh && next > before)) newPage();
  }
}

void Folio::addWhole(const Rows& rows, int columns) {
  const double height = heightOf(rows) / columns;
  if (!m_fresh && height + kBetween_mm > room_mm() && height <= pageRoom_mm()) newPage();
  add(rows, columns);
}

void Folio::addTogether(const Rows& wide, const Rows& below, int columns) {
  const double height = heightOf(wide) + kBetween_mm + heightOf(below) / columns + kUneven_mm;
  if (!m_fresh && height + kBetween_mm > room_mm() && height <= pageRoom_mm()) newPage();
  addWhole(wide);
  add(below, columns);
}

void Folio::addBeside(const Rows& left, const Rows& right) {
  addBeside(left, right, columnWidth_mm(2));
}

double Folio::besideWidth_mm(double left_mm) const {
  return width_mm() - left_mm - kFolioGutter_mm;
}

void Folio::addBeside(const Rows& left, const Rows& right, double left_mm) {
  const double height = std::max(heightOf(left), heightOf(right));
  if (!m_fresh && height + kBetween_mm > room_mm()) newPage();
  if (!m_fresh) m_y += kBetween_mm;
  Sketch sketch(m_document.pages.back());
  sketch.tagged("text");
  stack(sketch, left, {kMargin_mm, m_y});
  stack(sketch, right, {kMargin_mm + left_mm + kFolioGutter_mm, m_y});
  m_y += height;
  m_fresh = false;
}

Document Folio::finished() {
  const int count = static_cast<int>(m_document.pages.size());
  for (int i = 0; i < count; ++i) {
    Sketch sketch(m_document.pages[static_cast<std::size_t>(i)]);
    paintFoot(sketch, m_sheet, i + 1, count);
  }
  placeLogo(m_document, m_sheet.options.letterhead);
  return std::move(m_document);
}

}  // namespace sumpwright::dossier
