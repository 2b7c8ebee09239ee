// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf kit JOB[, JOB…]
#include "query/answer/kit.h"

#include "query/answer/answer_json.h"
#include "query/answer/kit_document.h"
#include "query/answer/kit_sheets.h"
#include "query/cli/job_flags.h"

namespace sheaf {
namespace {

class KitCommand : public Command {
 public:
  void declare(Flags& flags) override { declare_job(flags, job_, WithCsv::yes); }

  ExitStatus run(const Words& words) override {
    auto opened = open_workshop(job_);
    if (!opened) return trouble(opened.failure().message);
    shop_ = std::move(opened).value();
    Lexicon lexicon(shop_.open.pointers());
    if (words.empty() && job_.filters.machine.empty())
      return trouble(
          "no job is given",
          "as in sheaf kit fork, front brake --machine muleback --year 2013; see sheaf kit --help");
    const auto found = find_kit_sheets(words, job_.filters, lexicon);
    if (!found) return trouble(found.failure().message);
    if (found->choice) return answer_choice(*found->choice, job_);
    return answer(found->sheets);
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  ExitStatus answer(const std::vector<SheetRecord>& sheets) {
    const auto kit = build_kit(sheets, {shop_.open.pointers(), shop_.crib_or_null(), shop_.today});
    if (!kit) return trouble(kit.failure().message);
    if (job_.common.json) {
      JsonWriter json;
      json.begin_object();
      json.key("schema").number(json_schema);
      json.key("kit");
      write_json(json, *kit);
      json.end_object();
      print(json.text() + "\n");
    } else if (job_.csv) {
      print(csv_of(*kit));
    } else {
      print_document(document_of(*kit, shop_.open.pointers()), job_);
    }
    return ExitStatus::done;
  }

  JobFlags job_;
  Workshop shop_;
};

}  // namespace

std::unique_ptr<Command> make_kit() { return std::make_unique<KitCommand>(); }

}  // namespace sheaf
