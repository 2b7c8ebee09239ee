// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/job_flags.h"

#include "query/cli/today.h"

namespace sheaf {

void declare_job(Flags& flags, JobFlags& job, WithCsv with_csv) {
  flags.text("--machine", job.filters.machine, "WORDS", "For this machine");
  flags.number("--year", job.filters.year, "YEAR", "Of this model year");
  flags.text("--frame", job.filters.frame, "NUMBER", "With this frame number");
  flags.text("--market", job.filters.market, "NAME", "Of this market");
  flags.text("--assembly", job.filters.assembly, "NAME", "Only this assembly: fork, front-brake, ...");
  flags.flag("--html", job.html, "A page to print, on A4 or Letter, or to fill in where it is shown");
  flags.flag("--markdown", job.markdown, "The same as Markdown");
  if (with_csv == WithCsv::yes) flags.flag("--csv", job.csv, "The lists as comma-separated values");
  declare_today(flags, job.today);
  declare_library(flags, job.common);
  declare_output(flags, job.common);
}

Result<Workshop> open_workshop(const JobFlags& job) {
  Workshop shop;
  auto day = today_from(job.today);
  if (!day) return day.failure();
  shop.today = std::move(day).value();
  auto open = open_libraries(job.common.libraries);
  if (!open) return open.failure();
  shop.open = std::move(open).value();
  auto crib = read_crib(shop.open.pointers());
  if (!crib) return crib.failure();
  shop.crib = std::move(crib).value();
  return shop;
}

ExitStatus answer_choice(const SheetChoice& choice, const JobFlags& job) {
  if (job.common.json) {
    JsonWriter json;
    write_json(json, choice);
    print(json.text() + "\n");
    return ExitStatus::nothing;
  }
  if (job.html || job.markdown || job.csv) {
    say(in_one_line(choice));
    return ExitStatus::nothing;
  }
  Page page(output_style(job.common.colour));
  write_text(page, choice);
  print(page.take());
  return ExitStatus::nothing;
}

void print_document(const Document& document, const JobFlags& job) {
  if (job.html) {
    print(html_of(document));
  } else if (job.markdown) {
    print(markdown_of(document));
  } else {
    Page page(output_style(job.common.colour));
    write_text(page, document);
    print(page.take());
  }
}

}  // namespace sheaf
