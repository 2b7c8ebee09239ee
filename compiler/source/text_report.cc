// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <iterator>

#include "compiler/source/report.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

constexpr std::string_view plain = "\x1b[0m", bold = "\x1b[1m", green = "\x1b[1;32m";

std::string_view tone(Severity severity) {
  return severity == Severity::error     ? "\x1b[1;31m"
         : severity == Severity::warning ? "\x1b[1;35m"
                                         : "\x1b[1;36m";
}

// --- the source line and its caret -------------------------------------------------------------------

// A character of the source line as it is shown, and where in the line it stands.
struct Cell {
  std::size_t at;  // byte
  std::string shown;
  int width;
};

std::vector<Cell> cells_of(std::string_view line) {
  std::vector<Cell> cells;
  for (std::size_t at = 0; at < line.size();) {
    const sheaf::Character c = sheaf::character_at(line, at);
    std::string shown = sheaf::printable(line.substr(at, c.length));
    const int width = shown == "\xEF\xBF\xBD" ? 1 : sheaf::display_width(c.code);
    cells.push_back({at, std::move(shown), width});
    at += c.length;
  }
  return cells;
}

// The line, or the part of it that fits, and the marks below the bytes that are meant.
class Excerpt {
 public:
  Excerpt(std::string_view line, const Span& where, int room)
      : cells_(cells_of(line)), room_(std::max(room, 20)) {
    const auto start = static_cast<std::size_t>(std::max(where.column - 1, 0));
    const std::size_t end = start + static_cast<std::size_t>(std::max(where.length, 1));
    first_ = index_of(start);
    last_ = std::max(index_of(end), std::min(first_ + 1, cells_.size()));
    choose_window();
  }

  std::string source() const {
    std::string out = from_ > 0 ? "…" : "";
    for (std::size_t i = from_; i < to_; ++i) out += cells_[i].shown;
    return out + (to_ < cells_.size() ? "…" : "");
  }

  std::string marks() const {
    const int before = width(from_, first_) + (from_ > 0 ? 1 : 0);
    const int under = std::max(width(first_, std::min(last_, to_)), 1);
    return std::string(static_cast<std::size_t>(before), ' ') + "^" +
           std::string(static_cast<std::size_t>(under - 1), '~');
  }

 private:
  std::size_t index_of(std::size_t byte) const {
    const auto found = std::lower_bound(cells_.begin(), cells_.end(), byte,
                                        [](const Cell& c, std::size_t b) { return c.at < b; });
    return static_cast<std::size_t>(found - cells_.begin());
  }

  int width(std::size_t from, std::size_t to) const {
    int sum = 0;
    for (std::size_t i = from; i < to; ++i) sum += cells_[i].width;
    return sum;
  }

  // A third of the room goes before the caret; what is cut off is marked by an ellipsis.
  void choose_window() {
    from_ = 0;
    to_ = cells_.size();
    if (width(0, to_) <= room_) return;
    from_ = first_;
    for (int used = 0; from_ > 0 && (used += cells_[from_ - 1].width) <= room_ / 3;) --from_;
    to_ = from_;
    for (int used = 2; to_ < cells_.size() && (used += cells_[to_].width) <= room_;) ++to_;
  }

  std::vector<Cell> cells_;
  int room_;
  std::size_t first_ = 0, last_ = 0;  // cells that are meant: [first_, last_)
  std::size_t from_ = 0, to_ = 0;     // cells that are shown: [from_, to_)
};

// --- choosing what is shown ---------------------------------------------------------------------------

struct Choice {
  std::vector<const Diagnostic*> shown;  // in their order
  bool with_notes = true;
  int hidden_errors = 0, hidden_warnings = 0, hidden_notes = 0;
};

int notes_under(const std::vector<Diagnostic>& all) {
  int count = 0;
  for (const Diagnostic& d : all) count += static_cast<int>(d.notes.size());
  return count;
}

