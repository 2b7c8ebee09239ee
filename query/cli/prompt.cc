// SPDX-License-Identifier: GPL-2.0-or-later
// Line editing, history and completion are readline's. The preview is drawn below the line after each of
// its redisplays, and the cursor put back, with nothing but the oldest cursor movements, so that it works
// over a serial line; a dumb terminal gets none. Readline is taken by name when the prompt opens: linked the
// usual way, it and the terminal library that it brings would be loaded by every command.
#include "query/cli/prompt.h"

#include <dlfcn.h>
#include <readline/history.h>
#include <readline/readline.h>

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <sstream>

#include "query/answer/text.h"
#include "query/cli/arguments.h"
#include "query/cli/history.h"
#include "query/cli/libraries.h"
#include "query/cli/preview.h"
#include "query/search/complete.h"

namespace sheaf {
namespace {

constexpr const char* prompt_text = "sheaf> ";
constexpr int prompt_width = 7;
constexpr int most_history = 1000;  // lines kept

// Those of its names that are needed, with the types that its own headers give them; variables are pointed
// to.
struct Readline {
  decltype(&::rl_line_buffer) line_buffer = nullptr;
  decltype(&::rl_point) point = nullptr;
  decltype(&::rl_outstream) outstream = nullptr;
  decltype(&::rl_redisplay) redisplay = nullptr;
  decltype(&::rl_attempted_completion_over) attempted_completion_over = nullptr;
  decltype(&::rl_completion_matches) completion_matches = nullptr;
  decltype(&::rl_replace_line) replace_line = nullptr;
  decltype(&::rl_done) done = nullptr;
  decltype(&::rl_readline_name) readline_name = nullptr;
  decltype(&::rl_attempted_completion_function) attempted_completion_function = nullptr;
  decltype(&::rl_completer_word_break_characters) completer_word_break_characters = nullptr;
  decltype(&::rl_redisplay_function) redisplay_function = nullptr;
  decltype(&::rl_event_hook) event_hook = nullptr;
  decltype(&::readline) readline = nullptr;
  decltype(&::read_history) read_history = nullptr;
  decltype(&::add_history) add_history = nullptr;
  decltype(&::stifle_history) stifle_history = nullptr;
  decltype(&::write_history) write_history = nullptr;
};
Readline rl;

template <typename Name>
bool take(void* library, const char* name, Name& into) {
  into = reinterpret_cast<Name>(::dlsym(library, name));
  return into != nullptr;
}

// The library stays loaded: it has changed the terminal, and changes it back at the end.
bool load_readline() {
  void* library = ::dlopen("libreadline.so.8", RTLD_NOW | RTLD_LOCAL);
  return library && take(library, "rl_line_buffer", rl.line_buffer) && take(library, "rl_point", rl.point) &&
         take(library, "rl_outstream", rl.outstream) && take(library, "rl_redisplay", rl.redisplay) &&
         take(library, "rl_attempted_completion_over", rl.attempted_completion_over) &&
         take(library, "rl_completion_matches", rl.completion_matches) &&
         take(library, "rl_replace_line", rl.replace_line) && take(library, "rl_done", rl.done) &&
         take(library, "rl_readline_name", rl.readline_name) &&
         take(library, "rl_attempted_completion_function", rl.attempted_completion_function) &&
         take(library, "rl_completer_word_break_characters", rl.completer_word_break_characters) &&
         take(library, "rl_redisplay_function", rl.redisplay_function) &&
         take(library, "rl_event_hook", rl.event_hook) && take(library, "readline", rl.readline) &&
         take(library, "read_history", rl.read_history) && take(library, "add_history", rl.add_history) &&
         take(library, "stifle_history", rl.stifle_history) &&
         take(library, "write_history", rl.write_history);
}

// Readline calls back plain functions: what they need is kept here while the prompt is open.
struct Session {
  Lexicon* lexicon = nullptr;
  TextStyle style;
  bool draws = false;
  std::string previewed;  // the text that the preview below belongs to
};
Session session;

void draw_preview() {
  const std::string typed(*rl.line_buffer);
  const int cursor =
      prompt_width + display_width(std::string_view(*rl.line_buffer, static_cast<std::size_t>(*rl.point)));
  const bool wraps = prompt_width + display_width(typed) >= session.style.width;
  if (wraps || typed == session.previewed) return;
  session.previewed = typed;
  std::string screen = "\n\r\033[J";
  const auto lines = preview_of(typed, *session.lexicon, session.style);
  for (const auto& line : lines) screen += line + "\n\r";
  screen += "\033[" + std::to_string(lines.size() + 1) + "A\r\033[" + std::to_string(cursor) + "C";
  std::fputs(screen.c_str(), *rl.outstream);
  std::fflush(*rl.outstream);
}

void redisplay() {
  rl.redisplay();
  if (session.draws) draw_preview();
}

char* copy_for_readline(const std::string& text) {
  char* copy = static_cast<char*>(std::malloc(text.size() + 1));  // readline frees it
  if (copy) text.copy(copy, text.size()), copy[text.size()] = '\0';
  return copy;
}

char* next_offer(const char*, int state) {
  static std::vector<Offer> offers;
  static std::size_t next = 0;
  if (state == 0) {
    offers = complete(std::string_view(*rl.line_buffer, static_cast<std::size_t>(*rl.point)),
                      *session.lexicon, 20);
    next = 0;
  }
  return next < offers.size() ? copy_for_readline(offers[next++].word) : nullptr;
}

char** offers(const char* text, int, int) {
  *rl.attempted_completion_over = 1;  // never file names
  return rl.completion_matches(text, next_offer);
}

// Ctrl-C gives up the line, not the program.
volatile std::sig_atomic_t interrupted = 0;
void on_interrupt(int) { interrupted = 1; }

int give_up_line() {
  if (!interrupted) return 0;
  interrupted = 0;
  rl.replace_line("", 0);
  *rl.done = 1;
  return 0;
}

void set_up_readline() {
  *rl.readline_name = "sheaf";
  *rl.attempted_completion_function = offers;
  *rl.completer_word_break_characters = " ";
  *rl.redisplay_function = redisplay;
  *rl.event_hook = give_up_line;  // asked ten times a second; the hook for signals alone would wait for a key
  std::signal(SIGINT, on_interrupt);
}

Words words_of_line(const std::string& line) {
  std::istringstream stream(line);
  Words words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

// A line is a question, unless it begins with the name of another command.
Words arguments_of(const std::string& line, const Common& common) {
  Words words = words_of_line(line);
  if (!words.empty() && !command_named(words.front()) && words.front() != "help")
    words.insert(words.begin(), "find");
  for (const auto& library : common.libraries) {
    words.push_back("--library");
    words.push_back(library);
  }
  return words;
}

// The next line; none at the end of input. What was looked up while it was typed is forgotten with it.
std::optional<std::string> read_line(const std::vector<Library*>& libraries) {
  Lexicon lexicon(libraries);
  session.lexicon = &lexicon;
  session.previewed.clear();
  char* typed = rl.readline(prompt_text);
  if (session.draws) std::fputs("\033[J", *rl.outstream);
  std::fflush(*rl.outstream);  // before the answer, which is written without it
  if (!typed) return std::nullopt;
  std::string line(typed);
  std::free(typed);
  return line;
}

void greet(const std::vector<Library*>& libraries) {
  std::string text;
  for (const auto* library : libraries)
    text += library->facts().name + ", " + std::to_string(library->facts().entries) + " entries. ";
  print(text + "Ask in plain words; Tab completes, help says more, Ctrl-D leaves.\n");
  flush_output();
}

}  // namespace

ExitStatus run_prompt(const Common& common) {
  if (!load_readline()) {
    say_error("the prompt needs libreadline.so.8, which is not on this machine",
              "sheaf find WORDS answers without");
    return ExitStatus::trouble;
  }
  auto open = open_libraries(common.libraries);
  if (!open) {
    say_error(open.failure().message);
    return ExitStatus::trouble;
  }
  OpenLibraries opened = std::move(open).value();
  const char* terminal = std::getenv("TERM");
  session = {nullptr, output_style(common.colour), terminal && std::string_view(terminal) != "dumb", {}};
  set_up_readline();
  const std::string history = history_file();
  if (!history.empty()) rl.read_history(history.c_str());
  greet(opened.pointers());
  while (auto line = read_line(opened.pointers())) {
    if (*line == "quit" || *line == "exit") break;
    if (line->find_first_not_of(' ') == std::string::npos) continue;
    rl.add_history(line->c_str());
    run_arguments(arguments_of(*line, common));
    flush_output();
  }
  rl.stifle_history(most_history);
  if (!history.empty()) rl.write_history(history.c_str());
  return ExitStatus::done;
}

}  // namespace sheaf
