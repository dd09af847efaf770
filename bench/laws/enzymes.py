"""What enzymes do, and how heat undoes them. Amounts are mmol of hexose units."""

from laws.bag import once
from laws.temperature import arrhenius

# Fastest loss by heat that is followed (1/min).
FASTEST_LOSS = 250.0
# Temperature (°C) to which the loss of each enzyme refers.
LOSS_AT = {
    "glucoamylase": 65,
    "fungal_amylase": 50,
    "bacterial_amylase": 50,
    "neutral_lactase": 60,
    "acid_lactase": 60,
    "invertase": 60,
}


@once
def saturation(bag):
    """Rate over the largest rate by Michaelis and Menten (1)."""

    @bag.jit
    def share(concentration, half):
        concentration = max(concentration, 0.0)
        return concentration / (half + concentration)

    return share


@once
def glucan(bag):
    """Chains in grams per litre."""
    (glucan_mass,) = bag.facts("stoichiometry.glucan_unit")
    (solution_l,) = bag.fixed_numbers("solution_l")

    @bag.jit
    def g_per_l(units):
        return 1e-3 * glucan_mass * units / solution_l

    return g_per_l


@once
def pairs(bag):
    """Disaccharide in mmol of pairs per litre."""
    (solution_l,) = bag.fixed_numbers("solution_l")

    @bag.jit
    def per_l(units):
        return 0.5 * units / solution_l

    return per_l


def glucoamylase(bag):
    """Chains to glucose."""
    COOKED, RAW, DEXTRIN = bag.places("cooked", "raw", "dextrin")
    MALTOSE, GLUCOSE, WATER_USED = bag.places("maltose", "glucose", "water_used")
    half, raw_rate = bag.parameters("enzyme_half", "raw_starch")
    chain_half, maltose_half, raw_half = (
        half * value
        for value in bag.facts(
            "enzyme.glucoamylase.half", "enzyme.glucoamylase.half_maltose", "enzyme.half_raw_starch"
        )
    )
    on_dextrin, on_maltose, pair_mass = bag.facts(
        "enzyme.glucoamylase.on_dextrin",
        "enzyme.glucoamylase.on_maltose",
        "stoichiometry.disaccharide",
    )
    full, chains, two = saturation(bag), glucan(bag), pairs(bag)

    @bag.jit
    def work(activity, y, dy):
        cooked = max(chains(y[COOKED]), 0.0) / chain_half
        dextrin = max(chains(y[DEXTRIN]), 0.0) / chain_half
        maltose = max(1e-3 * pair_mass * two(y[MALTOSE]), 0.0) / maltose_half
        theta = 1.0 + cooked + dextrin + maltose
        cooked = activity * (cooked / theta)
        raw = activity * (raw_rate * full(chains(y[RAW]), raw_half))
        dextrin = activity * (on_dextrin * dextrin / theta)
        maltose = activity * (on_maltose * maltose / theta)
        dy[COOKED] -= cooked
        dy[RAW] -= raw
        dy[DEXTRIN] -= dextrin
        dy[MALTOSE] -= maltose
        dy[GLUCOSE] += cooked + raw + dextrin + maltose
        dy[WATER_USED] += cooked + raw + dextrin + 0.5 * maltose

    return work


def alpha_amylase(bag, kind):
    """Starch to dextrin and maltose."""
    COOKED, RAW, DEXTRIN = bag.places("cooked", "raw", "dextrin")
    MALTOSE, WATER_USED = bag.places("maltose", "water_used")
    half, raw_rate = bag.parameters("enzyme_half", "raw_starch")
    cooked_half, dextrin_half, raw_half = (
        half * value
        for value in bag.facts(
            f"enzyme.{kind}.half", "enzyme.amylase.half_dextrin", "enzyme.half_raw_starch"
        )
    )
    at_once, trims = bag.facts(f"enzyme.{kind}.maltose", f"enzyme.{kind}.on_dextrin")
    full, chains = saturation(bag), glucan(bag)

    @bag.jit
    def work(activity, y, dy):
        cooked = max(chains(y[COOKED]), 0.0) / cooked_half
        dextrin = max(chains(y[DEXTRIN]), 0.0) / dextrin_half
        theta = 1.0 + cooked + dextrin
        cooked = activity * (cooked / theta)
        raw = activity * (raw_rate * full(chains(y[RAW]), raw_half))
        trimmed = activity * (trims * dextrin / theta)
        maltose = at_once * (cooked + raw)
        dy[COOKED] -= cooked
        dy[RAW] -= raw
        dy[DEXTRIN] += cooked + raw - maltose - trimmed
        dy[MALTOSE] += maltose + trimmed
        dy[WATER_USED] += 0.5 * (maltose + trimmed)

    return work


