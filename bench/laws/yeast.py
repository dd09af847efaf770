"""What yeast does."""

import math

from laws.bag import LN_10, ZERO_CELSIUS
from laws.curve import monotone, on_curve
from laws.enzymes import FASTEST_LOSS, acid_and_lye, invertase, pairs, saturation
from laws.temperature import arrhenius, liquid

# Temperature at which the response is one, and that of the slow loss (°C).
ONE_AT, SLOW_LOSS_AT = 30.0, 40.0
ACIDITIES = (2.0, 3.0, 3.5, 4.0, 6.0, 7.0, 8.0, 9.0, 10.0)
CARBON_PER_HEXOSE = 6.0


def warmth(bag):
    """Rate at a temperature over that at 30 °C (1)."""
    energy, hot_half, hot_energy, cold_half, cold_energy = bag.facts(
        "yeast.response.activation",
        "yeast.response.hot_half",
        "yeast.response.hot_energy",
        "yeast.response.cold_half",
        "yeast.response.cold_energy",
    )
    within, factor_of, exp = liquid(bag), arrhenius(bag), math.exp
    steepness, shift = bag.parameters("steepness", "optimum_shift")

    @bag.jit
    def response(celsius):
        kelvin = within(celsius) + ZERO_CELSIUS
        cold = 1.0 / factor_of(cold_energy, celsius, cold_half)
        hot = factor_of(hot_energy, celsius, hot_half)
        return kelvin * factor_of(energy, celsius, ONE_AT) / (1.0 + hot + cold)

    at_one = response(ONE_AT)
    at_30 = response(ONE_AT - shift) / at_one

    @bag.jit
    def factor(celsius):
        table = response(celsius - shift) / at_one / at_30
        return table * exp(steepness * (celsius - ONE_AT))

    return factor


def fit_for_acidity(bag):
    """Rate at a pH over the best (1)."""
    y = bag.facts(*(f"yeast.ph.{x:g}".replace("3.5", "3_5") for x in ACIDITIES))
    slope, read = monotone(ACIDITIES, y), on_curve(bag)

    @bag.jit
    def factor(ph):
        return read(ACIDITIES, y, slope, ph)

    return factor


def wake_and_die(bag):
    """Waking, and death by heat."""
    AWAKE, ALIVE = bag.places("awake", "alive")
    least, more, start, fade, instant = bag.facts(
        "yeast.wake.least",
        "yeast.wake.more",
        "yeast.wake.from",
        "yeast.wake.fade",
        "yeast.wake.instant",
    )
    kind = 1.0 if bag.yeast == "active_dry" else instant
    slower, d60, death_z = bag.parameters("wake", "d60", "death_z")
    (slow_loss,) = bag.parameters("slow_loss")
    (loss_energy,) = bag.facts("yeast.slow_loss_activation")
    within, factor, exp = liquid(bag), arrhenius(bag), math.exp

    @bag.jit
    def work(celsius, y, dy):
        t = within(celsius)
        waking = kind * (least + more * exp(-(t - start) / fade))
        dy[AWAKE] = (1.0 - y[AWAKE]) / (slower * waking)
        kill = d60 * exp(LN_10 * (60.0 - t) / death_z)
        slow = slow_loss * factor(loss_energy, celsius, SLOW_LOSS_AT)
        dy[ALIVE] = -min(LN_10 / kill + slow, FASTEST_LOSS) * y[ALIVE]

    return work


def osmotic(bag):
    """What dissolved particles leave of the rate (1)."""
    GLUCOSE, FRUCTOSE, GALACTOSE = bag.places("glucose", "fructose", "galactose")
    SUCROSE, MALTOSE, LACTOSE, DEXTRIN = bag.places("sucrose", "maltose", "lactose", "dextrin")
    MALTOTRIOSE, GALACTOSIDES, MELIBIOSE = bag.places("maltotriose", "galactosides", "melibiose")
    salts, solution_l = bag.fixed_numbers("salts_osmol_per_l", "solution_l")
    dextrin_units, steepness = bag.facts("model.dextrin_units", "yeast.osmotic_steepness")
    (half,) = bag.parameters("half_osmotic")

    @bag.jit
    def factor(y):
        singles = y[GLUCOSE] + y[FRUCTOSE] + y[GALACTOSE]
        bound = y[SUCROSE] + y[MALTOSE] + y[LACTOSE] + y[MELIBIOSE]
        threes = y[MALTOTRIOSE] + y[GALACTOSIDES]
        particles = singles + 0.5 * bound + threes / 3.0 + y[DEXTRIN] / dextrin_units
        share = max(salts + 1e-3 * particles / solution_l, 0.0) / half
        return 1.0 / (1.0 + share**steepness)

    return factor