Choice choose(const std::vector<Diagnostic>& all, int most) {
  Choice choice;
  const int notes = notes_under(all);
  choice.with_notes = most <= 0 || static_cast<int>(all.size()) + notes <= most;
  if (!choice.with_notes) choice.hidden_notes = notes;
  int room = most <= 0 ? static_cast<int>(all.size()) : most;
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    int& hidden = severity == Severity::error     ? choice.hidden_errors
                  : severity == Severity::warning ? choice.hidden_warnings
                                                  : choice.hidden_notes;
    for (const Diagnostic& d : all) {
      if (d.severity != severity) continue;
      if (room-- > 0) {
        choice.shown.push_back(&d);
      } else {
        ++hidden;
      }
    }
  }
  std::sort(choice.shown.begin(), choice.shown.end());  // back to the order of `all`, which is contiguous
  return choice;
}

std::string counted(int errors, int warnings, int notes) {
  std::string words;
  const auto add = [&](int count, std::string_view name) {
    if (count == 0) return;
    if (!words.empty()) words += ", ";
    words += std::to_string(count) + " " + std::string(name) + (count == 1 ? "" : "s");
  };
  add(errors, "error");
  add(warnings, "warning");
  add(notes, "note");
  return words;
}

// --- writing ------------------------------------------------------------------------------------------

class TextWriter {
 public:
  TextWriter(const LineSource& line_of, const TextStyle& style) : line_of_(line_of), style_(style) {}

  void write(const Diagnostic& d, bool as_note = false) {
    const Span& w = d.where;
    out_ += in(bold, sheaf::printable(w.file) + ":" + std::to_string(w.line) + ":" +
                         std::to_string(w.column) + ":") +
            " ";
    out_ += in(tone(d.severity), std::string(name_of(d.severity)) + ":") + " " +
            in(bold, sheaf::printable(d.message));
    if (!as_note) out_ += " [" + std::string(d.rule) + "]";
    out_ += "\n";
    write_excerpt(d);
  }

  void write_hidden(const Choice& choice) {
    const std::string hidden = counted(choice.hidden_errors, choice.hidden_warnings, choice.hidden_notes);
    if (!hidden.empty()) out_ += "not shown: " + hidden + "\n";
  }

  std::string take() { return std::move(out_); }

 private:
  void write_excerpt(const Diagnostic& d) {
    const std::string_view line = line_of_ ? line_of_(d.where.file, d.where.line) : std::string_view();
    if (line.empty()) return;
    std::string number = std::to_string(d.where.line);
    if (number.size() < 5) number.insert(0, 5 - number.size(), ' ');
    const Excerpt excerpt(line, d.where, style_.width - static_cast<int>(number.size()) - 3);
    out_ += number + " | " + excerpt.source() + "\n";
    out_ += std::string(number.size(), ' ') + " | " + in(green, excerpt.marks()) + "\n";
  }

  std::string in(std::string_view colour, std::string text) const {
    return style_.colour ? std::string(colour) + text + std::string(plain) : text;
  }

  const LineSource& line_of_;
  TextStyle style_;
  std::string out_;
};

}  // namespace

std::string text_report(const Diagnostics& sorted, const LineSource& line_of, const TextStyle& style) {
  const Choice choice = choose(sorted.all(), style.most);
  TextWriter writer(line_of, style);
  for (const Diagnostic* d : choice.shown) {
    writer.write(*d);
    if (!choice.with_notes) continue;
    for (const Diagnostic& note : d->notes) writer.write(note, true);
  }
  writer.write_hidden(choice);
  return writer.take();
}

std::string fault_counts(const Diagnostics& diagnostics) {
  const int notes =
      static_cast<int>(diagnostics.all().size()) - diagnostics.errors() - diagnostics.warnings();
  const std::string words = counted(diagnostics.errors(), diagnostics.warnings(), notes);
  return words.empty() ? "no faults" : words;
}

}  // namespace sheafc