def lactase(bag, kind):
    """Milk sugar to glucose and galactose, which competes."""
    LACTOSE, GALACTOSE, GLUCOSE, WATER_USED = bag.places(
        "lactose", "galactose", "glucose", "water_used"
    )
    lactose_half, galactose_half = bag.facts(f"enzyme.{kind}.half", f"enzyme.{kind}.galactose")
    lactose_half *= bag.parameter["enzyme_half"]
    (solution_l,) = bag.fixed_numbers("solution_l")
    full, two = saturation(bag), pairs(bag)

    @bag.jit
    def work(activity, y, dy):
        galactose = max(y[GALACTOSE] / solution_l, 0.0)
        half = lactose_half * (1.0 + galactose / galactose_half)
        split = activity * full(two(y[LACTOSE]), half)
        dy[LACTOSE] -= 2.0 * split
        dy[GLUCOSE] += split
        dy[GALACTOSE] += split
        dy[WATER_USED] += split

    return work


@once
def invertase(bag):
    """Table sugar to glucose and fructose; added enzyme and the yeast's own alike."""
    SUCROSE, GLUCOSE, FRUCTOSE, WATER_USED = bag.places(
        "sucrose", "glucose", "fructose", "water_used"
    )
    half = bag.parameter["enzyme_half"] * bag.fact["enzyme.invertase.half"]
    full, two = saturation(bag), pairs(bag)

    @bag.jit
    def work(activity, y, dy):
        split = activity * full(two(y[SUCROSE]), half)
        dy[SUCROSE] -= 2.0 * split
        dy[GLUCOSE] += split
        dy[FRUCTOSE] += split
        dy[WATER_USED] += split

    return work


def fading(bag, kind, work):
    """Lets one enzyme work and lose activity; nothing where it is not in the bag."""

    if kind not in bag.enzymes:

        @bag.jit
        def absent(celsius, y, dy):
            pass

        return absent

    at, loss_celsius = bag.place[kind], LOSS_AT[kind]
    energy, loss, loss_energy, reference = bag.facts(
        f"enzyme.{kind}.activation",
        f"enzyme.{kind}.loss_{loss_celsius}c",
        f"enzyme.{kind}.loss_activation",
        "enzyme.reference",
    )
    factor, more = arrhenius(bag), bag.parameter["enzyme_loss"]

    @bag.jit
    def present(celsius, y, dy):
        lost = more * (loss * factor(loss_energy, celsius, loss_celsius))
        dy[at] = -min(lost, FASTEST_LOSS) * y[at]
        work(max(y[at], 0.0) * factor(energy, celsius, reference), y, dy)

    return present


def enzymes(bag):
    """All enzymes."""
    first = fading(bag, "glucoamylase", glucoamylase(bag))
    second = fading(bag, "fungal_amylase", alpha_amylase(bag, "fungal_amylase"))
    third = fading(bag, "bacterial_amylase", alpha_amylase(bag, "bacterial_amylase"))
    fourth = fading(bag, "neutral_lactase", lactase(bag, "neutral_lactase"))
    fifth = fading(bag, "acid_lactase", lactase(bag, "acid_lactase"))
    sixth = fading(bag, "invertase", invertase(bag))

    @bag.jit
    def work(celsius, y, dy):
        first(celsius, y, dy)
        second(celsius, y, dy)
        third(celsius, y, dy)
        fourth(celsius, y, dy)
        fifth(celsius, y, dy)
        sixth(celsius, y, dy)

    return work
