// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc explain: a rule's page, or the list of rules.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/console.h"
#include "query/library/near_word.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

std::string_view word_of(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

// Each line of an example stands indented below its heading.
std::string indented(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    out += "    " + std::string(text.substr(0, end)) + "\n";
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

// As many words to a line as an eye likes.
std::string wrapped(std::string_view text) {
  constexpr int width = 90;
  std::string out;
  int column = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const int length = sheaf::count_characters(text.substr(0, end));
    if (column > 0) out += column + 1 + length > width ? '\n' : ' ';
    column = column > 0 && column + 1 + length <= width ? column + 1 + length : length;
    out += text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out + "\n";
}

std::string page_of(const RuleInfo& rule) {
  std::string page = std::string(rule.name) + " (" + std::string(word_of(rule.severity)) +
                     "): " + std::string(rule.summary) + "\n\n" + wrapped(rule.why);
  if (!rule.wrong.empty()) page += "\nwrong\n" + indented(rule.wrong);
  if (!rule.right.empty()) page += "\nright\n" + indented(rule.right);
  return page;
}

// The page of all rules, compiler/check/RULES.md.
std::string markdown_of(const std::vector<RuleInfo>& rules) {
  std::string page =
      "# What sheafc holds against a sheet\n\n"
      "Made by `sheafc explain --markdown`; change the rule, not this page. An error is a figure that cannot "
      "be right, a\n"
      "warning one that is unlikely, a note something worth a look. `sheafc explain RULE` shows a wrong and "
      "a right example.\n\n"
      "| rule | severity | what it finds |\n|---|---|---|\n";
  for (const RuleInfo& rule : rules) {
    page += "| [" + std::string(rule.name) + "](#" + std::string(rule.name) + ") | " +
            std::string(word_of(rule.severity)) + " | " + std::string(rule.summary) + " |\n";
  }
  for (const RuleInfo& rule : rules)
    page += "\n## " + std::string(rule.name) + "\n\n" + std::string(rule.why) + "\n";
  return page;
}

ExitStatus list_rules(const std::vector<RuleInfo>& rules) {
  std::size_t width = 0;
  for (const RuleInfo& rule : rules) width = std::max(width, rule.name.size());
  for (const RuleInfo& rule : rules) {
    print(std::string(rule.name) + std::string(width + 2 - rule.name.size(), ' ') +
          std::string(rule.summary) + "\n");
  }
  return ExitStatus::done;
}

ExitStatus explain(const std::string& name) {
  const auto rules = all_rules();
  if (name.empty()) return list_rules(rules);
  const auto rule = std::ranges::find(rules, name, &RuleInfo::name);
  if (rule != rules.end()) {
    print(page_of(*rule));
    return ExitStatus::done;
  }
  std::vector<std::string_view> names;
  for (const RuleInfo& known : rules) names.push_back(known.name);
  const std::string near(sheaf::near_word(name, names));
  say_error("there is no rule '" + name + "'");
  hint(near.empty() ? "sheafc explain lists them" : "did you mean '" + near + "'?");
  return ExitStatus::trouble;
}

}  // namespace

void add_explain(CLI::App& program, Action& action) {
  auto name = std::make_shared<std::string>();
  CLI::App* command =
      program.add_subcommand("explain", "Print what a rule wants and why, with a wrong and a right example.");
  command
      ->add_option("rule", *name,
                   "The rule's name, as it stands in [ ] after a message; without it, all rules are listed")
      ->type_name("RULE");
  command->footer("Example:\n  sheafc explain torque-over-proof-load");
  auto markdown = std::make_shared<bool>(false);
  command->add_flag("--markdown", *markdown, "All rules as one Markdown page, compiler/check/RULES.md");
  command->callback([&action, name, markdown] {
    action = [name, markdown] {
      if (!*markdown) return explain(*name);
      print(markdown_of(all_rules()));
      return ExitStatus::done;
    };
  });
}

}  // namespace sheafc
