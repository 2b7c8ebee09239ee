// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/findings.h"
#include "tests/phrases/engine.h"

namespace phrases {
namespace {

class Sheaf : public Engine {
 public:
  explicit Sheaf(sheaf::Library& library) : library_(library) {}
  std::string name() const override { return "sheaf"; }

  Reply ask(const std::string& question) override {
    sheaf::Lexicon lexicon({&library_});
    sheaf::Request request;
    request.words = question;
    auto findings = sheaf::find(request, lexicon);
    if (!findings) return {};
    const auto found = sheaf::say_findings(std::move(findings).value(), question, {});
    Reply reply;
    for (const auto& answer : found.answers)
      reply.answers.push_back({answer.address, answer.entry.fits, !answer.missing.empty()});
    for (const auto& near : found.near) reply.near.push_back(near.answer.address);
    if (found.conversion)
      for (const auto& reading : found.conversion->readings)
        for (const auto& derived : reading.derived)
          reply.converted.push_back(sheaf::shown(derived.statement));
    return reply;
  }

 private:
  sheaf::Library& library_;
};

}  // namespace

std::unique_ptr<Engine> make_sheaf(sheaf::Library& library) { return std::make_unique<Sheaf>(library); }

std::string words_of_entry(const sheaf::EntryRecord& entry, const sheaf::SheetRecord& sheet) {
  std::string words = entry.name + " " + sheet.title + " " + sheet.assembly;
  for (const auto& field : entry.fields) words += " " + field.key + " " + field.text;
  for (const auto& fit : entry.fits) {
    words += " " + fit.make + " " + fit.model;
    const int last = fit.year_to == 0 ? fit.year_from + 15 : fit.year_to;
    for (int year = fit.year_from; year > 0 && year <= last; ++year) words += " " + std::to_string(year);
  }
  return words;
}

}  // namespace phrases
