// SPDX-License-Identifier: GPL-2.0-or-later
// Everything that carries its own meaning in digits and signs: threads, drives, sizes, bearings, codes
// and what bottles say. The longest reading at a place wins; where two are possible, the one that the
// trade means more often comes first.
#include "query/library/fold.h"
#include "query/search/draft.h"
#include "query/search/reach.h"

namespace sheaf {
namespace {

constexpr std::size_t most_tokens_of_a_drive = 4;  // "12 mm hex key"
constexpr std::size_t most_tokens_of_a_code = 3;   // "SAE 10W 40"
constexpr std::size_t longest_code_word = 4;       // letters before the digits: "dot", "sae", "nlgi"

// Codes of several words are letters and numbers by turns: "dot 5.1", never "M8 flange".
bool may_be_code(const Draft& draft, std::size_t i, std::size_t count) {
  constexpr std::string_view bounds[] = {"over", "under", "min", "max",
                                         "about"};  // "over 20" of so many pitches is no grade
  if (count > 1 && draft.has_any(i, bounds)) return false;
  for (std::size_t at = i; at < i + count; ++at) {
    const Token& token = draft.token(at);
    if (token.typed.find('/') != std::string::npos && !readings(token.typed).empty())
      return false;  // "mm2/s"
    if (count > 1 && size_at(token.typed, Input::prompt))
      return false;  // "seal 28x40x7" is no row of a table
    const bool is_short_word = !token.has_digit && token.typed.size() <= longest_code_word;
    if (!token.has_digit && (!is_short_word || at + 1 == i + count)) return false;
  }
  return true;
}

// "ring gap 0.3", "fork spring 4.6": friction factors and classes of screws are codes too, where they are
// meant.
bool is_figure_alone(const Draft& draft, std::size_t i, std::size_t count) {
  if (count != 1 || !is_number(draft.token(i))) return false;
  const bool says_friction = draft.says_any({"friction", "factor", "class", "coefficient"});
  if (draft.token(i).typed.starts_with("0")) return !says_friction;
  return draft.says_any({"spring", "springs", "rate"});
}

// "base valve o ring 450 2018", "snap ring 380": of a machine, and no O-ring of that number.
bool is_ring_of_model(Draft& draft, std::size_t first, std::size_t last) {
  if (!is_model(draft, last)) return false;
  if (last + 1 < draft.size() && year_in(draft.token(last + 1).typed)) return true;
  const bool says_o = draft.has_any(first, {"o", "oring", "orings"}) ||
                      (first > 0 && draft.has_any(first - 1, {"o", "oring", "dash", "code"}));
  return draft.has_any(first, {"ring", "rings"}) && !says_o;
}

// "dot 5.1", "10w40", "10.9": letters and digits that stand as a code on some sheet.
bool read_code(Draft& draft, std::size_t i) {
  for (std::size_t count = most_tokens_of_a_code; count > 0; --count) {
    if (!draft.is_free(i, count) || !may_be_code(draft, i, count)) continue;
    const std::string code = squeeze(draft.question.typed(i, count));
    const bool is_bare = is_digits(code);
    if (is_bare || is_figure_alone(draft, i, count) || !draft.lexicon.has_term(Prefix::code, code) ||
        is_ring_of_model(draft, i, i + count - 1))
      continue;
    draft.reading.codes.push_back(code);
    draft.take(i, count);
    return true;
  }
  return false;
}

bool is_weight(std::string_view unit) { return unit == "w" || unit == "wt" || unit == "weight"; }

// "grade 8 bolt": of an inch bolt.
bool read_inch_grade(Draft& draft, std::size_t i) {
  if (!draft.has_word(i, "grade") || !draft.is_free(i, 2) || !is_number(draft.token(i + 1))) return false;
  std::string code = "sae" + squeeze(draft.token(i + 1).typed);
  if (!draft.lexicon.has_term(Prefix::code, code)) return false;
  draft.reading.codes.push_back(std::move(code));
  draft.take(i, 2);
  return true;
}

// "75W gear oil", "gear oil 140": of gears, whose grades are one scale; a fork's are none.
bool is_grade_of_gears(Draft& draft, const std::string& typed) {
  const auto says_gears = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) {
      return word.starts_with("gear") || word == "transmission";
    });
  };
  return std::ranges::any_of(draft.question.tokens, says_gears) && draft.says_any({"oil"}) &&
         draft.lexicon.has_term(Prefix::code, "sae" + squeeze(typed));
}

