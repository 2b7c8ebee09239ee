// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/answer_json.h"
#include "query/answer/sheet_text.h"

namespace sheaf {

void write_json(JsonWriter& json, const SheetRecord& sheet) {
  json.begin_object();
  json.member("sheet", sheet.name);
  json.member("form", sheet.form);
  json.member_if("library", sheet.library);
  json.member("title", sheet.title);
  json.member_if("assembly", sheet.assembly);
  json.member_if("maker", sheet.maker);
  json.member_if("row-kind", sheet.row_kind);
  json.key("invented").boolean(sheet.invented);
  json.key("fields").begin_array();
  for (const auto& field : sheet.fields) {
    json.begin_object();
    json.member("field", field.key);
    json.member("text", field.text);
    json.end_object();
  }
  json.end_array();
  json.key("entries").begin_array();
  for (const auto& entry : sheet.entries) write_json(json, build_answer(sheet, entry));
  json.end_array();
  json.end_object();
}

}  // namespace sheaf
