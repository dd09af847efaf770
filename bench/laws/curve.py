"""Smooth curves through given points that rise and fall only where the points do."""

from laws.bag import once


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


@once
def on_curve(bag):
    """The function that reads such a curve; its end values outside."""

    @bag.jit
    def at(x, y, slope, place):
        last = len(x) - 1
        if place <= x[0]:
            return y[0]
        if place >= x[last]:
            return y[last]
        i = 0
        while i + 1 < last and place >= x[i + 1]:
            i += 1
        width = x[i + 1] - x[i]
        s = (place - x[i]) / width
        r = 1.0 - s
        rise, fall = width * slope[i], width * slope[i + 1]
        low = y[i] * (1.0 + 2.0 * s) + rise * s
        high = y[i + 1] * (1.0 + 2.0 * r) - fall * r
        return r * r * low + s * s * high

    return at
