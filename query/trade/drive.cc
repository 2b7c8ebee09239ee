// SPDX-License-Identifier: GPL-2.0-or-later
// A drive is read as a set of words: one that names the shape, one number, perhaps a unit, in any
// order. The longest phrase wins, so that "hex socket" is never the "socket" of a tool.
#include "query/trade/drive.h"

#include "query/trade/reader.h"

namespace sheaf {
namespace {

using Shape = Drive::Shape;

constexpr int highest_number = 100;  // far above any that is made

enum class Where { anywhere, prompt_only };
struct Phrase {
  std::string_view words;
  Shape shape;
  Where where = Where::anywhere;
};

// Longer phrases stand before those that they begin or end with.
constexpr Phrase phrases[] = {
    {"external six-lobe", Shape::six_lobe_external},
    {"external six lobe", Shape::six_lobe_external},
    {"external star", Shape::six_lobe_external},
    {"six-lobe", Shape::six_lobe},
    {"six lobe", Shape::six_lobe},
    {"star drive", Shape::six_lobe},
    {"star", Shape::six_lobe},
    {"twelve-point", Shape::twelve_point},
    {"twelve point", Shape::twelve_point},
    {"12-point", Shape::twelve_point},
    {"12 point", Shape::twelve_point},
    {"bi-hexagon", Shape::twelve_point},
    {"bi-hex", Shape::twelve_point},
    {"double hexagon", Shape::twelve_point},
    {"hexagon socket", Shape::hex_socket},
    {"hex socket", Shape::hex_socket},
    {"internal hexagon", Shape::hex_socket},
    {"internal hex", Shape::hex_socket},
    {"hexagon key", Shape::hex_socket},
    {"hex key", Shape::hex_socket},
    {"hex bit", Shape::hex_socket},
    {"socket head", Shape::hex_socket, Where::prompt_only},
    {"hexagon head", Shape::hexagon},
    {"hex head", Shape::hexagon},
    {"hexagon", Shape::hexagon},
    {"hex", Shape::hexagon},
    {"across flats", Shape::hexagon},
    {"a/f", Shape::hexagon},
    {"af", Shape::hexagon},
    {"sw", Shape::hexagon, Where::prompt_only},
    {"socket", Shape::hexagon, Where::prompt_only},
    {"spanner", Shape::hexagon, Where::prompt_only},
    {"wrench", Shape::hexagon, Where::prompt_only},
    {"nut", Shape::hexagon, Where::prompt_only},
    {"square drive", Shape::square},
    {"square", Shape::square},
    {"cross recess", Shape::cross},
    {"cross head", Shape::cross},
    {"crosshead", Shape::cross},
    {"cross", Shape::cross},
    {"slotted", Shape::slot},
    {"slot", Shape::slot},
    {"flat blade", Shape::slot, Where::prompt_only},
    {"peg spanner", Shape::peg},
    {"pin spanner", Shape::peg},
    {"pegs", Shape::peg},
    {"peg", Shape::peg},
    {"pins", Shape::peg},
    {"pin", Shape::peg},
    {"castellated", Shape::castellated},
    {"castle nut", Shape::castellated},
    {"hook spanner", Shape::castellated, Where::prompt_only},
    {"knurled", Shape::knurled},
    {"by hand", Shape::knurled, Where::prompt_only},
};

bool take_phrase(Reader& reader, std::optional<Shape>& shape, Input input) {
  for (const Phrase& phrase : phrases) {
    if (phrase.where == Where::prompt_only && input == Input::sheet) continue;
    const std::size_t start = reader.mark();
    if (!reader.take_word(phrase.words)) continue;
    const bool only_a_tool = phrase.where == Where::prompt_only && shape;  // "T30 socket"
    if (shape && *shape != phrase.shape && !only_a_tool) {
      reader.back_to(start);
      return false;
    }
    if (!only_a_tool) shape = phrase.shape;
    return true;
  }
  return false;
}

// "T30", "E12", "PH2", "PZ 2": a number that the shape's own series gives meaning.
bool take_code(Reader& reader, Drive& drive, std::optional<Shape>& shape) {
  struct Code {
    std::string_view letters;
    Shape shape;
    std::string_view unit;
  };
  constexpr Code codes[] = {{"ph", Shape::cross, "PH"},
                            {"pz", Shape::cross, "PZ"},
                            {"tx", Shape::six_lobe, ""},
                            {"t", Shape::six_lobe, ""},
                            {"e", Shape::six_lobe_external, ""}};
  for (const Code& code : codes) {
    const std::size_t start = reader.mark();
    if (reader.take(code.letters)) {
      reader.take(" ") || reader.take("-");
      const std::optional<int> number = reader.take_integer();
      if (number && *number <= highest_number && reader.at_word_end() && (!shape || *shape == code.shape) &&
          !drive.size) {
        shape = code.shape;
        drive.size = Number{*number, 0, 1};
        drive.unit = code.unit;
        return true;
      }
    }
    reader.back_to(start);
  }
  return false;
}

bool take_unit(Reader& reader, Drive& drive, Input input) {
  reader.skip_spaces();
  if (reader.take_word("mm") || (input == Input::prompt && reader.take_word("mil"))) {
    drive.unit = "mm";
  } else if (reader.take("\"") || reader.take_word("inch") || reader.take_word("in.") ||
             reader.take_word("in")) {
    drive.unit = "in";
  } else if (reader.take_word("slots") || reader.take_word("slot") || reader.take_word("notches")) {
    drive.unit = "slots";
  } else {
    return false;
  }
  return true;
}

Result<bool> take_size(Reader& reader, Drive& drive, Input input) {
  if (drive.size || !reader.at_digit()) return false;
  auto size = reader.take_mixed(input);
  if (!size) return size.failure();
  if (size->digits == 0) return reader.failure("a drive's size is more than 0");
  drive.size = *size;
  take_unit(reader, drive, input);
  return true;
}

bool sized_across(Shape shape) {
  return shape == Shape::hexagon || shape == Shape::hex_socket || shape == Shape::square ||
         shape == Shape::twelve_point || shape == Shape::peg;
}

// Cross recesses and six-lobe drives are numbered (ISO 4757, ISO 10664), unless a six-lobe drive is measured.
bool is_numbered(const Drive& drive) {
  const bool has_no_unit = drive.unit.empty();
  return drive.shape == Shape::cross ||
         (has_no_unit && (drive.shape == Shape::six_lobe || drive.shape == Shape::six_lobe_external));
}

bool is_drive_number(const Number& size) {
  return size.places == 0 && size.denominator == 1 && size.digits <= highest_number;
}

// What the words left open: mm at a prompt, inches for fractions; and what they must not leave open.
Result<Drive> settle(Drive drive, std::optional<Shape> shape, const Reader& reader, Input input) {
  const bool measured = drive.unit == "mm" || drive.unit == "in";
  if (!shape && input == Input::prompt && measured) shape = Shape::hexagon;
  if (!shape)
    return reader.failure("what does the tool grip? hexagon 17 mm, hex socket 6 mm, T30 and PH2 are drives");
  drive.shape = *shape;
  if (drive.unit == "slots" && *shape != Shape::castellated)
    return reader.failure("only a castellated nut counts slots");
  if (drive.size && is_numbered(drive) &&
      (measured || drive.unit == "slots" || !is_drive_number(*drive.size)))
    return reader.failure("such a drive has a number from 1 to 100: PH2, T30");
  if (!drive.size || !drive.unit.empty()) return drive;
  if (*shape == Shape::castellated) drive.unit = "slots";
  if (*shape == Shape::cross) drive.unit = "PH";
  if (sized_across(*shape)) {
    if (input == Input::sheet) return reader.failure("the size has no unit: mm or in");
    drive.unit = drive.size->denominator > 1 ? "in" : "mm";
  }
  return drive;
}

Result<Drive> read_drive(Reader& reader, Input input) {
  Drive drive;
  std::optional<Shape> shape;
  while (!reader.done()) {
    reader.skip_spaces();
    if (reader.done()) break;
    const bool named = take_phrase(reader, shape, input) || take_code(reader, drive, shape);
    if (!named) {
      auto sized = take_size(reader, drive, input);
      if (!sized) return sized.failure();
      if (!*sized) return reader.failure("this is not part of a drive");
    }
    reader.take(",");
  }
  return settle(std::move(drive), shape, reader, input);
}

std::string size_text(const Drive& drive) {
  return plain(*drive.size, drive.unit == "in" ? Fractions::kept : Fractions::as_decimal);
}

}  // namespace

Result<Drive> parse_drive(std::string_view text, Input input) {
  return read_whole(text, "drive", [&](Reader& reader) { return read_drive(reader, input); });
}

std::string_view name_of(Drive::Shape shape) {
  switch (shape) {
    case Shape::hexagon:
      return "hexagon";
    case Shape::hex_socket:
      return "hex socket";
    case Shape::six_lobe:
      return "six-lobe";
    case Shape::six_lobe_external:
      return "external six-lobe";
    case Shape::square:
      return "square";
    case Shape::cross:
      return "cross";
    case Shape::slot:
      return "slot";
    case Shape::peg:
      return "peg";
    case Shape::twelve_point:
      return "twelve-point";
    case Shape::castellated:
      return "castellated";
    case Shape::knurled:
      return "knurled";
  }
  return "";
}

std::string to_text(const Drive& drive) {
  const std::string shape(name_of(drive.shape));
  if (!drive.size) return shape;
  const std::string size = size_text(drive);
  if (drive.shape == Shape::six_lobe && drive.unit.empty()) return "T" + size;
  if (drive.shape == Shape::six_lobe_external && drive.unit.empty()) return "E" + size;
  if (drive.shape == Shape::cross) return shape + " " + drive.unit + size;
  return shape + " " + size + (drive.unit.empty() ? "" : " " + drive.unit);
}

std::string drive_key(const Drive& drive) {
  std::string shape(name_of(drive.shape));
  for (char& letter : shape) {
    if (letter == ' ') letter = '-';
  }
  if (!drive.size) return shape;
  const std::string size = size_text(drive);
  if (drive.shape == Shape::six_lobe && drive.unit.empty()) return "t" + size;
  if (drive.shape == Shape::six_lobe_external && drive.unit.empty()) return "e" + size;
  if (drive.shape == Shape::cross) return lower_case(drive.unit) + size;
  return shape + "-" + size + (drive.unit == "in" ? "in" : "");
}

std::optional<double> across_flats_mm(const Drive& drive) {
  if (!drive.size || !sized_across(drive.shape) || drive.shape == Shape::peg) return std::nullopt;
  const double size = approximate(*drive.size);
  return drive.unit == "in" ? size * mm_per_inch : size;
}

}  // namespace sheaf
