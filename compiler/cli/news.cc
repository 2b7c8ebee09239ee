// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/news.h"

namespace sheafc {
namespace {

std::string key_of(const Diagnostic& diagnostic) {
  return std::string(diagnostic.where.file) + '\n' + std::string(diagnostic.rule) + '\n' + diagnostic.message;
}

}  // namespace

Diagnostics News::of(const Diagnostics& found) {
  std::map<std::string, int> known = std::move(last_);
  last_.clear();
  Diagnostics news;
  for (const Diagnostic& diagnostic : found.all()) {
    const std::string key = key_of(diagnostic);
    ++last_[key];
    if (--known[key] < 0) news.report(diagnostic);
  }
  return news;
}

}  // namespace sheafc
