// SPDX-License-Identifier: GPL-2.0-or-later
// All that is done with libyaml.
#include <yaml.h>

#include <algorithm>
#include <new>
#include <string>
#include <string_view>

#include "compiler/source/first_key.h"
#include "compiler/source/node_checks.h"
#include "compiler/source/yaml_parsers.h"

namespace sheafc {
namespace {

using Text = std::string_view;

class YamlEvent {
 public:
  YamlEvent() = default;
  ~YamlEvent() { yaml_event_delete(&event_); }
  YamlEvent(const YamlEvent&) = delete;
  YamlEvent& operator=(const YamlEvent&) = delete;
  yaml_event_t* operator->() { return &event_; }
  yaml_event_t* get() { return &event_; }

 private:
  yaml_event_t event_{};
};

class YamlEvents {
 public:
  explicit YamlEvents(Text bytes) {
    if (!yaml_parser_initialize(&parser_)) throw std::bad_alloc();
    yaml_parser_set_encoding(&parser_, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&parser_, reinterpret_cast<const unsigned char*>(bytes.data()),
                                 bytes.size());
  }
  ~YamlEvents() { yaml_parser_delete(&parser_); }
  YamlEvents(const YamlEvents&) = delete;
  YamlEvents& operator=(const YamlEvents&) = delete;

  // False where the parser stops.
  bool next(YamlEvent& event) { return yaml_parser_parse(&parser_, event.get()) != 0; }

 private:
  yaml_parser_t parser_;
};

Text text_of(const yaml_char_t* text, std::size_t length) {
  return {reinterpret_cast<const char*>(text), length};
}

// libyaml counts characters; the tree counts bytes.
class Bytes {
 public:
  explicit Bytes(Text bytes) : bytes_(bytes) {}

  EventPlace place_of(const yaml_mark_t& mark) {
    while (character_ < mark.index && at_ < bytes_.size()) step_on();
    while (character_ > mark.index) step_back();
    if (at_ < line_start_) find_line();
    return {at_, line_, static_cast<int>(at_ - line_start_)};
  }

 private:
  bool is_inside_character(std::size_t at) const {
    return at < bytes_.size() && (static_cast<unsigned char>(bytes_[at]) & 0xC0) == 0x80;
  }
  void step_on() {
    if (bytes_[at_] == '\n') {
      ++line_;
      line_start_ = at_ + 1;
    }
    do ++at_;
    while (is_inside_character(at_));
    ++character_;
  }
  void step_back() {
    do --at_;
    while (is_inside_character(at_));
    --character_;
  }
  void find_line() {
    line_ -= static_cast<int>(std::ranges::count(bytes_.substr(at_, line_start_ - at_), '\n'));
    line_start_ = bytes_.substr(0, at_).rfind('\n') + 1;
  }

  Text bytes_;
  std::size_t at_ = 0, character_ = 0, line_start_ = 0;
  int line_ = 0;
};

class Listener {
 public:
  Listener(TreeBuilder& builder, Text bytes) : builder_(builder), bytes_(bytes) {}

  // False for what is left to the other parser.
  bool take(YamlEvent& event) {
    switch (event->type) {
      case YAML_DOCUMENT_START_EVENT: {
        const auto& start = event->data.document_start;
        return ++documents_ == 1 && !start.version_directive &&
               start.tag_directives.start == start.tag_directives.end;
      }
      case YAML_SCALAR_EVENT:
        return take_scalar(*event.get());
      case YAML_SEQUENCE_START_EVENT: {
        const auto& start = event->data.sequence_start;
        if (start.anchor || start.tag) return false;
        builder_.open(Node::Kind::sequence, start.style == YAML_FLOW_SEQUENCE_STYLE, place_of(*event.get()));
        return true;
      }
      case YAML_MAPPING_START_EVENT: {
        const auto& start = event->data.mapping_start;
        if (start.anchor || start.tag) return false;
        builder_.open(Node::Kind::mapping, start.style == YAML_FLOW_MAPPING_STYLE, place_of(*event.get()));
        return true;
      }
      case YAML_SEQUENCE_END_EVENT:
      case YAML_MAPPING_END_EVENT:
        builder_.close();
        return true;
      case YAML_ALIAS_EVENT:
        return false;
      default:
        return true;
    }
  }

 private:
  EventPlace place_of(const yaml_event_t& event) { return bytes_.place_of(event.start_mark); }

  bool take_scalar(const yaml_event_t& event) {
    const auto& scalar = event.data.scalar;
    if (scalar.anchor || scalar.tag) return false;
    const Text value = text_of(scalar.value, scalar.length);
    const bool says_nothing =
        scalar.style == YAML_PLAIN_SCALAR_STYLE && (value.empty() || spells_null(value));
    if (says_nothing)
      builder_.add_null(place_of(event));
    else
      builder_.add_scalar(place_of(event), value);
    return true;
  }

  TreeBuilder& builder_;
  Bytes bytes_;
  int documents_ = 0;
};

}  // namespace

bool parse_quickly(const YamlInput& input, TreeBuilder& builder) {
  YamlEvents events(input.bytes);
  Listener listener(builder, input.bytes);
  for (;;) {
    YamlEvent event;
    if (!events.next(event)) return false;
    if (event->type == YAML_STREAM_END_EVENT) return true;
    if (!listener.take(event)) return false;
  }
}

std::string first_key(std::string_view bytes,
                      const std::function<bool(std::string_view key, bool is_mapping)>& is_meant) {
  YamlEvents events(bytes);
  int depth = 0;
  bool is_key = true;  // what comes next at depth 1
  std::string key;
  const auto begin_value = [&](bool is_mapping) {
    if (depth != 1) return false;
    const bool is_it = !is_key && is_meant(key, is_mapping);
    is_key = !is_key;
    return is_it;
  };
  for (;;) {
    YamlEvent event;
    if (!events.next(event)) return {};
    switch (event->type) {
      case YAML_SCALAR_EVENT:
        if (depth == 0) return {};
        if (depth == 1 && is_key) {
          key = text_of(event->data.scalar.value, event->data.scalar.length);
          is_key = false;
        } else if (begin_value(false)) {
          return key;
        }
        break;
      case YAML_MAPPING_START_EVENT:
      case YAML_SEQUENCE_START_EVENT:
        if (depth == 0 && event->type == YAML_SEQUENCE_START_EVENT) return {};
        if (begin_value(event->type == YAML_MAPPING_START_EVENT)) return key;
        ++depth;
        break;
      case YAML_MAPPING_END_EVENT:
      case YAML_SEQUENCE_END_EVENT:
        --depth;
        break;
      case YAML_ALIAS_EVENT:
      case YAML_DOCUMENT_END_EVENT:
      case YAML_STREAM_END_EVENT:
        return {};
      default:
        break;
    }
  }
}

}  // namespace sheafc
