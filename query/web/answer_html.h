// SPDX-License-Identifier: GPL-2.0-or-later
// An answer as a page shows it: the figure as the largest thing, beside it what changes the act, then what
// identifies it, the wrench, the cautions and the source. The words and figures are those of query/answer.
#pragma once

#include <string>

#include "query/answer/answer.h"
#include "query/web/asked.h"

namespace sheaf {

// As the one answer. `whole` says every machine, every detail and where it is written.
std::string answer_html(const Answer& answer, const Asking& asking, bool whole);

// As one of several: <li>.
std::string answer_item_html(const Answer& answer, const Asking& asking);

// "Invented demonstration figures. The maker's current manual comes first."
std::string notice_html(bool invented);

// What a person copies when a figure seems wrong: its address, the library's digest, and how it reads. Where
// it answers a question, `read_as` says how that was read.
std::string report_html(const std::vector<Answer>& answers, const Asking& asking,
                        const std::string& read_as = {});

// The figure in the unit of the tool in hand, where one was chosen; else as the source states it.
struct ShownFigure {
  std::string lead, band, conditions;
  std::vector<std::string> beside;  // the same otherwise: as written, or in other units
};
ShownFigure shown_figure(const Value& value, const PreferredUnits& units);

// The figure as the largest thing; the mark of what is derived stands smaller before it.
std::string lead_html(const std::string& lead);

// How large it may be: "huge", "large" or "words".
std::string_view size_class(std::string_view lead);

}  // namespace sheaf
