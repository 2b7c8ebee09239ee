// SPDX-License-Identifier: GPL-2.0-or-later
// What the commands card and kit have in common: which sheets are meant, for which machine, in which form.
#pragma once

#include <optional>
#include <string>

#include "query/answer/card.h"
#include "query/answer/document.h"
#include "query/answer/sheet_choice.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"

namespace sheaf {

struct JobFlags {
  Common common;
  Filters filters;
  std::string today;
  bool html = false, markdown = false, csv = false;
};

enum class WithCsv { no, yes };
void declare_job(Flags& flags, JobFlags& job, WithCsv with_csv);

// The libraries, their words and the shop's crib, opened once for a command.
struct Workshop {
  OpenLibraries open;
  std::optional<Crib> crib;
  std::string today;

  const Crib* crib_or_null() const { return crib ? &*crib : nullptr; }
};
Result<Workshop> open_workshop(const JobFlags& job);

// Says which of several sheets must be named, or that there is none and what came near: on standard output as
// text or JSON; in one line on standard error where a page or a table was asked for.
ExitStatus answer_choice(const SheetChoice& choice, const JobFlags& job);

// A form to print, as the flags ask: text, Markdown or HTML.
void print_document(const Document& document, const JobFlags& job);

}  // namespace sheaf
