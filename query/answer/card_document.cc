// SPDX-License-Identifier: GPL-2.0-or-later
// The sections of a card, named for what is done in each, in the order in which it is done.
#include "query/answer/card_document.h"

#include <algorithm>

#include "query/answer/card_cells.h"
#include "query/answer/fields.h"
#include "query/answer/kit_document.h"
#include "query/answer/record_check.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

// The machine that was named; without a year, the years that the sheet is for.
std::string machine_words(const Card& card) {
  const auto& machine = card.machine;
  std::string words = machine.make.empty() ? machine.model : machine.make + " " + machine.model;
  if (machine.year == 0 || machine.model.empty()) {
    std::vector<std::string> machines;
    for (const auto& fit : card.sheet.fits)
      if (machine.model.empty() || fit.model == machine.model) machines.push_back(machine_line(fit));
    words = joined(machines, "; ");
  }
  if (machine.year != 0)
    words += (machine.model.empty() ? ", model year " : " of ") + std::to_string(machine.year);
  if (!machine.frame.empty()) words += ", frame " + machine.frame;
  if (!machine.market.empty()) words += ", market " + machine.market;
  return words;
}

Answer source_of(const SheetRecord& sheet) {
  Answer answer;
  answer.entry.source = sheet.source;
  answer.entry.checked = sheet.checked;
  return answer;
}

std::string short_name(const Answer& used) {
  std::string words = used.name;
  if (!used.entry.withdrawn.empty()) return words + ": withdrawn";
  const bool has_figure = used.kind != "tool" && used.kind != "part";
  std::vector<std::string> figures;
  for (const auto& value : used.figures)  // which of several fills is meant, only the step says
    figures.push_back((used.figures.size() > 1 ? value.label + " " : "") + figure_words(value));
  if (has_figure && !figures.empty()) words += ": " + joined(figures, "; ");
  for (const auto& act : used.acts)
    if (act != choice_words("sold-as", "pair")) words += " · " + act;
  return words;
}

class CardLayout {
 public:
  CardLayout(const Card& card, const CardRecord* record) : card_(card), record_(record) {}

  Document lay_out() {
    head();
    findings();
    identify();
    settings_before();
    kit();
    steps();
    tightening();
    fluids();
    measures();
    settings_after();
    sign();
    foot();
    return std::move(document_);
  }

 private:
  void section(std::string heading, std::vector<Block> blocks) {
    if (!blocks.empty()) document_.sections.push_back({std::move(heading), std::move(blocks)});
  }

  Blank job_blank(const JobField& field, int width) const {
    Blank blank{"job/" + std::string(field.key), std::string(field.words), "", "", "", width};
    if (!record_) return blank;
    const auto kept = record_->job.find(std::string(field.key));
    if (kept != record_->job.end()) blank.filled = kept->second;
    return blank;
  }

  Passage job_blanks(std::initializer_list<std::string_view> keys, int width = 12) const {
    Passage passage;
    for (const auto& field : job_fields())
      if (std::ranges::find(keys, field.key) != keys.end()) passage.add(job_blank(field, width));
    return passage;
  }

  void head() {
    const auto& sheet = card_.sheet;
    document_.title = sheet.title;
    document_.mark = sheet.name + " · " + library_line(card_.library);
    document_.under_title.push_back(Passage(machine_words(card_), Tone::act));
    document_.under_title.push_back(job_blanks({"number", "frame", "distance"}));
    if (!card_.open.empty())
      document_.under_title.push_back(Passage("Open: " + joined(card_.open, ", ") +
                                                  ": by year, frame number or market. Make a card for "
                                                  "the machine's own: --year, --frame, --market.",
                                              Tone::caution));
  }

  // What a filled-in card says first.
  void findings() {
    if (!record_) return;
    Listing list;
    std::size_t open = 0;
    for (const auto& finding : check_record(*record_, card_)) {
      if (finding.weight == Weight::open) ++open;
      if (finding.weight == Weight::wrong)
        list.items.push_back(Passage("wrong: " + finding.text, Tone::caution));
      if (finding.weight == Weight::note) list.items.push_back(Passage("note: " + finding.text));
    }
    if (open > 0)
      list.items.push_back(Passage(
          std::to_string(open) + " of " + std::to_string(card_.items().size()) + " still open", Tone::act));
    if (list.items.empty())
      list.items.push_back(Passage("Everything is filled in, and nothing is beyond its limit."));
    section("As filled in", {std::move(list)});
  }

