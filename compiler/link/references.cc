// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/link/references.h"

#include <set>

namespace sheafc {
namespace {

struct Names {
  std::set<std::string> bases, all;
};

void add(const Fields& fields, Names& names) {
  for (const Field* field : fields.all()) {
    for (const Value& value : field->values) {
      const Address* address = value.as<Address>();
      if (address && !address->sheet.empty()) {
        names.all.insert(address->sheet);
        if (field->key() == "like") names.bases.insert(address->sheet);
      }
      if (const Fields* record = value.as<Fields>()) add(*record, names);
      if (const Variants* variants = value.as<Variants>()) {
        for (const Variant& variant : *variants) add(variant.fields, names);
      }
    }
  }
}

}  // namespace

References references_of(const Sheet& sheet) {
  Names names;
  if (const std::string_view base = sheet.fields.text("based-on"); !base.empty()) names.bases.emplace(base);
  names.all = names.bases;
  add(sheet.fields, names);
  for (const Entry& entry : sheet.entries) add(entry.fields, names);
  return {{names.bases.begin(), names.bases.end()}, {names.all.begin(), names.all.end()}};
}

}  // namespace sheafc
