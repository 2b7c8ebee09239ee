// SPDX-License-Identifier: GPL-2.0-or-later
// Plain writes: the standard library's streams would hide which one failed, and why.
#include "compiler/cli/console.h"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "compiler/source/file_words.h"

namespace sheafc {
namespace {

constexpr std::size_t buffered = 1 << 16;

std::string waiting;    // not yet written to standard output
int output_error = 0;   // the first errno that writing gave

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

void print(std::string_view text) {
  waiting += text;
  if (waiting.size() > buffered) flush_output();
}

ExitStatus finish_output(ExitStatus status) {
  flush_output();
  if (output_error == 0 && ::close(STDOUT_FILENO) != 0 && errno != EBADF) output_error = errno;
  if (output_error == 0 || output_error == EPIPE) return status;
  say_error("cannot write the answer: " + words_for_errno(output_error));
  return ExitStatus::trouble;
}

void say_error(std::string_view message) { to_error("sheafc: error: " + printable(message)); }
void say(std::string_view message) { to_error("sheafc: " + printable(message)); }
void hint(std::string_view message) { to_error("  " + printable(message)); }

std::string printable(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool c1 = byte == 0xC2 && i + 1 < text.size() && (static_cast<unsigned char>(text[i + 1]) & 0xE0) == 0x80;
    if (c1) ++i;
    safe += c1 || byte < 0x20 || byte == 0x7F ? '?' : text[i];
  }
  return safe;
}

}  // namespace sheafc
