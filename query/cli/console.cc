// SPDX-License-Identifier: GPL-2.0-or-later
// Plain writes: the standard library's streams would hide which one failed, and cost time at the start.
#include "query/cli/console.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr std::size_t buffered = 1 << 16;
constexpr std::size_t most_input = 16u << 20;  // bytes of standard input; a batch beyond is refused
constexpr int narrowest = 20;

std::string waiting;   // not yet written to standard output
int output_error = 0;  // the first errno that writing gave

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

void to_error(const std::string& text) { write_all(STDERR_FILENO, text + "\n"); }

std::string_view variable(const char* name) {
  const char* value = std::getenv(name);
  return value ? std::string_view(value) : std::string_view();
}

bool use_colour(Colour wish) {
  if (wish != Colour::automatic) return wish == Colour::always;
  if (!variable("NO_COLOR").empty()) return false;
  const auto forced = variable("CLICOLOR_FORCE");
  if (!forced.empty() && forced != "0") return true;
  const auto terminal = variable("TERM");
  return output_is_terminal() && !terminal.empty() && terminal != "dumb";
}

// Only a locale that says so: one that is not set says nothing.
bool locale_lacks_utf8() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const auto locale = variable(name);
    if (locale.empty()) continue;
    std::string lower(locale);
    std::ranges::transform(lower, lower.begin(),
                           [](unsigned char sign) { return static_cast<char>(std::tolower(sign)); });
    return lower.find("utf-8") == std::string::npos && lower.find("utf8") == std::string::npos;
  }
  return false;
}

}  // namespace

bool output_is_terminal() { return ::isatty(STDOUT_FILENO) == 1; }
bool input_is_terminal() { return ::isatty(STDIN_FILENO) == 1; }

TextStyle output_style(Colour wish) {
  TextStyle style;
  style.colour = use_colour(wish);
  const auto columns = std::atoi(std::string(variable("COLUMNS")).c_str());
  winsize size{};
  if (columns > 0)
    style.width = columns;
  else if (output_is_terminal() && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
    style.width = size.ws_col;
  style.width = std::max(style.width, narrowest);
  style.ascii = output_is_terminal() && locale_lacks_utf8();
  return style;
}

void flush_output() {
  if (output_error == 0 && !write_all(STDOUT_FILENO, waiting)) output_error = errno;
  waiting.clear();
}

void print(std::string_view text) {
  waiting += text;
  if (waiting.size() > buffered) flush_output();
}

ExitStatus finish_output(ExitStatus status) {
  flush_output();
  if (output_error == 0 && ::close(STDOUT_FILENO) != 0 && errno != EBADF) output_error = errno;
  if (output_error == 0 || output_error == EPIPE) return status;
  say_error(std::string("cannot write the answer: ") + std::strerror(output_error));
  return ExitStatus::trouble;
}

void say_error(std::string_view message, std::string_view hint) {
  to_error("sheaf: error: " + clean(message));
  if (!hint.empty()) to_error("  " + clean(hint));
}

void say(std::string_view message) { to_error("sheaf: " + clean(message)); }

std::optional<std::string> read_input() {
  std::string all;
  char block[1 << 14];
  for (;;) {
    const ssize_t got = ::read(STDIN_FILENO, block, sizeof block);
    if (got < 0 && errno == EINTR) continue;
    if (got == 0) return all;
    const bool too_much = got > 0 && all.size() + static_cast<std::size_t>(got) > most_input;
    if (got < 0 || too_much) {
      say_error(too_much ? "standard input is longer than 16 MiB"
                         : std::string("cannot read standard input: ") + std::strerror(errno));
      return std::nullopt;
    }
    all.append(block, static_cast<std::size_t>(got));
  }
}

}  // namespace sheaf
