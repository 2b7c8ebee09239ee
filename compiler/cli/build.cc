// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc build: sheets into one library file. With errors nothing is written and the old one stays.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/flags.h"
#include "compiler/cli/interrupt.h"
#include "compiler/emit/library_writer.h"

namespace sheafc {
namespace {

struct Wishes {
  CompileRequest request;
  std::string output;
  bool quiet = false;
  Colour colour = Colour::automatic;
};

// "a/orrindale.sheaf" -> "orrindale"
std::string library_name(const std::string& path) { return std::filesystem::path(path).stem().string(); }

ExitStatus failed(const sheaf::Failure& failure) {
  end_if_interrupted();
  say_error(failure.message);
  return ExitStatus::trouble;
}

// Sheet by sheet: the records of a large folder are never all in memory.
sheaf::Result<Receipt> write(const LinkedSheets& linked, const std::string& path,
                             const std::atomic<bool>& interrupted) {
  auto writer =
      LibraryWriter::begin(path, library_name(path), words_of(linked), {.interrupted = &interrupted});
  if (!writer) return writer.failure();
  LibraryWriter library = std::move(writer).value();
  for (const LinkedSheet& sheet : linked.own()) {
    if (auto failure = library.add(record_of(linked, sheet))) return *failure;
  }
  return library.finish();
}

ExitStatus build(const Wishes& wishes) {
  const std::atomic<bool>& interrupted = watch_for_interrupt();
  const auto compiled = compile(wishes.request);
  if (!compiled) return failed(compiled.failure());
  const Compilation& compilation = **compiled;
  const Diagnostics& found = compilation.diagnostics;
  say_as_is(text_report(found, lines_of(compilation.workspace), style_for(wishes.colour, STDERR_FILENO)));
  if (found.errors() > 0) {
    say(fault_counts(found) + "; " + wishes.output + " is not written");
    return ExitStatus::fault;
  }
  const auto receipt = write(compilation.linked, wishes.output, interrupted);
  if (!receipt) return failed(receipt.failure());
  if (!wishes.quiet) {
    say("wrote " + receipt->path + ": " +
        counted(static_cast<std::size_t>(receipt->entries), "entry", "entries") + ", " +
        counted(static_cast<std::size_t>(receipt->sheets), "sheet", "sheets") + ", " +
        counted(static_cast<std::size_t>(found.warnings()), "warning", "warnings"));
  }
  return ExitStatus::done;
}

}  // namespace

void add_build(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand("build", "Compile sheets into one library file.");
  command->footer(
      "Examples:\n"
      "  sheafc build specs-yaml -o orrindale.sheaf\n"
      "  sheafc build shop --with orrindale.sheaf -o shop.sheaf\n"
      "\n"
      "With errors nothing is written, and the old library stays as it is.\n"
      "Exit status: 0 written, 1 the sheets have errors, 2 wrong usage or the world failed, 130 "
      "interrupted.");
  command->add_option("sheets", wishes->request.folders, "Folders of sheets")
      ->required()
      ->type_name("FOLDER");
  command->add_option("-o,--output", wishes->output, "The library to write")
      ->required()
      ->type_name("NAME.sheaf");
  command->add_flag("-q,--quiet", wishes->quiet, "No closing line");
  add_with_flag(*command, wishes->request);
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] { action = [wishes] { return build(*wishes); }; });
}

}  // namespace sheafc
