// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/today.h"

#include <chrono>
#include <cstdlib>
#include <ctime>

#include "query/cli/flags.h"

namespace sheaf {
namespace {

std::string two_digits(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::string date_of_the_clock() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  return std::to_string(local.tm_year + 1900) + "-" + two_digits(local.tm_mon + 1) + "-" +
         two_digits(local.tm_mday);
}

bool is_digits(const std::string& text, std::size_t from, std::size_t count) {
  return text.find_first_not_of("0123456789", from) >= from + count;
}

bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  if (!is_digits(text, 0, 4) || !is_digits(text, 5, 2) || !is_digits(text, 8, 2)) return false;
  const std::chrono::year_month_day date{
      std::chrono::year(std::stoi(text.substr(0, 4))),
      std::chrono::month(static_cast<unsigned>(std::stoi(text.substr(5, 2)))),
      std::chrono::day(static_cast<unsigned>(std::stoi(text.substr(8, 2))))};
  return date.ok();
}

}  // namespace

void declare_today(Flags& flags, std::string& today) {
  flags.text("--today", today, "DATE", "Judge calibrations as on this day");
}

Result<std::string> today_from(const std::string& flag) {
  const char* variable = std::getenv("SHEAF_TODAY");
  std::string day = !flag.empty() ? flag : variable ? variable : "";
  if (day.empty()) return date_of_the_clock();
  if (!is_date(day)) return Failure{"'" + day + "' is no date; write it as 2026-11-25"};
  return day;
}

}  // namespace sheaf
