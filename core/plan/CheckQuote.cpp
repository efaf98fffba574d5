#include <algorithm>

#include "plan/Blank.h"
#include "plan/Checks.h"

namespace sumpwright::plan {

namespace {

constexpr std::size_t kMostWhole = 12;
constexpr std::size_t kMostAfter = 6;

std::size_t digitsFrom(const std::string& text, std::size_t from) {
  const auto end = std::find_if(text.begin() + static_cast<std::ptrdiff_t>(from), text.end(),
                                [](char c) { return c < '0' || c > '9'; });
  return static_cast<std::size_t>(end - text.begin()) - from;
}

enum class Sign { any, not_negative };

void checkDecimal(const std::string& text, const std::string& pointer, Sign sign,
                  ProblemList& problems) {
  if (text.empty()) return;
  if (!isDecimal(text)) {
    problems.add("plan.quote.not-decimal", pointer, {base::text("entry", text)});
  } else if (sign == Sign::not_negative && text.starts_with('-')) {
    problems.add("plan.quote.negative", pointer, {base::text("entry", text)});
  }
}

}  // namespace

bool isDecimal(const std::string& text) {
  std::size_t at = text.starts_with('-') ? 1 : 0;
  const std::size_t whole = digitsFrom(text, at);
  if (whole == 0 || whole > kMostWhole) return false;
  at += whole;
  if (at == text.size()) return true;
  if (text[at] != '.') return false;
  const std::size_t after = digitsFrom(text, ++at);
  return after > 0 && after <= kMostAfter && at + after == text.size();
}

void checkQuote(const Quote& quote, ProblemList& problems) {
  const std::string pointer = "/design/quote";
  checkDate(quote.date, at(pointer, "date"), problems);
  if (quote.valid_days && *quote.valid_days < 1) {
    problems.add("plan.quote.days", at(pointer, "valid_days"));
  }
  checkDecimal(quote.tax_percent, at(pointer, "tax_percent"), Sign::not_negative, problems);
  checkDecimal(quote.margin_percent, at(pointer, "margin_percent"), Sign::not_negative, problems);
  checkDecimal(quote.provisional, at(pointer, "provisional"), Sign::not_negative, problems);
  for (std::size_t i = 0; i < quote.lines.size(); ++i) {
    const QuoteLine& line = quote.lines[i];
    const std::string here = at(at(pointer, "lines"), i);
    checkDecimal(line.quantity, at(here, "quantity"), Sign::not_negative, problems);
    checkDecimal(line.unit_price, at(here, "unit_price"), Sign::any, problems);  // a discount
    if (line.item.empty() && isBlank(line.text)) {
      problems.add("plan.quote.nothing", at(here, "text"), {base::text("line", line.id)});
    }
  }
}

void checkRunning(const Running& running, ProblemList& problems) {
  constexpr double kMostDegreeDays = 20000.0;  // more than any inhabited place has (own figure)
  const std::string pointer = "/design/running";
  const auto& days = running.degree_days;
  if (days && !(*days >= 0.0 && *days <= kMostDegreeDays)) {
    problems.add("plan.running.degree-days", at(pointer, "degree_days"),
                 {base::number("days", *days), base::number("most", kMostDegreeDays)});
  }
  const auto& share = running.house_air;
  if (share && !(*share >= 0.0 && *share <= 1.0)) {
    problems.add("plan.running.share", at(pointer, "house_air"), {base::number("share", *share)});
  }
  checkDecimal(running.per_kwh, at(pointer, "per_kwh"), Sign::not_negative, problems);
  checkDecimal(running.heat_per_kwh, at(pointer, "heat_per_kwh"), Sign::not_negative, problems);
}

}  // namespace sumpwright::plan
