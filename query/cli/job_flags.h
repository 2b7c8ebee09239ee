// SPDX-License-Identifier: GPL-2.0-or-later
// What the commands card and kit have in common: which sheets are meant, for which machine, in which form.
#pragma once

#include <optional>
#include <string>

#include "query/answer/card.h"
#include "query/answer/document.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/search/find_sheets.h"

namespace sheaf {

struct JobFlags {
  Common common;
  Filters filters;
  std::string today;
  bool html = false, markdown = false, csv = false;
};

enum class WithCsv { no, yes };
void declare_job(CLI::App& flags, JobFlags& job, WithCsv with_csv);

// The libraries, their words and the shop's crib, opened once for a command.
struct Workshop {
  OpenLibraries open;
  std::vector<Library*> libraries;
  std::optional<Crib> crib;
  std::string today;

  const Crib* crib_or_null() const { return crib ? &*crib : nullptr; }
};
Result<Workshop> open_workshop(const JobFlags& job);

// The machine that was read from words or flags; only the make where several models were.
CardMachine machine_of(const QuestionReading& reading);

// "No sheet for this." and what came near, or which of several must be named.
void say_no_sheet(const SheetFindings& found, const std::string& asked);
void say_several(const SheetFindings& found);

// A form to print, as the flags ask: text, Markdown or HTML.
void print_document(const Document& document, const JobFlags& job);

}  // namespace sheaf