  void identify() {
    std::vector<Block> blocks;
    Listing list;
    for (std::size_t i = 0; i < card_.identify.size(); ++i) {
      const auto& item = card_.identify[i];
      const bool ticked = record_ && record_->ticked.contains(item.id);
      list.items.push_back(
          Passage().add(Tick{item.id, "", card_.identify_texts[i], ticked}).add(card_.identify_texts[i]));
    }
    if (!list.items.empty()) blocks.emplace_back(std::move(list));
    std::vector<std::string> sizes;
    for (const std::string_view key : {"tube", "tube-bore", "seal-bore"})
      if (const auto* text = text_of(card_.sheet.fields, key)) sizes.push_back(in_words(key) + " " + *text);
    if (!sizes.empty()) blocks.emplace_back(Passage(joined(sizes, " · ")));
    Remarks notes;
    for (const auto& note : texts_of(card_.sheet.fields, "notes"))
      notes.all.push_back({"note", Passage(note)});
    if (!notes.all.empty()) blocks.emplace_back(std::move(notes));
    section("Make sure it is this one", std::move(blocks));
  }

  FormTable table_of(std::string name, const std::vector<CardEntry>& entries, std::vector<FormColumn> columns,
                     std::size_t heads) {
    FormTable table;
    table.name = std::move(name);
    table.columns = std::move(columns);
    table.heads = heads;
    shared_ = shared_cautions(entries);
    table.over = remarks_of(shared_);
    return table;
  }

  void settings_before() {
    if (card_.settings.empty()) return;
    FormTable table = table_of("Settings to note before anything is loosened", card_.settings,
                               {{"setting", false, 4}, {"standard", false, 4}, {"found", true, 4}}, 0);
    for (const auto& entry : card_.settings)
      table.rows.push_back({"",
                            {name_cell(entry), setting_cell(entry), deed_cell(entry, Deed::found, record_)},
                            remarks_of(entry, shared_)});
    section("Note before anything is loosened", {std::move(table)});
  }

  void settings_after() {
    if (card_.settings.empty()) return;
    FormTable table = table_of("Settings to put back", card_.settings,
                               {{"setting", false, 4}, {"standard", false, 4}, {"set to", true, 4}}, 0);
    for (const auto& entry : card_.settings)
      table.rows.push_back({"",
                            {name_cell(entry), setting_cell(entry), deed_cell(entry, Deed::set, record_)},
                            remarks_of(entry, shared_)});
    section("Set again", {std::move(table)});
  }

  static Passage setting_cell(const CardEntry& entry) {
    Passage cell = figure_cell(entry.answer);
    for (std::size_t i = 1; i < entry.answer.figures.size() && entry.answer.entry.withdrawn.empty(); ++i)
      cell.new_line().add(entry.answer.figures[i].label + " " + figure_words(entry.answer.figures[i]));
    return cell;
  }

  void kit() {
    section("Lay out", picking_lists(card_.kit));
    if (!card_.kit.buy.empty()) section("Buy", {buying_table(card_.kit)});
  }

  void steps() {
    if (card_.steps.empty()) return;
    FormTable table =
        table_of("Steps of the job", card_.steps, {{"", false, 1}, {"do", false, 10}, {"done", true, 1}}, 1);
    for (std::size_t i = 0; i < card_.steps.size(); ++i) {
      const auto& entry = card_.steps[i];
      Passage what(text_or_none(entry.answer.entry.fields, "do"));
      FormRow row{"",
                  {Passage(std::to_string(i + 1), Tone::figure), what, deed_cell(entry, Deed::done, record_)},
                  {}};
      Cautions said = shared_;
      add_uses(entry, row, said);
      for (auto& remark : remarks_of(entry, said)) row.under.push_back(std::move(remark));
      table.rows.push_back(std::move(row));
    }
    section("Do", {std::move(table)});
  }

