#pragma once
// What `sumpwright suction` says: as JSON ("sumpwright.suction/1", described in the manual), as
// text and as a grid. JSON and text hold the same facts.

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "price/RunningYear.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::cli {

/// SI units and shares of 1 in full precision; sentences in English in the job's display units.
nlohmann::ordered_json suctionJson(const siting::Study& study, const siting::SuctionSystem& system,
                                   const siting::SuctionAnswer& answer,
                                   const std::optional<price::RunningYear>& year);

/// Parts of suctionJson(): the job's readings, what was predicted for them before, the ground
/// fitted to them, one fan's legs (null where there are none), lines for the papers.
nlohmann::ordered_json measuredJson(const siting::Study& study);
nlohmann::ordered_json expectedJson(const siting::SuctionAnswer& answer);
nlohmann::ordered_json fittedJson(const siting::Study& study, const siting::SuctionAnswer& answer);
nlohmann::ordered_json sharedFanJson(const siting::Study& study,
                                     const siting::SuctionAnswer& answer);
nlohmann::ordered_json paperLinesJson(const siting::Study& study,
                                      const siting::SuctionAnswer& answer);

/// Which fan suits, best first; costs of a year's electricity by the tariff of `year`.
nlohmann::ordered_json fansJson(const siting::Study& study, const siting::SuctionAnswer& answer,
                                const std::optional<price::RunningYear>& year);
void printFans(const siting::Study& study, const siting::SuctionAnswer& answer,
               const std::optional<price::RunningYear>& year, std::ostream& out);

/// What a year costs; null for nothing.
nlohmann::ordered_json runningJson(const siting::Study& study,
                                   const std::optional<price::RunningYear>& year);

void printSuction(const siting::Study& study, const siting::SuctionSystem& system,
                  const siting::SuctionAnswer& answer,
                  const std::optional<price::RunningYear>& year, std::ostream& out);

/// Best places by chance of reach; empty where they were not asked for or no wall is open.
std::vector<siting::BestPlace> placesByChance(const siting::Study& study,
                                              const siting::SuctionAnswer& answer);

/// Lines "x_m,y_m,suction_pa,chance" under a head of those names, one for each cell of the floor.
std::string gridCsv(const siting::SuctionAnswer& answer);

}  // namespace sumpwright::cli
