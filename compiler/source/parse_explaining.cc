// SPDX-License-Identifier: GPL-2.0-or-later
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <istream>
#include <streambuf>
#include <string>

#include "compiler/source/tree_builder.h"
#include "compiler/source/yaml_parsers.h"

namespace sheafc {
namespace {

using Text = std::string_view;

// The parser reads streams; this one hands it our bytes without a copy.
class ByteStream : public std::streambuf {
 public:
  explicit ByteStream(Text bytes) {
    char* start = const_cast<char*>(bytes.data());  // streambuf's pointers are not const; nobody writes
    setg(start, start, start + bytes.size());
  }
};

EventPlace place_of(const YAML::Mark& mark) {
  return {static_cast<std::size_t>(mark.pos), mark.line, mark.column};
}

class Events : public YAML::EventHandler {
 public:
  Events(TreeBuilder& builder, Text bytes) : builder_(builder), bytes_(bytes) {}

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (++documents_ > 1) throw after_the_end(bytes_, place_of(mark).at);
  }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t) override { builder_.add_null(place_of(mark)); }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    throw property_fault(bytes_, place_of(mark).at);
  }
  void OnAnchor(const YAML::Mark& mark, const std::string&) override {
    throw property_fault(bytes_, place_of(mark).at);
  }
  void OnScalar(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                const std::string& value) override {
    builder_.add_scalar(place_of(mark), value);
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                       YAML::EmitterStyle::value style) override {
    builder_.open(Node::Kind::sequence, style == YAML::EmitterStyle::Flow, place_of(mark));
  }
  void OnMapStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                  YAML::EmitterStyle::value style) override {
    builder_.open(Node::Kind::mapping, style == YAML::EmitterStyle::Flow, place_of(mark));
  }
  void OnSequenceEnd() override { builder_.close(); }
  void OnMapEnd() override { builder_.close(); }

 private:
  TreeBuilder& builder_;
  Text bytes_;
  int documents_ = 0;
};

SyntaxFault fault_of(const YAML::Exception& error, const YamlInput& input, const TreeBuilder& builder) {
  const Layout& layout = builder.layout();
  const std::size_t stop = error.mark.is_null() ? layout.at() : place_of(error.mark).at;
  const std::size_t at = std::min(stop, input.text_size);
  SyntaxFault fault = layout.in_flow() && at == input.text_size
                          ? unclosed_bracket(input.bytes, layout.flow_start(), Text::npos)
                          : explain({input.bytes, at, error.msg, layout.at(), builder.columns()});
  fault.stopped_at = at;
  return fault;
}

}  // namespace

// A second document ends in a fault as soon as it starts.
void parse_explaining(const YamlInput& input, TreeBuilder& builder) {
  ByteStream buffer(input.bytes);
  std::istream stream(&buffer);
  try {
    YAML::Parser parser(stream);
    Events events(builder, input.bytes);
    parser.HandleNextDocument(events);
    parser.HandleNextDocument(events);
  } catch (const YAML::Exception& error) {
    throw fault_of(error, input, builder);
  }
}

}  // namespace sheafc
