// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/supersession.h"

#include <algorithm>

#include "query/answer/fields.h"
#include "query/search/of_kind.h"

namespace sheaf {
namespace {

constexpr std::size_t longest_chain = 12;  // the compiler refuses circles; a library may be another's
constexpr std::size_t most_entries = 20;   // with one number

// One link: what replaces the entry's number. The number is empty where nothing does.
struct Successor {
  std::string number, note;
  bool interchangeable = false;
};

Successor successor_of(const EntryRecord& entry) {
  return {text_or_none(entry.fields, "superseded-by.number"),
          text_or_none(entry.fields, "superseded-by.note"),
          says(entry.fields, "superseded-by.interchangeable", "yes")};
}

// What the libraries say replaced that number, on whichever sheet it stands.
Result<Successor> successor_of(const std::string& number, const std::vector<Library*>& libraries) {
  for (Library* library : libraries) {
    const auto entries = entries_numbered(*library, number, most_entries);
    if (!entries) return entries.failure();
    for (const auto& entry : *entries) {
      Successor next = successor_of(entry);
      if (entry.withdrawn.empty() && !next.number.empty()) return next;
    }
  }
  return Successor{};
}

std::string caveat_of(const Successor& next) {
  std::string words = next.number + " has replaced it, but does not fit in every respect";
  return next.note.empty() ? words : words + ": " + next.note;
}

}  // namespace

// "other-numbers.1.supplier" and "other-numbers.1.number", in order.
std::vector<std::string> numbers_elsewhere(const EntryRecord& entry) {
  std::vector<std::string> others;
  for (const auto& field : entry.fields) {
    if (!field.key.starts_with("other-numbers.")) continue;
    if (field.key.ends_with(".supplier")) others.push_back(field.text);
    if (field.key.ends_with(".number") && !others.empty()) others.back() += " " + field.text;
  }
  return others;
}

std::string successor_words(const EntryRecord& entry) {
  const Successor next = successor_of(entry);
  if (next.number.empty()) return {};
  const std::string fits = next.interchangeable ? "fits" : "does NOT fit";
  std::string words = next.number + ", which " + fits + " in every respect";
  return next.note.empty() ? words : words + ": " + next.note;
}

std::string number_words(const NumberChain& chain) {
  if (chain.numbers.empty()) return {};
  return chain.numbers.size() == 1 ? chain.order() : chain.order() + ", was " + chain.numbers.front();
}

Result<NumberChain> number_chain(const EntryRecord& entry, const std::vector<Library*>& libraries) {
  NumberChain chain;
  const auto own = text_or_none(entry.fields, "part-number");
  chain.others = numbers_elsewhere(entry);
  chain.replaces = texts_of(entry.fields, "supersedes");
  if (own.empty()) return chain;
  chain.numbers.push_back(own);
  for (Successor next = successor_of(entry); !next.number.empty() && chain.numbers.size() < longest_chain;) {
    if (!next.interchangeable) {
      chain.caveat = caveat_of(next);
      break;
    }
    if (std::ranges::find(chain.numbers, next.number) != chain.numbers.end()) break;
    chain.numbers.push_back(next.number);
    if (!next.note.empty()) chain.notes.push_back(next.note);
    auto further = successor_of(next.number, libraries);
    if (!further) return further.failure();
    next = std::move(further).value();
  }
  return chain;
}

}  // namespace sheaf
