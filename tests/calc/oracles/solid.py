"""Distances of solids by going to and fro between their nearest points, and by points strewn over them.

Nothing here knows of the pairs that the program tells apart: a solid is only asked for its point nearest to a place.
"""

from math import dist, sqrt


def nearest(solid, place):
    """Return a solid's point that is nearest to a place: a box, or a round body with flat ends along any line."""
    if len(solid) == 2:
        low, high = solid
        return tuple(min(max(p, a), b) for p, a, b in zip(place, low, high, strict=True))
    start, end, diameter = solid
    long = dist(start, end)
    way = [(b - a) / long for a, b in zip(start, end, strict=True)]
    off = [p - a for p, a in zip(place, start, strict=True)]
    along = sum(o * w for o, w in zip(off, way, strict=True))
    aside = [o - along * w for o, w in zip(off, way, strict=True)]
    far = sqrt(sum(a * a for a in aside))
    share = min(1.0, diameter / 2 / far) if far else 1.0
    along = min(max(along, 0.0), long)
    return tuple(a + along * w + share * s for a, w, s in zip(start, way, aside, strict=True))


def apart(a, b, begin=None):
    """Return the distance of two convex solids: each step goes to the other one's nearest point (Cheney, Goldstein)."""
    here = begin or middle(a)
    last = None
    for _ in range(20_000):
        there = nearest(b, here)
        here = nearest(a, there)
        gap = dist(here, there)
        if last is not None and last - gap < 1e-12:
            break
        last = gap
    return gap


def middle(solid):
    """Return a solid's middle."""
    return tuple((a + b) / 2 for a, b in zip(solid[0], solid[1], strict=True))


def moved(solid, by):
    """Return a solid moved by a vector."""
    ends = [tuple(p + q for p, q in zip(end, by, strict=True)) for end in solid[:2]]
    return type(solid)(*ends, *solid[2:])


def points(solid, rng, count):
    """Strew points over a solid: some at random around it, each drawn to its nearest point of the solid."""
    at = middle(solid)
    reach = dist(solid[0], solid[1]) + (solid[2] if len(solid) == 3 else 0.0)
    for _ in range(count):
        yield nearest(solid, tuple(p + rng.uniform(-reach, reach) for p in at))
