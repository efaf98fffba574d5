#include "price/RunningYear.h"

#include <cmath>
#include <utility>

#include "airflow/RunningCost.h"
#include "base/Contract.h"
#include "siting/SuctionWords.h"

namespace sumpwright::price {

namespace {

using base::Message;

constexpr double kHoursADay = 24.0;
constexpr double kWattHours = 1000.0;   // in a kilowatt hour
constexpr double kMostKwh = 1e9;        // beyond it a Decimal would not hold the year
constexpr double kMostFirmPrice = 1e6;  // own figure

/// A year's heat of the air that leaves with the share of it that was warm.
double heat_kwh(double flow_m3_h, double share, double degree_days) {
  return kWarmAir_wh * flow_m3_h * share * degree_days * kHoursADay / kWattHours;
}

Yearly yearly(double kwh, const std::optional<Decimal>& price) {
  Yearly out{kwh, std::nullopt};
  if (!price || !(kwh <= kMostKwh)) return out;
  const auto whole = static_cast<std::int64_t>(std::round(kwh));
  out.cost = times(Decimal::ofMillionths(whole * Decimal::kOne), *price, 0);
  return out;
}

Yearly both(const Yearly& a, const Yearly& b) {
  Yearly out{a.kwh + b.kwh, std::nullopt};
  if (a.cost && b.cost) out.cost = sum(*a.cost, *b.cost);
  return out;
}

base::Arg cost(const char* name, const Yearly& year) {
  return base::text(name, moneyText(*year.cost, 0));
}

Message fanLine(const RunningYear& year) {
  if (!year.fan) return Message("running.no-power");
  std::vector<base::Arg> args{base::watts("power", *year.power_w),
                              base::kilowattHours("energy", year.fan->kwh)};
  if (!year.fan->cost) return {"running.fan", std::move(args)};
  args.push_back(cost("cost", *year.fan));
  args.push_back(base::text("currency", year.tariff.currency));
  return {"running.fan-price", std::move(args)};
}

/// "running.WHAT", with "-stated" where there is no band, with "-price" where there is a cost.
Message bandLine(const std::string& what, const YearlyBand& band, const RunningYear& year) {
  const bool one = !year.share_assumed;
  std::vector<base::Arg> args{base::kilowattHours("middle", band.middle.kwh)};
  if (!one) {
    args.push_back(base::kilowattHours("low", band.low.kwh));
    args.push_back(base::kilowattHours("high", band.high.kwh));
  }
  const bool priced = band.low.cost && band.middle.cost && band.high.cost;
  if (priced) {
    args.push_back(cost("cost", band.middle));
    if (!one) {
      args.push_back(cost("low_cost", band.low));
      args.push_back(cost("high_cost", band.high));
    }
    args.push_back(base::text("currency", year.tariff.currency));
  }
  return {"running." + what + (one ? "-stated" : "") + (priced ? "-price" : ""), std::move(args)};
}

Message howLine(const RunningYear& year) {
  Message share("running.share", {base::percent("share", 100.0 * year.share)});
  if (year.share_assumed) {
    share = Message("running.share-assumed", {base::percent("share", 100.0 * year.share),
                                              base::percent("least", 100.0 * year.low_share),
                                              base::percent("most", 100.0 * year.high_share)});
  }
  const Message days(year.degree_days_assumed ? "running.days-assumed" : "running.days",
                     {base::number("days", year.degree_days)});
  return {"running.how",
          {base::flow("flow", base::Flow::ofM3PerH(year.flow_m3_h)), base::phrase("share", share),
           base::phrase("days", days)}};
}

const char* fromWords(PriceFrom from) {
  switch (from) {
    case PriceFrom::job:
      return "running.from.job";
    case PriceFrom::book:
      return "running.from.book";
    case PriceFrom::invented_book:
      return "running.from.invented";
    default:
      return "running.from.firm";
  }
}

void addHow(RunningYear& year) {
  year.how.push_back(howLine(year));
  const Tariff& tariff = year.tariff;
  if (!tariff.per_kwh) {
    year.how.emplace_back("running.no-price");
    return;
  }
  const base::Arg currency = base::text("currency", tariff.currency);
  year.how.push_back({"running.price",
                      {base::text("price", tariff.per_kwh->text(2)), currency,
                       base::phrase("from", Message(fromWords(tariff.from)))}});
  if (tariff.heat_per_kwh) {
    year.how.push_back(
        {"running.heat-at", {base::text("price", tariff.heat_per_kwh->text(2)), currency}});
  } else {
    year.how.emplace_back("running.heat-as-electricity");
  }
}

}  // namespace

Tariff tariffOf(const plan::Running& own, const PriceBook* book, const Tariff& firm) {
  Tariff out = firm;
  if (book != nullptr) {
    out.currency = book->currency;
    const bool firms = firm.per_kwh && firm.currency == book->currency;
    if (book->per_kwh && !(book->invented && firms)) {
      out.per_kwh = book->per_kwh;
      out.from = book->invented ? PriceFrom::invented_book : PriceFrom::book;
    } else if (firm.currency != book->currency) {
      out.per_kwh.reset();  // another currency's price is none in this one
      out.from = PriceFrom::nowhere;
    }
  }
  if (const auto price = Decimal::parse(own.per_kwh)) {
    out.per_kwh = price;
    out.from = PriceFrom::job;
  }
  out.heat_per_kwh = Decimal::parse(own.heat_per_kwh);
  return out;
}

Tariff firmTariff(std::optional<double> per_kwh, std::string currency) {
  Tariff out;
  out.currency = std::move(currency);
  if (!per_kwh || !(*per_kwh > 0.0 && *per_kwh <= kMostFirmPrice)) return out;
  out.per_kwh = Decimal::ofMillionths(std::llround(*per_kwh * static_cast<double>(Decimal::kOne)));
  out.from = PriceFrom::firm;
  return out;
}

RunningYear runningYear(double flow_m3_h, std::optional<double> power_w,
                        const plan::Running& running, const Tariff& tariff) {
  SUMPWRIGHT_REQUIRE(std::isfinite(flow_m3_h) && flow_m3_h >= 0.0);
  RunningYear out;
  out.flow_m3_h = flow_m3_h;
  out.tariff = tariff;
  if (running.degree_days) {
    out.degree_days = *running.degree_days;
    out.degree_days_assumed = false;
  }
  if (running.house_air) {
    out.low_share = out.share = out.high_share = *running.house_air;
    out.share_assumed = false;
  }
  const auto& heat_price = tariff.heat_per_kwh ? tariff.heat_per_kwh : tariff.per_kwh;
  const auto heat = [&](double share) {
    return yearly(heat_kwh(flow_m3_h, share, out.degree_days), heat_price);
  };
  out.heat = {heat(out.low_share), heat(out.share), heat(out.high_share)};
  if (power_w) {
    out.power_w = power_w;
    out.fan = yearly(airflow::runningCost(*power_w, std::nullopt).energy_kwh, tariff.per_kwh);
    out.together = YearlyBand{both(*out.fan, out.heat.low), both(*out.fan, out.heat.middle),
                              both(*out.fan, out.heat.high)};
  }
  out.lines.push_back(fanLine(out));
  out.lines.push_back(bandLine("heat", out.heat, out));
  if (out.together) out.lines.push_back(bandLine("together", *out.together, out));
  addHow(out);
  return out;
}

std::optional<RunningYear> runningYear(const siting::SuctionAnswer& answer,
                                       const plan::Running& running, const Tariff& tariff) {
  if (answer.state != siting::SuctionState::answered) return std::nullopt;
  return runningYear(siting::middleFlow_m3_h(answer), answer.power_w, running, tariff);
}

}  // namespace sumpwright::price
