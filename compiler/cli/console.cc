// SPDX-License-Identifier: GPL-2.0-or-later
// Plain writes: the standard library's streams would hide which one failed, and why.
#include "compiler/cli/console.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "query/library/file_words.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

constexpr std::size_t buffered = 1 << 16;
constexpr int most_on_terminal = 50;

std::string waiting;   // not yet written to standard output
int output_error = 0;  // the first errno that writing gave

// True when all was written. EINTR is no failure.
bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

void flush_output() {
  if (output_error == 0 && !write_all(STDOUT_FILENO, waiting)) output_error = errno;
  waiting.clear();
}

bool is_set(const char* name) {
  const char* value = std::getenv(name);
  return value && *value;
}

void to_error(std::string text) {
  text += '\n';
  write_all(STDERR_FILENO, text);  // there is nowhere left to complain to
}

}  // namespace

bool is_terminal(int descriptor) { return ::isatty(descriptor) == 1; }

bool use_colour(Colour wish, int descriptor) {
  if (wish != Colour::automatic) return wish == Colour::always;
  if (is_set("NO_COLOR")) return false;
  if (is_set("CLICOLOR_FORCE") && std::string_view(std::getenv("CLICOLOR_FORCE")) != "0") return true;
  const char* terminal = std::getenv("TERM");
  return is_terminal(descriptor) && terminal && std::string_view(terminal) != "dumb";
}

TextStyle style_for(Colour wish, int descriptor) {
  TextStyle style{.colour = use_colour(wish, descriptor)};
  if (!is_terminal(descriptor)) return style;
  style.most = most_on_terminal;
  winsize size{};
  if (::ioctl(descriptor, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) style.width = size.ws_col;
  return style;
}

void print(std::string_view text) {
  waiting += text;
  if (waiting.size() > buffered) flush_output();
}

ExitStatus finish_output(ExitStatus status) {
  flush_output();
  if (output_error == 0 && ::close(STDOUT_FILENO) != 0 && errno != EBADF) output_error = errno;
  if (output_error == 0 || output_error == EPIPE) return status;
  say_error("cannot write the answer: " + sheaf::words_for_errno(output_error));
  return ExitStatus::trouble;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

void say_error(std::string_view message) { to_error("sheafc: error: " + sheaf::printable(message)); }
void say(std::string_view message) { to_error("sheafc: " + sheaf::printable(message)); }
void say_as_is(std::string_view text) { write_all(STDERR_FILENO, text); }
void hint(std::string_view message) { to_error("  " + sheaf::printable(message)); }

}  // namespace sheafc
