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
    "beta_amylase": 65,
    "alpha_galactosidase": 65,
}
# Enzymes that are known in milk; the others in a bag of yeast and flour or sugar.
OF_MILK = ("neutral_lactase", "acid_lactase")


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
    (half,), (raw_rate,) = bag.parameters("enzyme_half"), bag.fixed_numbers("raw_attack")
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


def amylase(bag, kind):
    """Starch to dextrin and maltose; beta-amylase leaves raw granules alone."""
    COOKED, RAW, DEXTRIN = bag.places("cooked", "raw", "dextrin")
    MALTOSE, WATER_USED = bag.places("maltose", "water_used")
    (half,), (raw_rate,) = bag.parameters("enzyme_half"), bag.fixed_numbers("raw_attack")
    if kind == "beta_amylase":
        raw_rate = 0.0
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
    """Table sugar to glucose and fructose, raffinose to melibiose and fructose; added enzyme and the
    yeast's own alike."""
    SUCROSE, GLUCOSE, FRUCTOSE, WATER_USED = bag.places(
        "sucrose", "glucose", "fructose", "water_used"
    )
    GALACTOSIDES, MELIBIOSE = bag.places("galactosides", "melibiose")
    more = bag.parameter["enzyme_half"]
    half, half_raffinose = (
        more * value
        for value in bag.facts("enzyme.invertase.half", "enzyme.invertase.half_raffinose")
    )
    (on_raffinose,) = bag.facts("enzyme.invertase.on_raffinose")
    (solution_l,) = bag.fixed_numbers("solution_l")
    two = pairs(bag)

    @bag.jit
    def work(activity, y, dy):
        sucrose = max(two(y[SUCROSE]), 0.0) / half
        raffinose = max(y[GALACTOSIDES] / 3.0 / solution_l, 0.0) / half_raffinose
        theta = 1.0 + sucrose + raffinose
        split = activity * (sucrose / theta)
        threes = activity * (on_raffinose * raffinose / theta)
        dy[SUCROSE] -= 2.0 * split
        dy[GALACTOSIDES] -= 3.0 * threes
        dy[MELIBIOSE] += 2.0 * threes
        dy[GLUCOSE] += split
        dy[FRUCTOSE] += split + threes
        dy[WATER_USED] += split + threes

    return work


def galactosidase(bag):
    """Galactose off raffinose and melibiose, with galactose competing."""
    GALACTOSIDES, MELIBIOSE, SUCROSE = bag.places("galactosides", "melibiose", "sucrose")
    GALACTOSE, GLUCOSE, WATER_USED = bag.places("galactose", "glucose", "water_used")
    plain_half, galactose_half = bag.facts(
        "enzyme.alpha_galactosidase.half", "enzyme.alpha_galactosidase.galactose"
    )
    plain_half *= bag.parameter["enzyme_half"]
    (solution_l,) = bag.fixed_numbers("solution_l")
    full = saturation(bag)

    @bag.jit
    def work(activity, y, dy):
        raffinose = max(y[GALACTOSIDES], 0.0) / 3.0
        melibiose = 0.5 * max(y[MELIBIOSE], 0.0)
        both = raffinose + melibiose
        if both > 0.0:
            galactose = max(y[GALACTOSE] / solution_l, 0.0)
            half = plain_half * (1.0 + galactose / galactose_half)
            at_work = activity * full(both / solution_l, half)
            threes, twos = at_work * raffinose / both, at_work * melibiose / both
            dy[GALACTOSIDES] -= 3.0 * threes
            dy[SUCROSE] += 2.0 * threes
            dy[MELIBIOSE] -= 2.0 * twos
            dy[GLUCOSE] += twos
            dy[GALACTOSE] += threes + twos
            dy[WATER_USED] += threes + twos

    return work


