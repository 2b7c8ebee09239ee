// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/thread.h"

#include "query/trade/thread_reader.h"

namespace sheaf {
namespace {

// "M8 1.25": without a mark only as a whole text, where no class, count or torque can be meant.
std::optional<Thread> spaced_metric(std::string_view text, Input input) {
  Reader reader(text);
  reader.skip_spaces();
  if (input == Input::sheet || !reader.take("m")) return std::nullopt;
  auto thread = read_metric(reader, input);
  if (!thread || thread->pitch || thread->length || !reader.at(" ")) return std::nullopt;
  reader.skip_spaces();
  auto pitch = reader.take_decimal(input);
  reader.skip_spaces();
  if (!pitch || !reader.done() || pitch->digits == 0) return std::nullopt;
  const double d = *diameter_mm(*thread);
  if (approximate(*pitch) > d / 4) return std::nullopt;  // coarse pitches are at most d/4
  Thread found = *thread;
  found.pitch = *pitch;
  return found;
}

double inches_of(std::string_view diameter) {
  if (diameter.starts_with('#')) {
    auto number = parse_number(diameter.substr(1), Input::sheet);
    return number ? 0.060 + 0.013 * approximate(*number) : 0;  // ASME B1.1
  }
  auto number = parse_number(diameter, Input::sheet);
  return number ? approximate(*number) : 0;
}

// "1 in" for an inch that is cut as finely as a size by number would be: 1-24 alone would be #1-24.
std::string unified_diameter(const Thread& thread) {
  const auto size = parse_number(thread.diameter, Input::sheet);
  return thread.diameter + (size && is_number_size(*size, thread) ? " in" : "");
}

// "1-8" alone is a thread; before more words it is as likely a range ("1-8 N·m").
bool could_be_a_range(const Thread& thread, std::string_view taken) {
  return thread.system == Thread::System::unified && thread.series.empty() &&
         thread.diameter.find_first_of("#/") == std::string::npos &&
         taken.find('"') == std::string_view::npos;
}

// "M8 LH bolt": the hand of the thread, or the left side? The words around it must tell.
bool ends_in_a_side(std::string_view taken) {
  const std::string end = lower_case(taken.substr(taken.size() < 3 ? 0 : taken.size() - 3));
  return end == " lh" || end == " rh";
}

}  // namespace

Result<Thread> parse_thread(std::string_view text, Input input) {
  auto thread = read_whole(text, "thread", [&](Reader& reader) { return read_thread(reader, input); });
  if (thread) return thread;
  if (auto spaced = spaced_metric(text, input)) return *spaced;
  return thread;
}

std::optional<Found<Thread>> thread_at(std::string_view text, Input input) {
  Reader reader(text);
  auto thread = read_thread(reader, input);
  if (!thread || !reader.at_word_end()) return std::nullopt;
  const std::string_view taken = text.substr(0, static_cast<std::size_t>(reader.source_offset()));
  if (could_be_a_range(*thread, taken)) return std::nullopt;
  Found<Thread> found{*thread, reader.source_offset()};
  if (ends_in_a_side(taken)) {
    found.value.left_hand = false;
    found.length -= 3;
  }
  return found;
}

std::string to_text(const Thread& thread) {
  std::string text;
  switch (thread.system) {
    case Thread::System::metric:
      text = "M" + thread.diameter;
      if (thread.pitch) text += "x" + plain(*thread.pitch);
      break;
    case Thread::System::unified:
      text = unified_diameter(thread);
      if (thread.per_inch) text += "-" + plain(*thread.per_inch);
      if (!thread.series.empty()) text += " " + thread.series;
      break;
    case Thread::System::pipe: {
      const bool before = thread.series == "G" || thread.series == "R";
      text = (before ? thread.series : "") + thread.diameter;
      if (thread.per_inch) text += "-" + plain(*thread.per_inch);
      if (!before) text += " " + thread.series;
      break;
    }
  }
  if (thread.length) text += "x" + plain(*thread.length);
  if (!thread.tolerance.empty()) text += "-" + thread.tolerance;
  if (thread.left_hand) text += " LH";
  return text;
}

std::string thread_key(const Thread& thread) {
  if (thread.system == Thread::System::metric) {
    return "m" + thread.diameter + (thread.pitch ? "x" + plain(*thread.pitch) : "");
  }
  if (thread.system == Thread::System::pipe) {
    const std::string series = lower_case(thread.series);
    return series.size() == 1 ? series + thread.diameter : thread.diameter + " " + series;
  }
  if (thread.per_inch) return thread.diameter + "-" + plain(*thread.per_inch);
  return thread.diameter + " " + lower_case(thread.series);
}

std::optional<double> diameter_mm(const Thread& thread) {
  switch (thread.system) {
    case Thread::System::metric: {
      auto number = parse_number(thread.diameter, Input::sheet);
      return number ? std::optional(approximate(*number)) : std::nullopt;
    }
    case Thread::System::unified:
      return inches_of(thread.diameter) * mm_per_inch;
    case Thread::System::pipe:
      return std::nullopt;
  }
  return std::nullopt;
}

std::optional<double> pitch_mm(const Thread& thread) {
  if (thread.pitch) return approximate(*thread.pitch);
  if (thread.per_inch) return mm_per_inch / approximate(*thread.per_inch);
  return std::nullopt;
}

}  // namespace sheaf
