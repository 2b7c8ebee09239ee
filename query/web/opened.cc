// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/opened.h"

#include <sys/stat.h>

#include <algorithm>

namespace sheaf {
namespace {

std::optional<FileStamp> stamp_of(const std::string& path) {
  struct stat about {};
  if (::stat(path.c_str(), &about) != 0) return std::nullopt;
  return FileStamp{about.st_dev, about.st_ino, about.st_mtim.tv_sec, about.st_mtim.tv_nsec, about.st_size};
}

}  // namespace

Opened::Opened(std::vector<std::string> paths, std::function<void(const std::string&)> complain)
    : complain_(std::move(complain)) {
  for (auto& path : paths) slots_.push_back({std::move(path), std::nullopt, std::nullopt});
}

// A file that is gone for a moment, while it is being replaced by hand, is waited for.
bool Opened::open_anew(Slot& slot) {
  const auto stamp = stamp_of(slot.path);
  if (!stamp || stamp == slot.stamp) return false;
  slot.stamp = stamp;
  auto library = open_library(slot.path);
  if (!library) {
    complain_(library.failure().message + (slot.library ? "; the one before goes on answering" : ""));
    return false;
  }
  slot.library = std::move(library).value();
  return true;
}

bool Opened::refresh() {
  bool changed = false;
  for (auto& slot : slots_) changed = open_anew(slot) || changed;
  if (changed) take_stock();
  return !pointers_.empty();
}

void Opened::take_stock() {
  pointers_.clear();
  digest_.clear();
  data_date_.clear();
  name_.clear();
  for (auto& slot : slots_) {
    if (!slot.library) continue;
    const LibraryFacts& facts = slot.library->facts();
    pointers_.push_back(&*slot.library);
    digest_ += (digest_.empty() ? "" : "+") + facts.digest;
    name_ += (name_.empty() ? "" : ", ") + facts.name;
    data_date_ = std::max(data_date_, facts.data_date);
  }
  label_libraries(pointers_);
  shelf_.emplace(pointers_);
  auto crib = read_crib(pointers_);
  if (!crib) complain_("no wrench is named: " + crib.failure().message);
  crib_ = crib ? std::move(crib).value() : std::nullopt;
}

}  // namespace sheaf
