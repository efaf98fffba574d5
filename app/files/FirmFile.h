#pragma once
// What a firm prints on its papers: name, address, numbers, logo, terms. A file of its own, since
// it belongs to no job: sumpwright/firm.json of the XDG configuration folder (as a rule
// ~/.config/sumpwright/firm.json), or one that is named.

#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "price/RunningYear.h"

namespace sumpwright::files {

struct Firm {
  std::string name;
  std::vector<std::string> lines;  ///< address, telephone, mail
  std::string insurer;
  std::string registration;
  std::string electrician;
  std::string logo;  ///< bytes of a PNG or JPEG file; empty: none
  /// Name of a picture in the firm's file that could not be read: it is kept there.
  std::string lost_logo;
  int logo_width_px = 0;
  int logo_height_px = 0;
  std::vector<std::string> terms;       ///< paragraphs; empty: the program's own
  std::optional<double> price_per_kwh;  ///< in `currency`
  std::string currency;
  bool operator==(const Firm&) const = default;
};

/// Head, terms and the firm's own price of electricity (job and price book come before it), onto
/// what papers are made with (the dossier's options, which this folder does not know).
template <class PaperOptions>
void putOn(PaperOptions& options, const Firm& firm) {
  auto& head = options.letterhead;
  head.firm = firm.name;
  head.lines = firm.lines;
  head.insurer = firm.insurer;
  head.registration = firm.registration;
  head.electrician = firm.electrician;
  head.logo.reset();
  if (!firm.logo.empty())
    head.logo.emplace() = {firm.logo, firm.logo_width_px, firm.logo_height_px};
  options.terms = firm.terms;
  options.tariff = price::firmTariff(firm.price_per_kwh, firm.currency);
}

/// Where the user's own stands; it need not exist.
std::string userFirmFile();

/// The firm in a file; a logo is named relative to it. Problems: file.* of the file and of the
/// logo, file.firm-unusable {file, reason}; those of the logo alone go to `logo_trouble`, if given,
/// and the rest is read.
base::Result<Firm> firmFromFile(const std::string& path, base::Problems* logo_trouble = nullptr);

/// The user's own; an empty one where there is no such file.
base::Result<Firm> userFirm(base::Problems* logo_trouble = nullptr);

/// Writes the user's own file, and the logo as firm-logo.png or .jpg beside it. Members of the file
/// that nobody knows here stay. Problems: file.not-writable, and file.firm-unusable where the file
/// that would be replaced is no firm's.
base::Problems saveUserFirm(const Firm& firm);

/// Puts a picture in place of the firm's logo. Problems: file.* of the picture, file.firm-unusable;
/// then the firm is as it was.
base::Problems takeLogo(Firm& firm, const std::string& picture);

}  // namespace sumpwright::files
