// SPDX-License-Identifier: GPL-2.0-or-later
// Reads one YAML file as sheets are read and prints what came of it, for comparison with other readers:
// the tree as JSON, in which every scalar is a string and an empty value is null; or "refused", and the
// faults. Exit status 0 read, 1 refused, 2 not opened.
#include <iostream>
#include <nlohmann/json.hpp>

#include "compiler/source/source_file.h"

namespace {

using Json = nlohmann::ordered_json;

Json json_of(const sheafc::Node& node) {
  using Kind = sheafc::Node::Kind;
  switch (node.kind) {
    case Kind::empty:
      return nullptr;
    case Kind::scalar:
      return std::string(node.text);
    case Kind::sequence: {
      Json list = Json::array();
      for (const sheafc::Node* item : node.items) list.push_back(json_of(*item));
      return list;
    }
    case Kind::mapping:
      break;
  }
  Json object = Json::object();
  for (const sheafc::Pair& pair : node.pairs) object[std::string(pair.key)] = json_of(*pair.value);
  return object;
}

}  // namespace

int main(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    auto file = sheafc::read_source(argv[i], argv[i]);
    if (!file) {
      std::cerr << file.failure().message << '\n';
      return 2;
    }
    sheafc::SourceFile source = std::move(file).value();
    sheafc::Diagnostics sink;
    Json line = {{"file", argv[i]}};
    if (source.parse(sink) && sink.errors() == 0) {
      line["tree"] = json_of(*source.root());
    } else {
      Json faults = Json::array();
      for (const auto& d : sink.all()) {
        faults.push_back(
            {{"rule", d.rule}, {"line", d.where.line}, {"column", d.where.column}, {"message", d.message}});
      }
      line["refused"] = faults;
    }
    std::cout << line.dump(-1, ' ', false, Json::error_handler_t::replace) << '\n';
  }
}
