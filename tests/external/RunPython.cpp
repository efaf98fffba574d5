#include "external/RunPython.h"

#include <sys/wait.h>

#include <array>
#include <cstdio>

namespace sumpwright::support {

PythonRun runPython(const std::string& script, const std::string& arguments) {
  const std::string command = std::string("'") + SUMPWRIGHT_SCIPY_PYTHON + "' '" +
                              SUMPWRIGHT_EXTERNAL_DIR + "/" + script + "' " + arguments;
  PythonRun out;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return out;
  std::array<char, 4096> buffer{};
  std::size_t got = 0;
  while ((got = fread(buffer.data(), 1, buffer.size(), pipe)) > 0)
    out.output.append(buffer.data(), got);
  const int state = pclose(pipe);
  out.status = WIFEXITED(state) ? WEXITSTATUS(state) : -1;
  return out;
}

}  // namespace sumpwright::support
