// SPDX-License-Identifier: GPL-2.0-or-later
// Words of everyday speech, which are no slip for a word of ours however near they come: "sticks" is not
// "shocks", and a belt is no bolt. Sorted and folded; of verbs and adjectives the plain form.
#include <algorithm>
#include <array>
#include <string>

#include "query/search/draft.h"
#include "query/search/short_word.h"

namespace sheaf {
namespace {

// What is done, how it is, and when: said around what is sought.
// clang-format off
constexpr auto ordinary = std::to_array<ShortWord>({
    "absolutely", "accept", "accidentally", "ache", "actually", "add", "adjust", "advise", "afraid",
    "after", "afternoon", "age", "ago", "agree", "ahead", "aim", "aint", "alike", "almost", "alone",
    "already", "alright", "alternative", "although", "amiss", "anodised", "answer", "anyhow", "anyway",
    "apart", "apparent", "apparently", "appear", "apply", "apprentice", "arent", "arrive", "ask",
    "assume", "attach", "attached", "available", "avoid", "aware", "awful", "awkward", "back",
    "backward", "bad", "badly", "bang", "barely", "basically", "beat", "become", "before", "begin",
    "behave", "behind", "believe", "belong", "bend", "bent", "beside", "beyond", "big", "bigger",
    "biggest", "bind", "bit", "black", "blame", "bloke", "blow", "blue", "bolted", "book", "boring",
    "borrow", "boss", "bother", "bottle", "bought", "bounce", "brand", "brass", "brief",
    "bright", "bronze", "brother", "brought", "buddy", "buggered", "build", "burn",
    "busy", "buy", "call", "calm", "cannot", "cant", "cardboard", "care", "careful", "carefully",
    "carry", "catch", "caught", "cause", "central", "ceramic", "certain", "certainly", "chance", "chap",
    "chase", "cheap", "chewed", "choose", "chose", "chrome", "chromed", "clamped", "clean", "clear",
    "clearly", "clever", "click", "climb", "close", "cold", "colleague", "coming", "compare",
    "compatible", "complain", "completely", "concern", "confuse", "conical", "connected", "consider",
    "contain", "convert", "copper", "copy", "cork", "correctly", "couldnt", "count", "couple", "cover",
    "crack", "cracked", "crazy", "creak", "crook", "cross", "crush", "cry", "curious", "current",
    "currently", "cut", "dad", "daft", "damage", "damn", "danger", "dark", "date", "day", "dead",
    "deal", "dear", "decent", "decide", "deep", "definitely", "deliver", "depend", "describe", "didnt",
    "differ", "different", "difficult", "directly", "dirty", "disagree", "discontinued", "dislike",
    "divide", "doesnt", "dont", "double", "doubt", "drag", "draw", "dream", "drop", "dry", "dull",
    "dunno", "dusty", "duty", "dying", "each", "eager", "early", "ease", "easily", "easy", "either",
    "else", "em", "empty", "engraved", "enough", "enter", "entirely", "equal", "equally", "equivalent",
    "especially", "even", "evening", "eventually", "ever", "everybody", "everywhere", "evidently",
    "exchange", "excuse", "expect", "expensive", "explain", "extra", "fail", "fair", "fairly", "fall",
    "familiar", "fancy", "far", "farther", "fast", "fastened", "fat", "fault", "feel", "feet", "fell",
    "fellow", "felt", "few", "fewer", "fiber", "fibre", "fifth", "fight", "fill", "final", "finally",
    "fine", "finger", "finish", "firm", "firmly", "five", "fix", "fixed", "flat", "flog", "flop",
    "floppy", "fool", "force", "foreman", "forever", "forget", "former", "forth", "forward", "fought",
    "found", "fourth", "free", "fresh", "friend", "friendly", "front", "fry", "fully", "funny",
    "further", "fuss", "gaffer", "galvanised", "generally", "gentle", "gently", "gift", "given", "glad",
    "gold", "golden", "gone", "gonna", "good", "gotta", "grab", "grand", "greasy", "great", "green",
    "greet", "grey", "grind", "gripe", "ground", "grow", "grown", "half", "hand", "handle", "handy",
    "hangs", "happen", "happy", "hard", "hardly", "harm", "hate", "hear", "heard", "heavy", "height",
    "held", "hence", "heres", "hes", "hidden", "hide", "high", "higher", "hit", "hold", "holiday",
    "hollow", "home", "honest", "honestly", "hope", "hopefully", "horizontal", "huge", "hundred",
    "hung", "hurry", "hurt", "id", "idea", "identical", "identify", "ignore", "ill", "im", "imagine",
    "immediate", "immediately", "important", "improve", "indeed", "initially", "instead", "intend",
    "interchange", "interchangeable", "interest", "invert", "invoice", "isnt", "ive", "join", "joined",
    "judge", "jump", "just", "keen", "keep", "kept", "kick", "kill", "kind", "kinda", "knackered",
    "knew", "knock", "known", "labelled", "lack", "lad", "large", "last", "late", "later", "laugh",
    "law", "lay", "lazy", "leak", "leaky", "lean", "learn", "least", "leather", "leave", "led", "left",
    "lend", "less", "lesson", "lets", "lie", "life", "lift", "light", "like", "list", "listed",
    "listen", "literally", "little", "live", "lives", "living", "load", "lock", "long", "longest",
    "loose", "lose", "lost", "loud", "love", "lovely", "low", "luck", "lying", "mad", "made", "main",
    "make", "manage", "mangled", "mark", "marked", "marry", "match", "matter", "maximum", "mean",
    "meant", "measure", "meet", "mend", "mention", "mentioned", "mess", "metal", "middle", "mind",
    "miss", "mistake", "mix", "modern", "moment", "month", "more", "morning", "mostly", "mounted",
    "move", "muck", "muddy", "name", "narrow", "naturally", "near", "nearly", "neat", "neighbour",
    "neither", "nervous", "new", "next", "nice", "night", "nobody", "noise", "noisy", "none", "noon",
    "normal", "notice", "nowhere", "nuisance", "nylon", "obey", "obsolete", "obvious", "obviously",
    "occasionally", "occur", "odd", "offer", "often", "oily", "old", "once", "open", "opinion",
    "opposite", "orange", "ordinary", "original", "originally", "other", "otherwise", "ought",
    "outdoor", "overnight", "owe", "own", "owner", "pack", "pain", "paint", "painted", "pair", "paper",
    "part", "particular", "particularly", "pass", "past", "patient", "pause", "pay", "peculiar",
    "perfect", "perfectly", "perform", "permit", "person", "phone", "pick", "picture", "piece", "pinch",
    "place", "plain", "plan", "plastic", "plated", "play", "plenty", "point", "pointed", "poke",
    "pokes", "polished", "poor", "possible", "possibly", "post", "pour", "precisely", "prefer",
    "prepare", "present", "press", "presumably", "pretend", "pretty", "prevent", "previous",
    "previously", "price", "print", "printed", "probable", "probably", "problem", "produce", "promise",
    "properly", "protect", "protrude", "proud", "prove", "public", "published", "pull", "purpose",
    "push", "puzzle", "quarter", "quickly", "quiet", "quit", "quoted", "race", "rag", "raise", "rare",
    "rarely", "rattle", "reach", "ready", "real", "realise", "reason", "receive", "recent", "recently",
    "recognise", "record", "red", "refer", "refuse", "regard", "regret", "regular", "relate", "relax",
    "release", "rely", "remain", "repair", "repeat", "reply", "report", "rest", "result", "return",
    "reuse", "rich", "rider", "right", "rise", "risk", "rob", "rotten", "rough", "round", "rounded",
    "row", "rub", "rubber", "ruin", "rule", "run", "rush", "rust", "rusty", "sad", "safe", "sale",
    "sat", "satisfy", "save", "saw", "scared", "scold", "scrape", "scratch", "scream", "screwed",
    "seat", "secret", "secured", "seem", "seen", "seize", "seized", "sell", "send", "sense", "separate",
    "separately", "serious", "seriously", "service", "settle", "seven", "several", "shake", "shall",
    "shape", "share", "sharp", "shes", "shine", "shiny", "shop", "short", "shorter", "shortest",
    "shouldnt", "shout", "shove", "shown", "shut", "shy", "sick", "sideways", "sign", "silly", "silver",
    "similar", "simple", "simply", "since", "sing", "single", "sir", "sit", "sits", "situation",
    "sixth", "size", "skin", "skip", "slack", "sleep", "slide", "slight", "slightly", "slip", "sloppy",
    "slow", "slowly", "small", "smaller", "smart", "smash", "smell", "smile", "smooth", "snap",
    "snapped", "snug", "soft", "sold", "solid", "somebody", "somehow", "sometimes", "somewhere", "son",
    "soon", "sore", "sorry", "sort", "sorta", "sound", "source", "spare", "speak", "special",
    "specifically", "speed", "spell", "spend", "spent", "spill", "spin", "split", "spoil", "spoke",
    "spot", "spread", "square", "squash", "squeak", "squeaky", "squeal", "squeeze", "stack", "stage",
    "stain", "stainless", "stamped", "stand", "stare", "start", "state", "stated", "stay", "steady",
    "steel", "steer", "step", "stick", "sticks", "sticky", "stiff", "stir", "stop", "store",
    "story", "straight", "strange", "strip", "stripped", "strong", "struggle", "stubborn", "stuck",
    "stupid", "such", "sudden", "suddenly", "suffer", "suit", "superseded", "support", "suppose",
    "supposedly", "surface", "surprise", "survive", "suspect", "swear", "swell", "swing", "switch",
    "talk", "tall", "tapered", "task", "taste", "teach", "tear", "tease", "tend", "test", "thank",
    "thats", "theres", "theyre", "thick", "thicker", "thickest", "thin", "thinner", "thinnest", "third",
    "thousand", "threaten", "three", "throw", "thrown", "tick", "tidy", "tie", "tight", "till", "time",
    "tiny", "tired", "titanium", "together", "tomorrow", "tonight", "took", "topside", "torn",
    "totally", "touch", "tough", "toward", "tried", "trip", "trouble", "true", "truth", "turn", "twice",
    "twist", "typically", "ugly", "unable", "undo", "undone", "unfasten", "unhappy", "unless", "unlike",
    "unlock", "unscrew", "until", "untouched", "upright", "upset", "upside", "urgent", "useful",
    "useless", "usual", "usually", "vague", "valid", "various", "vary", "vertical", "very", "view",
    "visible", "visit", "wait", "wake", "walk", "wander", "wanna", "warn", "wash", "wasnt", "waste",
    "watch", "weak", "weather", "week", "weigh", "welcome", "went", "werent", "wet", "wheres",
    "wherever", "whichever", "white", "whoever", "whos", "wide", "wife", "winter", "wipe", "wise",
    "wish", "wobble", "wobbly", "wonder", "wont", "wood", "wooden", "word", "wore", "work", "world",
    "worn", "worry", "worse", "worst", "worth", "wouldnt", "wrap", "write", "written", "wrong", "wrote",
    "year", "yellow", "yesterday", "yet", "young", "youre"});

// What is a thing: where nobody here has it, it is not ours.
constexpr auto things = std::to_array<ShortWord>({
    "abs", "airbag", "alternator", "antenna", "apron", "armrest", "ashtray", "awning", "axe",
    "backrest", "badge", "bag", "ball", "ballast", "band", "banner", "barn", "basket", "bath", "beacon",
    "bead", "beam", "bed", "bell", "belt", "bench", "bicycle", "bin", "blade", "blanket", "blinker",
    "board", "boat", "body", "boiler", "bolster", "bonnet", "boot", "box", "bracket", "brake", "branch",
    "brick", "bridge", "broom", "brush", "bucket", "buckle", "bulb", "bumper", "bus", "button",
    "buzzer", "cab", "cabin", "cabinet", "cable", "camera", "can", "canopy", "cap", "capacitor", "car",
    "carburettor", "card", "cargo", "carpet", "cart", "case", "caster", "castle", "catalyst",
    "catalytic", "ceiling", "cell", "chair", "charger", "chest", "choke", "cigarette", "clip", "clock",
    "cloth", "clothes", "clutch", "coat", "coffee", "coil", "collar", "column", "comb", "compressor",
    "computer", "condenser", "container", "converter", "cooler", "cord", "corner", "coupling", "crane",
    "crank", "cup", "curtain", "cushion", "cylinder", "dash", "dashboard", "decal", "deck", "desk",
    "detector", "dial", "differential", "diode", "dish", "disk", "display", "distributor", "door",
    "drawer", "drill", "drum", "dryer", "dynamo", "elbow", "engine", "exhaust", "eye", "fabric", "face",
    "fairing", "fan", "fence", "fender", "file", "fire", "flag", "flange", "flap", "flasher", "flex",
    "floor", "flute", "foam", "fob", "folder", "foot", "footboard", "frame", "freezer", "fridge",
    "fuse", "garage", "garment", "gate", "gauge", "gear", "gearbox", "generator", "glass", "glasses",
    "globe", "glove", "glue", "grille", "grip", "guard", "gun", "gutter", "hair", "hammer", "handbrake",
    "hanger", "harness", "hat", "hatch", "hay", "head", "headlamp", "headlight", "heater", "helmet",
    "hinge", "hitch", "hood", "hook", "horn", "horse", "hose", "house", "hub", "ignition",
    "immobiliser", "immobilizer", "indicator", "injector", "instrument", "insulator", "intercooler",
    "iron", "jack", "jacket", "jar", "jeans", "joint", "jug", "kettle", "key", "keyboard", "kickstand",
    "knee", "knife", "knob", "label", "lace", "ladder", "lamp", "lantern", "laser", "latch", "lathe",
    "leaf", "leg", "lens", "lever", "lid", "lighter", "lighting", "liner", "lip", "locker", "log",
    "loom", "loop", "lorry", "machine", "magnet", "manometer", "mast", "mat", "meter", "microphone",
    "mirror", "missile", "mixer", "module", "motor", "mount", "mouse", "mouth", "mudflap", "muffler",
    "mug", "nail", "napkin", "neck", "needle", "net", "nose", "notebook", "nozzle", "number",
    "odometer", "oven", "paddle", "panel", "pannier", "pants", "parachute", "pedal", "pen", "pencil",
    "piano", "pillar", "pillion", "pillow", "pipe", "pistol", "plank", "plant", "plate", "plier",
    "pliers", "plough", "pocket", "pole", "pot", "potato", "pouch", "pulley", "pump", "purse", "quilt",
    "radar", "radiator", "radio", "rail", "ramp", "ratchet", "razor", "rectifier", "reflector",
    "regulator", "relay", "reservoir", "resistor", "rifle", "rivet", "road", "robot", "rod", "roller",
    "roof", "rope", "rug", "ruler", "sack", "saddle", "sail", "sailboat", "sandal", "scarf", "scissors",
    "scooter", "screen", "screwdriver", "seatbelt", "sensor", "servo", "shade", "shed", "sheet",
    "shelf", "shell", "shield", "ship", "shirt", "shoe", "shovel", "shower", "sidecar", "signal",
    "sink", "siren", "skirt", "sled", "sleeve", "slot", "sock", "sofa", "solenoid", "spade", "spark",
    "speaker", "speedo", "speedometer", "spike", "sponge", "spoon", "stamp", "starter", "steam",
    "stereo", "stirrup", "stool", "storage", "stove", "strap", "straw", "string", "strut", "sunroof",
    "supercharger", "suspender", "sword", "tablet", "tacho", "tachograph", "tachometer", "tail",
    "tailgate", "tailpipe", "tank", "tap", "tape", "tarpaulin", "taxi", "telephone", "telescope",
    "television", "tent", "thermocouple", "thermometer", "throttle", "ticket", "tin", "toaster", "toe",
    "toilet", "tool", "torch", "towbar", "towel", "tower", "toy", "tractor", "trailer", "trailing",
    "train", "tram", "transformer", "transistor", "tray", "tree", "trigger", "trolley", "trouser",
    "truck", "trunk", "trunnion", "tub", "tube", "turbine", "turbo", "turbocharger", "umbrella",
    "universal", "valve", "van", "vase", "vest", "violin", "visor", "wagon", "wall", "washer", "wave",
    "wedge", "wheelbarrow", "whip", "whistle", "wick", "winch", "wind", "window", "windscreen",
    "windshield", "wing", "winker", "wiper", "wire", "wiring", "wool", "xenon", "yard", "yarn", "zip"});
// clang-format on
static_assert(std::ranges::is_sorted(ordinary, {}, &ShortWord::text) &&
              std::ranges::is_sorted(things, {}, &ShortWord::text));

template <std::size_t count>
bool has(const std::array<ShortWord, count>& words, std::string_view word) {
  return std::ranges::binary_search(words, word, {}, &ShortWord::text);
}

// "sticks", "sticking", "stripped", "loosely" of "stick", "strip", "loose".
template <std::size_t count>
bool has_in_any_form(const std::array<ShortWord, count>& words, std::string_view word) {
  if (has(words, word)) return true;
  for (const std::string_view ending : {"s", "es", "d", "ed", "ing", "ly"}) {
    if (!word.ends_with(ending) || word.size() < ending.size() + 3) continue;
    std::string plain(word.substr(0, word.size() - ending.size()));
    if (has(words, plain) || has(words, plain + "e")) return true;
    const bool doubles = plain.back() == plain[plain.size() - 2];
    plain.pop_back();
    if (doubles && has(words, plain)) return true;
  }
  return false;
}

}  // namespace

bool is_ordinary(std::string_view word) { return has_in_any_form(ordinary, word); }

bool is_everyday(std::string_view word) { return is_ordinary(word) || has_in_any_form(things, word); }

}  // namespace sheaf
