#pragma once
// A paper: pages of drawings, ready to be painted as PDF, SVG, PNG or on a printer.

#include <string>
#include <vector>

#include "base/Message.h"
#include "drawing/DrawList.h"

namespace sumpwright::dossier {

enum class PaperSize { a4, a3 };

struct Document {
  std::string title;
  std::string author;
  std::string subject;
  double width_mm = 210.0;
  double height_mm = 297.0;
  std::vector<drawing::DrawList> pages;
};

}  // namespace sumpwright::dossier
