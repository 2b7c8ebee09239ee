// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/find_wrench.h"

#include "query/web/find_answers.h"
#include "query/web/own_crib.h"

namespace sheaf {
namespace {

Result<double> degrees_from(std::string_view typed) {
  if (typed.empty()) return 0.0;
  const auto number = parse_number(typed, Input::prompt);
  if (!number || approximate(*number) < -180 || approximate(*number) > 180)
    return Failure{"the angle is no number of degrees from -180 to 180"};
  return approximate(*number);
}

// One of the crib, by name, or the one in hand, by its length; none if neither is said.
Result<std::optional<CribAdapter>> adapter_for(const Asking& asking, const Crib& crib) {
  const std::string name = asking.given("adapter"), offset = asking.given("offset");
  if (!name.empty()) {
    const CribAdapter* adapter = crib.adapter_named(name);
    if (!adapter) return Failure{"no adapter '" + name + "' in the crib"};
    return std::optional(*adapter);
  }
  if (offset.empty()) return std::optional<CribAdapter>();
  const auto length = length_from(offset, "the adapter's length from square to fastener");
  if (!length) return length.failure();
  return std::optional(CribAdapter{.address = {}, .name = "adapter in hand", .drive = {}, .offset = *length});
}

Result<WrenchRequest> request_for(const Asking& asking, const Crib& crib) {
  WrenchRequest request{crib, asking.today};
  const auto adapter = adapter_for(asking, crib);
  if (!adapter) return adapter.failure();
  if (!*adapter) return request;
  const auto degrees = degrees_from(asking.request.parameter("angle"));
  if (!degrees) return degrees.failure();
  request.adapter = AdapterUse{**adapter, *degrees};
  return request;
}

Result<std::vector<FoundWrench>> for_entry(const Asking& asking, const std::string& address,
                                           const WrenchRequest& request) {
  auto answers = answers_at(asking, address);
  if (!answers) return answers.failure();
  if (answers->empty()) return Failure{"no entry '" + address + "'"};
  std::vector<FoundWrench> all;
  for (auto& answer : std::move(answers).value()) {
    if (!answer.entry.withdrawn.empty()) return Failure{address + " was withdrawn"};
    auto chosen = choose_wrench(answer.entry, request);
    if (!chosen) return chosen.failure();
    if (!*chosen) return Failure{address + " states no torque"};
    answer.set.clear();  // it is what this very answer says at length
    all.push_back({**chosen, std::move(answer)});
  }
  return all;
}

}  // namespace

Result<std::vector<FoundWrench>> find_wrench(const Asking& asking, const Crib& crib) {
  const std::string asked = asking.given("q");
  const auto request = request_for(asking, crib);
  if (!request) return request.failure();
  const auto readings = parse_readings(asked, Dimension::torque);
  if (!readings && asked.find('/') != std::string::npos && asked.find(' ') == std::string::npos)
    return for_entry(asking, asked, *request);
  if (!readings)
    return Failure{"'" + asked + "' is neither a torque nor an address: " + readings.failure().message};
  std::vector<FoundWrench> all;
  for (const auto& reading : *readings) {
    auto chosen = choose_wrench(reading, *request);
    if (!chosen) return chosen.failure();
    all.push_back({std::move(chosen).value(), std::nullopt});
  }
  return all;
}

}  // namespace sheaf
