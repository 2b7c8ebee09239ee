// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf match SIZE | DESIGNATION

#include "query/answer/answer_json.h"
#include "query/answer/match_csv.h"
#include "query/answer/match_text.h"
#include "query/answer/text.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/library/whole_file.h"
#include "query/trade/measured.h"

namespace sheaf {
namespace {

class Match : public Command {
 public:
  void declare(Flags& flags) override {
    flags.text("--uncertainty", uncertainty_, "LENGTH", "Of the caliper: 0.1 mm unless said otherwise");
    flags.text("--near", near_, "LENGTH", "Show what differs by up to this much: 2 mm");
    flags.flag("--all", all_, "List all that is near but NOT the same");
    flags.flag("--csv", csv_, "Read rows of measured parts from standard input, and answer each");
    flags.text("--svg", svg_, "FILE", "Also draw the first that fits into this file");
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (csv_ ? !words.empty() : words.empty())
      return csv_ ? trouble("--csv reads standard input; no size stands beside it")
                  : trouble("no size is given", "as in sheaf match 41 x 54 x 11; see sheaf match --help");
    if (csv_ && (common_.json || !svg_.empty())) return trouble("--csv goes with neither --json nor --svg");
    const auto limits = read_limits();
    if (!limits) return trouble(limits.failure().message);
    auto open = open_libraries(common_.libraries);
    if (!open) return trouble(open.failure().message);
    OpenLibraries libraries = std::move(open).value();
    return csv_ ? answer_batch(*limits, libraries.pointers())
                : answer({joined(words, " "), *limits}, libraries.pointers());
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  Result<MatchLimits> read_limits() const {
    MatchLimits limits;
    for (const auto& [typed, flag, limit] :
         {std::tuple(&uncertainty_, "--uncertainty", &limits.uncertainty_mm),
          std::tuple(&near_, "--near", &limits.near_mm)}) {
      if (typed->empty()) continue;
      const auto length = parse_measured(*typed, Input::prompt);
      if (!length || length->mm.size() != 1 || !length->roles.empty())
        return Failure{std::string(flag) + " wants a length above 0, 0.1 mm or 0.002 in, not '" + *typed +
                       "'"};
      *limit = length->mm.front();
    }
    return limits;
  }

  ExitStatus answer_batch(const MatchLimits& limits, const std::vector<Library*>& libraries) {
    const auto input = read_input();
    if (!input) return ExitStatus::trouble;
    const auto batch = match_csv(*input, limits, libraries);
    if (!batch) return trouble(batch.failure().message);
    print(batch->csv);
    if (batch->faults > 0)
      say(std::to_string(batch->faults) + " of " + std::to_string(batch->rows) + " rows could not be read");
    if (batch->faults > 0) return ExitStatus::trouble;
    return batch->found > 0 ? ExitStatus::done : ExitStatus::nothing;
  }

  ExitStatus answer(const MatchRequest& request, const std::vector<Library*>& libraries) {
    const auto matches = match(request, libraries);
    if (!matches) return trouble(matches.failure().message);
    if (!svg_.empty())
      if (auto fault = draw(*matches)) return trouble(fault->message);
    common_.json ? print_json(*matches) : print_text(*matches);
    return matches->found() ? ExitStatus::done : ExitStatus::nothing;
  }

  std::optional<Failure> draw(const Matches& matches) const {
    for (const auto* list : {&matches.same, &matches.within})
      for (const auto& part : *list)
        if (part.dimensions)
          return replace_file(svg_, ring_picture(part.shape, *part.dimensions, part.entry.name));
    return Failure{"nothing that fits can be drawn"};
  }

  void print_text(const Matches& matches) {
    constexpr std::size_t few = 6;
    Page page(output_style(common_.colour));
    write_text(page, matches, all_ ? matches.near.size() : few);
    print(page.take());
  }

  static void print_json(const Matches& matches) {
    JsonWriter json;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.key("matches");
    write_json(json, matches);
    json.end_object();
    print(json.text() + "\n");
  }

  Common common_;
  std::string uncertainty_, near_, svg_;
  bool all_ = false, csv_ = false;
};

}  // namespace

std::unique_ptr<Command> make_match() { return std::make_unique<Match>(); }

}  // namespace sheaf
