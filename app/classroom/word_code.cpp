#include "app/classroom/word_code.hpp"

#include <array>

#include "app/classroom/seal.hpp"

namespace hardover::classroom {

namespace {

// Everyday words, none like another by sound.
constexpr std::array<const char*, word_count> words = {
    "acorn",   "actor",    "agent",    "alarm",    "album",   "alley",   "almond",   "amber",    "anchor",
    "angle",   "ankle",    "apple",    "apron",    "arch",    "arena",   "armor",    "arrow",    "atlas",
    "attic",   "autumn",   "badge",    "bagel",    "baker",   "bamboo",  "banjo",    "banner",   "barley",
    "barn",    "barrel",   "basin",    "basket",   "beach",   "beacon",  "beam",     "bean",     "bear",
    "beaver",  "bench",    "bicycle",  "birch",    "biscuit", "blanket", "bloom",    "board",    "bolt",
    "bonnet",  "border",   "bottle",   "boulder",  "bowl",    "bracket", "branch",   "brass",    "bread",
    "breeze",  "brick",    "bridge",   "bronze",   "broom",   "brush",   "bubble",   "bucket",   "buckle",
    "bundle",  "burrow",   "butter",   "button",   "cabin",   "cable",   "cactus",   "camel",    "camera",
    "camp",    "canal",    "candle",   "canoe",    "canvas",  "canyon",  "cargo",    "carpet",   "carrot",
    "cart",    "castle",   "cedar",    "cellar",   "cement",  "chain",   "chalk",    "cheese",   "cherry",
    "chest",   "chimney",  "chisel",   "circle",   "circus",  "city",    "clamp",    "clay",     "cliff",
    "clock",   "cloud",    "clover",   "coach",    "coast",   "cobalt",  "cocoa",    "coffee",   "collar",
    "comet",   "compass",  "copper",   "coral",    "corner",  "cotton",  "county",   "cousin",   "cover",
    "cradle",  "crane",    "crater",   "crayon",   "cricket", "crown",   "cruise",   "crumb",    "crystal",
    "cube",    "cupboard", "curtain",  "curve",    "cycle",   "daisy",   "dawn",     "deck",     "denim",
    "desert",  "dinner",   "dish",     "dolphin",  "donkey",  "dragon",  "drawer",   "drill",    "drum",
    "dune",    "dusk",     "eagle",    "easel",    "echo",    "eclipse", "elbow",    "elder",    "ember",
    "emblem",  "engine",   "envelope", "estate",   "evening", "fabric",  "falcon",   "family",   "farmer",
    "feather", "fence",    "fern",     "ferry",    "fiddle",  "field",   "finger",   "fjord",    "flag",
    "flame",   "flask",    "flint",    "floor",    "flute",   "forest",  "fork",     "fossil",   "fountain",
    "frame",   "freight",  "frost",    "fruit",    "funnel",  "galaxy",  "gallon",   "garage",   "garden",
    "garlic",  "gate",     "giant",    "ginger",   "giraffe", "glacier", "glass",    "globe",    "glove",
    "goblet",  "gold",     "goose",    "gravel",   "green",   "grill",   "grove",    "guitar",   "hammer",
    "hammock", "handle",   "harbor",   "harness",  "harvest", "hazel",   "hedge",    "helmet",   "heron",
    "hinge",   "honey",    "hood",     "horizon",  "hotel",   "hunter",  "island",   "ivory",    "jacket",
    "jaguar",  "jelly",    "jersey",   "jewel",    "jigsaw",  "jockey",  "journal",  "judge",    "juice",
    "jungle",  "kayak",    "kernel",   "kettle",   "kingdom", "kitchen", "kitten",   "koala",    "ladder",
    "ladle",   "lagoon",   "lake",     "lamp",     "lantern", "laser",   "lattice",  "laundry",  "lawn",
    "leather", "legend",   "lemon",    "lentil",   "lettuce", "lever",   "library",  "lilac",    "lily",
    "linen",   "lizard",   "lobster",  "locket",   "lodge",   "lotus",   "lumber",   "lunar",    "lunch",
    "magnet",  "mallet",   "mango",    "maple",    "marble",  "market",  "marsh",    "mason",    "meadow",
    "medal",   "melon",    "mentor",   "metal",    "meteor",  "middle",  "mill",     "mint",     "mirror",
    "mitten",  "model",    "monkey",   "morning",  "mosaic",  "motor",   "mountain", "muffin",   "museum",
    "mustard", "napkin",   "narrow",   "needle",   "nickel",  "noodle",  "north",    "notebook", "number",
    "nutmeg",  "oasis",    "oatmeal",  "ocean",    "octave",  "office",  "olive",    "onion",    "opera",
    "orange",  "orbit",    "orchard",  "orchid",   "otter",   "oven",    "owl",      "oxygen",   "oyster",
    "paddle",  "palace",   "panda",    "panel",    "paper",   "parade",  "parcel",   "parrot",   "pasta",
    "patch",   "path",     "peanut",   "pebble",   "pencil",  "penguin", "pepper",   "piano",    "picnic",
    "pigeon",  "pillow",   "pilot",    "pine",     "pirate",  "planet",  "plank",    "plaster",  "plate",
    "pliers",  "plum",     "pocket",   "poem",     "polar",   "pond",    "poplar",   "poppy",    "porch",
    "potato",  "powder",   "prairie",  "pretzel",  "prism",   "puddle",  "pulley",   "pumpkin",  "puppet",
    "purple",  "puzzle",   "pyramid",  "quarry",   "quartz",  "quilt",   "rabbit",   "radio",    "radish",
    "raft",    "rain",     "raven",    "ribbon",   "riddle",  "ring",    "ripple",   "river",    "robin",
    "rocket",  "roof",     "rope",     "rose",     "rudder",  "rugby",   "ruler",    "saddle",   "saffron",
    "salad",   "salmon",   "sandal",   "satin",    "saucer",  "sauna",   "scarf",    "school",   "scooter",
    "season",  "seven",    "shadow",   "shark",    "shelf",   "shell",   "shore",    "shovel",   "signal",
    "silver",  "singer",   "sketch",   "slate",    "sleeve",  "slipper", "snow",     "soccer",   "socket",
    "sofa",    "soup",     "south",    "spark",    "spider",  "spiral",  "sponge",   "spoon",    "spring",
    "spruce",  "squirrel", "stable",   "stadium",  "statue",  "steam",   "stone",    "storm",    "stove",
    "straw",   "stream",   "studio",   "sugar",    "summer",  "sunset",  "swallow",  "swan",     "sweater",
    "table",   "tablet",   "tailor",   "talent",   "target",  "teapot",  "temple",   "tennis",   "thicket",
    "thimble", "thunder",  "ticket",   "tiger",    "timber",  "toast",   "tomato",   "tonic",    "torch",
    "tower",   "tractor",  "trail",    "train",    "trumpet", "tulip",   "tundra",   "tunnel",   "turkey",
    "turnip",  "turtle",   "twelve",   "umbrella", "uncle",   "unicorn", "valley",   "vanilla",  "velvet",
    "village", "vinegar",  "violet",   "violin",   "volcano", "voyage",  "waffle",   "wagon",    "walnut",
    "walrus",  "water",    "weather",  "whale",    "wheel",   "whisper", "willow",   "window",   "winter",
    "wizard",  "wolf",     "wonder",   "wood",     "wool",    "yellow",  "yogurt",   "zebra"};

}  // namespace

std::string words_of(std::string_view bytes, std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count && 2 * i + 1 < bytes.size(); ++i) {
        const auto high = static_cast<unsigned char>(bytes[2 * i]);
        const auto low = static_cast<unsigned char>(bytes[2 * i + 1]);
        if (!text.empty()) text += ' ';
        text += words[(high * 256U + low) % word_count];  // 512 divides 65,536: no word is likelier
    }
    return text;
}

std::string random_words(std::size_t count) {
    return words_of(random_bytes(2 * count), count);
}

}  // namespace hardover::classroom
