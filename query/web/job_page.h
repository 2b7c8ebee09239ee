// SPDX-License-Identifier: GPL-2.0-or-later
// What the pages of a card and of a kit have in common: which job is meant, and for which machine.
#pragma once

#include <string>

#include "query/answer/sheet_choice.h"
#include "query/web/pages.h"

namespace sheaf {

// Which of several sheets must be named, as links to /card/ or /kit; or that there is none.
Response choice_page(const SheetChoice& choice, std::string_view section, const Asking& asking);

// Asks again at the same address. Without a label there is no field for the job: the address names it.
std::string job_form_html(std::string_view job_label, std::string_view button, const Asking& asking);

}  // namespace sheaf
