// SPDX-License-Identifier: GPL-2.0-or-later
// A sheet that was just started must compile once it is filled in: as it is, and with every example in it.
#include "compiler/sheet/new_sheet.h"

#include <doctest/doctest.h>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/workspace.h"

using namespace sheafc;

namespace {

std::string faults_of(const std::string& text) {
  const std::vector<SheetText> texts = {{"try.yaml", text}};
  Diagnostics sink;
  read_texts(texts, sink);
  std::string faults;
  for (const Diagnostic& fault : sink.all())
    faults += std::to_string(fault.where.line) + " " + std::string(fault.rule) + ": " + fault.message + "\n";
  return faults;
}

SheetStart filled(std::string form, std::string what) {
  SheetStart start{.form = std::move(form),
                   .what = std::move(what),
                   .name = "try",
                   .title = "A try",
                   .maker = "Sorvane",
                   .make = "Haldrek",
                   .model = "Muleback 380",
                   .years = "2011..2015",
                   .source = "A leaflet",
                   .by = "workshop",
                   .day = "2026-10-02",
                   .body = {}};
  return start;
}

// The examples with the # taken from their lines.
std::string with_examples(const std::string& text) {
  std::string out;
  bool examples = false;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = text.find('\n', start) + 1;
    std::string line = text.substr(start, end - start);
    examples = examples || line == "\n";  // they begin after the head
    if (examples && line.starts_with("# ")) line.erase(0, 2);
    out += line;
    start = end;
  }
  return out;
}

}  // namespace

TEST_CASE("filled in, it compiles, with and without its examples") {
  for (const std::string_view assembly : sheaf::all_assemblies()) {
    const std::string text = start_of_sheet(filled("assembly", std::string(assembly)));
    CHECK(faults_of(text) == "");
    CHECK(with_examples(text) != text);
    CHECK(faults_of(with_examples(text)) == "");
  }
  CHECK(faults_of(start_of_sheet(filled("table", "thread-size"))) == "");
  CHECK(faults_of(start_of_sheet(filled("words", ""))) == "");
}

TEST_CASE("what was not said is left open, and the compiler names each of it") {
  const std::string faults = faults_of(start_of_sheet({.form = "assembly",
                                                       .what = "fork",
                                                       .name = "try",
                                                       .title = {},
                                                       .maker = {},
                                                       .make = {},
                                                       .model = {},
                                                       .years = {},
                                                       .source = {},
                                                       .by = {},
                                                       .day = "2026-10-02",
                                                       .body = {}}));
  for (const char* key : {"title", "make", "model", "years", "by"})
    CHECK_MESSAGE(faults.find(std::string("`") + key + "`") != std::string::npos, faults);
}

TEST_CASE("answers that YAML would misread are quoted") {
  SheetStart start = filled("assembly", "fork");
  start.title = "Fork: the #2, \"inverted\"";
  start.model = "* 380";
  CHECK(faults_of(start_of_sheet(start)) == "");
}
