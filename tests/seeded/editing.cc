// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/seeded/editing.h"

#include <algorithm>
#include <cctype>
#include <cstdio>

namespace seeded {
namespace {

using namespace sheafc;

const SourceFile* file_of(const LinkedEntry& entry) { return entry.sheet->sheet->file.get(); }

std::size_t offset_of(const SourceFile& file, const Span& span) {
  std::size_t at = 0;
  for (int line = 1; line < span.line; ++line) at = file.bytes().find('\n', at) + 1;
  return at + static_cast<std::size_t>(span.column) - 1;
}

bool stands_in_brackets(const SourceFile& file, const Span& span) {
  const std::string_view line = file.line(span.line).substr(0, static_cast<std::size_t>(span.column) - 1);
  return line.find('{') != std::string_view::npos || line.find('[') != std::string_view::npos;
}

// A line of its own: "    key: value".
bool stands_alone(const SourceFile& file, const Field& field) {
  const std::string_view line = file.line(field.key_place.line);
  return line.substr(0, static_cast<std::size_t>(field.key_place.column) - 1).find_first_not_of(' ') ==
             std::string_view::npos &&
         field.values.front().where.line == field.key_place.line;
}

std::size_t start_of_line(const SourceFile& file, int line) { return offset_of(file, {{}, line, 1, 1}); }

std::pair<std::size_t, std::size_t> first_number(std::string_view text) {
  std::size_t begin = 0;
  while (begin < text.size() && !std::isdigit(static_cast<unsigned char>(text[begin]))) ++begin;
  std::size_t end = begin;
  while (end < text.size() && (std::isdigit(static_cast<unsigned char>(text[end])) ||
                               (text[end] == '.' && end + 1 < text.size() &&
                                std::isdigit(static_cast<unsigned char>(text[end + 1])))))
    ++end;
  return {begin, end};
}

std::string point_moved_right(std::string number) {
  const std::size_t point = number.find('.');
  if (point == std::string::npos) return number + "0";
  number.erase(point, 1);
  if (point + 1 < number.size()) number.insert(point + 1, ".");
  const std::size_t digit = number.find_first_not_of('0');
  return digit == std::string::npos ? number
         : number[digit] == '.'     ? number.substr(digit - 1)
                                    : number.substr(digit);
}

std::string point_moved_left(std::string number) {
  std::size_t point = number.find('.');
  if (point == std::string::npos)
    point = number.size();
  else
    number.erase(point, 1);
  if (point == 1) return "0." + number;
  number.insert(point - 1, ".");
  return number;
}

}  // namespace

const Value* own_value(const LinkedEntry& entry, std::string_view key) {
  const Field* field = entry.find(key);
  if (!field || field->values.size() != 1 || entry.inherited || !file_of(entry)) return nullptr;
  const Value& value = field->values.front();
  return value.where.file == file_of(entry)->name() && !value.text.empty() ? &value : nullptr;
}

Edit rewrite(const LinkedEntry& entry, const Value& value, const std::string& text) {
  const SourceFile& file = *file_of(entry);
  const std::size_t at = offset_of(file, value.where);
  const bool quoted = at > 0 && (file.bytes()[at - 1] == '"' || file.bytes()[at] == '"');
  const bool wants_quotes =
      !quoted && text.find(',') != std::string::npos && stands_in_brackets(file, value.where);
  const bool span_has_quotes = file.bytes()[at] == '"';
  return {file.name(), at, static_cast<std::size_t>(value.where.length),
          wants_quotes || span_has_quotes ? "\"" + text + "\"" : text};
}

std::optional<Edit> line_removed(const LinkedEntry& entry, const Field* field) {
  const SourceFile& file = *file_of(entry);
  if (!field || field->key_place.file != file.name() || !stands_alone(file, *field)) return {};
  const std::size_t at = start_of_line(file, field->key_place.line);
  return Edit{file.name(), at, file.line(field->key_place.line).size() + 1, ""};
}

std::optional<Edit> without(const LinkedEntry& entry, std::string_view key) {
  return own_value(entry, key) ? line_removed(entry, entry.find(key)) : std::nullopt;
}

std::optional<Edit> add_after(const LinkedEntry& entry, std::string_view key, const std::string& line) {
  const Field* field = entry.find(key);
  if (!field || !own_value(entry, key) || !stands_alone(*file_of(entry), *field)) return {};
  const SourceFile& file = *file_of(entry);
  const std::string indent(static_cast<std::size_t>(field->key_place.column) - 1, ' ');
  return Edit{file.name(), start_of_line(file, field->key_place.line + 1), 0, indent + line + "\n"};
}

std::string with_first_number(std::string_view text, const std::string& number) {
  const auto [begin, end] = first_number(text);
  return std::string(text.substr(0, begin)) + number + std::string(text.substr(end));
}

std::string decimal_slipped(std::string_view text, bool up) {
  const auto [begin, end] = first_number(text);
  const std::string number(text.substr(begin, end - begin));
  return with_first_number(text, up ? point_moved_right(number) : point_moved_left(number));
}

std::string written(double value, int decimals) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

}  // namespace seeded
