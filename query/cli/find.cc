// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf find WORDS…

#include "query/answer/findings_csv.h"
#include "query/answer/findings_json.h"
#include "query/answer/findings_text.h"
#include "query/answer/text.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/cli/what_to_set.h"

namespace sheaf {
namespace {

class Find : public Command {
 public:
  void declare(Flags& flags) override {
    flags.text("--machine", request_.filters.machine, "WORDS", "Only what fits this machine");
    flags.number("--year", request_.filters.year, "YEAR", "Only what fits this model year");
    flags.text("--frame", request_.filters.frame, "NUMBER", "Only what fits this frame number");
    flags.text("--market", request_.filters.market, "NAME", "Only what fits this market");
    flags.text("--assembly", request_.filters.assembly, "NAME",
               "Only entries of this assembly: fork, front-brake, ...");
    flags.text("--kind", request_.filters.kind, "KIND",
               "Only entries of this kind: fastener, fluid, seal, ...");
    flags.text("--thread", request_.filters.thread, "THREAD", "Only what has this thread");
    flags.text("--drive", request_.filters.drive, "DRIVE", "Only what this tool fits");
    flags.text("--between", request_.filters.between, "RANGE",
               "Only what states a figure in this range: 20..30 N·m");
    flags.number("--limit", request_.limit, 1, 10000, "N", "Answers listed at most");
    flags.one_of("--count-by", request_.count_by,
                 {"machine", "kind", "assembly", "sheet", "thread", "drive", "size"}, "WHAT",
                 "Count instead: by machine, kind, assembly, sheet, thread, drive or size");
    flags.flag("--csv", csv_, "Answer with comma-separated values");
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    auto open = open_libraries(common_.libraries);
    if (!open) {
      say_error(open.failure().message);
      return ExitStatus::trouble;
    }
    static OpenLibraries opened = std::move(open).value();  // the end of the program closes them, and quicker
    const auto libraries = opened.pointers();
    if (words == Words{"-"}) return answer_input(libraries);
    return answer(joined(words, " "), libraries);
  }

 private:
  ExitStatus answer(const std::string& question, const std::vector<Library*>& libraries) {
    request_.words = question;
    Lexicon lexicon(libraries);
    auto findings = find(request_, lexicon);
    if (!findings) {
      say_error(findings.failure().message);
      return ExitStatus::trouble;
    }
    auto found = say_findings(std::move(findings).value(), question, {});
    found.counted_by = request_.count_by;
    say_what_to_set(found.answers, libraries);
    print_found(found);
    return is_answered(found) ? ExitStatus::done : ExitStatus::nothing;
  }

  static bool is_answered(const FoundAnswers& found) {
    return !found.answers.empty() || found.conversion || !found.shelf.empty();
  }

  void print_json(const FoundAnswers& found) {
    JsonWriter json;
    write_json(json, found);
    print(json.text() + "\n");
  }

  void print_text(const FoundAnswers& found) {
    Page page(output_style(common_.colour));
    write_text(page, found);
    print(page.take());
    if (!is_answered(found) && !output_is_terminal()) say("nothing found");
  }

  // One question a line; the worst of their statuses is the status of all.
  ExitStatus answer_input(const std::vector<Library*>& libraries) {
    const auto input = read_input();
    if (!input) return ExitStatus::trouble;
    ExitStatus worst = ExitStatus::done;
    std::string_view rest = *input;
    while (!rest.empty()) {
      const auto end = std::min(rest.find('\n'), rest.size());
      const auto status = answer(std::string(rest.substr(0, end)), libraries);
      worst = std::max(worst, status);
      rest.remove_prefix(std::min(end + 1, rest.size()));
      if (!common_.json && !rest.empty()) print("\n");
    }
    return worst;
  }

  void print_found(const FoundAnswers& found) {
    if (common_.json) return print_json(found);
    if (csv_) return print(csv_of(found));
    print_text(found);
  }

  Common common_;
  Request request_;
  bool csv_ = false;
};

}  // namespace

std::unique_ptr<Command> make_find() { return std::make_unique<Find>(); }

}  // namespace sheaf
