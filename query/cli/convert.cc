// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf convert QUANTITY [to UNIT]

#include "query/answer/answer_json.h"
#include "query/answer/conversion.h"
#include "query/answer/text.h"
#include "query/cli/command.h"

namespace sheaf {
namespace {

class Convert : public Command {
 public:
  void declare(Flags& flags) override {
    flags.text("--step", step_, "NUMBER", "Also say what to set on a scale with marks this far apart");
    flags.text("--every", every_, "NUMBER", "Make a table of a range, a row every so much");
    flags.flag("--csv", csv_, "Answer with comma-separated values");
    declare_output(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (words.empty()) {
      say_error("no quantity is given", "as in sheaf convert 35 N·m to lbf·ft; see sheaf convert --help");
      return ExitStatus::trouble;
    }
    if (!read_number(step_, "--step", step_number_) || !read_number(every_, "--every", every_number_))
      return ExitStatus::trouble;
    if (words.front() == "-") return convert_input({words.begin() + 1, words.end()});
    const std::string typed = joined(words, " ");
    return every_number_ ? print_table(typed) : print_one(typed);
  }

 private:
  static bool read_number(const std::string& typed, const char* flag, std::optional<Number>& number) {
    if (typed.empty()) return true;
    auto read = parse_number(typed, Input::prompt);
    if (!read || compare(*read, Number{0, 0, 1}) <= 0) {
      say_error(std::string(flag) + " wants a number above 0, not '" + typed + "'");
      return false;
    }
    number = *read;
    return true;
  }

  ExitStatus print_one(const std::string& typed) {
    const auto conversion = convert_line(typed, step_number_);
    if (conversion.failure) {
      say_error("'" + typed + "': " + conversion.failure->message);
      return ExitStatus::trouble;
    }
    if (common_.json) return print_json({conversion});
    if (csv_) {
      print(csv_heading() + csv_rows(conversion));
      return ExitStatus::done;
    }
    Page page(output_style(common_.colour));
    write_text(page, conversion);
    print(page.take());
    return ExitStatus::done;
  }

  ExitStatus print_table(const std::string& typed) {
    auto table = answer_table(typed, *every_number_);
    if (!table) {
      say_error("'" + typed + "': " + table.failure().message);
      return ExitStatus::trouble;
    }
    if (csv_) {
      print(csv_rows(*table));
    } else if (common_.json) {
      JsonWriter json;
      json.begin_object();
      json.key("schema").number(json_schema);
      json.key("table");
      write_json(json, *table);
      json.end_object();
      print(json.text() + "\n");
    } else {
      Page page(output_style(common_.colour));
      write_text(page, *table);
      print(page.take());
    }
    return ExitStatus::done;
  }

  ExitStatus print_json(const std::vector<Conversion>& conversions) {
    JsonWriter json;
    json.begin_object();
    json.key("schema").number(json_schema);
    json.key("conversions").begin_array();
    for (const auto& conversion : conversions) write_json(json, conversion);
    json.end_array();
    json.end_object();
    print(json.text() + "\n");
    return ExitStatus::done;
  }

  // One quantity a line; what stands behind the "-" is added to each. Every line is answered, the bad
  // ones by what is wrong with them.
  ExitStatus convert_input(const Words& words) {
    const auto input = read_input();
    if (!input) return ExitStatus::trouble;
    const std::string ending = words.empty() ? "" : " " + joined(words, " ");
    std::vector<Conversion> all;
    std::size_t lines = 0, bad = 0;
    if (csv_) print(csv_heading());
    for (std::string_view rest = *input; !rest.empty();) {
      const auto end = std::min(rest.find('\n'), rest.size());
      std::string line(rest.substr(0, end));
      if (line.ends_with('\r')) line.pop_back();
      rest.remove_prefix(std::min(end + 1, rest.size()));
      auto conversion = convert_line(line + ending, step_number_);
      ++lines;
      if (conversion.failure) ++bad;
      if (csv_)
        print(csv_rows(conversion));
      else if (common_.json)
        all.push_back(std::move(conversion));
      else
        print(clean(one_line(conversion)) + "\n");
    }
    if (common_.json) print_json(all);
    if (bad > 0) say(std::to_string(bad) + " of " + std::to_string(lines) + " lines could not be converted");
    return bad > 0 ? ExitStatus::trouble : ExitStatus::done;
  }

  Common common_;
  std::string step_, every_;
  std::optional<Number> step_number_, every_number_;
  bool csv_ = false;
};

}  // namespace

std::unique_ptr<Command> make_convert() { return std::make_unique<Convert>(); }

}  // namespace sheaf