// "10W", "5wt", "15 wt", "10W30" where no sheet has that grade: what is printed on a bottle.
bool read_label(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  const std::size_t digits = typed.find_first_not_of("0123456789.,");
  if (digits == 0) return false;
  const bool has_unit =
      i + 1 < draft.size() && !readings(draft.token(i + 1).typed).empty();  // "gear oil 90 ml"
  if (digits == std::string::npos && !has_unit && i > 0 && draft.has_word(i - 1, "oil") &&
      is_grade_of_gears(draft, typed)) {
    draft.reading.codes.push_back("sae" + squeeze(typed));
    draft.take(i, 1);
    return true;
  }
  const std::string unit = digits == std::string::npos ? std::string() : squeeze(typed.substr(digits));
  const bool is_grade =
      unit.size() > 1 && unit[0] == 'w' && unit.find_first_not_of("0123456789", 1) == std::string::npos;
  const bool is_parted = digits == std::string::npos && draft.is_free(i, 2) &&
                         draft.token(i + 1).words.size() == 1 && is_weight(draft.token(i + 1).words.front());
  const bool compares = !draft.reading.labels.empty();  // "10w same as 10w30"
  if (!is_parted && is_weight(unit) && is_grade_of_gears(draft, typed)) {
    draft.reading.codes.push_back("sae" + squeeze(typed));
    draft.take(i, 1);
    return true;
  }
  const bool is_listed_grade = is_grade && !compares && draft.lexicon.has_term(Prefix::code, squeeze(typed));
  if (is_listed_grade) return read_code(draft, i);  // before it is read as so many watts
  if (!is_grade && !is_weight(unit) && !is_parted) return false;
  const std::size_t count = is_parted ? 2 : 1;
  draft.reading.labels.push_back(draft.question.typed(i, count));
  if (draft.reading.labels.size() == 1) draft.reading.figures.emplace_back("viscosity");
  draft.take(i, count);
  return true;
}

template <typename Value>
bool take_found(Draft& draft, std::size_t i, std::optional<Found<Value>> found, std::vector<Value>& into) {
  if (!found) return false;
  const std::size_t count = draft.question.tokens_within(i, static_cast<std::size_t>(found->length));
  if (!draft.is_free(i, count)) return false;
  into.push_back(std::move(found->value));
  draft.take(i, count);
  return true;
}

bool read_thread(Draft& draft, std::size_t i) {
  return take_found(draft, i, thread_at(draft.question.from(i), Input::prompt), draft.reading.threads);
}

bool is_too_large_for_inches(const Size& size) {
  constexpr double largest = 15;
  return size.unit == "in" && std::ranges::any_of(size.value, [](const Number& each) {
           return each.digits > 0 && approximate(each) > largest;
         });
}

// "26/40/6", "32-42-7", "26,37,7"
bool read_slashed_size(Draft& draft, std::size_t i) {
  std::string typed = draft.token(i).typed;
  const char sign = typed.find('/') != std::string::npos   ? '/'
                    : typed.find('-') != std::string::npos ? '-'
                                                           : ',';
  if (std::ranges::count(typed, sign) != 2 ||
      typed.find_first_not_of(std::string("0123456789.,") + sign) != std::string::npos)
    return false;
  if (is_listed_number(draft.lexicon, squeeze(typed))) return false;
  std::ranges::replace(typed, sign, 'x');
  auto size = parse_size(typed, Input::prompt);
  if (!size || size->count != 3 || dimension_mm(*size, 0) >= dimension_mm(*size, 1) ||
      dimension_mm(*size, 2) >= dimension_mm(*size, 1))
    return false;
  draft.reading.sizes.push_back(*std::move(size));
  draft.take(i, 1);
  return true;
}

// "stem nut 98 380", "380 98 drain plug": two numbers of which one is a machine's, and no size: so large is
// none, and what is tightened has none.
bool is_figure_beside_model(Draft& draft, std::size_t i, std::size_t length) {
  constexpr double largest = 200;  // mm, of any seal or bearing here
  if (draft.question.tokens_within(i, length) != 2 || i + 1 >= draft.size()) return false;
  if (!is_number(draft.token(i)) || !is_number(draft.token(i + 1))) return false;
  const auto is_machine = [&](std::size_t at) {
    const auto number = parse_number(draft.token(at).typed, Input::prompt);
    return is_model(draft, at) && number && (approximate(*number) > largest || names_fastener(draft));
  };
  return is_machine(i) != is_machine(i + 1);
}

