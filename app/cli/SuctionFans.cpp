// Which fan suits, as `sumpwright suction` tells it.

#include <nlohmann/json.hpp>

#include "cli/Suction.h"
#include "siting/SuctionWords.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using FanRow = nlohmann::ordered_json;

const char* suitsWord(airflow::FanSuits suits) {
  switch (suits) {
    case airflow::FanSuits::yes:
      return "yes";
    case airflow::FanSuits::noisy:
      return "noisy";
    default:
      return "no";
  }
}

/// Of its electricity alone; nothing where its power is not known.
std::optional<price::Yearly> electricity(const siting::Study& study, const siting::FanOffer& offer,
                                         const std::optional<price::RunningYear>& year) {
  if (!offer.verdict.power_w) return std::nullopt;
  const price::Tariff tariff = year ? year->tariff : price::Tariff{};
  return price::runningYear(0.0, offer.verdict.power_w, study.job().design.running, tariff).fan;
}

FanRow lineRows(const airflow::DutySummary& duty) {
  FanRow rows = FanRow::array();
  for (const airflow::LineDuty& line : duty.lines) {
    rows.push_back({{"flow_m3_s", line.flow.m3PerS()},
                    {"fan_pa", line.fan.pa()},
                    {"speed_m_s", line.speed_m_s},
                    {"power_w", line.power_w ? FanRow(*line.power_w) : FanRow()},
                    {"outside_curve", line.outside_curve}});
  }
  return rows;
}

std::string costWords(const siting::Study& study, const siting::FanOffer& offer,
                      const std::optional<price::RunningYear>& year) {
  const auto cost = electricity(study, offer, year);
  if (!cost) return "power not known";
  const auto print = [&](double value, base::Unit unit) {
    return words::print({value, unit}, words::Units::metric, {.decimals = 0});
  };
  std::string text = print(*offer.verdict.power_w, base::Unit::watt) + ", " +
                     print(cost->kwh, base::Unit::kilowattHour) + " a year";
  if (cost->cost) {
    text += ", " + price::moneyText(*cost->cost, 0) + " " + year->tariff.currency;
    while (text.back() == ' ') text.pop_back();  // a currency without a name
  }
  return text;
}

}  // namespace

FanRow fansJson(const siting::Study& study, const siting::SuctionAnswer& answer,
                const std::optional<price::RunningYear>& year) {
  FanRow rows = FanRow::array();
  for (const siting::FanOffer& one : answer.fans) {
    const auto cost = electricity(study, one, year);
    FanRow reasons = FanRow::array();
    for (const base::Message& reason : one.verdict.reasons) {
      reasons.push_back(
          {{"id", reason.id}, {"sentence", words::say(reason, study.job().display_units)}});
    }
    rows.push_back(
        {{"id", one.id},
         {"table", one.table.empty() ? FanRow() : FanRow(one.table)},
         {"title", one.title},
         {"invented", one.invented},
         {"in_use", one.taken},
         {"suits", suitsWord(one.verdict.suits)},
         {"floor", one.verdict.held ? FanRow(*one.verdict.held) : FanRow()},
         {"lines", lineRows(one.verdict.duty)},
         {"power_w", one.verdict.power_w ? FanRow(*one.verdict.power_w) : FanRow()},
         {"energy_kwh_a", cost ? FanRow(cost->kwh) : FanRow()},
         {"cost_a", cost && cost->cost ? FanRow(price::moneyText(*cost->cost, 0)) : FanRow()},
         {"reasons", std::move(reasons)}});
  }
  return rows;
}

void printFans(const siting::Study& study, const siting::SuctionAnswer& answer,
               const std::optional<price::RunningYear>& year, std::ostream& out) {
  if (answer.fans.empty()) return;
  out << "\nWhich fan suits, on the middle guess\n";
  for (const siting::FanOffer& one : answer.fans) {
    const bool says = !one.invented || one.title.find("(invented)") != std::string::npos;
    out << "  " << one.title << (says ? "" : " (invented)") << (one.taken ? ", in use" : "") << ": "
        << costWords(study, one, year) << '\n';
    for (const base::Message& reason : one.verdict.reasons) {
      out << "    " << words::say(reason, study.job().display_units) << '\n';
    }
    const std::vector<std::string> names = siting::sumpNames(answer);
    for (const base::Message& line : siting::dutySentences(one.verdict.duty, names)) {
      out << "    " << words::say(line, study.job().display_units) << '\n';
    }
  }
}

}  // namespace sumpwright::cli
