// SPDX-License-Identifier: GPL-2.0-or-later
// Words that people put around what they seek. Sorted, folded; none of them names a part, a side, a
// state or a kind of figure in any of the five languages. "id" and "od" are read with their number before
// this list is asked.
#include <algorithm>
#include <array>

#include "query/library/near_word.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

// clang-format off
constexpr auto noise = std::to_array<std::string_view>({
    "a", "about", "actually", "all", "alla", "alle", "am", "an", "and", "any", "anyone", "anything",
    "approx", "approximately", "are", "as", "asap", "at", "au", "auf", "aus", "aux", "avec", "be",
    "bei", "between", "bike", "bitte", "brauche", "bro", "by", "can", "cannot", "cant", "che", "cheers",
    "chez", "combien", "con", "correct", "could", "cual", "cuanto", "d", "da", "dal", "dans", "das",
    "de", "dei", "del", "della", "delle", "dem", "den", "der", "des", "di", "die", "do", "does", "dont",
    "du", "e", "each", "ein", "eine", "einen", "el", "en", "est", "et", "every", "everything",
    "exactly", "factory", "faut", "find", "for", "from", "fuer", "fur", "gegen", "genuine", "get",
    "give", "goes", "got", "guys", "has", "hat", "have", "hello", "help", "here", "hi", "how", "hows",
    "i", "ich", "id", "if", "il", "im", "in", "is", "ist", "it", "its", "ive", "je", "just", "know",
    "l", "la", "las", "le", "les", "lo", "los", "machine", "many", "mate", "me", "mein", "mi", "mio",
    "mir", "mit", "mon", "motorbike", "motorcycle", "much", "must", "my", "nach", "need", "needed",
    "no", "not", "now", "o", "od", "oem", "of", "ok", "okay", "on", "one", "ones", "or", "ou", "our",
    "para", "per", "please", "pls", "plz", "por", "pour", "quanto", "que", "quel", "quelle", "really",
    "request", "roughly", "s", "same", "se", "should", "show", "sind", "someone", "spec",
    "specification", "specifications", "specs", "still", "stock", "sur", "ta", "take", "takes", "tell",
    "thanks", "that", "the", "their", "there", "these", "they", "this", "those", "thx", "to", "today",
    "u", "um", "un", "una", "und", "undo", "une", "urgent", "us", "use", "used", "uses", "value",
    "values", "versus", "vom", "von", "vs", "want", "was", "we", "welche", "welcher", "welches", "what",
    "whats", "when", "where", "wheres", "whether", "which", "who", "will", "with", "would", "y", "you",
    "your", "zu", "zum", "zur"});

constexpr auto aspects = std::to_array<std::string_view>({
    "diameter", "dia", "type", "sort", "thickness", "width", "depth", "height", "distance", "position",
    "direction", "opening", "hot", "warm", "cold", "end", "brand", "manufacturer", "material", "strength", "force", "location", "durchmesser", "dicke",
    "hohe", "diametre", "epaisseur", "hauteur", "diametro", "espesor", "altura", "spessore", "altezza"});
// clang-format on
static_assert(std::ranges::is_sorted(noise));

}  // namespace

bool is_aspect(std::string_view word) { return std::ranges::find(aspects, word) != aspects.end(); }

std::string_view noise_near(std::string_view word) {
  // "teh" can only be "the", but "abs" is as likely a word of its own as any of ours.
  const auto is_near = [&](std::string_view said) {
    const bool can_be = word.size() >= 4 || std::ranges::is_permutation(word, said);
    return said.size() >= 3 && can_be && slips_between(word, said) == 1;
  };
  const auto found = std::ranges::find_if(noise, is_near);
  return found == noise.end() ? std::string_view() : *found;
}

bool is_noise(std::string_view word) { return std::ranges::binary_search(noise, word); }

}  // namespace sheaf
