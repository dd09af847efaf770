"""How acid a liquid is, and how much of its inorganic carbon is carbon dioxide."""

import math

from laws.bag import LN_10, ZERO_CELSIUS
from laws.temperature import liquid


def plummer(bag):
    """log10 of a constant of carbonic acid."""
    log10 = math.log10

    @bag.jit
    def value(terms, kelvin):
        return (
            terms[0]
            + terms[1] * kelvin
            + terms[2] / kelvin
            + terms[3] * log10(kelvin)
            + terms[4] / (kelvin * kelvin)
        )

    return value


def products(pkas, less):
    """Products of an acid's constants among ions that take `less` off the logarithm of a charge."""
    found, total = [], 0.0
    for step, pka in enumerate(pkas):
        total += pka - (2.0 * step + 1.0) * less
        found.append(math.exp(-LN_10 * total))
    return tuple(found + [0.0] * (3 - len(found)))


def ions(bag):
    """By how much the logarithm of a single charge's activity coefficient lies under zero (Davies)."""
    constant, most = bag.facts("carbonate.debye_hueckel", "carbonate.most_ionic")
    (ionic,) = bag.fixed_numbers("ionic_mol_per_kg")
    ionic = min(max(ionic, 0.0), most)
    root = math.sqrt(ionic)
    return constant * (root / (1.0 + root) - 0.3 * ionic)


def of_charge(bag):
    """Mean charge that a molecule of an acid has given up, and its variance, with 1/h."""

    @bag.jit
    def charge(b1, b2, b3, inverse):
        one = b1 * inverse
        two = b2 * inverse * inverse
        three = b3 * inverse * inverse * inverse
        every = 1.0 / (1.0 + one + two + three)
        mean = (one + 2.0 * two + 3.0 * three) * every
        return mean, (one + 4.0 * two + 9.0 * three) * every - mean * mean

    return charge


def balance(bag):
    """pH from the charge balance, by Newton's method in pH, halved where that leaves the bracket."""
    base, buffer, buffer_ph = bag.fixed_numbers(
        "base_mol_per_kg", "buffer_mol_per_kg", "buffer_ph"
    )
    acetic, malic, citric, lactic = bag.fixed_numbers(
        *(f"{acid}_mol_per_kg" for acid in ("acetic", "malic", "citric", "lactic"))
    )
    less = ions(bag)
    per_activity = math.exp(LN_10 * less)
    pka = {
        acid: bag.facts(*(f"carbonate.{acid}_pka{step}" for step in steps))
        for acid, steps in (
            ("acetic", ("",)),
            ("malic", (".1", ".2")),
            ("citric", (".1", ".2", ".3")),
            ("lactic", ("",)),
        )
    }
    a1, _, _ = products(pka["acetic"], less)
    m1, m2, _ = products(pka["malic"], less)
    c1, c2, c3 = products(pka["citric"], less)
    l1, _, _ = products(pka["lactic"], less)
    mean_of, exp = of_charge(bag), math.exp

    @bag.jit
    def solve(carbon, k1, k12, kw):
        low, high, ph = -2.0, 16.0, 6.0
        for _ in range(60):
            inverse = exp(LN_10 * ph)
            hydrogen, hydroxide = 1.0 / inverse, kw * inverse
            charge = base + buffer * (buffer_ph - ph) + (hydrogen - hydroxide) * per_activity
            bend = (hydrogen + hydroxide) * per_activity
            mean, variance = mean_of(k1, k12, 0.0, inverse)
            charge -= carbon * mean
            bend += carbon * variance
            mean, variance = mean_of(a1, 0.0, 0.0, inverse)
            charge -= acetic * mean
            bend += acetic * variance
            mean, variance = mean_of(m1, m2, 0.0, inverse)
            charge -= malic * mean
            bend += malic * variance
            mean, variance = mean_of(c1, c2, c3, inverse)
            charge -= citric * mean
            bend += citric * variance
            mean, variance = mean_of(l1, 0.0, 0.0, inverse)
            charge -= lactic * mean
            bend += lactic * variance
            if charge > 0.0:
                low = ph
            else:
                high = ph
            newton = ph + charge / (buffer + LN_10 * bend)
            inside = low <= newton and newton <= high
            following = newton if inside else 0.5 * (low + high)
            moved = abs(following - ph)
            ph = following
            if (inside and moved < 1e-9) or high - low < 1e-14:
                break
        return ph

    return solve


def speciation(bag):
    """pH, and the share of the inorganic carbon that is carbon dioxide (1)."""
    first, second = (
        bag.facts(*(f"carbonate.{which}.{c}" for c in "abcde")) for which in ("first", "second")
    )
    w_a, w_b, w_c = bag.facts(*(f"carbonate.water.{c}" for c in "abc"))
    (water_kg,) = bag.fixed_numbers("water_kg")
    less = ions(bag)
    within, log10_of, balanced = liquid(bag), plummer(bag), balance(bag)
    exp = math.exp

    @bag.jit
    def of(celsius, dissolved):
        kelvin = within(celsius) + ZERO_CELSIUS
        one, two = log10_of(first, kelvin), log10_of(second, kelvin)
        k1 = exp(LN_10 * (one + less))
        k12 = exp(LN_10 * (one + two + 4.0 * less))
        kw = exp(-LN_10 * (w_a / kelvin + w_b + w_c * kelvin))
        ph = balanced(1e-3 * max(dissolved, 0.0) / water_kg, k1, k12, kw)
        inverse = exp(LN_10 * ph)
        return ph, 1.0 / (1.0 + inverse * (k1 + inverse * k12))

    return of
