"""Whether the model here and the program's give the same rates."""

import math

from numba import njit
import numpy as np

from model import build

# Relative difference up to which two rates are the same.
SAME = 1e-12


# A rate under this share of the most that it reaches in its bag is the small difference of larger terms,
# which both sides round: it is compared with that share instead.
LEAST = 0.01


def apart(ours, theirs, least):
    """Relative difference of two numbers of which at least so much counts; two zeros are the same, and
    nothing is like no number."""
    size = max(abs(ours), abs(theirs), least)
    return abs(ours - theirs) / size if size != 0.0 else 0.0


def compiled_rates(about, bag):
    """Rates of one bag, compiled."""
    return build(about, bag, njit(error_model="numpy"))


def check(about, compiling):
    """Compares every shown rate, plain, and compiled for the bags named in `compiling`.

    Returns how many were compared, the largest difference, and the compiled rates of those bags;
    stops at the first bag with a larger difference than `SAME`, naming the states.
    """
    compared, most, compiled = 0, 0.0, {}
    for bag in about["bags"]:
        plain = build(about, bag)
        fast = compiled_rates(about, bag) if bag["name"] in compiling else None
        if fast is not None:
            compiled[bag["name"]] = fast
        worst = dict.fromkeys(about["states"], 0.0)
        columns = zip(*(shown["rates"] for shown in bag["shown"]))
        least = [LEAST * max(map(abs, column)) for column in columns]
        for shown in bag["shown"]:
            found = [[math.nan] * len(worst)]
            plain(shown["minute"], shown["state"], found[0])
            if fast is not None:
                found.append(np.full(len(worst), math.nan))
                fast(shown["minute"], np.array(shown["state"]), found[1])
            for ours in found:
                for name, a, b, few in zip(worst, ours, shown["rates"], least):
                    compared += 1
                    off = apart(a, b, few)
                    worst[name] = off if off > worst[name] or math.isnan(off) else worst[name]
        wrong = {name: off for name, off in worst.items() if not off <= SAME}
        if wrong:
            raise SystemExit(
                f"The bag '{bag['name']}' has other rates here than in the program. A law was "
                "changed there and not in bench/laws. Largest relative differences:\n"
                + "\n".join(f"  {name}: {off:.1e}" for name, off in wrong.items())
            )
        most = max(most, *worst.values())
    return compared, most, compiled
