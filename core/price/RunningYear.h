#pragma once
// What a sump uses and costs in a year: the fan, which never stops, and the heat of the room air it
// draws out through the floor. A prediction: both follow from the flow and power that the suction
// study predicts. Costs in whole units of the currency, reckoned exactly from whole kilowatt hours.

#include <optional>
#include <string>
#include <vector>

#include "plan/Job.h"
#include "price/PriceBook.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::price {

/// Heating degree days where the job states none, K d a year (own figure: a mild oceanic climate).
inline constexpr double kDegreeDays = 2200.0;
/// Share of the drawn air that comes from heated rooms where the job states none (assumption).
inline constexpr double kLeastHouseAir = 0.2;
inline constexpr double kHouseAir = 0.5;
inline constexpr double kMostHouseAir = 0.8;
/// Heat to warm a cubic metre of air by one kelvin, Wh (1.2 kg/m3, 1006 J/(kg K); derived).
inline constexpr double kWarmAir_wh = 0.34;

enum class PriceFrom { nowhere, job, book, invented_book, firm };

/// What a kilowatt hour costs, and who says so.
struct Tariff {
  std::optional<Decimal> per_kwh;       ///< of electricity
  std::optional<Decimal> heat_per_kwh;  ///< nothing: heat is counted at the price of electricity
  PriceFrom from = PriceFrom::nowhere;  ///< of per_kwh
  std::string currency;                 ///< as printed after an amount; may be empty
  bool operator==(const Tariff&) const = default;
};

/// The job's own price, else the book's, else the firm's; an invented book's comes last. The
/// currency is the book's where there is one, and a firm's price in another is none. Decimal texts
/// that are none count as not stated: checkJob() tells them.
Tariff tariffOf(const plan::Running& own, const PriceBook* book, const Tariff& firm = {});
/// A price that a firm's file holds as a number, to six decimals. Not above nothing: none.
Tariff firmTariff(std::optional<double> per_kwh, std::string currency);

struct Yearly {
  double kwh = 0.0;
  std::optional<Money> cost;  ///< whole units; nothing without a price
};

/// With the share of house air low, in the middle and high; all three alike where the job states
/// it.
struct YearlyBand {
  Yearly low, middle, high;
};

struct RunningYear {
  double flow_m3_h = 0.0;
  std::optional<double> power_w;  ///< of all fans; nothing: the fan table has none
  std::optional<Yearly> fan;
  YearlyBand heat;
  std::optional<YearlyBand> together;  ///< nothing where the fan's power is not known
  double degree_days = kDegreeDays;
  bool degree_days_assumed = true;
  double low_share = kLeastHouseAir, share = kHouseAir, high_share = kMostHouseAir;
  bool share_assumed = true;
  Tariff tariff;
  std::vector<base::Message> lines;  ///< fan, heat, together
  std::vector<base::Message> how;    ///< what it was counted with, and by whose word
};

/// Contract: flow finite, not below nothing.
RunningYear runningYear(double flow_m3_h, std::optional<double> power_w,
                        const plan::Running& running, const Tariff& tariff);
/// Of a suction study, on its middle guess; nothing where it has no answer.
std::optional<RunningYear> runningYear(const siting::SuctionAnswer& answer,
                                       const plan::Running& running, const Tariff& tariff);

}  // namespace sumpwright::price
