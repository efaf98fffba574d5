#pragma once
// The firm's head on its papers. A value: where it is kept is the program's business. What is empty
// is not printed, so that no paper claims an insurer or a registration that nobody has entered.

#include <optional>
#include <string>
#include <vector>

#include "dossier/Document.h"
#include "dossier/Flow.h"

namespace sumpwright::dossier {

struct Logo {
  std::string bytes;  ///< of a PNG or JPEG file
  int width_px = 0;
  int height_px = 0;
};

struct Letterhead {
  std::string firm;
  std::vector<std::string> lines;  ///< address, telephone, mail
  std::string insurer;             ///< with the policy's number, as the firm writes it
  std::string registration;
  std::string electrician;  ///< registered electrician and number
  std::optional<Logo> logo;
  bool isEmpty() const;
};

/// Over the whole width, a rule under it. None for an empty letterhead.
Rows letterheadRows(const Desk& desk, const Letterhead& letterhead, double width_mm);
/// What stands beside it, for a sheet with little height: its words right of the picture, no rule.
/// Of an empty letterhead a gap of no height.
Row letterheadBlock(const Desk& desk, const Letterhead& letterhead, double width_mm);

/// Puts the logo's picture where the rows left room for it.
void placeLogo(Document& document, const Letterhead& letterhead);

}  // namespace sumpwright::dossier
