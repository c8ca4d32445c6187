"""Every set of operations at one time on the circuits of a supply, solved with plain matrices: the least volts."""

from itertools import chain, combinations, product

import numpy as np

from tests.calc.oracles.spice import ohm_per_m


def sets_of(circuits):
    """Every set of (circuit, device) that may operate at one time; ``circuits``: (groups of devices, at once)."""
    choices = []
    for number, (groups, at_once) in enumerate(circuits):
        members = {}
        for device, group in enumerate(groups):
            members.setdefault(group, []).append((number, device))
        choices.append(
            [[each for g in some for each in members[g]]
             for size in range(min(at_once, len(members)) + 1) for some in combinations(members, size)]
        )  # fmt: skip
    return choices


def count_of(choices):
    """How many sets these are."""
    return int(np.prod([len(each) for each in choices], dtype=float))


def shared_ohms(given):
    """Resistance that each two nodes share from the source, by inverting the conductances of all runs; node to row."""
    at = {"supply": 0}
    for run in given["runs"]:
        for end in (run["from"], run["to"]):
            at.setdefault(end, len(at))
    conductance = np.zeros((len(at), len(at)))
    conductance[0, 0] = 1.0 / given["source_ohm"]
    for run in given["runs"]:
        i, j = at[run["from"]], at[run["to"]]
        siemens = 1.0 / (2.0 * run["length_m"] * ohm_per_m(run, given["temperature_c"]))
        conductance[i, i] += siemens
        conductance[j, j] += siemens
        conductance[i, j] -= siemens
        conductance[j, i] -= siemens
    return np.linalg.inv(conductance), at


def least_volts(given, resting, working, owners, choices):
    """Least voltage of every node with the set that brings it; -inf with a set that has no solution.

    ``given``: a supply as ngspice takes it; its loads with what each draws at rest and at work; ``owners``: the
    (circuit, device) of each load.
    """
    through, at = shared_ohms(given)
    nodes = np.array([at[load["node"]] for load in given["loads"]])
    kinds = np.array([load["kind"] for load in given["loads"]])
    place = {owner: i for i, owner in enumerate(owners)}
    every = [list(chain.from_iterable(each)) for each in product(*choices)]
    lowest, worst = np.full(len(at), np.inf), [None] * len(at)
    for begin in range(0, len(every), 1000):
        some = every[begin : begin + 1000]
        values = np.repeat(np.array(resting)[:, None], len(some), axis=1)
        for column, chosen in enumerate(some):
            for owner in chosen:
                values[place[owner], column] = working[place[owner]]
        volts = solved(through, nodes, kinds, values, given["source_v"])
        for node in range(len(at)):
            column = int(volts[node].argmin())
            if volts[node, column] < lowest[node]:
                lowest[node], worst[node] = volts[node, column], some[column]
    return {name: (float(lowest[i]), worst[i]) for name, i in at.items()}


def solved(through, nodes, kinds, values, source_v):
    """Node voltages for many columns of values: Newton's steps from above; -inf where they find none."""
    count, columns = len(through), values.shape[1]
    volts = np.full((columns, count), source_v)
    amps, watts, siemens = (np.zeros((columns, count)) for _ in range(3))
    for which, whole in (("current", amps), ("power", watts)):
        for i in np.flatnonzero(kinds == which):
            whole[:, nodes[i]] += values[i]
    for i in np.flatnonzero(kinds == "resistance"):
        siemens[:, nodes[i]] += 1.0 / values[i]
    lost = np.zeros(columns, dtype=bool)
    for _ in range(100):
        draw = amps + watts / volts + siemens * volts
        slope = siemens - watts / volts**2
        residual = volts - source_v + draw @ through.T
        step = np.linalg.solve(np.eye(count)[None] + through[None] * slope[:, None, :], residual[:, :, None])[:, :, 0]
        lower = volts - step
        # From above each step goes down and stays above the highest solution; a step up means that there is none.
        lost |= (step < -1e-6).any(axis=1) | (lower <= 0.0).any(axis=1)
        volts = np.where(lost[:, None], volts, lower)
        if np.abs(step[~lost]).max(initial=0.0) < 1e-11:
            break
    volts[lost] = -np.inf
    return volts.T
