// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

enum class Wear { unknown, grows, shrinks };

Wear stated(const LinkedEntry& limit) {
  const std::string_view wear = limit.choice("wear");
  return wear == "grows" ? Wear::grows : wear == "shrinks" ? Wear::shrinks : Wear::unknown;
}

// max 0.2 mm is a limit for what grows, min 4.0 mm for what shrinks.
Wear implied(const sheaf::Figure& figure) {
  if (figure.form == sheaf::Form::maximum) return Wear::grows;
  if (figure.form == sheaf::Form::minimum) return Wear::shrinks;
  return Wear::unknown;
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  const sheaf::Statement* limit = entry.figure("limit");
  if (!limit || !limit->figure().unit) return;
  const Wear by_form = implied(limit->figure()), by_word = stated(entry);
  if (by_form != Wear::unknown && by_word != Wear::unknown && by_form != by_word) {
    report(entry, entry.place("wear"),
           "the limit " + sheaf::to_text(limit->figure()) + " is for what " +
               (by_form == Wear::grows ? "grows" : "shrinks") +
               "; write min for what shrinks, max for what grows",
           {other_place(entry.place("limit"), "the limit stands here")});
    return;
  }
  const Wear wear = by_word == Wear::unknown ? by_form : by_word;
  const auto worn = middle_in(limit->figure(), limit->figure().unit->symbol);
  const auto fresh = middle_in(entry.figure("new"), limit->figure().unit->symbol);
  if (!worn || !fresh || wear == Wear::unknown) return;
  if (wear == Wear::grows ? *worn >= *fresh : *worn <= *fresh) return;
  report(entry, entry.place("limit"),
         "the limit " + sheaf::to_text(limit->figure()) + " is reached before the part is worn: new it is " +
             entry.values("new").front().text,
         {other_place(entry.place("new"), "the size when new stands here")});
}

}  // namespace

const Rule limit_on_wrong_side = {
    {.name = "limit-on-wrong-side",
     .severity = Severity::error,
     .summary = "a wear limit on the wrong side of the new size",
     .why =
         "What wears thinner has a limit below its new size, what wears looser one above it. A limit on the other side "
         "condemns new parts, or never any: one of the two numbers is another row's, or min and max are mixed up.",
     .wrong = R"(limits:
  disc: { name: chain slider, new: 4.5 mm, limit: min 5.0 mm }
)",
     .right = R"(limits:
  disc: { name: chain slider, new: 4.5 mm, limit: min 4.0 mm }
)"},
    {.kind = "limit", .entry = examine}};

}  // namespace sheafc
