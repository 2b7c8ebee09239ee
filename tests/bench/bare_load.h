// SPDX-License-Identifier: GPL-2.0-or-later
// The floor under writing a library: the same rows and the same terms, made beforehand, loaded into SQLite
// and Xapian with nothing else done.
#pragma once

#include <memory>
#include <string>

namespace sheaf::bench {

class BareLoad {
 public:
  // Rows are taken from a library that was written before; terms from the same sheets.
  BareLoad(const std::string& library, int sheets);
  ~BareLoad();

  // Into files in the folder; shards on so many threads, rows on the calling one, then the merge.
  void run(const std::string& folder, unsigned threads) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace sheaf::bench
