#pragma once
// Makes bad job files out of good ones, by a seed: the same seed gives the same file on every
// machine (own uniform draws; the standard's distributions differ between libraries).

#include <cstdint>
#include <string>
#include <vector>

namespace sumpwright::fuzz {

class Mutator {
 public:
  /// `seeds`: texts to start from; at least one.
  explicit Mutator(std::vector<std::string> seeds);

  /// The file of that number, for ever the same for the same seeds: changes of one seed
  /// text: of bytes, tokens and numbers, or of the JSON tree.
  std::string file(std::uint64_t number) const;

 private:
  std::vector<std::string> m_seeds;
};

}  // namespace sumpwright::fuzz
