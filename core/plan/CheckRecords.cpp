// What the job says of itself: dates, rule sheet, how it was measured.

#include <charconv>
#include <chrono>

#include "plan/Checks.h"

namespace sumpwright::plan {

namespace {

/// `digits` digits at `from` as a number, or -1.
int numberAt(const std::string& text, std::size_t from, std::size_t digits) {
  int number = -1;
  const char* end = text.data() + from + digits;
  const auto [stop, error] = std::from_chars(text.data() + from, end, number);
  return error == std::errc() && stop == end ? number : -1;
}

}  // namespace

bool isDate(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const int year = numberAt(text, 0, 4);
  const int month = numberAt(text, 5, 2);
  const int day = numberAt(text, 8, 2);
  if (year < 0 || month < 0 || day < 0) return false;
  return std::chrono::year_month_day{std::chrono::year{year},
                                     std::chrono::month{static_cast<unsigned>(month)},
                                     std::chrono::day{static_cast<unsigned>(day)}}
      .ok();
}

void checkDate(const std::string& date, const std::string& pointer, ProblemList& problems) {
  if (date.empty() || isDate(date)) return;
  problems.add("plan.date.bad", pointer, {base::text("date", date)});
}

void checkRecords(const Job& job, ProblemList& problems) {
  checkDate(job.surveyed_on, "/surveyed_on", problems);
  if (job.rule_sheet.empty()) problems.add("plan.rule-sheet.none", "/rule_sheet");
  if (job.survey_method == SurveyMethod::not_stated) {
    problems.add(base::Gravity::missing, "plan.survey.method-unknown", "/survey_method");
  }
}

}  // namespace sumpwright::plan
