// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/csv.h"

#include <algorithm>
#include <optional>

namespace sheafc {
namespace {

char separator_of(std::string_view bytes) {
  const std::string_view line = bytes.substr(0, bytes.find('\n'));
  const auto count = [&](char c) { return std::ranges::count(line, c); };
  return *std::ranges::max_element(std::string_view(",;\t"), {}, count);
}

class CsvReader {
 public:
  CsvReader(std::string_view name, std::string_view bytes)
      : name_(name), bytes_(bytes), separator_(separator_of(bytes)) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (bytes_.starts_with(byte_order_mark)) at_ = line_start_ = byte_order_mark.size();
  }

  sheaf::Result<CsvTable> table() {
    CsvTable table;
    while (at_ < bytes_.size() && !unclosed_) {
      std::vector<CsvCell> row = read_row();
      if (row.size() == 1 && row.front().text.empty()) continue;
      if (table.header.empty())
        table.header = std::move(row);
      else
        table.rows.push_back(std::move(row));
    }
    if (unclosed_)
      return sheaf::Failure{std::string(name_) + ":" + std::to_string(*unclosed_) +
                            ": a quote is not closed"};
    return table;
  }

 private:
  std::vector<CsvCell> read_row() {
    std::vector<CsvCell> row;
    do {
      row.push_back(read_cell());
    } while (take(separator_));
    take('\r');
    if (take('\n')) new_line();
    return row;
  }

  CsvCell read_cell() {
    while (peek() == ' ') ++at_;
    CsvCell cell{{}, {name_, line_, static_cast<int>(at_ - line_start_) + 1, 1}};
    const std::size_t start = at_;
    cell.text = peek() == '"' ? quoted() : plain();
    while (!cell.text.empty() && cell.text.back() == ' ') cell.text.pop_back();
    const std::size_t length = std::min(bytes_.substr(start, at_ - start).find('\n'), at_ - start);
    cell.where.length = std::max(static_cast<int>(length), 1);
    return cell;
  }

  std::string plain() {
    std::string text;
    while (at_ < bytes_.size() && peek() != separator_ && peek() != '\n') text += bytes_[at_++];
    if (text.ends_with('\r')) text.pop_back();
    return text;
  }

  std::string quoted() {
    const int line = line_;
    std::string text;
    for (++at_; at_ < bytes_.size(); ++at_) {
      if (peek() == '"') {
        ++at_;
        if (peek() != '"') return text + plain();  // what follows a closing quote belongs to nobody; keep it
      } else if (peek() == '\n') {
        ++line_;
        line_start_ = at_ + 1;
        text += ' ';
        continue;
      }
      text += bytes_[at_];
    }
    unclosed_ = line;
    return text;
  }

  char peek() const { return at_ < bytes_.size() ? bytes_[at_] : '\0'; }
  bool take(char c) {
    if (at_ >= bytes_.size() || bytes_[at_] != c) return false;
    ++at_;
    return true;
  }
  void new_line() {
    ++line_;
    line_start_ = at_;
  }

  std::string_view name_, bytes_;
  char separator_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1;
  std::optional<int> unclosed_;
};

}  // namespace

sheaf::Result<CsvTable> parse_csv(std::string_view name, std::string_view bytes) {
  return CsvReader(name, bytes).table();
}

}  // namespace sheafc
