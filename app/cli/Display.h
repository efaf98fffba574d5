#pragma once

#include <ostream>

namespace sumpwright::cli {

/// Whether a window can be shown. If not, says on `err` what works without one (id cli.no-display):
/// Qt itself would end the process without a word a person can use.
bool canShowWindow(std::ostream& err);

/// Fonts and painters need a QGuiApplication. The window's is taken where there is one; else one
/// that asks for no display, kept for the life of the process since Qt wants only one.
void ensureGui();

}  // namespace sumpwright::cli
