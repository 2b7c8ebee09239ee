// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/find_reckoning.h"

#include <algorithm>

namespace sheaf {

std::vector<std::string> reckoning_asked(const HttpRequest& request) {
  if (request.has("q")) return typed_words(request.parameter("q"));
  const auto topics = all_topics();
  const auto topic = std::ranges::find(topics, request.parameter("topic"), &Topic::name);
  if (topic == topics.end()) return typed_words(request.parameter("topic"));
  std::vector<std::string> words = {std::string(topic->name)};
  for (const auto& name : topic->names) {
    const auto given = typed_words(request.parameter(name.name));
    if (given.empty()) continue;
    words.emplace_back(name.name);
    words.insert(words.end(), given.begin(), given.end());
  }
  return words;
}

Result<Reckoning> find_reckoning(const Asking& asking) {
  const auto words = reckoning_asked(asking.request);
  if (words.empty()) return Failure{"nothing to reckon is given"};
  return reckon(words.front(), {words.begin() + 1, words.end()},
                [&] { return Result<Libraries>(asking.opened.libraries()); });
}

}  // namespace sheaf
