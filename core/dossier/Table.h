#pragma once
// Ruled tables: cells wrap, the head is repeated where the table goes on in a new column or page.

#include <string>
#include <utility>
#include <vector>

#include "dossier/Flow.h"

namespace sumpwright::dossier {

struct TableColumn {
  std::string title;
  double share = 1.0;  ///< of the width, against the other columns; more where a word needs it
  drawing::HAlign align = drawing::HAlign::left;
};

struct Cell {
  explicit Cell(std::string text = {}, Font f = fonts::body) : words(std::move(text)), font(f) {}
  std::string words;
  Font font = fonts::body;
};

struct TableStyle {
  double least_mm = 0.0;  ///< height of a row: room to write by hand
  bool boxed = false;     ///< uprights as well, for a form to fill
  bool whole = false;     ///< never broken where a column holds it
};

/// Rows shorter than the columns are filled with empty cells. No head where all titles are empty.
Rows tableRows(const Desk& desk, const std::vector<TableColumn>& columns,
               const std::vector<std::vector<Cell>>& cells, double width_mm,
               const TableStyle& style = {});

}  // namespace sumpwright::dossier
