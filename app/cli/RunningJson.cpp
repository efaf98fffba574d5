#include <array>
#include <nlohmann/json.hpp>

#include "cli/Suction.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using RunningRow = nlohmann::ordered_json;

RunningRow costOf(const price::Yearly& year) {
  return year.cost ? RunningRow(price::moneyText(*year.cost, 0)) : RunningRow();
}

RunningRow bandOf(const price::YearlyBand& band) {
  return {{"kwh", {band.low.kwh, band.middle.kwh, band.high.kwh}},
          {"cost", {costOf(band.low), costOf(band.middle), costOf(band.high)}}};
}

const char* fromWord(price::PriceFrom from) {
  static constexpr std::array kWords{"nowhere", "job", "book", "invented_book", "firm"};
  return kWords.at(static_cast<std::size_t>(from));
}

}  // namespace

nlohmann::ordered_json runningJson(const siting::Study& study,
                                   const std::optional<price::RunningYear>& year) {
  if (!year) return {};
  const auto price = [](const std::optional<price::Decimal>& value) {
    return value ? RunningRow(value->text()) : RunningRow();
  };
  RunningRow fan;
  if (year->fan) fan = {{"kwh", year->fan->kwh}, {"cost", costOf(*year->fan)}};
  RunningRow sentences = RunningRow::array();
  for (const auto* list : {&year->lines, &year->how}) {
    for (const base::Message& one : *list) {
      sentences.push_back(
          {{"id", one.id}, {"sentence", words::say(one, study.job().display_units)}});
    }
  }
  return {{"flow_m3_h", year->flow_m3_h},
          {"degree_days", year->degree_days},
          {"degree_days_assumed", year->degree_days_assumed},
          {"house_air", {year->low_share, year->share, year->high_share}},
          {"house_air_assumed", year->share_assumed},
          {"per_kwh", price(year->tariff.per_kwh)},
          {"heat_per_kwh", price(year->tariff.heat_per_kwh)},
          {"price_from", fromWord(year->tariff.from)},
          {"currency", year->tariff.currency},
          {"fan", std::move(fan)},
          {"heat", bandOf(year->heat)},
          {"together", year->together ? bandOf(*year->together) : RunningRow()},
          {"sentences", std::move(sentences)}};
}

}  // namespace sumpwright::cli
