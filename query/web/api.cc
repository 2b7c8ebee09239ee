// SPDX-License-Identifier: GPL-2.0-or-later
// /api/…: byte for byte what the same command of `sheaf` prints with --json. What the command line cannot be
// asked that way, the words that a beginning may become, has the same shape.
#include "query/answer/answer_json.h"
#include "query/answer/card_document.h"
#include "query/answer/findings_json.h"
#include "query/answer/kit_document.h"
#include "query/answer/match_text.h"
#include "query/answer/reckon_text.h"
#include "query/answer/sheet_text.h"
#include "query/answer/wrench_text.h"
#include "query/search/complete.h"
#include "query/web/find_answers.h"
#include "query/web/find_card.h"
#include "query/web/find_kit.h"
#include "query/web/find_reckoning.h"
#include "query/web/find_wrench.h"
#include "query/web/own_crib.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

constexpr std::size_t words_offered = 8;

Response document(const JsonWriter& json, int status = 200) {
  return {status, "application/json", json.text() + "\n"};
}

Response fault(int status, const std::string& why) {
  JsonWriter json;
  json.begin_object();
  json.key("schema").number(json_schema);
  json.member("error", why);
  json.end_object();
  return document(json, status);
}

void begin(JsonWriter& json, std::string_view member) {
  json.begin_object();
  json.key("schema").number(json_schema);
  json.key(member);
}

Response api_find(const Asking& asking) {
  const auto found = find_answers(asking);
  if (!found) return fault(500, found.failure().message);
  JsonWriter json;
  write_json(json, *found);
  return document(json);
}

Response api_show(const Asking& asking) {
  const std::string address = asking.given("address");
  const bool is_entry = address.find('/') != std::string::npos;
  const auto answers =
      is_entry ? answers_at(asking, address) : Result<std::vector<Answer>>(std::vector<Answer>());
  const auto sheets =
      is_entry ? Result<std::vector<SheetRecord>>(std::vector<SheetRecord>()) : sheets_named(asking, address);
  if (!answers) return fault(500, answers.failure().message);
  if (!sheets) return fault(500, sheets.failure().message);
  JsonWriter json;
  begin(json, "results");
  json.begin_array();
  for (const auto& answer : *answers) write_json(json, answer);
  json.end_array();
  json.key("sheets").begin_array();
  for (const auto& sheet : *sheets) write_json(json, sheet);
  json.end_array();
  json.end_object();
  return document(json, answers->empty() && sheets->empty() ? 404 : 200);
}

Response api_card(const Asking& asking) {
  const auto found = find_card(asking, asking.given("q"));
  if (!found) return fault(400, found.failure().message);
  JsonWriter json;
  if (found->choice) {
    write_json(json, *found->choice);
    return document(json, 404);
  }
  begin(json, "card");
  write_json(json, *found->card, nullptr);
  json.end_object();
  return document(json);
}

Response api_kit(const Asking& asking) {
  const auto found = find_kit(asking);
  if (!found) return fault(400, found.failure().message);
  JsonWriter json;
  if (found->choice) {
    write_json(json, *found->choice);
    return document(json, 404);
  }
  begin(json, "kit");
  write_json(json, *found->kit);
  json.end_object();
  return document(json);
}

Response api_reckon(const Asking& asking) {
  const auto reckoning = find_reckoning(asking);
  if (!reckoning) return fault(400, reckoning.failure().message);
  JsonWriter json;
  begin(json, "reckoned");
  write_json(json, *reckoning);
  json.end_object();
  return document(json);
}

Response api_match(const Asking& asking) {
  const auto matches = match({asking.given("q"), {}}, asking.opened.shelf());
  if (!matches) return fault(400, matches.failure().message);
  JsonWriter json;
  begin(json, "matches");
  write_json(json, *matches);
  json.end_object();
  return document(json);
}

Response api_convert(const Asking& asking) {
  const auto conversion = convert_line(asking.given("q"), std::nullopt);
  if (conversion.failure) return fault(400, conversion.failure->message);
  JsonWriter json;
  begin(json, "conversions");
  json.begin_array();
  write_json(json, conversion);
  json.end_array();
  json.end_object();
  return document(json);
}

Response api_wrench(const Asking& asking) {
  const Crib* crib = asking.crib();
  if (!crib) return fault(404, "there is no crib in the library");
  const auto found = find_wrench(asking, *crib);
  if (!found) return fault(400, found.failure().message);
  JsonWriter json;
  begin(json, "results");
  json.begin_array();
  for (const auto& each : *found) write_json(json, each.answer, *crib, each.entry ? &*each.entry : nullptr);
  json.end_array();
  json.end_object();
  return document(json);
}

Response api_words(const Asking& asking) {
  Lexicon lexicon(asking.opened.libraries());
  JsonWriter json;
  begin(json, "words");
  json.begin_array();
  for (const auto& offer : complete(asking.given("q"), lexicon, words_offered)) json.string(offer.word);
  json.end_array();
  json.end_object();
  return document(json);
}

struct Named {
  std::string_view name;
  Response (*answer)(const Asking& asking);
};
constexpr Named documents[] = {{"find", api_find},     {"show", api_show},     {"card", api_card},
                               {"kit", api_kit},       {"match", api_match},   {"convert", api_convert},
                               {"wrench", api_wrench}, {"reckon", api_reckon}, {"words", api_words}};

}  // namespace

Response api(const Asking& asking, std::string_view name) {
  if (const auto own = own_crib(asking.request, asking.opened.crib()); !own)
    return fault(400, own.failure().message);
  for (const auto& each : documents)
    if (each.name == name) return each.answer(asking);
  return fault(404, "there is no such document");
}

}  // namespace sheaf
