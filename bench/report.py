"""The table, as Markdown."""

import os
import platform
import subprocess
from importlib.metadata import version
from pathlib import Path

import cvode


def output_of(*command):
    """First line that a command prints; nothing where it fails."""
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return ""
    return done.stdout.strip().partition("\n")[0]


def processor():
    """Name of the processor."""
    try:
        lines = Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines()
    except OSError:
        return platform.processor()
    names = [line.partition(":")[2].strip() for line in lines if line.startswith("model name")]
    return names[0] if names else platform.processor()


def about_the_run(pinned):
    """What a reader needs to judge the numbers."""
    packages = ("numpy", "scipy", "numba", "llvmlite", "scikit-sundae")
    load = os.getloadavg()[0] if hasattr(os, "getloadavg") else float("nan")
    changed = " with changes" if output_of("git", "status", "--porcelain", "-uno") else ""
    return [
        f"- machine: {processor()}, {os.cpu_count()} cores, {platform.system()}; "
        + ("race pinned to one core" if pinned else "not pinned to a core")
        + f"; load at the start {load:.1f}",
        f"- program: {output_of('git', 'rev-parse', '--short', 'HEAD')}{changed}, "
        f"{output_of('rustc', '--version')}",
        f"- Python {platform.python_version()}, "
        + ", ".join(f"{name} {version(name)}" for name in packages)
        + f", SUNDIALS {cvode.version()}",
    ]


def microseconds(value):
    """A time in µs with three digits."""
    return f"{value:,.0f}" if value >= 100.0 else f"{value:.1f}"


def bag_table(result):
    """Table of one bag, the fastest first."""
    ours = result["rows"][0]["us"][1]
    lines = [
        "",
        f"## Bag '{result['bag']}'",
        "",
        f"References apart: {result['apart']:.0e}. One call of the rates: "
        f"{result['call_ns']:.0f} ns in Rust, {result['numba_ns']:.0f} ns by numba.",
        "",
        "| contestant | rates in | relative tolerance | absolute over it (of the most) | error | "
        "evaluations | median µs | quartiles µs | times Barm's |",
        "|---|---|---|---|---|---|---|---|---|",
    ]
    for row in sorted(result["rows"], key=lambda row: row["us"][1] if row["us"] else 1e99):
        if row["us"] is None:
            lines.append(f"| {row['name']} | {row['language']} | never good enough | | | | | | |")
            continue
        low, middle, high = row["us"]
        lines.append(
            f"| {row['name']} | {row['language']} | {row['relative']:.1e} | {row['share']:.0e} | "
            f"{row['error']:.1e} | {row['evaluations']} | {microseconds(middle)} | "
            f"{microseconds(low)} to {microseconds(high)} | {middle / ours:.2f} |"
        )
    floor, fewest = floor_us(result)
    lines += [
        "",
        f"Floor: {fewest['evaluations']} evaluations ({fewest['name']}) of "
        f"{result['call_ns']:.0f} ns are {floor:.1f} µs; Barm takes {ours / floor:.1f} times that. "
        f"From setup to rises at the tolerance of a draw (1e-4): "
        f"{microseconds(result['whole_us'][1])} µs.",
    ]
    return lines


TARGETS = (
    ("SciPy solve_ivp(LSODA)", "plain Python", 100.0),
    ("SciPy solve_ivp(LSODA)", "numba", 5.0),
    ("CVODE Adams, fixed point", "numba, C", 1.0),
    ("CVODE BDF, Newton, dense", "numba, C", 1.0),
)


def floor_us(result):
    """The least that a bag can take (µs): the cost of a call of the rates, times the fewest calls that any
    contestant needs; with who needs so few."""
    fewest = min((row for row in result["rows"] if row["us"]), key=lambda row: row["evaluations"])
    return 1e-3 * result["call_ns"] * fewest["evaluations"], fewest


def goals(result, one, bands, fit):
    """The goals, the first bag standing for one bag, and whether they are met."""
    times = {(row["name"], row["language"]): row["us"] for row in result["rows"]}
    ours = result["rows"][0]["us"][1]
    lines = ["", "## Goals", "", "| work | goal | measured | |", "|---|---|---|---|"]

    def add(what, goal, measured, met):
        lines.append(f"| {what} | {goal} | {measured} | {'met' if met else '**missed**'} |")

    bag = f"one bag ('{result['bag']}'), 30 min"
    for name, language, least in TARGETS:
        if times.get((name, language)):
            ratio = times[name, language][1] / ours
            goal = f"at least {least:g} times as fast as {name} ({language})"
            add(bag, goal, f"{ratio:.2f} times", ratio >= least)
    floor = floor_us(result)[0]
    add(bag, "under 60 µs", f"{ours:.1f} µs, {ours / floor:.1f} times the floor", ours < 60.0)
    add(
        f"bands, {bands['treatments']} kinds x {bands['draws']} draws on {bands['threads']} threads",
        "under 0.8 s",
        f"{bands['seconds']:.2f} s (best of {bands['runs']})",
        bands["seconds"] < 0.8,
    )
    add(
        f"fit of a day, {fit['bags']} bags, {fit['readings']} readings, {fit['numbers']} numbers",
        "under 2 s",
        f"{fit['seconds']:.2f} s (best of {fit['runs']})",
        fit["seconds"] < 2.0,
    )
    if bands["kib"] is not None:
        used = {"bag": one["kib"], "bands": bands["kib"], "fit": fit["kib"]}
        said = ", ".join(f"{what} {kib / 1024.0:.0f}" for what, kib in used.items())
        met = 1024e-6 * max(used.values()) < 100.0
        add("most memory of any of these", "under 100 MB", f"{said} MiB", met)
    return lines