  // What a step needs, with the figures in place, and below them their own cautions.
  static void add_uses(const CardEntry& step, FormRow& row, Cautions& said) {
    Cautions own;
    for (const auto& used : step.uses) {
      row.under.push_back({"with", Passage(short_name(used))});
      for (const auto& caution : used.entry.cautions) {
        if (std::ranges::find(said, caution) != said.end()) continue;
        own.push_back(caution);
        said.push_back(caution);
      }
    }
    for (auto& remark : remarks_of(own)) row.under.push_back(std::move(remark));
  }

  void tightening() {
    if (card_.fasteners.empty()) return;
    FormTable table =
        table_of("Tightening, in order", card_.fasteners,
                 {{"", false, 1}, {"torque", false, 4}, {"what", false, 4}, {"done", true, 3}}, 2);
    for (const auto& entry : card_.fasteners) {
      const auto* order = text_of(entry.answer.entry.fields, "order");
      FormRow row{"",
                  {Passage(order ? *order : "–", Tone::figure), figure_cell(entry.answer), name_cell(entry),
                   deed_cell(entry, Deed::tightened, record_)},
                  {}};
      if (entry.wrench)
        for (const auto& line : set_lines(*entry.wrench)) row.under.push_back({"set", Passage(line)});
      for (std::size_t i = 1; i < entry.answer.figures.size(); ++i)
        row.under.push_back({entry.answer.figures[i].label, Passage(figure_words(entry.answer.figures[i]))});
      for (auto& remark : remarks_of(entry, shared_)) row.under.push_back(std::move(remark));
      table.rows.push_back(std::move(row));
    }
    section("Tighten", {std::move(table)});
  }

  void fluids() {
    if (card_.fluids.empty()) return;
    FormTable table =
        table_of("Fluids", card_.fluids, {{"figure", false, 4}, {"what", false, 4}, {"done", true, 4}}, 1);
    for (const auto& entry : card_.fluids) {
      const auto& figures = entry.answer.figures;
      Passage figure = figures.empty() ? Passage("as needed", Tone::act) : figure_cell(entry.answer);
      for (std::size_t i = 1; i < figures.size() && entry.answer.entry.withdrawn.empty(); ++i)
        figure.new_line().add(figures[i].label + " " + figure_words(figures[i]));
      Passage done = deed_cell(entry, Deed::filled, record_);
      const Passage level = deed_cell(entry, Deed::measured, record_);
      if (!level.empty()) done.new_line().add("level, as measured").new_line().append(level);
      table.rows.push_back({"", {figure, name_cell(entry), done}, remarks_of(entry, shared_)});
    }
    section("Fill", {std::move(table)});
  }

  void measures() {
    if (card_.measures.empty()) return;
    FormTable table = table_of("Limits, clearances and pressures", card_.measures,
                               {{"figure", false, 4}, {"what", false, 4}, {"measured", true, 4}}, 1);
    for (const auto& entry : card_.measures) {
      Passage figure = figure_cell(entry.answer);
      for (std::size_t i = 1; i < entry.answer.figures.size(); ++i)
        figure.new_line().add(entry.answer.figures[i].label + " " + figure_words(entry.answer.figures[i]));
      table.rows.push_back(
          {"", {figure, name_cell(entry), measure_cell(entry, record_)}, remarks_of(entry, shared_)});
    }
    section("Measure", {std::move(table)});
  }

  void sign() {
    std::vector<Block> blocks = {job_blanks({"by", "second", "on"}), job_blanks({"note"}, Blank::whole_line)};
    section("Sign", std::move(blocks));
  }

  void foot() {
    auto& foot = document_.foot;
    foot.push_back({"source", Passage(source_line(source_of(card_.sheet).entry))});
    const std::string invented = card_.sheet.invented ? "Invented demonstration figures. " : "";
    foot.push_back(
        {"", Passage(invented + std::string(authority_notice) +
                         " Local rules may want a licensed person. This card is a help, not a certificate.",
                     Tone::quiet)});
    if (!card_.shop.empty()) foot.push_back({"crib", Passage(card_.shop)});
    foot.push_back({"library", Passage(library_line(card_.library))});
    foot.push_back({"address", Passage(card_.sheet.name)});
  }

  const Card& card_;
  const CardRecord* record_;
  Document document_;
  Cautions shared_;  // of the table being laid out
};

}  // namespace

Document document_of(const Card& card, const CardRecord* record) {
  return CardLayout(card, record).lay_out();
}

}  // namespace sheaf
