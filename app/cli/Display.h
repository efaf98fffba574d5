#pragma once

#include <ostream>

namespace sumpwright::cli {

/// Whether a window can be shown. If not, says on `err` what works without one (id cli.no-display):
/// Qt itself would end the process without a word a person can use.
bool canShowWindow(std::ostream& err);

}  // namespace sumpwright::cli