@once
def acid_and_lye(bag, kind):
    """Rate at a pH over that at the usual one; one where the pH is not worked out (no number)."""
    acid, lye, usual = bag.facts(
        f"enzyme.{kind}.acid_half",
        f"enzyme.{kind}.lye_half",
        "enzyme.usual_ph_milk" if kind in OF_MILK else "enzyme.usual_ph",
    )
    at_usual = 1.0 / (1.0 + 10.0 ** (acid - usual) + 10.0 ** (usual - lye))

    @bag.jit
    def factor(ph):
        if ph != ph:
            return 1.0
        return 1.0 / (1.0 + 10.0 ** (acid - ph) + 10.0 ** (ph - lye)) / at_usual

    return factor


def fading(bag, kind, work):
    """Lets one enzyme work and lose activity; nothing where it is not in the bag."""

    if kind not in bag.enzymes:

        @bag.jit
        def absent(celsius, ph, y, dy):
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
    fit, by_acid, order = acid_and_lye(bag, kind), 0.0, 0.0
    if kind == "fungal_amylase":
        by_acid, order = bag.facts(
            "enzyme.fungal_amylase.acid_loss", "enzyme.fungal_amylase.acid_loss_order"
        )

    @bag.jit
    def present(celsius, ph, y, dy):
        lost = more * (loss * factor(loss_energy, celsius, loss_celsius))
        if ph == ph and by_acid > 0.0:
            lost += by_acid * 10.0 ** (-order * ph) / 60.0
        dy[at] = -min(lost, FASTEST_LOSS) * y[at]
        work(max(y[at], 0.0) * factor(energy, celsius, reference) * fit(ph), y, dy)

    return present


def cooking(bag):
    """Raw starch to cooked, plant by plant, where it is warm enough."""
    RAW, COOKED = bag.places("raw", "cooked")
    per_min = bag.parameter["gelatinization"]
    kinds = [i for i in range(4) if f"raw_{i}" in bag.fixed]
    put_in = tuple(bag.fixed[f"raw_{i}"] for i in kinds)
    onset = tuple(bag.fixed[f"raw_{i}_onset"] for i in kinds)
    end = tuple(bag.fixed[f"raw_{i}_end"] for i in kinds)
    if not kinds:

        @bag.jit
        def none(celsius, y, dy):
            pass

        return none

    @bag.jit
    def work(celsius, y, dy):
        if celsius > min(onset):
            stays = 0.0
            for amount, low, high in zip(put_in, onset, end):
                x = min(max((celsius - low) / (high - low), 0.0), 1.0)
                stays += amount * (1.0 - x * x * (3.0 - 2.0 * x))
            cooked = per_min * max(y[RAW] - stays, 0.0)
            dy[RAW] -= cooked
            dy[COOKED] += cooked

    return work


def enzymes(bag):
    """All enzymes, and the warmth that cooks starch; the pH is no number where it is not worked out."""
    first = fading(bag, "glucoamylase", glucoamylase(bag))
    second = fading(bag, "fungal_amylase", amylase(bag, "fungal_amylase"))
    third = fading(bag, "bacterial_amylase", amylase(bag, "bacterial_amylase"))
    fourth = fading(bag, "neutral_lactase", lactase(bag, "neutral_lactase"))
    fifth = fading(bag, "acid_lactase", lactase(bag, "acid_lactase"))
    sixth = fading(bag, "invertase", invertase(bag))
    seventh = fading(bag, "beta_amylase", amylase(bag, "beta_amylase"))
    eighth = fading(bag, "alpha_galactosidase", galactosidase(bag))
    warmth = cooking(bag)

    @bag.jit
    def work(celsius, ph, y, dy):
        first(celsius, ph, y, dy)
        second(celsius, ph, y, dy)
        third(celsius, ph, y, dy)
        fourth(celsius, ph, y, dy)
        fifth(celsius, ph, y, dy)
        sixth(celsius, ph, y, dy)
        seventh(celsius, ph, y, dy)
        eighth(celsius, ph, y, dy)
        warmth(celsius, y, dy)

    return work
