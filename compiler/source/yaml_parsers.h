// SPDX-License-Identifier: GPL-2.0-or-later
// Two parsers of YAML, each behind one function that hands its events to the builder of the tree. libyaml is
// strict and takes a fifth of the time, but says little of what the writer did wrong; yaml-cpp stops where
// the explanations in syntax_fault.cc look for the mistake. Internal to yaml_reader.cc.
#pragma once

#include "compiler/source/tree_builder.h"
#include "compiler/source/yaml_reader.h"

namespace sheafc {

// With libyaml. False where it stops, or where more than one document or a property of YAML's (anchor, alias,
// tag, directive) stands: parse_explaining says what is wrong. Throws SyntaxFault where the builder does.
bool parse_quickly(const YamlInput& input, TreeBuilder& builder);

// With yaml-cpp. Throws SyntaxFault for whatever a sheet must not hold.
void parse_explaining(const YamlInput& input, TreeBuilder& builder);

}  // namespace sheafc
