// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf wrench TORQUE | ADDRESS

#include "query/answer/answer_json.h"
#include "query/answer/fields.h"
#include "query/answer/text.h"
#include "query/answer/wrench_drawing.h"
#include "query/answer/wrench_text.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/cli/today.h"
#include "query/library/whole_file.h"

namespace sheaf {
namespace {

// One torque to be set, and what it is of, if it came from a sheet.
struct ToSet {
  WrenchAnswer answer;
  std::optional<Answer> entry;
};

class Wrench : public Command {
 public:
  void declare(Flags& flags) override {
    flags.text("--adapter", adapter_, "NAME", "With this adapter of the crib");
    flags.text("--angle", angle_, "DEGREES", "Its angle: 0 straight on, 90 across, 180 back to the hand");
    flags.text("--svg", svg_, "FILE",
               "Also draw the band above the wrench's scale, or the adapter, into this file");
    declare_today(flags, today_);
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (words.empty()) {
      say_error("no torque is given", "as in sheaf wrench 35±3 N·m; see sheaf wrench --help");
      return ExitStatus::trouble;
    }
    auto open = open_libraries(common_.libraries);
    if (!open) return trouble(open.failure().message);
    OpenLibraries libraries = std::move(open).value();
    const auto crib = read_crib(libraries.pointers());
    if (!crib) return trouble(crib.failure().message);
    if (!*crib)
      return trouble(
          "no crib in " + names_of(libraries),
          "compile the crib's sheet into a library of its own and name it with a further --library");
    const auto request = request_for(**crib);
    if (!request) return trouble(request.failure().message);
    auto asked = ask(joined(words, " "), *request, libraries);
    if (!asked) return trouble(asked.failure().message);
    return answer(*asked, **crib);
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  static std::string names_of(const OpenLibraries& open) {
    std::vector<std::string> names;
    for (const auto& library : open.all) names.push_back(library.facts().path);
    return joined(names, ", ");
  }

  Result<WrenchRequest> request_for(const Crib& crib) const {
    auto day = today_from(today_);
    if (!day) return day.failure();
    WrenchRequest request{crib, std::move(day).value()};
    if (adapter_.empty()) {
      if (!angle_.empty()) return Failure{"an angle needs --adapter NAME"};
      return request;
    }
    const CribAdapter* adapter = crib.adapter_named(adapter_);
    if (!adapter) return Failure{"no adapter '" + adapter_ + "' in the crib; it has " + adapters_of(crib)};
    const auto degrees = degrees_from(angle_);
    if (!degrees) return degrees.failure();
    request.adapter = AdapterUse{*adapter, *degrees};
    return request;
  }

  static std::string adapters_of(const Crib& crib) {
    std::vector<std::string> names;
    for (const auto& adapter : crib.adapters) names.push_back(entry_part(adapter.address));
    return names.empty() ? "none" : joined(names, ", ");
  }

  // "45", "45°", "-90"; nothing is straight on.
  static Result<double> degrees_from(std::string typed) {
    if (typed.empty()) return 0.0;
    if (typed.ends_with("°")) typed.resize(typed.size() - std::string_view("°").size());
    const auto number = parse_number(typed, Input::prompt);
    if (!number || approximate(*number) < -180 || approximate(*number) > 180)
      return Failure{"--angle wants degrees from -180 to 180, not '" + typed + "'"};
    return approximate(*number);
  }

  static bool is_address(const std::string& typed) {
    return typed.find('/') != std::string::npos && typed.find(' ') == std::string::npos;
  }

  static Result<std::vector<ToSet>> ask(const std::string& typed, const WrenchRequest& request,
                                        OpenLibraries& open) {
    auto readings = parse_readings(typed, Dimension::torque);
    if (!readings && is_address(typed)) return ask_address(typed, request, open);
    if (!readings)
      return Failure{"'" + typed + "' is neither a torque nor an address: " + readings.failure().message};
    std::vector<ToSet> all;
    for (const auto& reading : *readings) {
      auto chosen = choose_wrench(reading, request);
      if (!chosen) return chosen.failure();
      all.push_back({std::move(chosen).value(), std::nullopt});
    }
    return all;
  }

  // Every variant of the entry, from the first library that has it.
  static Result<std::vector<ToSet>> ask_address(const std::string& address, const WrenchRequest& request,
                                                OpenLibraries& open) {
    for (auto& library : open.all) {
      auto entries = library.entries_at(address);
      if (!entries) return entries.failure();
      if (!entries->empty()) return ask_entries(std::move(entries).value(), request, library);
    }
    return Failure{"no entry '" + address + "'; sheaf find looks for it by its words"};
  }

  static Result<std::vector<ToSet>> ask_entries(std::vector<EntryRecord> entries,
                                                const WrenchRequest& request, Library& library) {
    std::vector<ToSet> all;
    for (auto& entry : entries) {
      if (!entry.withdrawn.empty())
        return Failure{entry.address + " was withdrawn on " + entry.withdrawn.front().on + ": " +
                       entry.withdrawn.front().reason};
      auto chosen = choose_wrench(entry, request);
      if (!chosen) return chosen.failure();
      if (!*chosen) return Failure{entry.address + " states no torque"};
      const auto sheet = library.sheet_without_entries(sheet_part(entry.address));
      if (!sheet) return sheet.failure();
      if (sheet->empty()) return Failure{"no sheet of " + entry.address};
      all.push_back({**chosen, build_answer(sheet->front(), std::move(entry))});
    }
    return all;
  }

  ExitStatus answer(const std::vector<ToSet>& all, const Crib& crib) {
    if (!svg_.empty()) {
      const WrenchAnswer& first = all.front().answer;
      const auto geometry = geometry_of(first);
      const auto drawn = geometry ? std::optional(svg(*geometry, first)) : band_svg(first);
      if (!drawn) return trouble("there is nothing to draw: no wrench can be used");
      if (auto fault = replace_file(svg_, *drawn)) return trouble(fault->message);
    }
    common_.json ? print_json(all, crib) : print_text(all, crib);
    return can_all_be_set(all) ? ExitStatus::done : ExitStatus::nothing;
  }

  static bool can_all_be_set(const std::vector<ToSet>& all) {
    for (const auto& asked : all) {
      if (asked.answer.stages.empty()) return false;
      for (const auto& stage : asked.answer.stages)
        if (!stage.can_be_set()) return false;
    }
    return true;
  }

  void print_text(const std::vector<ToSet>& all, const Crib& crib) {
    Page page(output_style(common_.colour));
    for (const auto& asked : all) {
      page.blank();
      write_text(page, asked.answer, crib, asked.entry ? &*asked.entry : nullptr);
    }
    print(page.take());
  }

  void print_json(const std::vector<ToSet>& all, const Crib& crib) {
    JsonWriter json;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.key("results").begin_array();
    for (const auto& asked : all) write_json(json, asked.answer, crib, asked.entry ? &*asked.entry : nullptr);
    json.end_array();
    json.end_object();
    print(json.text() + "\n");
  }

  Common common_;
  std::string adapter_, angle_, svg_, today_;
};

}  // namespace

std::unique_ptr<Command> make_wrench() { return std::make_unique<Wrench>(); }

}  // namespace sheaf
