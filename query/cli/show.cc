// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf show ADDRESS…
#include <algorithm>
#include <iterator>

#include "query/answer/answer_json.h"
#include "query/answer/answer_text.h"
#include "query/answer/sheet_text.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/cli/what_to_set.h"
#include "query/library/near_word.h"

namespace sheaf {
namespace {

// What stands at one address: the variants of an entry, or a sheet; from each library that has it, in their
// order.
struct Shown {
  std::vector<Answer> answers;
  std::vector<SheetRecord> sheets;
  bool empty() const { return answers.empty() && sheets.empty(); }
};

class Show : public Command {
 public:
  void declare(Flags& flags) override {
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (words.empty()) {
      say_error("no address is given", "as in sheaf show sorvane-41-rod/top-plug; see sheaf show --help");
      return ExitStatus::trouble;
    }
    auto open = open_libraries(common_.libraries);
    if (!open) {
      say_error(open.failure().message);
      return ExitStatus::trouble;
    }
    OpenLibraries libraries = std::move(open).value();
    std::vector<Shown> all;
    ExitStatus status = ExitStatus::done;
    for (const auto& address : words) {
      auto shown = look_up(address, libraries);
      if (!shown) {
        say_error(shown.failure().message);
        return ExitStatus::trouble;
      }
      if (shown->empty())
        status = say_unknown(address, libraries);
      else
        all.push_back(std::move(shown).value());
    }
    for (auto& shown : all) say_what_to_set(shown.answers, libraries.pointers());
    common_.json ? print_json(all) : print_text(all);
    return status;
  }

 private:
  static Result<Shown> look_up(const std::string& address, OpenLibraries& open) {
    const bool is_entry = address.find('/') != std::string::npos;
    Shown all;
    for (auto& library : open.all) {
      auto shown = is_entry ? entry_at(address, library) : sheet_at(address, library);
      if (!shown) return shown;
      Shown found = std::move(shown).value();
      std::ranges::move(found.answers, std::back_inserter(all.answers));
      std::ranges::move(found.sheets, std::back_inserter(all.sheets));
    }
    return all;
  }

  static Result<Shown> sheet_at(const std::string& name, Library& library) {
    auto sheets = library.sheet(name);
    if (!sheets) return sheets.failure();
    return Shown{{}, std::move(sheets).value()};
  }

  static Result<Shown> entry_at(const std::string& address, Library& library) {
    auto entries = library.entries_at(address);
    if (!entries) return entries.failure();
    Shown shown;
    for (auto& entry : std::move(entries).value()) {
      auto sheet = library.sheet_without_entries(entry.address.substr(0, entry.address.find('/')));
      if (!sheet) return sheet.failure();
      if (!sheet->empty()) shown.answers.push_back(build_answer(sheet->front(), std::move(entry)));
    }
    return shown;
  }

  static std::string near_address(const std::string& address, OpenLibraries& open) {
    const std::size_t slash = address.find('/');
    std::vector<std::string> names;
    for (auto& library : open.all) {
      if (slash == std::string::npos) {
        if (auto sheets = library.sheets())
          for (const auto& sheet : *sheets) names.push_back(sheet.name);
      } else if (auto sheets = library.sheet(address.substr(0, slash))) {
        for (const auto& sheet : *sheets)
          for (const auto& entry : sheet.entries) names.push_back(entry.address);
      }
    }
    const std::vector<std::string_view> views(names.begin(), names.end());
    return std::string(near_word(address, views));
  }

  static ExitStatus say_unknown(const std::string& address, OpenLibraries& open) {
    const std::string near = near_address(address, open);
    const bool is_entry = address.find('/') != std::string::npos;
    say_error(std::string(is_entry ? "no entry" : "no sheet") + " '" + address + "'",
              near.empty() ? "sheaf find looks for it by its words" : "did you mean '" + near + "'?");
    return ExitStatus::nothing;
  }

  void print_text(const std::vector<Shown>& all) {
    Page page(output_style(common_.colour));
    for (const auto& shown : all) {
      for (const auto& answer : shown.answers) {
        page.blank();
        write_text(page, answer, Extent::whole);
      }
      for (const auto& sheet : shown.sheets) {
        page.blank();
        write_text(page, sheet);
      }
    }
    print(page.take());
  }

  void print_json(const std::vector<Shown>& all) {
    JsonWriter json;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.key("results").begin_array();
    for (const auto& shown : all)
      for (const auto& answer : shown.answers) write_json(json, answer);
    json.end_array();
    json.key("sheets").begin_array();
    for (const auto& shown : all)
      for (const auto& sheet : shown.sheets) write_json(json, sheet);
    json.end_array();
    json.end_object();
    print(json.text() + "\n");
  }

  Common common_;
};

}  // namespace

std::unique_ptr<Command> make_show() { return std::make_unique<Show>(); }

}  // namespace sheaf