def ferment(bag):
    """Ferments at `fit` of the rate that acidity allows; returns the hexose used (mmol/min)."""
    AWAKE, ALIVE, INDUCED, RESERVE = bag.places("awake", "alive", "induced", "reserve")
    GLUCOSE, FRUCTOSE, MALTOSE = bag.places("glucose", "fructose", "maltose")
    MALTOTRIOSE, GALACTOSE, GALACTOSE_INDUCED = bag.places(
        "maltotriose", "galactose", "galactose_induced"
    )
    DISSOLVED, ETHANOL, BYPRODUCT, WATER_USED = bag.places(
        "dissolved", "ethanol", "byproduct", "water_used"
    )
    solution_l, co2_per_min, reserve_full = bag.fixed_numbers(
        "solution_l", "co2_per_min", "reserve_full"
    )
    hexose_mass, pair_mass, triple_mass, ethanol_mass, per_hexose = bag.facts(
        "stoichiometry.hexose",
        "stoichiometry.disaccharide",
        "stoichiometry.trisaccharide",
        "stoichiometry.ethanol",
        "stoichiometry.co2_per_hexose",
    )
    exponent, half_galactose = bag.facts("yeast.ethanol_exponent", "yeast.half_galactose")
    ratio, half_maltose, half_reserve = bag.parameters(
        "fructose_half_ratio", "half_maltose", "half_reserve"
    )
    half_glucose, fructose_rate, maltose_rate, reserve_rate, induction, ethanol_most = (
        bag.parameters(
            "half_glucose",
            "fructose_rate",
            "maltose_rate",
            "reserve_rate",
            "induction",
            "ethanol_most",
        )
    )
    maltotriose_rate, galactose_rate, galactose_induction, repression = bag.parameters(
        "maltotriose_rate", "galactose_rate", "galactose_induction", "repression"
    )
    half_fructose = ratio * half_glucose
    co2_of, ethanol_of = (
        per_hexose * share for share in bag.parameters("co2_yield", "ethanol_yield")
    )
    warm, crowded, full, two = warmth(bag), osmotic(bag), saturation(bag), pairs(bag)

    @bag.jit
    def work(celsius, fit, y, dy):
        drunk = min(max(1e-3 * ethanol_mass * y[ETHANOL] / solution_l, 0.0) / ethanol_most, 1.0)
        most = co2_per_min / co2_of * max(y[AWAKE], 0.0) * max(y[ALIVE], 0.0)
        most *= warm(celsius) * crowded(y) * (1.0 - drunk**exponent) * fit
        on_glucose = max(1e-3 * hexose_mass * y[GLUCOSE] / solution_l, 0.0) / half_glucose
        on_fructose = max(1e-3 * hexose_mass * y[FRUCTOSE] / solution_l, 0.0) / half_fructose
        theta = 1.0 + on_glucose + on_fructose
        idle = 1.0 - on_glucose / theta - on_fructose / theta
        free, on_maltose = most * idle, 1e-3 * pair_mass * two(y[MALTOSE])
        ready = full(on_maltose, half_maltose)
        on_triples = max(1e-3 * triple_mass / 3.0 * y[MALTOTRIOSE] / solution_l, 0.0)
        triples = on_triples / (half_maltose + max(on_maltose, 0.0) + on_triples)
        on_galactose = full(1e-3 * hexose_mass * y[GALACTOSE] / solution_l, half_galactose)
        glucose = most * (on_glucose / theta)
        fructose = most * fructose_rate * (on_fructose / theta)
        maltose = free * maltose_rate * max(y[INDUCED], 0.0) * ready
        maltotriose = free * maltose_rate * maltotriose_rate * max(y[INDUCED], 0.0) * triples
        galactose = free * galactose_rate * max(y[GALACTOSE_INDUCED], 0.0) ** 3 * on_galactose
        stock = full(y[RESERVE], half_reserve * reserve_full) if y[RESERVE] > 0.0 else 0.0
        reserve = free * reserve_rate * (1.0 + half_reserve) * stock
        hexose = glucose + fructose + maltose + maltotriose + galactose + reserve
        co2, ethanol = co2_of * hexose, ethanol_of * hexose
        dy[GLUCOSE] -= glucose
        dy[FRUCTOSE] -= fructose
        dy[MALTOSE] -= maltose
        dy[MALTOTRIOSE] -= maltotriose
        dy[GALACTOSE] -= galactose
        dy[RESERVE] -= reserve
        busy, call = 1.0 - idle, idle * y[AWAKE]
        dy[INDUCED] = (1.0 - y[INDUCED]) * (call * ready) / induction
        dy[INDUCED] -= y[INDUCED] * busy / repression
        dy[GALACTOSE_INDUCED] = (1.0 - y[GALACTOSE_INDUCED]) * (call * on_galactose)
        dy[GALACTOSE_INDUCED] /= galactose_induction
        dy[GALACTOSE_INDUCED] -= y[GALACTOSE_INDUCED] * busy / repression
        dy[DISSOLVED] += co2
        dy[ETHANOL] = ethanol
        dy[BYPRODUCT] = CARBON_PER_HEXOSE * hexose - co2 - 2.0 * ethanol
        dy[WATER_USED] += 0.5 * (maltose + reserve) + 2.0 / 3.0 * maltotriose
        return hexose

    return work


def invert(bag):
    """The yeast's own invertase, which sits outside the cell."""
    SUCROSE, GALACTOSIDES = bag.places("sucrose", "galactosides")
    activity = 1e-3 * bag.fixed["dry_g"] * bag.parameter["own_invertase"]
    energy, reference = bag.facts("enzyme.invertase.activation", "enzyme.reference")
    split, factor, fit = invertase(bag), arrhenius(bag), acid_and_lye(bag, "invertase")

    @bag.jit
    def work(celsius, ph, y, dy):
        if y[SUCROSE] > 0.0 or y[GALACTOSIDES] > 0.0:
            split(activity * fit(ph) * factor(energy, celsius, reference), y, dy)

    return work