bool read_size(Draft& draft, std::size_t i) {
  const std::string_view text = draft.question.from(i);
  auto found = size_at(text, Input::prompt);
  constexpr int of_ring = 3;
  if (found && found->value.count > of_ring && is_number(draft.token(i)) &&
      !draft.lexicon.machines_with(draft.token(i).words.front()).empty())
    return true;  // "380 30 40 7"
  if (found && is_figure_beside_model(draft, i, static_cast<std::size_t>(found->length))) return true;
  if (found && is_too_large_for_inches(found->value))
    found = size_at(text.substr(0, text.find(" in")), Input::prompt);  // "41x54x11 in the fork"
  return take_found(draft, i, std::move(found), draft.reading.sizes);
}

// Digits alone may be a model, a year or a size: they wait until the machines have been read.
std::optional<Found<Bearing>> find_bearing(const Draft& draft, std::size_t i) {
  const bool has_suffix = draft.has_word(i + 1, "2rs") || draft.has_word(i + 1, "zz");
  const Token& token = draft.token(i);
  if (is_number(token) && !has_suffix) return std::nullopt;
  if (token.typed.ends_with('s')) {  // "two 6905s"
    const std::string one = token.typed.substr(0, token.typed.size() - 1);
    auto found = draft.lexicon.has_term(Prefix::bearing, one) ? bearing_at(one, Input::prompt) : std::nullopt;
    if (found) return Found<Bearing>{std::move(found->value), found->length + 1};
  }
  return bearing_at(draft.question.from(i), Input::prompt);
}

bool read_bearing(Draft& draft, std::size_t i) {
  return take_found(draft, i, find_bearing(draft, i), draft.reading.bearings);
}

// A supplier's number may be the designation itself; then every entry with such a bearing is meant.
bool read_listed_bearing(Draft& draft, std::size_t i) {
  auto found = find_bearing(draft, i);
  if (!found || !draft.lexicon.has_term(Prefix::bearing, fold(found->value.basic))) return false;
  return take_found(draft, i, std::move(found), draft.reading.bearings);
}

// Only a number and a unit of length, though a tool could have that width.
bool is_length_alone(const std::string& typed) {
  const auto figure = parse_readings(typed, Dimension::length);
  return figure && figure->front().conditions.empty();
}

// "10 mm hex" may be the head's or the key's; either is asked for.
bool names_hex_alone(const Draft& draft, std::size_t i, std::size_t count) {
  const auto is_hex = [&](std::size_t at) { return draft.has_word(at, "hex"); };
  const auto says_more = [&](std::size_t at) {
    return !draft.token(at).has_digit && !is_hex(at) && !draft.has_word(at, "mm");
  };
  bool found = false;
  for (std::size_t at = i; at < i + count; ++at) {
    if (says_more(at)) return false;
    found = found || is_hex(at);
  }
  return found;
}

// "-214 o-ring", "dash 214": three digits that a table of rings in inches has as a code.
bool read_dash_code(Draft& draft, std::size_t i) {
  const std::string code = squeeze(draft.token(i).typed);
  const bool says_dash = draft.token(i).typed.starts_with('-') || (i > 0 && draft.has_word(i - 1, "dash"));
  if (!says_dash || code.size() != 3 || !is_digits(code) || !draft.lexicon.has_term(Prefix::code, code))
    return false;
  draft.reading.codes.push_back(code);
  draft.take(i, 1);
  if (i > 0 && draft.has_word(i - 1, "dash")) draft.take(i - 1, 1);
  return true;
}

// "5 nut rear sprocket": how many there are; no nut of a machine's is so narrow.
bool read_count_of_nuts(Draft& draft, std::size_t i) {
  const bool is_small =
      is_number(draft.token(i)) && draft.token(i).typed.size() == 1 && draft.token(i).typed[0] < '7';
  if (!is_small || !(draft.has_word(i + 1, "nut") || draft.has_word(i + 1, "nuts"))) return false;
  draft.reading.left_out.push_back(draft.token(i).typed);
  draft.take(i, 1);
  return true;
}

// "46mm socket", "T30", "17 mil nut"
bool read_drive(Draft& draft, std::size_t i) {
  constexpr double widest = 100;  // mm; "pinch bolt 700 hex key" names the machine
  for (std::size_t count = most_tokens_of_a_drive; count > 0; --count) {
    if (!draft.is_free(i, count)) continue;
    const std::string typed = draft.question.typed(i, count);
    auto drive = parse_drive(typed, Input::prompt);
    if (!drive || !drive->size || is_length_alone(typed) || across_flats_mm(*drive).value_or(0) > widest)
      continue;
    if (names_hex_alone(draft, i, count)) {
      Drive socket = *drive;
      socket.shape = Drive::Shape::hex_socket;
      draft.reading.drives.push_back(std::move(socket));
    }
    draft.reading.drives.insert(draft.reading.drives.begin(), *std::move(drive));
    draft.take(i, count);
    return true;
  }
  return false;
}

