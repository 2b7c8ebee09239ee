// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/file_names.h"

#include <mutex>
#include <string>
#include <unordered_set>

namespace sheafc {

std::string_view kept_file_name(std::string_view name) {
  static std::mutex mutex;
  static std::unordered_set<std::string> names;
  const std::lock_guard lock(mutex);
  return *names.emplace(name).first;
}

}  // namespace sheafc
