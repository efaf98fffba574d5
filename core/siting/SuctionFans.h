#pragma once
// Which fan suits: those offered, each on the pipes and the ground that the study counts with, on
// the middle guess.

#include <string>
#include <vector>

#include "airflow/FanChoice.h"
#include "siting/SuctionSystem.h"

namespace sumpwright::siting {

class MiddleCases;

/// A fan that may be taken.
struct OfferedFan {
  airflow::Fan fan;
  std::string table;      ///< id of the table it is of; "": of none
  bool invented = false;  ///< a demo class, no product
};

/// How it does: the verdict's `fan` is the index of the offer.
struct FanOffer {
  std::string id;
  std::string table;
  std::string title;
  bool invented = false;
  bool taken = false;  ///< the one the study counts with
  airflow::FanVerdict verdict;
};

/// Best first (airflow::chooseFan(): all of the floor counts as held from suction::kWholeFloor of
/// it on). The fan of the system is among them, whether it was offered or not. Empty where no sump
/// was solved. Contract: `middle` is solved.
std::vector<FanOffer> fanOffers(const MiddleCases& middle, const SuctionSystem& system,
                                std::vector<OfferedFan> offered);

}  // namespace sumpwright::siting
