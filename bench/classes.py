"""Comparisons of treatments with groups as chance: the program beside statsmodels' MixedLM, on the same bags."""

import time
import warnings

import numpy as np
import statsmodels.api as sm

# Periods, groups of each: a class, a school, a district. What is fixed grows with periods; MixedLM works with all of
# its columns, so that a district of 2,000 periods would need 3 GB.
SIZES = ((5, 8), (20, 10), (100, 10))


def design(bags):
    """Columns of all that is fixed: treatments but the reference, then every period."""
    treatment, period = np.array(bags["treatment"]), np.array(bags["period"])
    kinds = range(1, treatment.max() + 1)
    columns = [treatment == kind for kind in kinds] + [period == one for one in range(period.max() + 1)]
    return np.array(columns, dtype=float).T, len(kinds)


def fitted(bags, columns):
    """MixedLM by restricted maximum likelihood."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return sm.MixedLM(np.array(bags["value"]), columns, groups=bags["group"]).fit(reml=True)


def compared(program, periods, groups, rounds):
    """One size: both agree, and how long each takes (µs)."""
    bags = program.ask("class", periods, groups, 21)
    columns, kinds = design(bags)
    each = []
    for _ in range(rounds):
        begin = time.perf_counter()
        fit = fitted(bags, columns)
        each.append(1e6 * (time.perf_counter() - begin))
    apart = float(np.max(np.abs(np.array(fit.fe_params[:kinds]) - bags["difference"])))
    sd = (float(np.sqrt(fit.scale)), float(np.sqrt(np.array(fit.cov_re)[0, 0])))
    spread = max(abs(sd[0] - bags["sd_bag"]), abs(sd[1] - bags["sd_group"]))
    if not max(apart, spread) < 1e-3:
        raise SystemExit(f"differences are {apart:.1e} apart, spreads {spread:.1e}: not the same work")
    return {
        "periods": periods,
        "groups": groups,
        "bags": len(bags["value"]),
        "apart": apart,
        "us": bags["us"][1],
        "theirs_us": float(np.median(each)),
    }


def table(program, quick):
    """The rows of the report."""
    lines = [
        "",
        "## Classes with groups as chance",
        "",
        "| periods x groups | bags | differences apart | Barm, with degrees of freedom and intervals that hold "
        "together | statsmodels MixedLM, the fit alone | times Barm's |",
        "|---|---|---|---|---|---|",
    ]
    for periods, groups in SIZES[: 1 if quick else None]:
        row = compared(program, periods, groups, 3 if quick else 7)
        lines.append(
            f"| {row['periods']} x {row['groups']} | {row['bags']} | {row['apart']:.0e} | "
            f"{1e-3 * row['us']:.1f} ms | {1e-3 * row['theirs_us']:.0f} ms | "
            f"{row['theirs_us'] / row['us']:.1f} |"
        )
    return lines
