// SPDX-License-Identifier: GPL-2.0-or-later
// Words that people put around what they seek. Sorted, folded; none of them names a part, a side, a
// state or a kind of figure in any of the five languages. "id" and "od" are read with their number before
// this list is asked.
#include <algorithm>
#include <array>

#include "query/library/near_word.h"
#include "query/search/draft.h"
#include "query/search/short_word.h"

namespace sheaf {
namespace {

// clang-format off
constexpr auto noise = std::to_array<ShortWord>({
    "a", "aber", "about", "according", "actually", "aflojar", "again", "agli", "ai", "aint", "al",
    "alguien", "algun", "all", "alla", "alle", "allen", "alles", "allo", "allow", "allows", "alors",
    "als", "also", "always", "am", "an", "anche", "and", "angabe", "angaben", "ante", "any", "anybody",
    "anyone", "anything", "appropriate", "approx", "approximately", "aqui", "are", "arent", "around",
    "as", "asap", "asi", "assemble", "assembling", "at", "au", "auf", "aus", "ausbauen", "austauschen",
    "autour", "aux", "available", "avec", "avere", "avoir", "b4", "be", "because", "been", "before",
    "bei", "beim", "being", "besoin", "best", "better", "between", "bien", "bike", "bikes", "bin", "bis",
    "bitte", "bloke", "bonjour", "book", "boss", "braeuchte", "brauch", "brauche", "brauchen", "braucht",
    "brauchte", "bring", "bro", "busco", "but", "by", "c", "ca", "cambiar", "came", "can", "cannot",
    "cant", "car", "ce", "ceci", "cela", "cerco", "ces", "cet", "cette", "change", "changed", "changer",
    "changes", "changing", "chap", "che", "check", "checking", "cheers", "cheque", "cherche", "chez",
    "ci", "ciao", "combien", "come", "comes", "comme", "comment", "como", "con", "confirm", "conseille",
    "conseillee", "consigliata", "consigliato", "correct", "cosa", "could", "couldnt", "cual", "cuales",
    "cuando", "cuanta", "cuanto", "cui", "customer", "customers", "d", "da", "dad", "dafuer", "dafur",
    "dal", "dalla", "dame", "dammi", "danke", "dans", "dar", "darf", "das", "dass", "data", "daten",
    "de", "debe", "debo", "decir", "degli", "dei", "dein", "del", "della", "delle", "dello", "dem",
    "deme", "demonter", "den", "der", "des", "desmontar", "detail", "details", "deve", "devisser",
    "devo", "di", "did", "didnt", "die", "diese", "dieser", "dieses", "dime", "dimmi", "dir",
    "dismantle", "dismantling", "do", "doch", "does", "doesnt", "doing", "dois", "doit", "donc", "donde",
    "done", "donne", "donner", "donnez", "dont", "dort", "dove", "drin", "du", "e", "each", "ecco",
    "eigentlich", "ein", "einbauen", "eine", "einem", "einen", "einer", "eines", "el", "ella", "elle",
    "en", "entre", "er", "erm", "ersetzen", "es", "esa", "ese", "eso", "est", "esta", "este", "esto",
    "et", "etre", "etwa", "euch", "every", "everybody", "everyone", "everything", "exact", "exactly",
    "factory", "faire", "fait", "faut", "favor", "figure", "figures", "find", "fit", "fits", "fitted",
    "follow", "for", "forgot", "frage", "friend", "from", "fuer", "fur", "gaffer", "garage", "gegen",
    "gehoert", "gehort", "genau", "gents", "genuine", "get", "getting", "gib", "gibt", "gilt", "gimme",
    "give", "given", "gives", "giving", "gli", "go", "goes", "going", "gonna", "got", "gotta", "gracias",
    "grazie", "guess", "guidance", "guy", "guys", "ha", "hab", "habe", "haben", "had", "hallo",
    "happens", "has", "hasnt", "hat", "have", "havent", "having", "havnt", "hay", "he", "hello", "help",
    "her", "here", "heres", "hers", "herself", "herstellerangabe", "hes", "hey", "hi", "hier", "him",
    "himself", "hin", "his", "hm", "hmm", "ho", "hola", "how", "hows", "i", "ich", "id", "if", "ihm",
    "ihn", "ihnen", "ihr", "il", "illegible", "ils", "im", "in", "inc", "incl", "indicare", "info",
    "information", "ins", "install", "installation", "installing", "instead", "into", "is", "isnt",
    "ist", "it", "itll", "its", "ive", "j", "je", "jemand", "jetzt", "job", "just", "kann", "kannst",
    "kein", "keine", "kindly", "know", "koennen", "kommt", "konnen", "l", "la", "lads", "las", "lass",
    "le", "les", "let", "lets", "leur", "like", "likely", "lleva", "llevan", "lo", "loesen", "look",
    "looking", "lookup", "loosen", "loosening", "los", "losen", "lot", "lui", "ma", "machine",
    "machines", "mais", "mal", "man", "manual", "many", "market", "markets", "mas", "maschine",
    "maschinen", "mate", "mates", "may", "maybe", "me", "mean", "means", "mechanic", "mein", "merci",
    "mes", "met", "mets", "mettere", "metto", "mettre", "mi", "mia", "mich", "miei", "might", "mine",
    "mio", "mir", "mis", "mit", "model", "moi", "moin", "moment", "mon", "montar", "montare", "monter",
    "montieren", "moped", "mopeds", "most", "moto", "motocicleta", "motocicletta", "motocyclette",
    "motorbike", "motorbikes", "motorcycle", "motorcycles", "motorrad", "motorrader", "motorraeder",
    "motos", "much", "muessen", "mum", "muss", "mussen", "must", "my", "myself", "n", "nach", "ne",
    "nearly", "necesita", "necesito", "necessary", "need", "needed", "nel", "nella", "nello", "never",
    "nice", "no", "noch", "nochmal", "non", "nope", "normal", "normally", "nos", "not", "notre", "nous",
    "now", "nur", "o", "obviously", "od", "oder", "oem", "of", "official", "oh", "ok", "okay", "on",
    "one", "ones", "only", "onto", "or", "ou", "ought", "our", "ours", "overhauling", "own", "para",
    "people", "per", "perhaps", "pero", "peut", "peux", "please", "pls", "plz", "poner", "pongo", "por",
    "pour", "pouvez", "preconise", "preconisee", "prego", "proper", "properly", "puede", "puedo", "puo",
    "put", "qu", "qual", "quale", "quali", "quand", "quando", "quanta", "quante", "quanto", "que",
    "quel", "quelle", "quelles", "quelqu", "quels", "question", "qui", "quick", "quickly", "quien",
    "quiero", "quisiera", "quite", "quoi", "ran", "rather", "reading", "ready", "really", "reassemble",
    "reassembling", "rebuild", "rebuilding", "reckon", "recomendada", "recomendado", "recommande",
    "recommandee", "recommend", "recommendation", "recommended", "refit", "refitting", "regarding",
    "rein", "reinstall", "remember", "remind", "removal", "remove", "removing", "remplacer", "replace",
    "replaced", "replacement", "replacing", "request", "require", "required", "requirement", "requires",
    "roughly", "s", "sa", "saber", "sagen", "sai", "said", "salut", "same", "savoir", "say", "says",
    "schnell", "se", "see", "seem", "sei", "sein", "seine", "ser", "serve", "servono", "servus", "ses",
    "she", "shes", "should", "shouldnt", "show", "si", "sia", "sich", "sie", "simply", "sind", "sir",
    "slacken", "smontare", "smudged", "so", "sobre", "soit", "soll", "sollen", "sollte", "sollwert",
    "some", "somebody", "someone", "something", "son", "sono", "sont", "sorry", "sostituire", "spec",
    "specification", "specifications", "specified", "specs", "still", "stock", "su", "sua", "suche",
    "suggest", "suggested", "sul", "sulla", "sullo", "suo", "suppose", "supposed", "sur", "sure", "sus",
    "sustituir", "svitare", "svp", "swap", "swapped", "swapping", "ta", "take", "takes", "tell", "tells",
    "tengo", "than", "thank", "thanks", "that", "thats", "the", "their", "theirs", "them", "themselves",
    "then", "there", "theres", "these", "they", "theyd", "theyre", "thing", "things", "think", "this",
    "those", "thought", "thx", "ti", "tiene", "till", "to", "today", "ton", "too", "tous", "tout",
    "toute", "toutes", "tra", "trop", "try", "trying", "tu", "tua", "tuo", "u", "uh", "uhm", "um", "un",
    "una", "unas", "und", "undo", "undoing", "une", "ungefaehr", "ungefahr", "uno", "unos", "unreadable",
    "uns", "urgent", "us", "usa", "usar", "use", "used", "uses", "usual", "usually", "va", "valeur",
    "valeurs", "valor", "valore", "valores", "valori", "value", "values", "van", "vanno", "ver", "vers",
    "versus", "very", "veut", "veux", "vi", "via", "vielleicht", "voglio", "voici", "vom", "von", "vor",
    "vorgabe", "vorgeschrieben", "vorrei", "votre", "voudrais", "vous", "vs", "vuole", "wann", "wanna",
    "want", "wants", "warum", "was", "wasnt", "way", "we", "wechseln", "weiss", "welche", "welchem",
    "welchen", "welcher", "welches", "well", "wenn", "went", "wer", "werden", "were", "werent", "wert",
    "werte", "weve", "what", "whatever", "whats", "when", "where", "wheres", "whether", "which", "while",
    "who", "whole", "whos", "whose", "why", "wie", "will", "wir", "wird", "with", "wo", "wonder",
    "wondering", "wont", "workshop", "would", "wouldnt", "y", "ya", "yeah", "yep", "yes", "yet", "yo",
    "you", "youd", "your", "youre", "yourself", "zu", "zum", "zur"});

constexpr auto aspects = std::to_array<ShortWord>({
    "above", "acceptable", "across", "actual", "after", "aftermarket", "again", "against", "ah",
    "allowable", "allowed", "along", "alt", "alte", "alter", "altezza", "altura", "anchura", "another",
    "apart", "assembly", "attaching", "ausbau", "away", "awkward", "basic", "befestigung", "before",
    "behind", "below", "beneath", "bent", "big", "biggest", "bloody", "both", "brand", "breite",
    "broken", "certain", "chewed", "cold", "complete", "condition", "corroded", "cuatro", "daft",
    "damaged", "damn", "depth", "deux", "dia", "diameter", "diametre", "diametro", "dicke",
    "direction", "dirty", "distance", "dos", "down", "drei", "due", "durchmesser", "during", "einbau",
    "end", "entire", "epaisseur", "espesor", "exact", "face", "far", "fastening", "fiddly", "fijacion",
    "final", "first", "fissaggio", "five", "fixation", "fixing", "force", "four", "full", "funny",
    "genuine", "grande", "greasy", "gros", "gross", "grosse", "hauteur", "heavy", "height", "hohe",
    "holding", "hot", "huge", "ideal", "incl", "including", "initial", "inspection", "item", "just",
    "kit", "klein", "kleine", "large", "largest", "largeur", "larghezza", "last", "leaking", "leaky",
    "limits", "little", "location", "long", "longest", "loose", "lubricant", "manufacturer", "massima",
    "massimo", "material", "max", "maxi", "maximal", "maximale", "min", "mindest", "mini", "minimal",
    "montage", "montaggio", "montaje", "mounted", "mounting", "narrow", "neu", "neue", "neuen",
    "neuer", "neues", "neuf", "next", "noisy", "nominal", "nueva", "nuevo", "nuova", "nuovo", "off",
    "old", "only", "opening", "original", "other", "out", "over", "overall", "pair", "particular",
    "pequena", "pequeno", "permissible", "permitted", "petit", "petite", "piccola", "piccolo", "plus",
    "position", "profondeur", "profondita", "profundidad", "quatre", "quattro", "range", "rating",
    "reading", "remplacement", "retaining", "richtung", "rounded", "rusty", "securing", "seized",
    "set", "short", "shortest", "silly", "single", "six", "small", "smallest", "snapped", "sort",
    "sostituzione", "spare", "spessore", "squeaky", "standard", "strength", "stripped", "stubborn",
    "stuck", "stupid", "style", "sustitucion", "target", "temp", "thickness", "three", "through",
    "tiefe", "tiny", "tolerance", "total", "tre", "tres", "trois", "twin", "two", "type", "under",
    "underneath", "unit", "up", "variant", "vecchia", "vecchio", "version", "vieille", "vieja",
    "viejo", "vier", "vieux", "warm", "wechsel", "wee", "weird", "wide", "width", "wobbly", "zulassig",
    "zulassige", "zulassiger", "zwei"});
// clang-format on
static_assert(std::ranges::is_sorted(noise, {}, &ShortWord::text) &&
              std::ranges::is_sorted(aspects, {}, &ShortWord::text));

template <typename Words>
bool holds(const Words& words, std::string_view word) {
  return std::ranges::binary_search(words, word, {}, &ShortWord::text);
}

}  // namespace

bool is_aspect(std::string_view word) { return holds(aspects, word); }

std::string_view noise_near(std::string_view word) {
  // "teh" can only be "the", but "abs", "boot" and the like are as likely words of their own as any of ours.
  const auto is_near = [&](std::string_view said) {
    const bool can_be = std::min(word.size(), said.size()) >= 5 || std::ranges::is_permutation(word, said);
    return said.size() >= 3 && can_be && slips_between(word, said) == 1;
  };
  const auto found = std::ranges::find_if(noise, is_near);
  return found == noise.end() ? std::string_view() : found->text();
}

bool is_noise(std::string_view word) { return holds(noise, word); }

}  // namespace sheaf
