// SPDX-License-Identifier: GPL-2.0-or-later
// The tools and the stuff that a job needs laid out, gathered from its entries. Internal to kit.cc.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "query/answer/kit.h"

namespace sheaf {

class PickList {
 public:
  // The crib may be null; it outlives the list.
  PickList(const Crib* crib, std::string today) : crib_(crib), today_(std::move(today)) {}

  void add(const EntryRecord& entry);
  std::vector<Pick> take();  // by tool, sockets from small to large

 private:
  struct Sorted {
    Pick pick;
    double size = 0;  // of a socket, mm
  };
  void add_fastener(const EntryRecord& entry);
  void add_drive(const EntryRecord& entry);
  void add_wrenches(const EntryRecord& entry);
  void put(Tool tool, std::string name, std::string detail, const std::string& use, double size = 0);

  const Crib* crib_;
  std::string today_;
  std::vector<Sorted> all_;
};

}  // namespace sheaf
