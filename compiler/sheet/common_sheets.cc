// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/common_sheets.h"

#include <algorithm>

#include "compiler/sheet/forms.h"
#include "compiler/source/first_key.h"

namespace sheafc {
namespace {

constexpr std::string_view machine_form = "assembly";

// As read_sheet tells the form: by its key, by a glossary of cautions, by its base.
bool tells_form(std::string_view key, bool is_mapping) {
  if (key == "based-on" || (key == "cautions" && is_mapping)) return true;
  return std::ranges::any_of(all_forms(), [&](const FormDeclaration& form) { return form.name == key; });
}

}  // namespace

bool is_common(const Sheet& sheet) { return sheet.form->name != machine_form; }

bool may_be_common(std::string_view bytes) {
  const std::string key = first_key(bytes, tells_form);
  return key != machine_form && key != "based-on";
}

}  // namespace sheafc
