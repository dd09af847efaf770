"""The rule of the race: everybody at the loosest setting that is good enough.

Error: the largest over all states and whole minutes of |y − reference| / max(|reference|, floor). The
floor keeps what is next to nothing from deciding: a millionth of the most that any state of the same
unit reaches in that bag. It is the same for everybody.

Setting: a relative tolerance r from a grid of ten to a decade, and for state i the absolute tolerance
r · share · (most of the same unit). Each contestant is tried with several shares, goes down the grid
from loose to tight until it is good enough, and keeps the setting that took the fewest evaluations.
"""

import numpy as np

from contestants import Failed, Scipy

FLOOR = 1e-6
GOOD = 1e-5
SHARES = (1.0, 1e-2, 1e-4, 1e-6)
# Decades of the relative tolerance.
LOOSEST, TIGHTEST = -2, -13
# How far two references of different kinds may lie apart.
REFERENCES_AGREE = 1e-9

# States that are neither amounts (mmol) nor activities.
UNITS = {"celsius": "°C", "awake": "1", "alive": "1", "induced": "1", "vigor": "1"}


def unit(name, enzymes):
    """Unit of a state."""
    return UNITS.get(name, "mmol/min" if name in enzymes else "mmol")


class Ruler:
    """Measures errors in one bag."""

    def __init__(self, names, enzymes, reference):
        units = [unit(name, enzymes) for name in names]
        peaks = np.abs(reference).max(axis=0)
        self.most = np.array(
            [max(peak for peak, its in zip(peaks, units) if its == own) for own in units]
        )
        # A unit that nothing in the bag has: no error can arise there.
        self.most[self.most == 0.0] = 1.0
        self.reference = reference
        self._size = np.maximum(np.abs(reference), FLOOR * self.most)

    def error(self, states):
        """Largest relative error."""
        return float(np.max(np.abs(states - self.reference) / self._size))

    def worst(self, states, names):
        """State and minute of the largest error."""
        off = np.abs(states - self.reference) / self._size
        minute, place = np.unravel_index(np.argmax(off), off.shape)
        return names[place], int(minute)


def reference(right_hand_side, bag, names, enzymes):
    """States to about 1e-11, by an explicit method, checked by an implicit one; with how far they
    lie apart."""
    count = len(bag["start"])
    found = []
    for method, relative in (("DOP853", 1e-13), ("Radau", 1e-12)):
        solver = Scipy(method, right_hand_side, "", bag)
        solver.set(relative, np.full(count, 1e-18))
        found.append(solver.solve())
    ruler = Ruler(names, enzymes, found[0])
    apart = ruler.error(found[1])
    if apart > REFERENCES_AGREE:
        state, minute = ruler.worst(found[1], names)
        raise SystemExit(
            f"The two references of '{bag['name']}' differ by {apart:.1e}, most in {state} at "
            f"{minute} min: nothing can be compared with them."
        )
    return ruler, apart


def attempt(contestant, ruler, decade, share):
    """Error at a setting; endless where the solver gives up."""
    relative = 10.0**decade
    contestant.set(relative, relative * share * ruler.most)
    try:
        states = contestant.solve()
    except Failed:
        return np.inf
    error = ruler.error(states)
    return error if np.isfinite(error) else np.inf


def loosest(contestant, ruler, share):
    """First decade on the grid, from loose to tight, that is good enough, with its error."""
    for whole in range(LOOSEST, TIGHTEST - 1, -1):
        if attempt(contestant, ruler, whole, share) <= GOOD:
            break
    else:
        return None
    for tenth in range(9, -1, -1):
        decade = whole + 0.1 * tenth
        error = attempt(contestant, ruler, decade, share)
        if error <= GOOD:
            return decade, error
    return None


def settle(contestant, ruler, shares=SHARES):
    """Finds a contestant's setting and leaves it set; `None` where it never gets good enough."""
    best = None
    for share in shares:
        found = loosest(contestant, ruler, share)
        if found is None:
            continue
        decade, error = found
        cost = contestant.evaluations()
        if best is None or cost < best["evaluations"]:
            best = {
                "decade": decade,
                "share": share,
                "relative": 10.0**decade,
                "error": error,
                "evaluations": cost,
            }
    if best is not None:
        attempt(contestant, ruler, best["decade"], best["share"])
    return best
