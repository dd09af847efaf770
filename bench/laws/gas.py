"""Carbon dioxide between liquid, gas and room."""

import math

from laws.bag import LN_10, ZERO_CELSIUS
from laws.temperature import liquid


def vapour_pressure(bag):
    """Saturation pressure of water (Pa)."""
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = bag.facts(
        *(f"water.vapour.n{i}" for i in range(1, 11))
    )
    within, sqrt = liquid(bag), math.sqrt

    @bag.jit
    def pascal(celsius):
        kelvin = within(celsius) + ZERO_CELSIUS
        theta = kelvin + n9 / (kelvin - n10)
        a = (theta + n1) * theta + n2
        b = (n3 * theta + n4) * theta + n5
        c = (n6 * theta + n7) * theta + n8
        root = 2.0 * c / (-b + sqrt(b * b - 4.0 * a * c))
        square = root * root
        return 1e6 * square * square

    return pascal


def solubility(bag):
    """Carbon dioxide dissolved under its own gas (mol/(kg·Pa))."""
    h0, h1, h2, h3 = bag.facts(*(f"carbon_dioxide.henry.a{i}" for i in range(4)))
    (water_mass,) = bag.facts("stoichiometry.water")
    within, exp = liquid(bag), math.exp

    @bag.jit
    def mol_per_kg_pa(celsius):
        per_kelvin = 1.0 / (within(celsius) + ZERO_CELSIUS)
        ln_mpa = ((h3 * per_kelvin + h2) * per_kelvin + h1) * per_kelvin + h0
        return 1e-6 * 1e3 / (water_mass * exp(ln_mpa))

    return mol_per_kg_pa


def salt_factor(bag):
    """What salt leaves of that (1)."""
    at_25, at_40, at_60 = bag.facts(*(f"carbon_dioxide.salting_{t}c" for t in (25, 40, 60)))
    exp = math.exp

    @bag.jit
    def factor(mol_per_kg, celsius):
        if mol_per_kg <= 0.0:
            return 1.0
        t = min(max(celsius, 25.0), 60.0)
        if t < 40.0:
            k = at_25 + (at_40 - at_25) * (t - 25.0) / 15.0
        else:
            k = at_40 + (at_60 - at_40) * (t - 40.0) / 20.0
        return exp(-LN_10 * k * mol_per_kg)

    return factor


def through_film(bag):
    """Carbon dioxide through the film (mol/(m²·s)) at a temperature and pressure inside."""
    film, energy, molar_volume, atmosphere, gas_constant = bag.facts(
        "permeation.ldpe_carbon_dioxide",
        "permeation.activation",
        "constants.standard_molar_volume",
        "constants.atmosphere",
        "constants.gas",
    )
    (film_um,) = bag.fixed_numbers("film_um")
    # cm³ · mil per 100 in², day and atmosphere.
    trade_unit = 1e-3 / molar_volume * 25.4e-6
    trade_unit /= 100.0 * 0.0254 * 0.0254 * 86400.0 * atmosphere
    within, exp = liquid(bag), math.exp

    @bag.jit
    def flow(celsius, pascal):
        colder = 1.0 / (within(celsius) + ZERO_CELSIUS) - 1.0 / 298.15
        permeability = film * trade_unit * exp(-1e3 * energy / gas_constant * colder)
        return permeability * pascal / (film_um * 1e-6)

    return flow


def dry_pressure(bag):
    """Pressure of the gas without its steam (Pa)."""
    (pressure,) = bag.fixed_numbers("pressure")
    (most_steam,) = bag.facts("gas.most_steam")
    steam = vapour_pressure(bag)

    @bag.jit
    def pascal(celsius):
        return pressure - min(steam(celsius), most_steam * pressure)

    return pascal


def exchange(bag):
    """Moves carbon dioxide, of which `dissolved` mmol are in that form; `dry` is the gas's pressure
    without its steam."""
    DISSOLVED, GAS, PERMEATED = bag.places("dissolved", "gas", "permeated")
    water_kg, salt, air, half_pocket, face_m2 = bag.fixed_numbers(
        "water_kg", "salt_mol_per_kg", "air", "half_pocket", "face_m2"
    )
    release, permeability = bag.parameters("release", "permeability")
    per_pascal = solubility(bag)
    left_by_salt, flow = salt_factor(bag), through_film(bag)

    @bag.jit
    def move(celsius, dry, dissolved, y, dy):
        gases = y[GAS] + air
        share = min(max(y[GAS] / gases, 0.0), 1.0) if gases > 0.0 else 1.0
        full = 1e3 * per_pascal(celsius) * left_by_salt(salt, celsius) * water_kg * dry
        open_to_gas = gases / (gases + half_pocket)
        out = release * (open_to_gas * (dissolved - full * share) + max(dissolved - full, 0.0))
        leak = permeability * open_to_gas * face_m2 * 6e4 * flow(celsius, share * dry)
        dy[DISSOLVED] -= out
        dy[GAS] = out - leak
        dy[PERMEATED] = leak

    return move
