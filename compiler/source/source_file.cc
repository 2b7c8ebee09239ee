// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/source_file.h"

#include <algorithm>
#include <cstring>
#include <memory_resource>
#include <vector>

#include "compiler/source/characters.h"
#include "compiler/source/file_names.h"
#include "compiler/source/syntax_recovery.h"
#include "compiler/source/yaml_reader.h"

namespace sheafc {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr int max_syntax_faults = 10;  // each costs one more reading of the sheet

}  // namespace

// The bytes are kept with the trailer that the parser needs, so that the tree can point into them.
struct SourceFile::State {
  std::string_view name;
  std::string bytes;
  std::size_t size = 0;
  std::vector<std::size_t> line_starts;
  std::pmr::monotonic_buffer_resource arena;
  const Node* root = nullptr;

  std::string_view text() const { return std::string_view(bytes).substr(0, size); }

  Span span_at(std::size_t at, std::size_t length) const {
    const auto next = std::upper_bound(line_starts.begin(), line_starts.end(), at);
    const auto line = next - line_starts.begin();
    const std::size_t start = line_starts[static_cast<std::size_t>(line - 1)];
    return {name, static_cast<int>(line), static_cast<int>(at - start) + 1, static_cast<int>(length)};
  }

  void report(const SyntaxFault& fault, Diagnostics& sink) const {
    Diagnostic diagnostic{Severity::error, fault.rule, span_at(fault.at, fault.length), fault.message, {}};
    if (fault.related != std::string_view::npos) {
      diagnostic.notes.push_back(
          {Severity::note, fault.rule, span_at(fault.related, 1), fault.related_message, {}});
    }
    sink.report(std::move(diagnostic));
  }

  bool read(Diagnostics& sink);
  void report_all(SyntaxFault fault, Diagnostics& sink) const;
  void report_comment(std::size_t at, Diagnostics& sink) const;
};

bool SourceFile::State::read(Diagnostics& sink) {
  Diagnostics duplicates;
  const YamlOutput output = read_yaml({name, bytes, size}, arena, duplicates);
  if (output.fault) {
    report_all(*output.fault, sink);
    return false;
  }
  root = output.root;
  sink.take(std::move(duplicates));
  for (const std::size_t at : output.doubtful_comments) report_comment(at, sink);
  return true;
}

// After a fault the sheet is read again without the entry at fault, only to find what else is wrong.
void SourceFile::State::report_all(SyntaxFault fault, Diagnostics& sink) const {
  report(fault, sink);
  Diagnostics duplicates;
  std::string rest = bytes;
  for (int faults = 1;
       faults < max_syntax_faults && blank_block_around(rest, fault.entry_start, fault.stopped_at);
       ++faults) {
    duplicates = {};
    std::pmr::monotonic_buffer_resource scratch;
    const auto next = read_yaml({name, rest, size}, scratch, duplicates).fault;
    if (!next || next->at == fault.at || next->rule == "empty-sheet") break;
    report(*next, sink);
    fault = *next;
  }
  sink.take(std::move(duplicates));
}

void SourceFile::State::report_comment(std::size_t at, Diagnostics& sink) const {
  const std::string_view word = text().substr(at, text().find_first_of(" \r\n", at) - at);
  sink.warning("comment-or-value", span_at(at, word.size()),
               "`" + std::string(word) +
                   "` is read as a comment; put the whole value in quotes, or a space after the #");
}

SourceFile::SourceFile(std::string_view name, std::string bytes) : state_(std::make_unique<State>()) {
  if (bytes.starts_with(byte_order_mark)) bytes.erase(0, byte_order_mark.size());
  state_->name = kept_file_name(name);
  state_->bytes = std::move(bytes);
  state_->size = state_->bytes.size();
  state_->line_starts.push_back(0);
  for (std::size_t at = state_->bytes.find('\n'); at != std::string::npos;
       at = state_->bytes.find('\n', at + 1)) {
    state_->line_starts.push_back(at + 1);
  }
}

SourceFile::~SourceFile() = default;
SourceFile::SourceFile(SourceFile&&) noexcept = default;
SourceFile& SourceFile::operator=(SourceFile&&) noexcept = default;

std::string_view SourceFile::name() const { return state_->name; }
std::string_view SourceFile::bytes() const { return state_->text(); }
const Node* SourceFile::root() const { return state_->root; }

std::string_view SourceFile::line(int number) const {
  const auto& starts = state_->line_starts;
  if (number < 1 || static_cast<std::size_t>(number) > starts.size()) return {};
  std::string_view text = state_->text().substr(starts[static_cast<std::size_t>(number - 1)]);
  text = text.substr(0, text.find('\n'));
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

bool SourceFile::parse(Diagnostics& sink) {
  State& state = *state_;
  if (state.size > max_file_bytes) {
    sink.error("too-large", {state.name, 1, 1, 1},
               "the sheet is larger than 1 MiB, the most that is read; split it");
    return false;
  }
  if (!check_characters(state.name, state.text(), sink)) return false;
  const bool ends_line = state.size == 0 || state.bytes.back() == '\n';
  state.bytes += ends_line ? yaml_trailer.substr(1) : yaml_trailer;
  return state.read(sink);
}

void SourceFile::drop_tree() {
  state_->root = nullptr;
  state_->arena.release();
}

Diagnostic SourceFile::empty_value(const Node& empty) const {
  std::string_view rest = line(empty.span.line);
  const std::string name(rest.substr(static_cast<std::size_t>(empty.span.column - 1),
                                     static_cast<std::size_t>(empty.span.length)));
  rest.remove_prefix(
      std::min(rest.size(), static_cast<std::size_t>(empty.span.column - 1 + empty.span.length)));
  rest.remove_prefix(std::min(rest.find_first_not_of(" :"), rest.size()));
  const bool is_item = name == "-";
  std::string message = is_item ? "this item of the list is empty" : "`" + name + "` has no value";
  if (name == "~" || name == "null" || name == "Null" || name == "NULL") {
    message = "`" + name + "` says nothing; leave the item out, or put text in quotes";
  } else if (rest.size() > 1 && rest[0] == '#' && rest[1] != ' ') {
    message += ": a # after a space makes a comment of the rest; put the value in quotes";
  } else if (!rest.empty() && rest[0] != '#') {
    message += ": `" + std::string(rest.substr(0, rest.find_first_of(" ,}#"))) +
               "` says nothing; leave the key out, or put text in quotes";
  }
  return {Severity::error, "empty-value", empty.span, std::move(message), {}};
}

Span SourceFile::within(const Node& scalar, int at, int length) const {
  const char* first = state_->bytes.data();
  const bool in_bytes = scalar.text.data() >= first && scalar.text.data() < first + state_->bytes.size();
  const auto size = static_cast<int>(scalar.text.size());
  if (!in_bytes || at < 0 || length <= 0 || at > size - length) return scalar.span;
  const auto line_end =
      static_cast<int>(scalar.text.substr(0, scalar.text.find('\n', static_cast<std::size_t>(at))).size());
  length = std::min(length, std::max(1, line_end - at));
  return state_->span_at(static_cast<std::size_t>(scalar.text.data() - first + at),
                         static_cast<std::size_t>(length));
}

}  // namespace sheafc
