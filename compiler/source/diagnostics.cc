// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/diagnostics.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace sheafc {
namespace {

auto order_of(const Diagnostic& d) {
  return std::tie(d.where.file, d.where.line, d.where.column, d.rule, d.message, d.where.length, d.severity);
}

bool same(const Diagnostic& a, const Diagnostic& b) {
  return order_of(a) == order_of(b) &&
         std::equal(a.notes.begin(), a.notes.end(), b.notes.begin(), b.notes.end(), same);
}

int count(const std::vector<Diagnostic>& all, Severity severity) {
  return static_cast<int>(
      std::count_if(all.begin(), all.end(), [=](const Diagnostic& d) { return d.severity == severity; }));
}

}  // namespace

std::string_view name_of(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

void Diagnostics::take(Diagnostics other) {
  std::move(other.all_.begin(), other.all_.end(), std::back_inserter(all_));
}

void Diagnostics::sort() {
  std::stable_sort(all_.begin(), all_.end(),
                   [](const Diagnostic& a, const Diagnostic& b) { return order_of(a) < order_of(b); });
  all_.erase(std::unique(all_.begin(), all_.end(), same), all_.end());
}

int Diagnostics::errors() const { return count(all_, Severity::error); }
int Diagnostics::warnings() const { return count(all_, Severity::warning); }

}  // namespace sheafc
