// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc build: sheets into one library file. With errors nothing is written and the old one stays.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <future>
#include <memory>

#include "compiler/cli/build_cache.h"
#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/flags.h"
#include "compiler/cli/folder_watch.h"
#include "compiler/cli/interrupt.h"
#include "compiler/cli/kept_build.h"
#include "compiler/cli/news.h"
#include "compiler/cli/progress.h"
#include "compiler/cli/rebuild.h"
#include "compiler/cli/stamp.h"
#include "compiler/emit/library_writer.h"

namespace sheafc {
namespace {

struct Wishes {
  CompileRequest request;
  std::string output;
  bool quiet = false;
  bool cached = true;
  bool watch = false;
  Colour colour = Colour::automatic;
};

// "a/orrindale.sheaf" -> "orrindale"
std::string library_name(const std::string& path) { return std::filesystem::path(path).stem().string(); }

ExitStatus failed(const sheaf::Failure& failure) {
  end_if_interrupted();
  say_error(failure.message);
  return ExitStatus::trouble;
}

std::string contents_of(std::int64_t entries, std::int64_t sheets, const Diagnostics& found) {
  return counted(static_cast<std::size_t>(entries), "entry", "entries") + ", " +
         counted(static_cast<std::size_t>(sheets), "sheet", "sheets") + ", " +
         counted(static_cast<std::size_t>(found.warnings()), "warning", "warnings");
}

// One build after another of the same sheets to the same library; alone, the first is the last.
class Builder {
 public:
  explicit Builder(const Wishes& wishes)
      : wishes_(wishes),
        interrupted_(watch_for_interrupt()),
        cache_(wishes.cached ? cache_folder_for(wishes.output) : std::string()) {}

  ExitStatus build();
  ExitStatus build_at_every_change();

 private:
  std::optional<ExitStatus> build_from_the_last(Progress& progress);
  ExitStatus say_current(const Stamp& stamp);
  std::optional<ExitStatus> build_changed(const SecondLook& look, Stamp& stamp, std::optional<KeptBuild> last,
                                          Progress& progress);
  ExitStatus compile_and_write(Progress& progress);
  EmitOptions emit_options() const {
    return {.interrupted = &interrupted_, .cache = cache_, .program = program_identity()};
  }
  void report(const Diagnostics& found, const LineSource& lines);
  ExitStatus say_faults(const Diagnostics& found, const LineSource& lines);
  ExitStatus say_written(const Receipt& receipt, const Diagnostics& found) const;
  void keep(const Stamp& stamp, const std::optional<KeptBuild>& build) const;
  std::string stamp_file() const { return cache_ + "/stamp"; }

