// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf kit JOB[, JOB…]
#include "query/answer/kit.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "query/answer/answer_json.h"
#include "query/answer/kit_document.h"
#include "query/answer/text.h"
#include "query/cli/job_flags.h"
#include "query/library/index_terms.h"

namespace sheaf {
namespace {

std::string trimmed(std::string text) {
  text.erase(0, text.find_first_not_of(' '));
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

// Jobs are parted by commas, or are single words with the name of a sheet.
std::vector<std::string> jobs_of(const Words& words) {
  const std::string typed = joined(words, " ");
  std::vector<std::string> jobs;
  for (std::size_t at = 0; at <= typed.size();) {
    const std::size_t end = std::min(typed.find(',', at), typed.size());
    const std::string job = trimmed(typed.substr(at, end - at));
    if (!job.empty()) jobs.push_back(job);
    at = end + 1;
  }
  return jobs;
}

bool overlap(const FitRecord& left, const FitRecord& right) {
  const auto last = [](const FitRecord& fit) { return fit.year_to == 0 ? last_year : fit.year_to; };
  return left.make == right.make && left.model == right.model && left.year_from <= last(right) &&
         right.year_from <= last(left);
}

// Two forks, of which no machine has both: a list for both would buy parts for another year or machine.
bool are_rivals(const SheetRecord& left, const SheetRecord& right) {
  if (left.form != "assembly" || right.form != "assembly" || left.assembly != right.assembly) return false;
  return std::ranges::none_of(left.fits, [&](const FitRecord& fit) {
    return std::ranges::any_of(right.fits, [&](const FitRecord& other) { return overlap(fit, other); });
  });
}

bool has_rivals(const SheetFindings& found) {
  for (const auto& left : found.sheets)
    for (const auto& right : found.sheets)
      if (&left != &right && are_rivals(left.sheet, right.sheet)) return true;
  return false;
}

class KitCommand : public Command {
 public:
  void declare(CLI::App& flags) override { declare_job(flags, job_, WithCsv::yes); }

  ExitStatus run(const Words& words) override {
    auto opened = open_workshop(job_);
    if (!opened) return trouble(opened.failure().message);
    shop_ = std::move(opened).value();
    Lexicon lexicon(shop_.open.pointers());
    if (words.empty() && job_.filters.machine.empty())
      return trouble(
          "no job is given",
          "as in sheaf kit fork, front brake --machine muleback --year 2013; see sheaf kit --help");
    std::vector<std::string> jobs = are_all_sheets(words) ? words : jobs_of(words);
    if (jobs.empty()) jobs = {""};
    for (const auto& job : jobs)
      if (const auto status = add(job, lexicon); status != ExitStatus::done) return status;
    return answer();
  }

 private:
  static ExitStatus trouble(const std::string& message, const std::string& hint = {}) {
    say_error(message, hint);
    return ExitStatus::trouble;
  }

  bool are_all_sheets(const Words& words) {
    return !words.empty() && std::ranges::all_of(words, [&](const std::string& word) {
      return std::ranges::any_of(shop_.open.all, [&](Library& library) {
        const auto sheet = library.sheet_without_entries(word);
        return sheet && !sheet->empty();
      });
    });
  }

  // A job in words is every sheet that answers to them: a service takes both brakes.
  ExitStatus add(const std::string& job, Lexicon& lexicon) {
    auto found = find_sheets({job, job_.filters}, lexicon);
    if (!found) return trouble(found.failure().message);
    SheetFindings hits = std::move(found).value();
    if (hits.sheets.empty() || has_rivals(hits))
      return answer_choice(std::move(hits), job.empty() ? job_.filters.machine : job, shop_, job_);
    for (auto& hit : hits.sheets) {
      const bool known = std::ranges::find(sheets_, hit.sheet.name, &SheetRecord::name) != sheets_.end();
      if (!known && hit.sheet.form == "assembly") sheets_.push_back(std::move(hit.sheet));
    }
    return ExitStatus::done;
  }

  ExitStatus answer() {
    const auto kit = build_kit(sheets_, {shop_.open.pointers(), shop_.crib_or_null(), shop_.today});
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
  std::vector<SheetRecord> sheets_;
};

}  // namespace

std::unique_ptr<Command> make_kit() { return std::make_unique<KitCommand>(); }

}  // namespace sheaf
