// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/kit_document.h"

#include <algorithm>

#include "query/answer/text.h"

namespace sheaf {
namespace {

std::string chain_words(const NumberChain& number) {
  if (number.numbers.size() < 2) return {};
  std::vector<std::string> older(number.numbers.begin(), number.numbers.end() - 1);
  return "was " + joined(older, ", then ");
}

Passage number_cell(const NumberChain& number) {
  Passage cell;
  if (number.numbers.empty()) return cell;
  cell.add(number.order(), Tone::act);
  const std::string chain = chain_words(number);
  if (!chain.empty()) cell.new_line().add(chain);
  if (!number.replaces.empty()) cell.new_line().add("replaces " + joined(number.replaces, ", "), Tone::quiet);
  if (!number.others.empty()) cell.new_line().add("also " + joined(number.others, ", "), Tone::quiet);
  return cell;
}

Passage amount_cell(const Purchase& purchase) {
  Passage cell(amount_words(purchase), Tone::figure);
  if (purchase.in_pairs) cell.new_line().add("for " + std::to_string(purchase.pieces));
  if (!purchase.all_counted) cell.new_line().add("count them", Tone::act);
  return cell;
}

Passage what_cell(const Purchase& purchase) {
  Passage cell(purchase.name, Tone::act);
  if (!purchase.detail.empty()) cell.new_line().add(purchase.detail);
  const std::string volume = volume_words(purchase);
  if (!volume.empty()) cell.new_line().add(volume);
  return cell;
}

std::vector<Remark> remarks_of(const Purchase& purchase) {
  std::vector<Remark> remarks;
  if (!purchase.number.caveat.empty())
    remarks.push_back({"note", Passage(purchase.number.caveat, Tone::act)});
  for (const auto& note : purchase.number.notes) remarks.push_back({"note", Passage(note)});
  for (const auto& note : purchase.notes) remarks.push_back({"note", Passage(note)});
  return remarks;
}

// "Fit new" is what its whole group is called.
void add_cautions(const Purchase& purchase, std::vector<Remark>& remarks) {
  for (const auto& caution : purchase.cautions)
    if (caution.name != "fit-new") remarks.push_back({"caution", Passage(caution.text, Tone::caution)});
}

std::string purchase_id(const Purchase& purchase) { return "buy/" + purchase.addresses.front(); }

Passage item_of(const Pick& pick, std::size_t index) {
  Passage item;
  item.add(Tick{"pick/" + std::to_string(index), "", pick.name});
  item.add(pick.name, Tone::act);
  if (!pick.detail.empty()) item.add(", " + pick.detail);
  if (!pick.uses.empty()) item.add(" · " + joined(pick.uses, ", "), Tone::quiet);
  return item;
}

}  // namespace

FormTable buying_table(const Kit& kit) {
  FormTable table;
  table.name = "What to buy";
  table.columns = {{"", false, 1}, {"amount", false, 3}, {"what", false, 5}, {"number", true, 3}};
  table.heads = 2;
  std::optional<Need> need;
  for (const auto& purchase : kit.buy) {
    FormRow row;
    if (need != purchase.need) row.group = in_words(purchase.need);
    need = purchase.need;
    row.cells = {Passage().add(Tick{purchase_id(purchase), "", purchase.name + " bought"}),
                 amount_cell(purchase), what_cell(purchase), number_cell(purchase.number)};
    row.under = remarks_of(purchase);
    add_cautions(purchase, row.under);
    if (kit.sheets.size() > 1)
      row.under.push_back({"for", Passage(joined(sheets_of(purchase), ", "), Tone::quiet)});
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::vector<Block> picking_lists(const Kit& kit) {
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < kit.pick.size();) {
    const Tool tool = kit.pick[i].tool;
    Listing listing;
    listing.compact = true;
    for (; i < kit.pick.size() && kit.pick[i].tool == tool; ++i)
      listing.items.push_back(item_of(kit.pick[i], i + 1));
    blocks.emplace_back(Passage(in_words(tool), Tone::quiet));
    blocks.emplace_back(std::move(listing));
  }
  return blocks;
}

std::string library_line(const LibraryFacts& facts) {
  constexpr std::size_t digits_shown = 12;
  std::string line = facts.name;
  if (!facts.data_date.empty()) line += ", data of " + facts.data_date;
  return line + ", digest " + facts.digest.substr(0, digits_shown);
}

Document document_of(const Kit& kit, const std::vector<Library*>& libraries) {
  Document document;
  document.title = kit.sheets.size() == 1 ? "Kit for " + kit.sheets.front().title
                                          : "Kit for " + std::to_string(kit.sheets.size()) + " assemblies";
  document.mark = document.title;
  Listing jobs;
  bool invented = false;
  for (const auto& sheet : kit.sheets) {
    jobs.items.push_back(
        Passage(sheet.title, Tone::act)
            .add(" · " + joined(sheet.machines, "; ") + "  ")
            .add(sheet.name + (sheet.library.empty() ? "" : "  in " + sheet.library), Tone::quiet));
    invented = invented || sheet.invented;
  }
  document.sections.push_back({"For", {std::move(jobs)}});
  if (!kit.buy.empty()) document.sections.push_back({"Buy", {buying_table(kit)}});
  if (!kit.pick.empty()) document.sections.push_back({"Lay out", picking_lists(kit)});
  for (const auto& notice : kit.notices) document.foot.push_back({"note", Passage(notice)});
  document.foot.push_back(
      {"", Passage((invented ? "Invented demonstration data. " : "") + std::string(authority_notice),
                   Tone::quiet)});
  for (const Library* library : libraries)
    document.foot.push_back({"library", Passage(library_line(library->facts()))});
  return document;
}

}  // namespace sheaf