  const Wishes& wishes_;
  const std::atomic<bool>& interrupted_;
  std::string cache_;  // empty: none
  News news_;
};

void Builder::report(const Diagnostics& found, const LineSource& lines) {
  say_as_is(text_report(news_.of(found), lines, style_for(wishes_.colour, STDERR_FILENO)));
}

ExitStatus Builder::say_written(const Receipt& receipt, const Diagnostics& found) const {
  if (!wishes_.quiet)
    say("wrote " + receipt.path + ": " + contents_of(receipt.entries, receipt.sheets, found));
  return ExitStatus::done;
}

ExitStatus Builder::say_faults(const Diagnostics& found, const LineSource& lines) {
  report(found, lines);
  say(fault_counts(found) + "; " + wishes_.output + " is not written");
  return ExitStatus::fault;
}

// The stamp last: what it does not name is not taken.
void Builder::keep(const Stamp& stamp, const std::optional<KeptBuild>& build) const {
  auto draft = build ? draft_of(*build, cache_) : std::nullopt;
  if (draft) keep_build(cache_, std::move(*draft), build->library, identity_of(stamp));
  keep_stamp(stamp_file(), stamp);
}

ExitStatus Builder::say_current(const Stamp& stamp) {
  report(stamp.found, lines_on_disk());
  if (!wishes_.quiet)
    say(wishes_.output + " is up to date: " + contents_of(stamp.entries, stamp.sheets, stamp.found));
  return ExitStatus::done;
}

std::optional<ExitStatus> Builder::build_changed(const SecondLook& look, Stamp& stamp,
                                                 std::optional<KeptBuild> last, Progress& progress) {
  progress.stage("reading what changed");
  if (!last || last->identity != identity_of(stamp)) return std::nullopt;
  auto rebuilt = compile_again(look, stamp, *last);
  if (!rebuilt) return std::nullopt;
  if (rebuilt->found.errors() > 0) {
    progress.erase();
    return say_faults(rebuilt->found, lines_on_disk());
  }
  progress.stage("putting the library together");
  auto draft = std::async(std::launch::async, [&] { return draft_of(*last, cache_); });
  EmitOptions options = emit_options();
  options.when_sealed = [&](const Receipt& receipt) {
    stamp.digest = receipt.digest;
    if (auto made = draft.get())
      keep_build(cache_, std::move(*made), {receipt.rows_hash, receipt.hashes}, identity_of(stamp));
  };
  const auto receipt = revise_library(wishes_.output, last->library, std::move(rebuilt->changed), options);
  progress.erase();
  if (!receipt) return failed(receipt.failure());
  if (!*receipt) return std::nullopt;
  report(rebuilt->found, lines_on_disk());
  if (set_library(stamp, **receipt)) keep_stamp(stamp_file(), stamp);
  return say_written(**receipt, rebuilt->found);
}

// None: all must be built.
std::optional<ExitStatus> Builder::build_from_the_last(Progress& progress) {
  if (cache_.empty()) return std::nullopt;
  auto stamp = kept_stamp(stamp_file());
  if (!stamp) return std::nullopt;
  std::future<std::optional<KeptBuild>> last;  // read while the files behind the first change are looked at
  const auto read_last = [&] {
    last = std::async(std::launch::async, [&] { return read_kept_build(cache_); });
  };
  const auto look = look_again(*stamp, wishes_.request, wishes_.output, read_last);
  if (!look) return std::nullopt;
  return look->changed.empty() ? say_current(*stamp) : build_changed(*look, *stamp, last.get(), progress);
}

// The library is written while the sheets are compiled, part by part, so that a large folder is never all in
// memory; it is put in its place only when all of them are known to be without errors.
ExitStatus Builder::compile_and_write(Progress& progress) {
  std::optional<LibraryWriter> library;
  KeptSheets kept;
  const auto write = [&](const Part& part, const std::vector<std::string>& names,
                         bool sound) -> std::optional<sheaf::Failure> {
    if (!sound) {
      library.reset();
      progress.done() += part.own.size();
      return std::nullopt;
    }
    if (!library) {
      auto begun = LibraryWriter::begin(wishes_.output, library_name(wishes_.output), words_of(part.linked),
                                        emit_options());
      if (!begun) return begun.failure();
      library = std::move(begun).value();
    }
    for (const NumberedSheet& sheet : part.own) {
      if (auto failure = library->add(record_of(part.linked, *sheet.sheet))) return failure;
      ++progress.done();
    }
    if (!cache_.empty()) kept.add(part, names);
    return std::nullopt;
  };
  Findings findings;
  const auto compiled = compile(wishes_.request, {&progress, cache_.empty() ? nullptr : &findings, write});
  progress.erase();
  if (!compiled) return failed(compiled.failure());
  const Diagnostics& found = compiled->diagnostics;
  if (found.errors() > 0) return say_faults(found, lines_on_disk());
  report(found, lines_on_disk());
  progress.stage("putting the library together");
  const auto receipt = library->finish();
  progress.erase();
  if (!receipt) return failed(receipt.failure());
  const auto stamp = cache_.empty() ? std::nullopt : stamp_of(wishes_.request, *compiled, *receipt);
  if (stamp) keep(*stamp, kept.with(*compiled, std::move(findings), *receipt));
  return say_written(*receipt, found);
}

ExitStatus Builder::build() {
  Progress progress;
  if (const auto done = build_from_the_last(progress)) return *done;
  return compile_and_write(progress);
}

// What fails is said, and the next change is waited for: a folder may be half way through a move.
ExitStatus Builder::build_at_every_change() {
  std::vector<std::string> watched = wishes_.request.folders;
  watched.insert(watched.end(), wishes_.request.libraries.begin(), wishes_.request.libraries.end());
  while (!interrupted_) {
    const auto watch = FolderWatch::of(watched);
    if (!watch) return failed(watch.failure());
    build();
    watch->wait(interrupted_);
  }
  end_if_interrupted();
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
      "  sheafc build shop -o shop.sheaf --watch      build again whenever a sheet is saved; Ctrl-C ends it\n"
      "\n"
      "With errors nothing is written, and the old library stays as it is. What may shorten the next build is\n"
      "kept in sheaf/ of $XDG_CACHE_HOME; the library is the same with and without it.\n"
      "Exit status: 0 written, 1 the sheets have errors, 2 wrong usage or the world failed, 130 "
      "interrupted.");
  command->add_option("sheets", wishes->request.folders, "Folders of sheets")
      ->required()
      ->type_name("FOLDER");
  command->add_option("-o,--output", wishes->output, "The library to write")
      ->required()
      ->type_name("NAME.sheaf");
  command->add_flag("-q,--quiet", wishes->quiet, "No closing line");
  command->add_flag_callback(
      "--no-cache", [wishes] { wishes->cached = false; },
      "Take nothing from earlier builds, and keep nothing");
  command->add_flag("--watch", wishes->watch, "Build again at every change, saying only what is new");
  add_with_flag(*command, wishes->request);
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] {
    action = [wishes] {
      Builder builder(*wishes);
      return wishes->watch ? builder.build_at_every_change() : builder.build();
    };
  });
}

}  // namespace sheafc
