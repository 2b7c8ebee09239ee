// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf about: which library answers, and what is in it.

#include "query/answer/answer_json.h"
#include "query/answer/page.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"

namespace sheaf {
namespace {

void write_text(Page& page, const LibraryFacts& facts, const std::string& found_by) {
  page.labelled("library", Line(facts.name, Tone::figure).add("  " + facts.path));
  page.labelled("found by", Line(found_by));
  page.labelled("holds", Line(std::to_string(facts.entries) + " entries on " + std::to_string(facts.sheets) +
                              " sheets, " + std::to_string(facts.words) + " words"));
  page.labelled("checked",
                Line(facts.data_date.empty() ? "no date of checking" : "last on " + facts.data_date));
  page.labelled("digest", Line(facts.digest));
  page.labelled("written",
                Line("format " + std::to_string(facts.format) + ", SQLite " + facts.sqlite_version +
                     ", Xapian " + facts.xapian_version + ", " + std::to_string(facts.bytes) + " bytes"));
}

void write_json(JsonWriter& json, const LibraryFacts& facts, const std::vector<std::string>* faults) {
  json.begin_object();
  json.member("name", facts.name);
  json.member("path", facts.path);
  json.key("format").number(facts.format);
  json.key("entries").number(facts.entries);
  json.key("sheets").number(facts.sheets);
  json.key("words").number(facts.words);
  json.key("bytes").number(facts.bytes);
  json.member("data-date", facts.data_date);
  json.member("digest", facts.digest);
  json.member("sqlite-version", facts.sqlite_version);
  json.member("xapian-version", facts.xapian_version);
  if (faults) {
    json.key("sound").boolean(faults->empty());
    json.key("faults").begin_array();
    for (const auto& fault : *faults) json.string(fault);
    json.end_array();
  }
  json.end_object();
}

class About : public Command {
 public:
  void declare(Flags& flags) override {
    flags.flag("--verify", verify_, "Read and check every byte; \"nothing found\" is certain only then");
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (!words.empty()) {
      say_error("'" + words.front() + "' is one word too many", "see sheaf about --help");
      return ExitStatus::trouble;
    }
    auto open = open_libraries(common_.libraries);
    if (!open) {
      say_error(open.failure().message);
      return ExitStatus::trouble;
    }
    OpenLibraries libraries = std::move(open).value();
    return common_.json ? print_json(libraries) : print_text(libraries);
  }

 private:
  ExitStatus print_text(OpenLibraries& open) {
    Page page(output_style(common_.colour));
    ExitStatus status = ExitStatus::done;
    for (auto& library : open.all) {
      page.blank();
      write_text(page, library.facts(), open.found_by);
      if (verify_ && !report(page, library.verify())) status = ExitStatus::trouble;
    }
    print(page.take());
    return status;
  }

  static bool report(Page& page, const std::vector<std::string>& faults) {
    if (faults.empty()) page.labelled("verified", Line("every byte, record and list is sound"));
    for (const auto& fault : faults) page.labelled("damaged", Line(fault, Tone::caution));
    return faults.empty();
  }

  ExitStatus print_json(OpenLibraries& open) {
    JsonWriter json;
    bool sound = true;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.member("found-by", open.found_by);
    json.key("libraries").begin_array();
    for (auto& library : open.all) {
      const auto faults = verify_ ? library.verify() : std::vector<std::string>();
      sound = sound && faults.empty();
      write_json(json, library.facts(), verify_ ? &faults : nullptr);
    }
    json.end_array();
    json.end_object();
    print(json.text() + "\n");
    return sound ? ExitStatus::done : ExitStatus::trouble;
  }

  Common common_;
  bool verify_ = false;
};

}  // namespace

std::unique_ptr<Command> make_about() { return std::make_unique<About>(); }

}  // namespace sheaf
