"""The bag model a second time: the same laws, written apart from the program.

One source runs in two ways: as plain Python on lists of floats, and compiled by numba on arrays.
Numbers come by name, from what the program says of itself, so that a changed number follows by
itself; a changed law has to be changed here as well, and `compare.py` stops until it is. The
equations stand in docs/science.
"""

from math import nan

from laws.acidity import speciation
from laws.bag import Bag
from laws.enzymes import enzymes
from laws.gas import dry_pressure, exchange
from laws.temperature import cooling
from laws.yeast import ferment, fit_for_acidity, invert, wake_and_die


def build(about, bag, jit=lambda function: function):
    """Rates of change `rates(minute, y, dy)` of one bag of `about`, which is the answer of `contest`
    to the command `about`; `jit` compiles each function, or leaves it as it is."""
    bag = Bag(about, bag, jit)
    count = bag.count
    CELSIUS, DISSOLVED, GAS, PERMEATED = bag.places("celsius", "dissolved", "gas", "permeated")
    (own_heat,) = bag.parameters("own_heat")
    (j_per_k,) = bag.fixed_numbers("j_per_k")
    (of_release,) = bag.facts("stoichiometry.heat_of_release")
    of_enzymes, of_gas, of_heat = enzymes(bag), exchange(bag), cooling(bag)
    without_steam = dry_pressure(bag)
    liquid = acidity(bag)
    crowd = yeast(bag)

    @jit
    def rates(minute, y, dy):
        for i in range(count):
            dy[i] = 0.0
        celsius = y[CELSIUS]
        fit, as_gas, ph = liquid(celsius, y[DISSOLVED])
        of_enzymes(celsius, ph, y, dy)
        hexose = crowd(celsius, fit, ph, y, dy)
        dry = without_steam(celsius)
        of_gas(celsius, dry, as_gas * y[DISSOLVED], y, dy)
        own = own_heat * hexose - of_release * (dy[GAS] + dy[PERMEATED])
        dy[CELSIUS] = of_heat(minute, celsius, dry, y) + own / j_per_k

    return rates


def acidity(bag):
    """What acidity leaves of the yeast's rate, the share of the carbon that is carbon dioxide, and the
    pH; followed where soda or acid make it matter, else those of a bag near pH 5, whose pH is no number
    where nothing minds it."""
    if bag.fixed["acidity_followed"] > 0.0:
        species, factor = speciation(bag), fit_for_acidity(bag)

        @bag.jit
        def followed(celsius, dissolved):
            ph, as_gas = species(celsius, dissolved)
            return factor(ph), as_gas, ph

        return followed

    share, ph = bag.fixed_numbers("share_at_rest", "ph_at_rest")
    if ph == 0.0:
        fit, ph = 1.0, nan
    else:
        fit = fit_for_acidity(bag)(ph)

    @bag.jit
    def at_rest(celsius, dissolved):
        return fit, share, ph

    return at_rest


def yeast(bag):
    """All that yeast does; nothing where there is none."""
    if bag.yeast is not None:
        live, split, eat = wake_and_die(bag), invert(bag), ferment(bag)

        @bag.jit
        def present(celsius, fit, ph, y, dy):
            live(celsius, y, dy)
            split(celsius, ph, y, dy)
            return eat(celsius, fit, y, dy)

        return present

    @bag.jit
    def absent(celsius, fit, ph, y, dy):
        return 0.0

    return absent