// "ø43"
bool read_diameter_sign(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  if (!typed.starts_with("ø") && !typed.starts_with("Ø") && !typed.starts_with("⌀")) return false;
  const auto size = parse_size(typed, Input::prompt);
  if (!size) return false;
  draft.reading.lengths.push_back(length_of(typed, size->value[0], LengthOf::dimension));
  draft.take(i, 1);
  return true;
}

constexpr std::size_t most_tokens_of_a_number = 3;
constexpr std::size_t shortest_part_number = 6;  // letters and digits: below, a designation is likelier

// "41-2237-A", which could be read as a current of 41 to 2237 A as well; "SV46 2237" in several words.
bool read_listed_number(Draft& draft, std::size_t i, std::size_t shortest = shortest_part_number) {
  for (std::size_t count = most_tokens_of_a_number; count > 0; --count) {
    if (!draft.is_free(i, count) || (count == 1 && is_number(draft.token(i)))) continue;
    const std::string squeezed = squeeze(draft.question.typed(i, count));
    if (squeezed.size() < shortest || !is_listed_number(draft.lexicon, squeezed)) continue;
    draft.reading.numbers.push_back(squeezed);
    draft.take(i, count);
    return true;
  }
  return false;
}

}  // namespace

// "160/60-17", "100/90 B 18": no thread of 160/60 inches, and no bearing.
bool is_tyre_size(std::string_view typed) {
  const std::size_t slash = typed.find('/');
  if (slash < 2 || slash > 3 || slash == std::string_view::npos) return false;
  if (slash != typed.rfind('/') && slash == 2) return false;  // "26/40/6" is a seal, "120/70/17" none
  const auto all_digits = [](std::string_view text) { return !text.empty() && is_digits(text); };
  const std::string_view behind = typed.substr(slash + 1);
  return all_digits(typed.substr(0, slash)) &&
         all_digits(behind.substr(0, std::min(behind.find_first_not_of("0123456789"), behind.size()))) &&
         behind.size() >= 2 && (behind[0] >= '3' || behind.find('-') == 3);
}

// "64M", "69w", behind a tyre's size: what it may carry, and how fast.
static bool is_load_index(std::string_view typed) {
  return typed.size() == 3 && typed.find_first_not_of("0123456789") == 2 &&
         std::isalpha(static_cast<unsigned char>(typed[2]));
}

bool is_listed_number(Lexicon& lexicon, const std::string& squeezed) {
  return lexicon.has_term(Prefix::part_number, squeezed) || lexicon.has_term(Prefix::other_number, squeezed);
}

// "HK 40732 20", "TP 260": letters, and digits behind them.
static bool begins_listed_number(Draft& draft, std::size_t i) {
  constexpr std::size_t shortest = 4;
  const bool digits_follow = draft.is_free(i, 2) && draft.token(i + 1).has_digit;
  return digits_follow && draft.token(i).typed.size() <= longest_code_word &&
         read_listed_number(draft, i, shortest);
}

// "top plug muleback 2014 nm": a year, and the unit in which the answer is wanted.
static bool is_year_beside_unit(const Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  return year_in(typed) && typed.size() == 4 && draft.is_free(i, 2) &&
         !readings(draft.token(i + 1).typed).empty();
}

// "rear axle 450 nm", "rad cap 450 psi", "friction plates 380 min", "380 second stage": no bolt of a machine
// that is looked after by hand is so tight, no cap so strong; common practice, no source.
static bool is_beyond_all(double number, const Unit& unit) {
  constexpr double tightest = 300, strongest = 300, widest = 300, most_turns = 100,
                   most_litres = 100;  // N·m, psi, thousandths of an inch
  if (unit.dimension == Dimension::torque) return number * base_per_unit(unit) >= tightest;
  if (unit.symbol == "thou") return number >= widest;
  if (unit.symbol == "turn") return number >= most_turns;
  if (unit.symbol == "L") return number >= most_litres;
  return unit.symbol == "min" || unit.symbol == "s" || (unit.symbol == "psi" && number >= strongest);
}

