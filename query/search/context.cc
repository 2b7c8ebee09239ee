// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/context.h"

#include "query/library/fold.h"

namespace sheaf {

bool Context::holds(const std::string& stem) {
  if (stems_) return stems_->contains(stem);
  stems_.emplace();
  const auto add = [this](const std::string& text) {
    for (const auto& word : words_of(fold(text))) stems_->insert(stem_of(word));
  };
  add(sheet_.assembly);
  add(sheet_.maker);
  for (const auto& fit : entry_.fits) add(fit.make + " " + fit.model);
  return stems_->contains(stem);
}

}  // namespace sheaf
