// SPDX-License-Identifier: GPL-2.0-or-later
// The other way round: from a designation that was read to what each part of it says.
#include <algorithm>

#include "query/trade/bearing.h"
#include "query/trade/bearing_series.h"
#include "query/trade/reader.h"

namespace sheaf {
namespace {

using namespace bearing_names;

bool begins(std::string_view text, std::string_view start) {
  return upper_case(text).starts_with(upper_case(start));
}

std::string millimetres(double mm) {
  const auto tenths = static_cast<std::int64_t>(mm * 100 + 0.5);
  return plain(Number{tenths, 2, 1}) + " mm";
}

std::string bore_meaning(const Bearing& bearing) {
  return bearing.bore_mm ? "bore " + millimetres(*bearing.bore_mm) : "bore code without a rule";
}

void explain_basic(const Bearing& bearing, std::vector<Meaning>& meanings) {
  const std::string& basic = bearing.basic;
  auto tell = [&](std::size_t length, std::string_view kind) {
    meanings.push_back({basic.substr(0, length), std::string(kind)});
    meanings.push_back({basic.substr(length), bore_meaning(bearing)});
  };
  for (const Series& cup : drawn_cups) {
    if (begins(basic, cup.name) && basic.size() == 6) {
      tell(4, cup.kind);
      meanings.front().part = basic.substr(0, 2);
      meanings[1].part = basic.substr(2, 2);
      meanings.push_back({basic.substr(4), "width " + basic.substr(4) + " mm"});
      return;
    }
  }
  for (const Series& form : cylindrical_forms) {
    if (begins(basic, form.name)) {
      const std::size_t slash = basic.find('/');
      return tell(slash != std::string::npos ? slash : basic.size() - 2, form.kind);
    }
  }
  if (basic.size() == 3 && basic.find('/') == std::string::npos)
    return tell(2, "deep groove ball, miniature");
  for (const Series& series : numbered_series) {
    const bool whole = basic.size() == series.name.size() + 2 || basic[series.name.size()] == '/';
    if (basic.starts_with(series.name) && whole) return tell(series.name.size(), series.kind);
  }
}

}  // namespace

std::vector<Meaning> explain(const Bearing& bearing) {
  std::vector<Meaning> meanings;
  explain_basic(bearing, meanings);
  std::string_view rest = bearing.suffix;
  while (!rest.empty()) {
    const std::string_view part = rest.substr(0, rest.find(' '));
    for (const Suffix& suffix : suffixes) {
      if (suffix.canonical == part) {
        meanings.push_back({std::string(part), std::string(suffix.says)});
        break;
      }
    }
    rest.remove_prefix(std::min(part.size() + 1, rest.size()));
  }
  return meanings;
}

}  // namespace sheaf
