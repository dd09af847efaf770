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
    fewest = min((row for row in result["rows"] if row["us"]), key=lambda row: row["evaluations"])
    floor = 1e-3 * result["call_ns"] * fewest["evaluations"]
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


def goals(result, bands):
    """The goals, for the first bag, and whether they are met."""
    times = {(row["name"], row["language"]): row["us"] for row in result["rows"]}
    ours = result["rows"][0]["us"][1]
    lines = ["", "## Goals", "", "| what | goal | measured | |", "|---|---|---|---|"]

    def add(what, goal, measured, met):
        lines.append(f"| {what} | {goal} | {measured} | {'met' if met else '**missed**'} |")

    for name, language, least in TARGETS:
        if times.get((name, language)):
            ratio = times[name, language][1] / ours
            add(f"{name} ({language}) over Barm", f"at least {least:g}", f"{ratio:.2f}", ratio >= least)
    add(f"bag '{result['bag']}'", "under 60 µs", f"{ours:.1f} µs", ours < 60.0)
    add(
        f"bands, {bands['treatments']} kinds x {bands['draws']} draws on {bands['threads']} threads",
        "under 0.8 s",
        f"{bands['seconds']:.2f} s (best of {bands['runs']})",
        bands["seconds"] < 0.8,
    )
    if bands["kib"] is not None:
        mib = bands["kib"] / 1024.0
        add("most memory of that", "under 100 MB", f"{mib:.0f} MiB", 1.048576 * mib < 100.0)
    return lines
