// SPDX-License-Identifier: GPL-2.0-or-later
// Every text goes through `plain` or `fixed`, so that none of it is taken for a request of the formatter.
#include <cstdio>

#include "query/console/program_page.h"

namespace sheaf {
namespace {

// The day that the pages bear: raised with the version, so that the same sources give the same pages.
constexpr const char* day = "2026-11-25";

// The code point that begins at `at`, which moves behind it. The texts are our own, and sound.
unsigned long code_point(const std::string& text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at++);
  if (first < 0x80) return first;
  const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
  unsigned long code = first & (0x3F >> more);
  for (int i = 0; i < more && at < text.size(); ++i) code = code << 6 | (byte(at++) & 0x3F);
  return code;
}

std::string escaped(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const unsigned long code = code_point(text, at);
    if (code == '\\')
      out += "\\e";
    else if (code == '-')
      out += "\\-";
    else if (code == '\'')
      out += "\\(aq";
    else if (code == '`')
      out += "\\(ga";
    else if (code == '^')
      out += "\\(ha";
    else if (code == '~')
      out += "\\(ti";
    else if (code < 0x80)
      out += static_cast<char>(code);
    else {
      char name[32];
      std::snprintf(name, sizeof name, "\\[u%04lX]", code);
      out += name;
    }
  }
  return out;
}

// A line of text: one that begins like a request is kept from being one.
std::string plain(const std::string& text) {
  const std::string out = escaped(text);
  return !out.empty() && out[0] == '.' ? "\\&" + out : out;
}

std::string bold(const std::string& text) { return "\\fB" + escaped(text) + "\\fR"; }
std::string slanted(const std::string& text) { return "\\fI" + escaped(text) + "\\fR"; }

template <typename Line>
std::string each_line(const std::string& text, Line line) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (end > at) out += line(text.substr(at, end - at)) + "\n";
    at = end + 1;
  }
  return out;
}

std::string section(const std::string& name) { return ".SH " + name + "\n"; }
std::string item(const std::string& head, const std::string& text) {
  return ".TP\n" + head + "\n" + plain(text) + "\n";
}

std::string flag_head(const FlagPage& flag) {
  std::string head;
  for (const std::string& name : flag.names) head += (head.empty() ? "" : ", ") + bold(name);
  return flag.value.empty() ? head : head + " " + slanted(flag.value);
}

std::string flag_items(const std::vector<FlagPage>& flags) {
  std::string items;
  for (const FlagPage& flag : flags) items += item(flag_head(flag), flag.purpose + ".");
  return items;
}

std::string examples_of(const CommandPage& command) {
  if (command.examples.empty()) return {};
  return ".PP\n.EX\n" + each_line(command.examples, [](const std::string& line) { return plain(line); }) +
         ".EE\n";
}

std::string command_section(const CommandPage& command) {
  std::string text =
      ".SS " + command.name + "\n" + plain(command.purpose + ".") + "\n.PP\n" + bold(command.name);
  if (!command.words.empty()) text += " " + slanted(command.words);
  text += " [" + slanted("FLAGS") + "]\n";
  if (!command.about.empty())
    text += ".PP\n" + each_line(command.about, [](const std::string& line) { return plain(line); });
  return text + examples_of(command) + flag_items(command.flags);
}

std::string items_of(const std::string& name, const std::vector<std::pair<std::string, std::string>>& pairs) {
  if (pairs.empty()) return {};
  std::string text = section(name);
  for (const auto& [head, purpose] : pairs) text += item(bold(head), purpose);
  return text;
}

std::string upper(std::string text) {
  for (char& letter : text) letter = letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 32) : letter;
  return text;
}

}  // namespace

std::string man_page(const ProgramPage& program) {
  std::string page = ".\\\" SPDX-License-Identifier: GPL-2.0-or-later\n.TH " + upper(program.name) + " 1 " +
                     day + " \"" + program.name + " " + program.version + "\"\n";
  page += section("NAME") + program.name + " \\- " + plain(program.purpose) + "\n";
  page += section("SYNOPSIS") + bold(program.name) + " " + slanted("COMMAND") + " [" + slanted("WORDS") +
          "] [" + slanted("FLAGS") + "]\n";
  page +=
      section("DESCRIPTION") + each_line(program.about, [](const std::string& line) { return plain(line); });
  page += section("OPTIONS") + flag_items(program.flags) + section("COMMANDS");
  for (const CommandPage& command : program.commands) page += command_section(command);
  page += items_of("EXIT STATUS", program.statuses) + items_of("ENVIRONMENT", program.environment) +
          items_of("FILES", program.files);
  return page + section("SEE ALSO") + bold(program.see_also.substr(0, program.see_also.find('('))) +
         program.see_also.substr(program.see_also.find('(')) + "\n";
}

}  // namespace sheaf
