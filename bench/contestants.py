"""Who takes part. Each contestant solves one bag from wetting to its last minute, with the states at
every whole minute, at a relative tolerance and an absolute one for each state."""

import json
import subprocess
import time
import warnings

import numpy as np
from scipy.integrate import odeint, solve_ivp
from sksundae.cvode import CVODE
from numba import njit

from cvode import ADAMS, BDF, Cvode


class Failed(Exception):
    """A solver gave up."""


class Program:
    """The example `contest`: one command a line, one answer a line."""

    def __init__(self, path):
        self._process = subprocess.Popen(
            [path], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )

    def ask(self, *words):
        """Sends a command and returns its answer."""
        self._process.stdin.write(" ".join(map(str, words)) + "\n")
        self._process.stdin.flush()
        answer = self._process.stdout.readline()
        if not answer:
            raise SystemExit(f"`contest` gave no answer to `{' '.join(map(str, words))[:60]}`")
        return json.loads(answer)

    def close(self):
        """Lets the program end."""
        self._process.stdin.close()
        self._process.wait()


class Barm:
    """The program's own solver, in a process of its own that takes the time itself."""

    name = "Barm"
    language = "Rust"

    def __init__(self, program, bag):
        self._program, self._bag = program, bag["name"]

    def set(self, relative, absolute):
        self._tolerance = [repr(relative), *map(repr, map(float, absolute))]

    def solve(self):
        answer = self._program.ask("solve", self._bag, *self._tolerance)
        self._evaluations = answer["evaluations"]
        return np.array(answer["states"])

    def evaluations(self):
        return self._evaluations

    def times(self, count):
        """Quartiles of so many solutions (µs)."""
        return self._program.ask("time", self._bag, max(count, 20), *self._tolerance)["us"]


class Timed:
    """Takes the time of what has a `solve`."""

    def times(self, count):
        """Quartiles of so many solutions (µs)."""
        each = []
        for _ in range(count):
            begin = time.perf_counter()
            self.solve()
            each.append(1e6 * (time.perf_counter() - begin))
        return list(np.percentile(each, [25, 50, 75]))


class Scipy(Timed):
    """A method of `scipy.integrate.solve_ivp`."""

    def __init__(self, method, right_hand_side, language, bag):
        self.name, self.language = f"SciPy solve_ivp({method})", language
        self._method, self._rates = method, right_hand_side
        self._start = np.array(bag["start"])
        self._first, self._last = -bag["wet_min"], float(bag["last_minute"])
        self._minutes = np.arange(bag["last_minute"] + 1.0)

    def set(self, relative, absolute):
        self._relative, self._absolute = relative, absolute

    def solve(self):
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            found = solve_ivp(
                self._rates,
                (self._first, self._last),
                self._start,
                method=self._method,
                t_eval=self._minutes,
                rtol=self._relative,
                atol=self._absolute,
            )
        if not found.success:
            raise Failed(found.message)
        self._evaluations = found.nfev
        return found.y.T

    def evaluations(self):
        return self._evaluations


class Odeint(Timed):
    """LSODA as `scipy.integrate.odeint` has it: the loop over steps is compiled."""

    name, language = "SciPy odeint (LSODA)", "numba"

    def __init__(self, right_hand_side, bag):
        self._rates, self._start = right_hand_side, np.array(bag["start"])
        minutes = np.arange(bag["last_minute"] + 1.0)
        self._extra = int(bag["wet_min"] > 0.0)
        self._times = np.concatenate(([-bag["wet_min"]] * self._extra, minutes))

    def set(self, relative, absolute):
        self._relative, self._absolute = relative, absolute

    def solve(self):
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            found, about = odeint(
                self._rates,
                self._start,
                self._times,
                rtol=self._relative,
                atol=self._absolute,
                tfirst=True,
                full_output=True,
                mxstep=100_000,
            )
        if "successful" not in about["message"]:
            raise Failed(about["message"])
        self._evaluations = int(about["nfe"][-1])
        return found[self._extra :]

    def evaluations(self):
        return self._evaluations


class Direct(Timed):
    """CVODE without any Python while it runs."""

    language = "numba, C"

    def __init__(self, name, rates, bag, method, newton):
        self.name = f"CVODE {name}"
        minutes = np.arange(bag["last_minute"] + 1.0)
        self._solver = Cvode(rates, bag["start"], minutes, -bag["wet_min"], method, newton)

    def set(self, relative, absolute):
        self._solver.set(relative, absolute)

    def solve(self):
        try:
            return self._solver.solve()
        except RuntimeError as gave_up:
            raise Failed(str(gave_up)) from gave_up

    def evaluations(self):
        return self._solver.evaluations()


class Sundae(Timed):
    """CVODE through scikit-sundae, which calls the compiled rates as a Python function."""

    name, language = "scikit-sundae BDF, with call overhead", "numba"

    def __init__(self, rates, bag):
        self._rates, self._start = rates, np.array(bag["start"])
        minutes = np.arange(bag["last_minute"] + 1.0)
        self._extra = int(bag["wet_min"] > 0.0)
        self._times = np.concatenate(([-bag["wet_min"]] * self._extra, minutes))

    def set(self, relative, absolute):
        self._solver = CVODE(
            self._rates, method="BDF", rtol=relative, atol=absolute, max_num_steps=1_000_000
        )

    def solve(self):
        try:
            found = self._solver.solve(self._times, self._start)
        except Exception as gave_up:
            raise Failed(str(gave_up)) from gave_up
        if not found.success:
            raise Failed(found.message)
        self._evaluations = found.nfev
        return found.y[self._extra :]

    def evaluations(self):
        return self._evaluations


def returned(rates, count):
    """Compiled rates that return a new array, as SciPy asks for them."""

    @njit(error_model="numpy")
    def right_hand_side(t, y):
        dy = np.empty(count)
        rates(t, y, dy)
        return dy

    return right_hand_side


def listed(rates, count):
    """Plain rates for SciPy: lists of floats inside, which plain Python reads three times as fast as
    arrays."""

    def right_hand_side(t, y):
        dy = [0.0] * count
        rates(t, y.tolist(), dy)
        return dy

    return right_hand_side


def line_up(program, bag, plain, compiled):
    """All contestants for one bag; the program first."""
    count = len(bag["start"])
    fast, slow = returned(compiled, count), listed(plain, count)
    return [
        Barm(program, bag),
        Scipy("LSODA", slow, "plain Python", bag),
        Scipy("LSODA", fast, "numba", bag),
        Odeint(fast, bag),
        Scipy("RK45", fast, "numba", bag),
        Scipy("DOP853", fast, "numba", bag),
        Scipy("BDF", fast, "numba", bag),
        Scipy("Radau", fast, "numba", bag),
        Direct("Adams, fixed point", compiled, bag, ADAMS, False),
        Direct("BDF, Newton, dense", compiled, bag, BDF, True),
        Sundae(compiled, bag),
    ]
