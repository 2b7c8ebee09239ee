// SPDX-License-Identifier: GPL-2.0-or-later
// Any bytes, read as a thread, a drive, a size, a bearing, a measurement, a fit and a class. Whatever
// reads must be printed so that it reads back the same, under the same key; nothing may crash or hang.
//
// The first byte chooses whether a sheet or a prompt is read.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "query/trade/designation.h"
#include "query/trade/limits_fits.h"
#include "query/trade/measured.h"
#include "query/trade/strength.h"
#include "query/trade/thread_geometry.h"

namespace {

using namespace sheaf;

void require(bool truth) {
  if (!truth) std::abort();
}

void check_failure(const Failure& failure, std::string_view text) {
  require(!failure.message.empty());
  require(failure.at >= 0 && failure.length >= 0);
  require(static_cast<std::size_t>(failure.at) + static_cast<std::size_t>(failure.length) <= text.size());
}

// Printed text is read at a prompt, which forgives no less than a sheet.
template <typename Parse, typename Key>
void check(std::string_view text, Input input, Parse parse, Key key) {
  const auto value = parse(text, input);
  if (!value) return check_failure(value.failure(), text);
  const std::string printed = to_text(*value);
  const auto again = parse(printed, Input::prompt);
  require(static_cast<bool>(again));
  require(to_text(*again) == printed);
  require(key(*again) == key(*value));
}

template <typename Found>
void check_start(const Found& found, std::string_view text) {
  if (found) require(found->length > 0 && static_cast<std::size_t>(found->length) <= text.size());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const Input input = data[0] % 2 ? Input::prompt : Input::sheet;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  check(text, input, parse_thread, thread_key);
  check(text, input, parse_drive, drive_key);
  check(text, input, parse_size, size_key);
  check(text, input, parse_bearing, [](const Bearing& bearing) { return bearing.basic; });
  check_start(thread_at(text, input), text);
  check_start(size_at(text, input), text);
  check_start(bearing_at(text, input), text);
  if (const auto thread = parse_thread(text, input)) (void)geometry_of(*thread);
  if (const auto bearing = parse_bearing(text, input)) require(!explain(*bearing).empty());
  if (const auto measured = parse_measured(text, input); !measured) check_failure(measured.failure(), text);
  if (const auto fit = parse_fit(text, input); !fit) check_failure(fit.failure(), text);
  require(class_name(text).size() <= 32);
  return 0;
}
