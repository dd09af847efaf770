"""How acid a liquid with soda is, and how much of its inorganic carbon is carbon dioxide."""

import math

from laws.bag import LN_10, ZERO_CELSIUS
from laws.temperature import liquid

# Smallest difference between one and the next number.
EPSILON = 2.220446049250313e-16


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


def hydrogen(bag):
    """Hydrogen ion (mol/L) from the charge balance, by halvings and then Newton's method."""
    base, acid = bag.fixed_numbers("base_mol_per_kg", "acid_mol_per_kg")
    (pka,) = bag.facts("carbonate.food_acid_pka")
    k_acid, sqrt = math.exp(-LN_10 * pka), math.sqrt

    @bag.jit
    def solve(carbon, k1, k2, kw):
        low, high = 1e-15, 10.0
        h = sqrt(low * high)
        for _ in range(70):
            over = k1 * (h + 2.0 * k2)
            under = h * h + k1 * (h + k2)
            free = k_acid / (k_acid + h)
            charge = base + h - kw / h - carbon * over / under - acid * free
            bend = (k1 * under - over * (2.0 * h + k1)) / (under * under)
            slope = 1.0 + kw / (h * h) - carbon * bend + acid * free / (k_acid + h)
            if charge > 0.0:
                high = h
            else:
                low = h
            newton = h - charge / slope
            if high < 2.0 * low and low <= newton and newton <= high:
                following = newton
            else:
                following = sqrt(low * high)
            if abs(following - h) <= 4.0 * EPSILON * h:
                return following
            h = following
        return h

    return solve


def speciation(bag):
    """pH, and the share of the inorganic carbon that is carbon dioxide (1)."""
    first, second = (
        bag.facts(*(f"carbonate.{which}.{c}" for c in "abcde")) for which in ("first", "second")
    )
    w_a, w_b, w_c = bag.facts(*(f"carbonate.water.{c}" for c in "abc"))
    (water_kg,) = bag.fixed_numbers("water_kg")
    within, log10_of, ion = liquid(bag), plummer(bag), hydrogen(bag)
    exp, log10 = math.exp, math.log10

    @bag.jit
    def of(celsius, dissolved):
        kelvin = within(celsius) + ZERO_CELSIUS
        k1 = exp(LN_10 * log10_of(first, kelvin))
        k2 = exp(LN_10 * log10_of(second, kelvin))
        kw = exp(-LN_10 * (w_a / kelvin + w_b + w_c * kelvin))
        h = ion(1e-3 * max(dissolved, 0.0) / water_kg, k1, k2, kw)
        return -log10(h), h * h / (h * h + k1 * (h + k2))

    return of
