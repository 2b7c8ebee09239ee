// SPDX-License-Identifier: GPL-2.0-or-later
// The libraries that answer, opened by one worker for itself. A file that was replaced is opened anew before
// the next answer; one that cannot be opened is passed over, and the old one goes on answering.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "query/answer/crib.h"
#include "query/answer/match_shelf.h"
#include "query/library/library.h"

namespace sheaf {

// Tells a file from what replaced it.
struct FileStamp {
  unsigned long long device = 0, inode = 0;
  long long seconds = 0, nanoseconds = 0, bytes = 0;
  friend bool operator==(const FileStamp&, const FileStamp&) = default;
};

class Opened {
 public:
  // `complain` is told, once for each bad file, why it is not taken.
  Opened(std::vector<std::string> paths, std::function<void(const std::string&)> complain);
  Opened(Opened&&) = default;
  Opened& operator=(Opened&&) = default;

  // Opens what is not open yet, or was replaced. False if there is nothing that could answer.
  bool refresh();

  const std::vector<Library*>& libraries() const { return pointers_; }
  const Crib* crib() const { return crib_ ? &*crib_ : nullptr; }
  Shelf& shelf() { return *shelf_; }
  const std::string& digest() const { return digest_; }  // of all of them, in their order
  const std::string& data_date() const { return data_date_; }
  const std::string& name() const { return name_; }

 private:
  struct Slot {
    std::string path;
    std::optional<FileStamp> stamp;  // of the file that was tried last, good or bad
    std::optional<Library> library;
  };
  bool open_anew(Slot& slot);  // whether another library answers now
  void take_stock();

  std::vector<Slot> slots_;
  std::function<void(const std::string&)> complain_;
  std::vector<Library*> pointers_;
  std::optional<Crib> crib_;
  std::optional<Shelf> shelf_;
  std::string digest_, data_date_, name_;
};

}  // namespace sheaf
