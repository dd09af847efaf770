#!/usr/bin/env python3
"""Races the program's solver against other solvers on the same equations, at equal error.

    python bench/compare.py [--quick | --rates | --classes] [--contest PATH] [--json FILE]

Builds and starts the example `contest`, checks that the rates here and there are the same to 1e-12,
finds for each contestant its loosest setting with an error of at most 1e-5, takes the time of all of
them in turn, and prints a report. See bench/README.md.
"""

import argparse
import json
import os
import subprocess
import sys
import time
from pathlib import Path

# Before numpy comes in: one thread each, and the machine's own kernels.
CORE_TYPE = os.environ.pop("OPENBLAS_CORETYPE", None)
for _variable in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[_variable] = "1"

import numpy as np  # noqa: E402
from numba import njit  # noqa: E402

import classes  # noqa: E402
import report  # noqa: E402
from check_rates import check  # noqa: E402
from contestants import Program, line_up, returned  # noqa: E402
from equal_error import GOOD, SHARES, reference, settle  # noqa: E402
from model import build  # noqa: E402

ROOT = Path(__file__).resolve().parent.parent
# Time that one contestant gets in one round (s).
SLICE = 0.2
PLAIN = "plain Python"


def built():
    """Builds the program's side and returns where it lies."""
    command = ["cargo", "build", "--release", "-p", "barm-science", "--example", "contest"]
    subprocess.run(command, cwd=ROOT, check=True)
    target = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    return target / "release" / "examples" / ("contest.exe" if os.name == "nt" else "contest")


def pin():
    """Keeps this process, and those that it starts from now on, on one core where that can be asked
    for; returns the cores that it had."""
    if not hasattr(os, "sched_setaffinity"):
        return None
    cores = os.sched_getaffinity(0)
    os.sched_setaffinity(0, {max(cores)})
    return cores


def call_by_numba(compiled, states):
    """Time of one compiled call of the rates (ns), at the states of the bag's own course."""

    @njit
    def many(times, states, dy):
        total = 0.0
        for k in range(times):
            compiled(1.0, states[k % len(states)], dy)
            total += dy[0]
        return total

    dy = np.zeros(states.shape[1])
    many(10, states, dy)
    batches = []
    for _ in range(31):
        begin = time.perf_counter()
        many(10_000, states, dy)
        batches.append(1e5 * (time.perf_counter() - begin))
    return float(np.median(batches))


def race(program, about, bag, compiled, rounds, quick):
    """Everything about one bag."""
    names = about["states"]
    ruler, apart = reference(returned(compiled, len(names)), bag, names, bag["enzymes"])
    contestants = line_up(program, bag, build(about, bag), compiled)
    shares = (1.0, 1e-4) if quick else SHARES
    rows, settings = [], {}
    for contestant in contestants:
        # Plain Python does what numba does, slowly: it takes over the setting.
        if contestant.language == PLAIN:
            continue
        settings[contestant.name] = settle(contestant, ruler, shares)
    for contestant in contestants:
        setting = settings[contestant.name]
        if contestant.language == PLAIN and setting is not None:
            contestant.set(setting["relative"], setting["relative"] * setting["share"] * ruler.most)
            if not ruler.error(contestant.solve()) <= GOOD * 1.01:
                raise SystemExit(f"{contestant.name} is less exact in plain Python than by numba")
        rows.append(
            {"name": contestant.name, "language": contestant.language, "us": None}
            | (setting or {})
        )
    quartiles = [[] for _ in contestants]
    for _ in range(rounds):
        for contestant, row, seen in zip(contestants, rows, quartiles):
            if "error" not in row:
                continue
            once = contestant.times(3)[1]
            seen.append(contestant.times(max(3, int(1e6 * SLICE / once))))
    for row, seen in zip(rows, quartiles):
        if seen:
            row["us"] = [float(value) for value in np.median(np.array(seen), axis=0)]
    return {
        "bag": bag["name"],
        "apart": apart,
        "rows": rows,
        "call_ns": program.ask("call", bag["name"])["ns"],
        "numba_ns": call_by_numba(compiled, ruler.reference),
        "whole_us": program.ask("whole", bag["name"], 2000)["us"],
    }


def by_itself(path, runs, *words):
    """The best of some runs of one command, with the memory that it took, in a process of its own."""
    program = Program(path)
    answers = [program.ask(*words) for _ in range(runs)]
    kib = program.ask("memory")["kib"]
    program.close()
    best = min(answers, key=lambda answer: answer.get("seconds", 0.0))
    return best | {"runs": runs, "kib": kib}


def bands(path, runs):
    """Time and memory of the bands."""
    kinds, draws, threads = 24, 512, 2
    about = {"treatments": kinds, "draws": draws, "threads": threads}
    return about | by_itself(path, runs, "bands", kinds, draws, threads)


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--quick", action="store_true", help="one bag, few rounds: under a minute")
    parser.add_argument("--rates", action="store_true", help="compare the rates and stop")
    parser.add_argument("--classes", action="store_true", help="compare classes of bags, and stop")
    parser.add_argument("--contest", type=Path, help="the built example, instead of building it")
    parser.add_argument("--json", type=Path, help="write all numbers to this file as well")
    asked = parser.parse_args()
    path = (asked.contest or built()).resolve()

    if asked.rates:
        about = by_itself(path, 1, "about")
        compared, most, _ = check(about, {bag["name"] for bag in about["bags"]})
        print(f"rates compared: {compared}, apart by at most {most:.1e}")
        return
    if asked.classes:
        pin()
        print("\n".join(classes.table(Program(path), asked.quick)))
        return
    lines = ["# Solvers at equal error", ""]
    print("bands and fit ...", file=sys.stderr)
    of_bands = bands(path, 2 if asked.quick else 7)
    of_fit = by_itself(path, 1 if asked.quick else 3, "fit")
    cores = pin()
    lines += report.about_the_run(cores is not None)
    if CORE_TYPE is not None:
        lines.append(f"- OPENBLAS_CORETYPE={CORE_TYPE} was set and left out: it slows numpy")
    program = Program(path)
    about = program.ask("about")
    print("rates ...", file=sys.stderr)
    chosen = [bag for bag in about["bags"] if bag["timed"]][: 1 if asked.quick else None]
    every = chosen if asked.quick else about["bags"]
    compared, most, compiled = check(about, {bag["name"] for bag in every})
    lines.append(f"- rates compared: {compared}, apart by at most {most:.1e}")
    results = []
    for bag in chosen:
        print(f"bag '{bag['name']}' ...", file=sys.stderr)
        rounds = 3 if asked.quick else 11
        results.append(race(program, about, bag, compiled[bag["name"]], rounds, asked.quick))
        lines += report.bag_table(results[-1])
    print("classes ...", file=sys.stderr)
    of_classes = classes.table(program, asked.quick)
    program.close()
    of_one = by_itself(path, 1, "whole", results[0]["bag"], 200)
    lines += report.goals(results[0], of_one, of_bands, of_fit)
    lines += of_classes
    print("\n".join(lines))
    if asked.json:
        asked.json.write_text(json.dumps({"bags": results, "bands": of_bands, "fit": of_fit}, indent=1) + "\n")


if __name__ == "__main__":
    main()
