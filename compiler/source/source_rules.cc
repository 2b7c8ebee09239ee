// SPDX-License-Identifier: GPL-2.0-or-later
// In the order in which a sheet is read: its bytes, its lines, its marks, its values.
#include "compiler/source/rule.h"

namespace sheafc {
namespace {

constexpr Severity error = Severity::error;
constexpr Severity warning = Severity::warning;

constexpr RuleInfo rules[] = {
    {"too-large", error, "a sheet is larger than 1 MiB",
     "A sheet describes one assembly or one table and is a few kilobytes long. A larger file is more likely "
     "a "
     "mistake or an attack than a sheet, so no more of it than 1 MiB is read.",
     "", ""},
    {"not-utf-8", error, "a byte is not UTF-8 text",
     "In another encoding the same byte stands for another letter: the degree sign of one is a different "
     "mark in the "
     "next. Sheets are UTF-8 so that every program shows the same text.",
     "title: fourche t\xE9l\x65scopique\n", "title: fourche télescopique\n"},
    {"control-character", error, "a character that is no text",
     "NUL, escape and their like can hide text from the eye or steer the terminal of whoever reads the "
     "sheet.",
     "title: front\a fork\n", "title: front fork\n"},
    {"invisible-character", error, "a character that cannot be seen",
     "Zero-width spaces and soft hyphens come along when text is copied from a page; two names that look "
     "alike then "
     "differ. Marks that turn the direction of text can make a figure show other than it is.",
     "title: fork\xE2\x80\x8B oil\n", "title: fork oil\n"},
    {"tab-indent", error, "a tab indents a line",
     "YAML counts indentation in spaces, and editors disagree on how wide a tab is, so nobody can tell which "
     "entry "
     "the line belongs to.",
     "fasteners:\n\ttop-plug: 28 N·m\n", "fasteners:\n  top-plug: 28 N·m\n"},
    {"odd-indent", error, "a space that is no plain space indents a line",
     "A no-break space looks like indentation, but YAML takes it for a letter of the key.",
     "fasteners:\n\xC2\xA0 top-plug: 28 N·m\n", "fasteners:\n  top-plug: 28 N·m\n"},
    {"empty-sheet", error, "a sheet holds nothing",
     "A file of nothing but comments is most often an unfinished or truncated one.", "# to be written\n",
     "sheet: front-fork\n"},
    {"several-documents", error, "a file holds more than one YAML document",
     "A line of --- starts a second document, and many programs read only the first without a word.",
     "sheet: front-fork\n---\nsheet: rear-shock\n", "sheet: front-fork\n"},
    {"directive", error, "a YAML directive",
     "Directives such as %YAML change how the rest is read. Sheets are all read alike.",
     "%YAML 1.2\n---\nsheet: fork\n", "sheet: fork\n"},
    {"anchor-or-alias", error, "a YAML anchor or alias, or text that reads as one",
     "Text that starts with & or * is YAML's way to name a value and to repeat it. Programs differ in what "
     "they make of "
     "it, and a few lines can unfold to billions. Sheets repeat nothing: use based-on, like, or same-as.",
     "note: *see the manual\n", "note: \"*see the manual\"\n"},
    {"tag", error, "a YAML tag, or text that reads as one",
     "Text that starts with ! tells YAML to read the value as another type. Sheets know the type of each "
     "field.",
     "note: !mind the spring\n", "note: \"!mind the spring\"\n"},
    {"merge-key", error, "the merge key <<",
     "Some programs copy a whole mapping where << stands, others take it for a plain key. A sheet says "
     "based-on.",
     "<<: base\n", "based-on: base\n"},
    {"too-deep", error, "nested more than 64 deep",
     "No sheet needs it, and a file that nests without end would exhaust whatever reads it.", "", ""},
    {"bad-indent", error, "a line is indented so that it belongs nowhere",
     "Indentation says which entry a line belongs to. The lines of one mapping or list all stand at one "
     "depth, and "
     "what belongs to a key stands deeper than the key.",
     "top-plug:\n    torque: 28 N·m\n  state: dry\n", "top-plug:\n    torque: 28 N·m\n    state: dry\n"},
    {"bad-key", error, "a key is missing or is not one word or phrase",
     "Before each colon stands the name of a field or an entry, on the same line.", ": 28 N·m\n",
     "torque: 28 N·m\n"},
    {"missing-colon", error, "a line or key has no colon",
     "Without its colon a line is taken for more text of the line above, or for a key without a value.",
     "state: dry\ntorque 28 N·m\ncount: 2\n", "state: dry\ntorque: 28 N·m\ncount: 2\n"},
    {"second-colon", error, "a second colon starts no value",
     "A colon followed by a space parts a key from its value, so a value may hold one only in quotes.",
     "note: mind: the spring is under load\n", "note: \"mind: the spring is under load\"\n"},
    {"stray-dash", error, "a list item where none can stand",
     "The items of a list stand below their key, one a line, each after a dash.", "cautions: - spring-load\n",
     "cautions:\n  - spring-load\n"},
    {"duplicate-key", error, "a key stands twice in one mapping",
     "Most programs keep one of the two values in silence, some the first and some the last, so the figure "
     "that is "
     "looked up need not be the one that was checked.",
     "torque: 28 N·m\ntorque: 35 N·m\n", "torque: 28 N·m\n"},
    {"empty-value", error, "a key or list item without a value",
     "An empty value says nothing, and neither do `null` and `~`. The most common cause is a # after a "
     "space, which "
     "makes a comment of the rest of the line.",
     "thread: #10-32\n", "thread: \"#10-32\"\n"},
    {"empty-item", error, "nothing between two commas",
     "A comma too many hides the item that was meant, and shifts the cells of a table by one.",
     "rows: [M8, , 13 mm]\n", "rows: [M8, \"-\", 13 mm]\n"},
    {"text-after-value", error, "text after a closing quote or bracket",
     "A value in quotes ends at its closing quote. Inch sizes hold the quote themselves.",
     "thread: \"5/16\"-18\n", "thread: '\"5/16\"-18'\n"},
    {"unterminated-quote", error, "a quote is not closed",
     "Everything up to the next quote becomes part of the value, and the entries in between are lost.",
     "name: \"fork top plug\nthread: M36x1.5\n", "name: \"fork top plug\"\nthread: M36x1.5\n"},
    {"missing-comma", error, "two items of [ ] or { } run into each other",
     "Inside brackets a line break is only a space, so that without a comma two items become one.",
     "cautions: [spring-load\n  eye-protection]\n", "cautions: [spring-load,\n  eye-protection]\n"},
    {"unclosed-bracket", error, "a bracket is missing, or one too many",
     "Until the bracket closes, every line below belongs to the list.",
     "cautions: [spring-load, eye-protection\nstate: dry\n",
     "cautions: [spring-load, eye-protection]\nstate: dry\n"},
    {"bad-start", error, "a value starts with a mark that YAML keeps for itself",
     "A value that starts with @ ` % | > or is a lone - means something else to YAML, or nothing at all.",
     "limit: > 0.2 mm\n", "limit: \"> 0.2 mm\"\n"},
    {"bad-escape", error, "a backslash in double quotes starts no escape that a sheet may hold",
     "Inside double quotes a backslash starts an escape such as \\n. Escapes for control characters are "
     "refused with the "
     "characters themselves.",
     "note: \"fork\\seal\"\n", "note: 'fork\\seal'\n"},
    {"comment-without-space", error, "a # right after a quote or bracket",
     "A comment starts with a # after a space. Without it some programs read a comment and others an error.",
     "state: \"dry\"#checked\n", "state: \"dry\" #checked\n"},
    {"comment-or-value", warning, "a comment that looks like the rest of a value",
     "A # after a space starts a comment, so that a screw size such as #10-32 behind other text is lost.",
     "thread: screw #10-32\n", "thread: \"screw #10-32\"\n"},
    {"uncertain-text", error, "text over several lines that programs read differently",
     "How line breaks and blank lines fold into text has corners in which YAML programs disagree. What a "
     "sheet says must "
     "not depend on the program.",
     "note: |\n    \n  mind the spring\n", "note: |\n  mind the spring\n"},
    {"bad-yaml", error, "something that is not YAML",
     "The sheet cannot be read further. Text that holds YAML's own marks goes in quotes.", "", ""},
};

}  // namespace

std::span<const RuleInfo> source_rules() { return rules; }

}  // namespace sheafc
