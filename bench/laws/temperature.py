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


def cooling(bag):
    """Change of a bag's temperature without its own heat (K/min)."""
    room, to_room, to_tray, at_zero, tray_per_min = bag.fixed_numbers(
        "room_celsius",
        "to_room_per_min",
        "to_tray_per_min",
        "tray_at_zero_celsius",
        "tray_per_min",
    )
    exp = math.exp

    @bag.jit
    def kelvin_per_min(minute, celsius):
        change = to_room * (room - celsius)
        if to_tray > 0.0:
            tray = max(room + (at_zero - room) * exp(-tray_per_min * minute), 0.0)
            change += to_tray * (tray - celsius)
        return change

    return kelvin_per_min
