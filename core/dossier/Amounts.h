#pragma once
// Quantities of a quote as papers print them.

#include <string>

#include "dossier/Sheet.h"

namespace sumpwright::dossier {

inline constexpr double kTick_mm = 6.0;  ///< height of a line to tick

/// By the unit of the price book, which a price is for; a job in feet has them beside. What follows
/// from a run that nobody placed is marked.
class Amounts {
 public:
  explicit Amounts(const Sheet& sheet) : m_sheet(sheet) {}
  double share() const { return both() ? 1.9 : 1.1; }  ///< of a table's width
  std::string operator()(const price::PricedLine& line) const;

 private:
  bool both() const;
  std::string counted(const price::PricedLine& line) const;
  const Sheet& m_sheet;
};

}  // namespace sumpwright::dossier
