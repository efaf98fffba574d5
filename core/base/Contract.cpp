#include "base/Contract.h"

#include <cstdio>
#include <cstdlib>

namespace sumpwright::base {

namespace {

void printAndAbort(const char* condition, const char* file, int line) {
  std::fprintf(stderr, "sumpwright: broken invariant: %s (%s:%d)\n", condition, file, line);
  std::abort();
}

ContractHandler current = printAndAbort;

}  // namespace

ContractHandler setContractHandler(ContractHandler handler) {
  const ContractHandler before = current;
  current = handler != nullptr ? handler : printAndAbort;
  return before;
}

void contractBroken(const char* condition, const char* file, int line) {
  current(condition, file, line);
  std::abort();
}

}  // namespace sumpwright::base
