#pragma once
// Whole texts compared with files kept beside the tests. Run with SUMPWRIGHT_RENEW_GOLDEN=1 to
// write them anew, then read the difference before committing it.

#include <string>
#include <string_view>

namespace sumpwright::support {

/// Fails the running test, naming the first line that differs, unless the file (relative to
/// tests/) holds exactly this text.
void expectGolden(const std::string& file, std::string_view actual);

}  // namespace sumpwright::support
