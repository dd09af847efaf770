"""What the laws are given: the numbers of one bag, by name, and the way in which functions are made."""

import functools
import math

ZERO_CELSIUS = 273.15
LN_10 = math.log(10.0)


class Bag:
    """Numbers of one bag of `about` (the answer of `contest` to the command `about`)."""

    def __init__(self, about, bag, jit):
        # Facts, places of states, what does not change in this bag, and its parameters, by name.
        self.fact = about["facts"]
        self.place = {name: i for i, name in enumerate(about["states"])}
        self.count = len(about["states"])
        self.fixed, self.parameter = bag["fixed"], bag["parameters"]
        self.yeast, self.enzymes = bag["yeast"], bag["enzymes"]
        # Compiles a function, or leaves it as it is.
        self.jit = jit
        self.made = {}

    def places(self, *names):
        """Places of some states."""
        return tuple(self.place[name] for name in names)

    def facts(self, *names):
        """Values of some facts."""
        return tuple(self.fact[name] for name in names)

    def fixed_numbers(self, *names):
        """Some of the numbers that do not change."""
        return tuple(self.fixed[name] for name in names)

    def parameters(self, *names):
        """Some of the parameters."""
        return tuple(self.parameter[name] for name in names)


def once(make):
    """Makes a function once for a bag, however many laws ask for it: each is compiled but once."""

    @functools.wraps(make)
    def made(bag, *arguments):
        key = (make, *arguments)
        if key not in bag.made:
            bag.made[key] = make(bag, *arguments)
        return bag.made[key]

    return made
