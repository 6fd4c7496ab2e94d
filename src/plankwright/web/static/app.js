// Small helps for those whose browser runs scripts; every page works without.
import "./focus.js";
import "./fractions.js";
import "./keys.js";
import "./taps.js";
import "./map.js";
import "./queue.js";
import "./draft.js";
import "./awake.js";
import "./unsaved.js";
