// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf card ASSEMBLY

#include "query/answer/answer_json.h"
#include "query/answer/card_document.h"
#include "query/answer/text.h"
#include "query/cli/card_entering.h"
#include "query/cli/job_flags.h"
#include "query/library/whole_file.h"

namespace sheaf {
namespace {

class CardCommand : public Command {
 public:
  void declare(Flags& flags) override {
    declare_job(flags, job_, WithCsv::no);
    flags.text("--with", with_, "FILE", "Print the card with this record filled in");
    flags.text("--record", record_, "FILE", "Keep what is entered in this file, and check it");
    declare_entering(flags, entering_);
  }

  ExitStatus run(const Words& words) override {
    if (words.empty() && job_.filters.machine.empty())
      return trouble("no assembly is given", "as in sheaf card fork muleback 2013; see sheaf card --help");
    if (!entering_.is_empty() && record_.empty())
      return trouble("what is entered needs --record FILE to be kept in");
    if (!record_.empty() && !with_.empty())
      return trouble("--record writes a file and --with prints one: one of them at a time");
    auto opened = open_workshop(job_);
    if (!opened) return trouble(opened.failure().message);
    shop_ = std::move(opened).value();
    const auto status = find_card(joined(words, " "));
    if (status != ExitStatus::done) return status;
    return record_.empty() ? print_card() : keep_record();
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  ExitStatus find_card(const std::string& asked) {
    Lexicon lexicon(shop_.open.pointers());
    auto found = find_sheets({asked, job_.filters}, lexicon);
    if (!found) return trouble(found.failure().message);
    SheetFindings hits = std::move(found).value();
    if (hits.sheets.size() != 1)
      return answer_choice(sheet_choice(std::move(hits), asked, shop_.open.pointers()), job_);
    SheetHit& hit = hits.sheets.front();
    if (hit.sheet.form != "assembly")
      return trouble(hit.sheet.name + " is of the form " + hit.sheet.form + "; a card is of an assembly");
    auto card = build_card(
        std::move(hit.sheet),
        {shop_.open.pointers(), hit.library, machine_of(hits.reading), shop_.crib_or_null(), shop_.today});
    if (!card) return trouble(card.failure().message);
    card_ = std::move(card).value();
    return ExitStatus::done;
  }

  ExitStatus print_card() {
    std::optional<CardRecord> record;
    if (!with_.empty()) {
      auto kept = read_record(with_);
      if (!kept) return trouble(kept.failure().message);
      if (!*kept) return trouble("no such file: " + with_);
      record = std::move(kept).value();
      if (record->sheet != card_.sheet.name)
        return trouble(with_ + " is a record of " + record->sheet + ", not of " + card_.sheet.name);
    }
    const CardRecord* filled = record ? &*record : nullptr;
    if (job_.common.json) {
      JsonWriter json;
      json.begin_object();
      json.key("schema").number(json_schema);
      json.key("card");
      write_json(json, card_, filled);
      json.end_object();
      print(json.text() + "\n");
    } else {
      print_document(document_of(card_, filled), job_);
    }
    return ExitStatus::done;
  }

  ExitStatus keep_record() {
    if (!card_.open.empty())
      return trouble("the card is open to several years: " + joined(card_.open, ", "),
                     "name the machine and its year, frame number or market");
    return enter_and_check(card_, record_, entering_, {shop_.today, job_.common.json, job_.common.colour});
  }

  JobFlags job_;
  Entering entering_;
  std::string record_, with_;
  Workshop shop_;
  Card card_;
};

}  // namespace

std::unique_ptr<Command> make_card() { return std::make_unique<CardCommand>(); }

}  // namespace sheaf
