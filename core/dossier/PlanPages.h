#pragma once
// The pages of a client's paper: text in columns that goes on from page to page, and what stands
// over all of them. Internal to core/dossier.

#include <vector>

#include "dossier/Sheet.h"

namespace sumpwright::dossier {

inline constexpr double kGutter_mm = 9.0;
inline constexpr double kPartGap_mm = 3.2;

double columnWidth_mm(const Sheet& sheet);

struct Pages {
  const Sheet& sheet;
  Document document;
  double gap_mm = kPartGap_mm;  ///< between parts
  double last_mm = 0.0;         ///< of text on a last page that holds nothing else
  double end_y = 0.0;           ///< where the text of the last page ends
  bool last_alone = false;      ///< what stands last has a page of its own
  double width() const { return sheet.width_mm - 2 * kMargin_mm; }
  double bottom() const { return sheet.height_mm - kMargin_mm - footHeight_mm(sheet); }
  Sketch add() {
    document.pages.push_back({sheet.width_mm, sheet.height_mm, {}});
    return Sketch(document.pages.back());
  }
};

/// Where a sheet lies, its text stands beside the plan: below, neither had the height it needs.
bool textIsBeside(const Sheet& sheet);

/// All columns, from there down.
Region textRegion(const Pages& pages, double top);

/// Into what the first page leaves, then further pages until everything stands somewhere; `wide` on
/// top of the first of them, over all columns.
void flowAll(Pages& pages, std::vector<Rows> parts, Region region, Rows wide);

/// Below the text of the last page, over all columns, or on one more.
void addLast(Pages& pages, const Rows& rows);

}  // namespace sumpwright::dossier
