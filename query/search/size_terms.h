// SPDX-License-Identifier: GPL-2.0-or-later
// Sizes within a range, by the terms of the sizes that the index knows: few, even where the entries are many,
// so that the values of all entries need not be looked through. Internal to search.
//
//   SizeTerms sizes(database);
//   sizes.dimension(40, 42)     // has a dimension of 40, 41, 41.5 or 42 mm, where there are no others
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/index.h"
#include "query/library/index_terms.h"

namespace sheaf {

class SizeTerms {
 public:
  explicit SizeTerms(const Xapian::Database& database) : database_(database) {}

  // What has a size of from..to mm. Each throws Xapian::Error if the index is damaged.
  Xapian::Query dimension(double from, double to);  // some dimension of it, whatever its place
  Xapian::Query dimension_at(unsigned place, double from, double to);  // that dimension, the first being 0
  Xapian::Query across_flats(double from, double to);                  // its drive
  Xapian::Query diameter(double from, double to);                      // its thread

 private:
  struct Known {
    double mm = 0;
    std::string text;  // the term
  };
  using Read = std::optional<double>(std::string_view body);  // mm; none if it is no measure
  // By the terms of that prefix whose bodies are a place, or nothing, and a dimension. None if they are too many.
  std::optional<Xapian::Query> dimensions(Prefix prefix, const std::string& place, double from, double to);
  // None if they are too many to be asked for one by one.
  std::optional<Xapian::Query> within(Prefix prefix, Read* read, double from, double to);
  const std::vector<Known>& all(Prefix prefix, Read* read);

  Xapian::Database database_;
  std::map<Prefix, std::vector<Known>> known_;
};

// By a value of the entry, whatever its terms.
Xapian::Query in_range(unsigned slot, double from, double to);

}  // namespace sheaf
