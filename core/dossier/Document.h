#pragma once
// A paper: pages of drawings, ready to be painted as PDF, SVG, PNG or on a printer.

#include <string>
#include <vector>

#include "base/Message.h"
#include "drawing/DrawList.h"

namespace sumpwright::dossier {

enum class PaperSize { a4, a3, letter };

struct SheetSize {
  double width_mm = 210.0;
  double height_mm = 297.0;
};
/// Upright: ISO 216 A4 and A3; North American letter, 8.5 by 11 inches.
constexpr SheetSize sheetSize(PaperSize size) {
  if (size == PaperSize::a3) return {297.0, 420.0};
  if (size == PaperSize::letter) return {215.9, 279.4};
  return {210.0, 297.0};
}

/// A picture file painted over a page, such as the firm's logo; whole, in its own proportions.
struct Picture {
  std::size_t page = 0;
  double left_mm = 0.0;
  double top_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
  std::string bytes;  ///< of a PNG or JPEG file
};

struct Document {
  std::string title;
  std::string author;
  std::string subject;
  double width_mm = 210.0;
  double height_mm = 297.0;
  std::vector<drawing::DrawList> pages;
  std::vector<Picture> pictures;
};

}  // namespace sumpwright::dossier
