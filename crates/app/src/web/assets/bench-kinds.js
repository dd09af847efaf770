// @ts-check
// The shapes that the scripts of the bench page pass to each other; nothing here runs.

/**
 * An entry that was typed here.
 * @typedef {object} Entry
 * @property {string} key its own key, made here
 * @property {string | null} bag code of the bag; none for the group
 * @property {"sealed" | "zero" | "reading" | "correction" | "odd" | "odd-back" | "made" | "vented" | "guess"} what
 * @property {number} at the device's clock (ms)
 * @property {number | null} offset how far the program's clock was ahead (ms), if it was known
 * @property {number} [mm]
 * @property {number | null} [planned]
 * @property {string} [of] key of the height that it corrects, or of the tap that it takes back
 * @property {string} [odd]
 * @property {number} [celsius] of the water at pouring
 * @property {number} [plan] version of the plan
 * @property {[string, number][]} [expects]
 * @property {string} [because]
 * @property {string} [words] key of those words
 */

/**
 * What is kept of an entry on this device.
 * @typedef {object} Kept
 * @property {string} key
 * @property {Entry} entry
 * @property {string} seat the group that it was typed for
 * @property {"kept" | "saved" | "refused"} state
 */

/**
 * A height of a bag that counts.
 * @typedef {object} Height
 * @property {string} key
 * @property {number} at_ms on the program's clock
 * @property {number | null} planned
 * @property {number} mm
 * @property {"group" | "teacher" | "paper" | "device"} who
 * @property {number[]} was what stood there before
 * @property {boolean} confirmed looked at again and left as it is
 * @property {boolean} rival
 * @property {"kept" | "saved"} [state]
 */

/**
 * A bag of the group.
 * @typedef {object} Bag
 * @property {string} code
 * @property {string} letter
 * @property {Record<string, string>} treatment what is in it, by language
 * @property {number} look
 * @property {boolean} hollow
 * @property {number} full_mm
 * @property {{amount: string, thing: Record<string, string>}[]} dry the thing by language
 * @property {{amount: string, degrees: string}} water
 * @property {"bench" | "towel" | "tray"} lies
 * @property {string} asks
 * @property {boolean} sealed
 * @property {Height | null} zero
 * @property {Height[]} other_zeros
 * @property {Height[]} readings
 * @property {[number, string, string | null][]} odd when, what, and the key where this group may take it back
 * @property {number | null} poured how warm the water was at pouring (°C)
 * @property {boolean} vented
 * @property {boolean} lost
 */

/**
 * The clocks of the period, on the program's clock (ms) or in seconds after the bell.
 * @typedef {object} Clock
 * @property {number | null} began_ms
 * @property {number | null} ended_ms
 * @property {[number, number | null][]} stopped
 * @property {number | null} start_s
 * @property {number} clearing_s
 * @property {number[]} minutes
 */

/**
 * What the server says of the group.
 * @typedef {object} Scene
 * @property {number} now_ms
 * @property {number} [speed] how many times as fast as a true clock the program's runs
 * @property {string} seat
 * @property {"real" | "rehearsal" | "invented"} kind
 * @property {string} period
 * @property {number} group
 * @property {string | null} label
 * @property {"confirmation" | "structured" | "guided" | "open"} inquiry
 * @property {number} plan
 * @property {number | null} older version of the plan that stands behind a name on the page
 * @property {"class" | "simulated" | null} stand_in whose numbers stand in for the group's own
 * @property {Record<string, string> | null} opened what the teacher gave or opened, as markup of
 *   the program's, by language
 * @property {Clock} clock
 * @property {{at_ms: number, expects: [string, number][]} | null} guess
 * @property {Bag[]} bags
 * @property {string[]} keys
 * @property {string[]} refused
 */

export {};
