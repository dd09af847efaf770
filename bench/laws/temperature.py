"""Warmth: what temperature does to a rate, and how a bag takes on that of its surroundings."""

import math

from laws.bag import ZERO_CELSIUS, once


@once
def liquid(bag):
    """The nearest temperature at which water is liquid (°C)."""

    @bag.jit
    def within(celsius):
        return min(max(celsius, 0.0), 100.0)

    return within


@once
def arrhenius(bag):
    """Factor of Arrhenius between two temperatures (1)."""
    (gas_constant,) = bag.facts("constants.gas")
    within, exp = liquid(bag), math.exp

    @bag.jit
    def factor(kj, celsius, reference):
        colder = 1.0 / (within(celsius) + ZERO_CELSIUS) - 1.0 / (reference + ZERO_CELSIUS)
        return exp(-1e3 * kj / gas_constant * colder)

    return factor


def upper_face(bag):
    """Heat through the upper face, over a layer of wet gas (W/(m²·K)), with that gas's steam (Pa)."""
    to_air, radiation, own, diffusivity, latent, turning = bag.facts(
        "cooling.to_air",
        "cooling.across_by_radiation",
        "cooling.gas_conductivity",
        "cooling.steam_diffusivity",
        "cooling.vaporization",
        "cooling.turning_depth",
    )
    (gas_constant,) = bag.facts("constants.gas")
    (mm_per_ml,) = bag.fixed_numbers("mm_per_ml")
    latent *= 1e3

    @bag.jit
    def watts(kelvin, gas_ml, steam):
        rt = gas_constant * kelvin
        conductivity = own + diffusivity * latent * (steam / rt) * (latent / rt - 1.0) / kelvin
        metres = 1e-3 * mm_per_ml * gas_ml
        across = conductivity + (radiation + 1e3 * conductivity / turning) * metres
        return to_air * across / (across + to_air * metres)

    return watts


def cooling(bag):
    """Change of a bag's temperature without its own heat (K/min)."""
    (GAS,) = bag.places("gas")
    room, upper, floor, in_tray, at_zero, tray_per_min, first, per_ml = bag.fixed_numbers(
        "room_celsius",
        "upper_per_min",
        "floor_per_min",
        "in_tray",
        "tray_at_zero_celsius",
        "tray_per_min",
        "fill_at_first",
        "fill_per_ml",
    )
    pressure, air = bag.fixed_numbers("pressure", "air")
    wet, wet_loss, gas_constant = bag.facts(
        "cooling.wet_floor", "cooling.wet_floor_loss", "constants.gas"
    )
    within, through, exp = liquid(bag), upper_face(bag), math.exp

    @bag.jit
    def kelvin_per_min(minute, celsius, dry, y):
        kelvin = within(celsius) + ZERO_CELSIUS
        gas_ml = 1e3 * max(y[GAS] + air, 0.0) * gas_constant * kelvin / dry
        fill = min(max(first + gas_ml * per_ml, 0.0), 1.0)
        above = upper * through(kelvin, gas_ml, pressure - dry)
        below = floor * (wet - wet_loss * fill * fill)
        if in_tray > 0.0:
            tray = max(room + (at_zero - room) * exp(-tray_per_min * minute), 0.0)
        else:
            tray = room
        return above * (room - celsius) + below * (tray - celsius)

    return kelvin_per_min
