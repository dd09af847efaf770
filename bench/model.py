"""The bag model a second time: the same laws, written apart from the program.

One source runs in two ways: as plain Python on lists of floats, and compiled by numba on arrays.
`build` takes what the program says of itself (`contest` with the command `about`) and returns a
function `rates(minute, y, dy)`. Numbers come by name, from the table of facts, so that a changed
number follows by itself; a changed law has to be changed here as well, and `compare.py` stops until
it is. The equations stand in docs/science.
"""

import math

ZERO_CELSIUS = 273.15
LN_10 = math.log(10.0)

# Fastest loss by heat that is followed (1/min).
FASTEST_LOSS = 250.0
# Temperature at which the yeast's table of rates is one (°C).
TABLE_CELSIUS = 30.0
CARBON_PER_HEXOSE = 6.0
# Temperatures (°C) to which the loss of each enzyme refers, and the suffix of its fact.
LOSS_AT = {
    "glucoamylase": (65.0, "loss_65c"),
    "fungal_amylase": (50.0, "loss_50c"),
    "bacterial_amylase": (50.0, "loss_50c"),
    "neutral_lactase": (60.0, "loss_60c"),
    "acid_lactase": (60.0, "loss_60c"),
    "invertase": (60.0, "loss_60c"),
}
TEMPERATURES = (0, 5, 10, 15, 20, 25, 30, 35, 38, 40, 42, 45, 48, 50, 55, 60)
ACIDITIES = (2.0, 3.0, 3.5, 4.0, 6.0, 7.0, 8.0, 9.0, 10.0)


def monotone(x, y):
    """Slopes of the monotone cubic through (x, y): Fritsch and Butland, with plain ends."""
    slope = [0.0] * len(x)
    for i in range(1, len(x) - 1):
        before, after = x[i] - x[i - 1], x[i + 1] - x[i]
        left, right = (y[i] - y[i - 1]) / before, (y[i + 1] - y[i]) / after
        if left * right > 0.0:
            share = (before + 2.0 * after) / (3.0 * (before + after))
            slope[i] = left * right / (share * right + (1.0 - share) * left)
    slope[0] = (y[1] - y[0]) / (x[1] - x[0])
    slope[-1] = (y[-1] - y[-2]) / (x[-1] - x[-2])
    return tuple(slope)


