// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/what_to_set.h"

#include "query/answer/wrench.h"
#include "query/cli/console.h"
#include "query/cli/today.h"

namespace sheaf {

void say_what_to_set(std::vector<Answer>& answers, const std::vector<Library*>& libraries) {
  const auto fault = add_set_lines(answers, libraries, [] { return today_from(""); });
  if (fault) say("no wrench is named: " + fault->message);
}

}  // namespace sheaf
