#pragma once
// Broken invariants stop loudly, in release too. Bad data is never a broken invariant: it is a
// Problem (Problem.h).

namespace sumpwright::base {

/// Called with the condition and where it stands; must not return normally (throw in tests, abort
/// in the program). The default prints to stderr and aborts.
using ContractHandler = void (*)(const char* condition, const char* file, int line);

/// Installs a handler and gives back the one before. Not for use while other threads run.
ContractHandler setContractHandler(ContractHandler handler);

void contractBroken(const char* condition, const char* file, int line);

}  // namespace sumpwright::base

#define SUMPWRIGHT_REQUIRE(condition) \
  ((condition) ? void(0) : ::sumpwright::base::contractBroken(#condition, __FILE__, __LINE__))