def build(about, bag, jit=lambda f: f):
    """Rates of change of one bag of `about`; `jit` compiles each function, or leaves it as it is."""
    fact = about["facts"]
    place = {name: i for i, name in enumerate(about["states"])}
    fixed, parameter = bag["fixed"], bag["parameters"]
    count = len(about["states"])
    exp, log, log10, sqrt = math.exp, math.log, math.log10, math.sqrt

    CELSIUS, AWAKE, ALIVE, INDUCED = (place[n] for n in ("celsius", "awake", "alive", "induced"))
    RESERVE, RAW, COOKED, DEXTRIN = (place[n] for n in ("reserve", "raw", "cooked", "dextrin"))
    MALTOTRIOSE, GALACTOSIDES = (place[n] for n in ("maltotriose", "galactosides"))
    MALTOSE, SUCROSE, LACTOSE = (place[n] for n in ("maltose", "sucrose", "lactose"))
    GALACTOSE, GLUCOSE, FRUCTOSE = (place[n] for n in ("galactose", "glucose", "fructose"))
    DISSOLVED, GAS, PERMEATED = (place[n] for n in ("dissolved", "gas", "permeated"))
    ETHANOL, BYPRODUCT, WATER_USED = (place[n] for n in ("ethanol", "byproduct", "water_used"))

    R = fact["constants.gas"]
    hexose_mass = fact["stoichiometry.hexose"]
    pair_mass = fact["stoichiometry.disaccharide"]
    glucan_mass = fact["stoichiometry.glucan_unit"]
    ethanol_mass = fact["stoichiometry.ethanol"]
    water_mass = fact["stoichiometry.water"]
    per_hexose = fact["stoichiometry.co2_per_hexose"]
    heat_per_hexose = fact["stoichiometry.heat_per_hexose"]

    # Laws of temperature ------------------------------------------------------------------------

    @jit
    def liquid(celsius):
        return min(max(celsius, 0.0), 100.0)

    @jit
    def arrhenius(kj, celsius, reference):
        colder = 1.0 / (liquid(celsius) + ZERO_CELSIUS) - 1.0 / (reference + ZERO_CELSIUS)
        return exp(-1e3 * kj / R * colder)

    @jit
    def on_curve(x, y, slope, at):
        last = len(x) - 1
        if at <= x[0]:
            return y[0]
        if at >= x[last]:
            return y[last]
        i = 0
        while i + 1 < last and at >= x[i + 1]:
            i += 1
        width = x[i + 1] - x[i]
        s = (at - x[i]) / width
        r = 1.0 - s
        rise, fall = width * slope[i], width * slope[i + 1]
        low = y[i] * (1.0 + 2.0 * s) + rise * s
        high = y[i + 1] * (1.0 + 2.0 * r) - fall * r
        return r * r * low + s * s * high

    warm_x = tuple(float(t) for t in TEMPERATURES)
    warm_y = tuple(fact[f"yeast.temperature.{t}c"] for t in TEMPERATURES)
    warm_slope = monotone(warm_x, warm_y)
    steepness, shift = parameter["steepness"], parameter["optimum_shift"]
    bent = abs(steepness) + abs(shift) > 0.0

    @jit
    def warmth(celsius):
        table = on_curve(warm_x, warm_y, warm_slope, celsius - shift)
        if bent:
            table = table / on_curve(warm_x, warm_y, warm_slope, TABLE_CELSIUS - shift)
            return table * exp(steepness * (celsius - TABLE_CELSIUS))
        return table

    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = (fact[f"water.vapour.n{i}"] for i in range(1, 11))

    @jit
    def vapour_pressure(celsius):
        kelvin = liquid(celsius) + ZERO_CELSIUS
        theta = kelvin + n9 / (kelvin - n10)
        a = (theta + n1) * theta + n2
        b = (n3 * theta + n4) * theta + n5
        c = (n6 * theta + n7) * theta + n8
        root = 2.0 * c / (-b + sqrt(b * b - 4.0 * a * c))
        square = root * root
        return 1e6 * square * square

    h0, h1, h2, h3 = (fact[f"carbon_dioxide.henry.a{i}"] for i in range(4))

    @jit
    def solubility(celsius):
        per_kelvin = 1.0 / (liquid(celsius) + ZERO_CELSIUS)
        ln_mpa = ((h3 * per_kelvin + h2) * per_kelvin + h1) * per_kelvin + h0
        return 1e-6 * 1e3 / (water_mass * exp(ln_mpa))

    salt_25, salt_40, salt_60 = (fact[f"carbon_dioxide.salting_{t}c"] for t in (25, 40, 60))

    @jit
    def salt_factor(mol_per_kg, celsius):
        t = min(max(celsius, 25.0), 60.0)
        if t < 40.0:
            k = salt_25 + (salt_40 - salt_25) * (t - 25.0) / 15.0
        else:
            k = salt_40 + (salt_60 - salt_40) * (t - 40.0) / 20.0
        return exp(-LN_10 * k * max(mol_per_kg, 0.0))

    # The bag ------------------------------------------------------------------------------------

    room, to_room = fixed["room_celsius"], fixed["to_room_per_min"]
    to_tray, at_zero = fixed["to_tray_per_min"], fixed["tray_at_zero_celsius"]
    tray_per_min = fixed["tray_per_min"]

    @jit
    def cooling(minute, celsius):
        change = to_room * (room - celsius)
        if to_tray > 0.0:
            tray = max(room + (at_zero - room) * exp(-tray_per_min * minute), 0.0)
            change += to_tray * (tray - celsius)
        return change

    pressure, most_steam = fixed["pressure"], fact["gas.most_steam"]
    water_kg, solution_l = fixed["water_kg"], fixed["solution_l"]
    salt_mol_per_kg, face_m2, film_um = (fixed[n] for n in ("salt_mol_per_kg", "face_m2", "film_um"))
    air, half_pocket, j_per_k = fixed["air"], fixed["half_pocket"], fixed["j_per_k"]
    release, permeability = parameter["release"], parameter["permeability"]
    film = fact["permeation.ldpe_carbon_dioxide"]
    film_energy = fact["permeation.activation"]
    trade_unit = 1e-3 / fact["constants.standard_molar_volume"] * 25.4e-6
    trade_unit /= 100.0 * 0.0254 * 0.0254 * 86400.0 * fact["constants.atmosphere"]

    @jit
    def exchange(celsius, dissolved, y, dy):
        gases = y[GAS] + air
        dry = pressure - min(vapour_pressure(celsius), most_steam * pressure)
        share = min(max(y[GAS] / gases, 0.0), 1.0) if gases > 0.0 else 1.0
        full = 1e3 * solubility(celsius) * salt_factor(salt_mol_per_kg, celsius) * water_kg * dry
        open_to_gas = gases / (gases + half_pocket)
        out = release * (open_to_gas * (dissolved - full * share) + max(dissolved - full, 0.0))
        colder = 1.0 / (liquid(celsius) + ZERO_CELSIUS) - 1.0 / 298.15
        through = film * trade_unit * exp(-1e3 * film_energy / R * colder)
        through *= share * dry / (film_um * 1e-6)
        leak = permeability * open_to_gas * face_m2 * 6e4 * through
        dy[DISSOLVED] -= out
        dy[GAS] = out - leak
        dy[PERMEATED] = leak

    # Acidity: charge balance, by halvings and Newton's method -----------------------------------

    base, acid = fixed["base_mol_per_kg"], fixed["acid_mol_per_kg"]
    has_base = base > 0.0
    first = tuple(fact[f"carbonate.first.{c}"] for c in "abcde")
    second = tuple(fact[f"carbonate.second.{c}"] for c in "abcde")
    w_a, w_b, w_c = (fact[f"carbonate.water.{c}"] for c in "abc")
    k_acid = math.exp(-LN_10 * fact["carbonate.food_acid_pka"])

    @jit
    def plummer(terms, kelvin):
        return (
            terms[0]
            + terms[1] * kelvin
            + terms[2] / kelvin
            + terms[3] * log10(kelvin)
            + terms[4] / (kelvin * kelvin)
        )

    @jit
    def hydrogen(carbon, k1, k2, kw):
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
            if abs(following - h) <= 4.0 * 2.220446049250313e-16 * h:
                return following
            h = following
        return h

    @jit
    def speciation(celsius, dissolved):
        """pH, and the share of the inorganic carbon that is carbon dioxide."""
        kelvin = liquid(celsius) + ZERO_CELSIUS
        k1 = exp(LN_10 * plummer(first, kelvin))
        k2 = exp(LN_10 * plummer(second, kelvin))
        kw = exp(-LN_10 * (w_a / kelvin + w_b + w_c * kelvin))
        h = hydrogen(1e-3 * max(dissolved, 0.0) / water_kg, k1, k2, kw)
        return -log10(h), h * h / (h * h + k1 * (h + k2))

    # Enzymes ------------------------------------------------------------------------------------

    half, raw_rate = parameter["enzyme_half"], parameter["raw_starch"]
    half_raw = half * fact["enzyme.half_raw_starch"]
    chain_half = half * fact["enzyme.glucoamylase.half"]
    chain_half_maltose = half * fact["enzyme.glucoamylase.half_maltose"]
    on_dextrin = fact["enzyme.glucoamylase.on_dextrin"]
    on_maltose = fact["enzyme.glucoamylase.on_maltose"]
    half_dextrin = half * fact["enzyme.amylase.half_dextrin"]
    half_sucrose = half * fact["enzyme.invertase.half"]

    @jit
    def saturation(concentration, half):
        concentration = max(concentration, 0.0)
        return concentration / (half + concentration)

    @jit
    def glucan(units):
        return 1e-3 * glucan_mass * units / solution_l

    @jit
    def pairs(units):
        return 0.5 * units / solution_l

    @jit
    def glucoamylase(activity, y, dy):
        cooked = max(glucan(y[COOKED]), 0.0) / chain_half
        dextrin = max(glucan(y[DEXTRIN]), 0.0) / chain_half
        maltose = max(1e-3 * pair_mass * pairs(y[MALTOSE]), 0.0) / chain_half_maltose
        theta = 1.0 + cooked + dextrin + maltose
        cooked = activity * (cooked / theta)
        raw = activity * (raw_rate * saturation(glucan(y[RAW]), half_raw))
        dextrin = activity * (on_dextrin * dextrin / theta)
        maltose = activity * (on_maltose * maltose / theta)
        dy[COOKED] -= cooked
        dy[RAW] -= raw
        dy[DEXTRIN] -= dextrin
        dy[MALTOSE] -= maltose
        dy[GLUCOSE] += cooked + raw + dextrin + maltose
        dy[WATER_USED] += cooked + raw + dextrin + 0.5 * maltose

    @jit
    def alpha_amylase(half_cooked, at_once, trims, activity, y, dy):
        cooked = max(glucan(y[COOKED]), 0.0) / half_cooked
        dextrin = max(glucan(y[DEXTRIN]), 0.0) / half_dextrin
        theta = 1.0 + cooked + dextrin
        cooked = activity * (cooked / theta)
        raw = activity * (raw_rate * saturation(glucan(y[RAW]), half_raw))
        trimmed = activity * (trims * dextrin / theta)
        maltose = at_once * (cooked + raw)
        dy[COOKED] -= cooked
        dy[RAW] -= raw
        dy[DEXTRIN] += cooked + raw - maltose - trimmed
        dy[MALTOSE] += maltose + trimmed
        dy[WATER_USED] += 0.5 * (maltose + trimmed)

    @jit
    def lactase(half_lactose, half_galactose, activity, y, dy):
        galactose = max(y[GALACTOSE] / solution_l, 0.0)
        at_work = saturation(pairs(y[LACTOSE]), half_lactose * (1.0 + galactose / half_galactose))
        split = activity * at_work
        dy[LACTOSE] -= 2.0 * split
        dy[GLUCOSE] += split
        dy[GALACTOSE] += split
        dy[WATER_USED] += split

    @jit
    def invertase(activity, y, dy):
        split = activity * saturation(pairs(y[SUCROSE]), half_sucrose)
        dy[SUCROSE] -= 2.0 * split
        dy[GLUCOSE] += split
        dy[FRUCTOSE] += split
        dy[WATER_USED] += split

    reference = fact["enzyme.reference"]
    loss_factor = parameter["enzyme_loss"]

    @jit
    def fade(at, energy, loss, loss_celsius, loss_energy, celsius, y, dy):
        """Lets one enzyme lose activity; returns what is at work."""
        lost = loss_factor * (loss * arrhenius(loss_energy, celsius, loss_celsius))
        dy[at] = -min(lost, FASTEST_LOSS) * y[at]
        return max(y[at], 0.0) * arrhenius(energy, celsius, reference)

    def heat(kind):
        loss_celsius, suffix = LOSS_AT[kind]
        name = f"enzyme.{kind}"
        return (
            place[kind],
            fact[f"{name}.activation"],
            fact[f"{name}.{suffix}"],
            loss_celsius,
            fact[f"{name}.loss_activation"],
        )

    has_gluco, has_fungal, has_bacterial, has_neutral, has_acid, has_invertase = (
        kind in bag["enzymes"] for kind in LOSS_AT
    )
    gluco_at, gluco_e, gluco_k, gluco_t, gluco_d = heat("glucoamylase")
    fungal_at, fungal_e, fungal_k, fungal_t, fungal_d = heat("fungal_amylase")
    bact_at, bact_e, bact_k, bact_t, bact_d = heat("bacterial_amylase")
    neutral_at, neutral_e, neutral_k, neutral_t, neutral_d = heat("neutral_lactase")
    acid_at, acid_e, acid_k, acid_t, acid_d = heat("acid_lactase")
    inv_at, inv_e, inv_k, inv_t, inv_d = heat("invertase")
    fungal_half = half * fact["enzyme.fungal_amylase.half"]
    fungal_maltose = fact["enzyme.fungal_amylase.maltose"]
    fungal_dextrin = fact["enzyme.fungal_amylase.on_dextrin"]
    bact_half = half * fact["enzyme.bacterial_amylase.half"]
    bact_maltose = fact["enzyme.bacterial_amylase.maltose"]
    bact_dextrin = fact["enzyme.bacterial_amylase.on_dextrin"]
    neutral_half = half * fact["enzyme.neutral_lactase.half"]
    neutral_galactose = fact["enzyme.neutral_lactase.galactose"]
    acid_half = half * fact["enzyme.acid_lactase.half"]
    acid_galactose = fact["enzyme.acid_lactase.galactose"]

    # Chains of `if` on constants: numba leaves out what is not in the bag.
    @jit
    def enzymes(celsius, y, dy):
        if has_gluco:
            activity = fade(gluco_at, gluco_e, gluco_k, gluco_t, gluco_d, celsius, y, dy)
            glucoamylase(activity, y, dy)
        if has_fungal:
            activity = fade(fungal_at, fungal_e, fungal_k, fungal_t, fungal_d, celsius, y, dy)
            alpha_amylase(fungal_half, fungal_maltose, fungal_dextrin, activity, y, dy)
        if has_bacterial:
            activity = fade(bact_at, bact_e, bact_k, bact_t, bact_d, celsius, y, dy)
            alpha_amylase(bact_half, bact_maltose, bact_dextrin, activity, y, dy)
        if has_neutral:
            activity = fade(neutral_at, neutral_e, neutral_k, neutral_t, neutral_d, celsius, y, dy)
            lactase(neutral_half, neutral_galactose, activity, y, dy)
        if has_acid:
            activity = fade(acid_at, acid_e, acid_k, acid_t, acid_d, celsius, y, dy)
            lactase(acid_half, acid_galactose, activity, y, dy)
        if has_invertase:
            activity = fade(inv_at, inv_e, inv_k, inv_t, inv_d, celsius, y, dy)
            invertase(activity, y, dy)

    # Yeast --------------------------------------------------------------------------------------

    has_yeast = bag["yeast"] is not None
    dry_g, co2_per_min = fixed.get("dry_g", 0.0), fixed.get("co2_per_min", 0.0)
    reserve_full = fixed.get("reserve_full", 0.0)
    own_invertase = 1e-3 * dry_g * parameter["own_invertase"]
    wake_kind = 1.0 if bag["yeast"] == "active_dry" else fact["yeast.wake.instant"]
    wake_least, wake_more = fact["yeast.wake.least"], fact["yeast.wake.more"]
    wake_from, wake_fade = fact["yeast.wake.from"], fact["yeast.wake.fade"]
    wake_factor, d60, death_z = (parameter[n] for n in ("wake", "d60", "death_z"))
    salts, dextrin_units = fixed["salts_osmol_per_l"], fact["model.dextrin_units"]
    half_osmotic, osmotic_steepness = parameter["half_osmotic"], fact["yeast.osmotic_steepness"]
    ethanol_most, ethanol_exponent = parameter["ethanol_most"], fact["yeast.ethanol_exponent"]
    ph_y = tuple(fact[f"yeast.ph.{x:g}".replace("3.5", "3_5")] for x in ACIDITIES)
    ph_slope = monotone(ACIDITIES, ph_y)
    buffered = fact["yeast.buffered_ph"]
    half_glucose = parameter["half_glucose"]
    half_fructose = fact["yeast.fructose_half_ratio"] * half_glucose
    fructose_rate, maltose_rate = parameter["fructose_rate"], parameter["maltose_rate"]
    reserve_rate, induction = parameter["reserve_rate"], parameter["induction"]
    half_maltose, half_reserve = fact["yeast.half_maltose"], fact["yeast.half_reserve"]
    co2_of, ethanol_of = (
        per_hexose * parameter["co2_yield"],
        per_hexose * parameter["ethanol_yield"],
    )

    @jit
    def wake_and_die(celsius, y, dy):
        within = liquid(celsius)
        waking = wake_kind * (wake_least + wake_more * exp(-(within - wake_from) / wake_fade))
        dy[AWAKE] = (1.0 - y[AWAKE]) / (wake_factor * waking)
        kill = d60 * exp(LN_10 * (60.0 - within) / death_z)
        dy[ALIVE] = -min(LN_10 / kill, FASTEST_LOSS) * y[ALIVE]

    @jit
    def osmotic(y):
        singles = y[GLUCOSE] + y[FRUCTOSE] + y[GALACTOSE]
        bound = y[SUCROSE] + y[MALTOSE] + y[LACTOSE]
        threes = y[MALTOTRIOSE] + y[GALACTOSIDES]
        particles = singles + 0.5 * bound + threes / 3.0 + y[DEXTRIN] / dextrin_units
        share = max(salts + 1e-3 * particles / solution_l, 0.0) / half_osmotic
        return 1.0 / (1.0 + share**osmotic_steepness)

    @jit
    def ferment(celsius, fit, y, dy):
        """Returns the hexose used (mmol/min)."""
        ethanol = 1e-3 * ethanol_mass * y[ETHANOL] / solution_l
        drunk = min(max(ethanol, 0.0) / ethanol_most, 1.0)
        most = co2_per_min / co2_of * max(y[AWAKE], 0.0) * max(y[ALIVE], 0.0)
        most *= warmth(celsius) * osmotic(y) * (1.0 - drunk**ethanol_exponent) * fit
        on_glucose = max(1e-3 * hexose_mass * y[GLUCOSE] / solution_l, 0.0) / half_glucose
        on_fructose = max(1e-3 * hexose_mass * y[FRUCTOSE] / solution_l, 0.0) / half_fructose
        theta = 1.0 + on_glucose + on_fructose
        idle = 1.0 - on_glucose / theta - on_fructose / theta
        full = saturation(1e-3 * pair_mass * pairs(y[MALTOSE]), half_maltose)
        glucose = most * (on_glucose / theta)
        fructose = most * fructose_rate * (on_fructose / theta)
        maltose = most * maltose_rate * max(y[INDUCED], 0.0) * full * idle
        stock = saturation(y[RESERVE], half_reserve * reserve_full) if y[RESERVE] > 0.0 else 0.0
        reserve = most * reserve_rate * (1.0 + half_reserve) * stock * idle
        hexose = glucose + fructose + maltose + reserve
        dy[GLUCOSE] -= glucose
        dy[FRUCTOSE] -= fructose
        dy[MALTOSE] -= maltose
        dy[RESERVE] -= reserve
        dy[INDUCED] = (1.0 - y[INDUCED]) / induction * idle * full * y[AWAKE]
        dy[DISSOLVED] += co2_of * hexose
        dy[ETHANOL] = ethanol_of * hexose
        dy[BYPRODUCT] = CARBON_PER_HEXOSE * hexose - co2_of * hexose - 2.0 * ethanol_of * hexose
        dy[WATER_USED] += 0.5 * (maltose + reserve)
        return hexose

    @jit
    def rates(minute, y, dy):
        for i in range(count):
            dy[i] = 0.0
        celsius = y[CELSIUS]
        enzymes(celsius, y, dy)
        fit, as_gas = 1.0, 1.0
        if has_base:
            ph, as_gas = speciation(celsius, y[DISSOLVED])
            fit = on_curve(ACIDITIES, ph_y, ph_slope, max(ph, buffered))
        hexose = 0.0
        if has_yeast:
            wake_and_die(celsius, y, dy)
            if y[SUCROSE] > 0.0:
                invertase(own_invertase * arrhenius(inv_e, celsius, reference), y, dy)
            hexose = ferment(celsius, fit, y, dy)
        exchange(celsius, as_gas * y[DISSOLVED], y, dy)
        dy[CELSIUS] = cooling(minute, celsius) + heat_per_hexose * hexose / j_per_k

    return rates
