// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf reckon TOPIC GIVEN…
#include <algorithm>

#include "query/answer/answer_json.h"
#include "query/answer/reckon_text.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"
#include "query/library/whole_file.h"

namespace sheaf {
namespace {

class Reckon : public Command {
 public:
  void declare(Flags& flags) override {
    flags.text("--svg", svg_, "FILE", "Also draw it into this file, where there is something to draw");
    declare_library(flags, common_);
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (words.size() < 2 && !common_.json && explain(words.empty() ? std::string() : words.front()))
      return ExitStatus::done;
    if (words.empty()) return trouble("no topic is given", "see sheaf reckon");
    const Words given(words.begin() + 1, words.end());
    const auto reckoning = reckon(words.front(), given, [this] { return tables(); });
    if (!reckoning) return trouble(reckoning.failure().message);
    if (!svg_.empty()) {
      if (reckoning->picture.empty())
        return trouble("there is nothing to draw of '" + reckoning->topic + "'");
      if (auto fault = replace_file(svg_, reckoning->picture)) return trouble(fault->message);
    }
    common_.json ? print_json(*reckoning) : print_text(*reckoning);
    return ExitStatus::done;
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  // No topic, or a topic without anything given: what there is. False if there is no such topic.
  bool explain(const std::string& name) {
    const auto topics = all_topics();
    const auto topic = std::ranges::find(topics, name, &Topic::name);
    if (!name.empty() && topic == topics.end()) return false;
    Page page(output_style(common_.colour));
    name.empty() ? write_topics(page) : write_text(page, *topic);
    print(page.take());
    return true;
  }

  // Opened once, and only for a topic that needs a table.
  Result<Libraries> tables() {
    if (!open_) {
      auto open = open_libraries(common_.libraries);
      if (!open) return open.failure();
      open_ = std::move(open).value();
    }
    return open_->pointers();
  }

  void print_text(const Reckoning& reckoning) {
    Page page(output_style(common_.colour));
    write_text(page, reckoning);
    print(page.take());
  }

  static void print_json(const Reckoning& reckoning) {
    JsonWriter json;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.key("reckoned");
    write_json(json, reckoning);
    json.end_object();
    print(json.text() + "\n");
  }

  Common common_;
  std::string svg_;
  std::optional<OpenLibraries> open_;
};

}  // namespace

std::unique_ptr<Command> make_reckon() { return std::make_unique<Reckon>(); }

}  // namespace sheaf