// "on the 700 ft lb", "muleback 380 spanner", "rear axle 450 nm": a number that is a machine's, and no
// figure.
static bool is_model_beside_unit(const Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  if (words.size() != 1 || words.front().size() < 3 || !is_number(draft.token(i))) return false;
  if (draft.has_word(i + 1, "bar") && i + 2 < draft.size())
    return !draft.lexicon.machines_with(words.front()).empty();  // "380 bar clamps"
  if (i + 1 < draft.size() && !draft.lexicon.machines_with(words.front()).empty()) {
    const auto units = readings(draft.token(i + 1).typed);
    const auto number = parse_number(words.front(), Input::prompt);
    const bool is_of_gas = draft.says_any({"nitrogen", "gas"});  // under far more pressure
    if (!units.empty() && number && !is_of_gas && is_beyond_all(approximate(*number), *units.front()))
      return true;
  }
  if (i == 0) return false;
  if (draft.token(i - 1).words.size() != 1) return false;
  const std::string& before = draft.token(i - 1).words.front();
  const auto machines = draft.lexicon.machines_with(words.front());
  if (machines.empty()) return false;
  constexpr std::string_view articles[] = {"the", "my", "his", "a", "der", "die", "la", "le", "el", "il"};
  if (std::ranges::find(articles, before) != std::end(articles)) return true;
  const auto is_named = [&](const Machine& machine) {
    return std::ranges::any_of(machines, [&](const Machine& other) {
      return other.make == machine.make && other.model == machine.model;
    });
  };
  return std::ranges::any_of(draft.lexicon.machines_beginning(before), is_named);
}

// "1st" is no stone.
static bool is_ordinal(const Token& token) {
  return token.has_digit && token.words.size() == 1 && !whole_of(token.words.front()).empty();
}

// "twelve-point", "12 point": the shape of a head whose size nobody said.
static std::size_t length_of_shape(const Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  if (words == std::vector<std::string>{"12", "point"}) return 1;
  return words == std::vector<std::string>{"12"} && draft.is_free(i, 2) && draft.has_word(i + 1, "point") ? 2
                                                                                                          : 0;
}

// "50T", "50 tooth": so many teeth, which the sprocket's own description has.
static bool read_teeth(Draft& draft, std::size_t i) {
  constexpr std::size_t least_digits = 2, most_digits = 3;
  constexpr std::string_view digits = "0123456789";
  const std::string& typed = draft.token(i).typed;
  const std::size_t end = std::min(typed.find_first_not_of(digits), typed.size());
  const std::string number = typed.substr(0, end), behind = fold(typed.substr(end));
  const bool says_teeth = draft.has_word(i + 1, "tooth") || draft.has_word(i + 1, "teeth");
  const bool is_such =
      behind == "t" || behind == "tooth" || behind == "teeth" || (behind.empty() && says_teeth);
  if (!is_such || end < least_digits || end > most_digits || is_listed_number(draft.lexicon, squeeze(typed)))
    return false;
  if (names_fastener(draft))
    draft.reading.left_out.push_back(typed);  // what holds it says nothing of its teeth
  else
    draft.reading.lengths.push_back(
        length_of(number + "T", *parse_number(number, Input::prompt), LengthOf::anything));
  draft.take(i, behind.empty() ? 2 : 1);
  return true;
}

void read_designations(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i] || is_ordinal(draft.token(i))) continue;
    if (const std::size_t count = length_of_shape(draft, i)) {
      draft.take(i, count);
      continue;
    }
    if (is_tyre_size(draft.token(i).typed)) {
      if (i + 1 < draft.size() && is_load_index(draft.token(i + 1).typed)) draft.take(i + 1, 1);
      continue;
    }
    if (read_dash_code(draft, i) || read_stages(draft, i) || read_slashed_size(draft, i) ||
        read_count_of_nuts(draft, i) || read_teeth(draft, i) || read_inch_grade(draft, i))
      continue;
    if (!begins_quantity(draft, i)) {
      begins_listed_number(draft, i) || read_code(draft, i);
      continue;
    }
    read_listed_bearing(draft, i) || read_listed_number(draft, i) || is_year_beside_unit(draft, i) ||
        is_model_beside_unit(draft, i) || read_label(draft, i) || read_diameter_sign(draft, i) ||
        read_figure(draft, i) || read_thread(draft, i) || read_size(draft, i) || read_bearing(draft, i) ||
        read_drive(draft, i) || read_length(draft, i) || read_code(draft, i);
  }
}

}  // namespace sheaf
