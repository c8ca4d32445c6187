"""The work that a fit asks for, as tasks of the labour table; `hwsched.calc.project.labour` says what a task takes."""

from collections import Counter

from hwsched.attributes.of_parts import FORM
from hwsched.calc.project.labour import Task
from hwsched.rules.network.across_leaf import THROUGH
from hwsched.rules.network.devices import switched
from hwsched.rules.reading import RELEASES, entry, in_role, leafless, lock_form, lock_leaf
from hwsched.values import Fit, OpeningInput

_MOUNTED = {"inside": "mount-unit-surface", "key": "mount-unit-surface", "edge": "mount-unit-edge"}


def tasks_of(given: OpeningInput, fit: Fit) -> tuple[Task, ...]:
    """Return the tasks at one lock point; its wire only where it has a supply of its own.

    An opening is cleaned up once, however many points it has.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        A lock point that is fitted.
    """
    leaf = lock_leaf(given)
    material = leaf.material if leaf is not None else None
    counts: Counter[str] = Counter()
    form = lock_form(given)
    if form is not None:
        counts[f"fit-{form}"] = 1
        # Where a reader goes no cylinder stood.
        if form != "reader":
            counts["take-off-cylinder"] = 1
    for hole in fit.holes:
        if hole.purpose == "pocket":
            counts["cut-edge-pocket"] += hole.count
        elif hole.purpose == "channel":
            counts["drill-channel"] += hole.count
        elif hole.purpose == THROUGH:
            counts["bore-raceway" if hole.tool == "installer-bit" else "pull-leaf-wire"] += hole.count
        elif hole.purpose == "cable":
            counts["drill-compound-bore" if hole.up_deg or hole.edge_deg else "drill-access-hole"] += hole.count
    if fit.placement is not None:
        glass = material == "glass" and fit.placement.face in ("inside", "key")
        counts["bond-to-glass" if glass else _MOUNTED.get(fit.placement.face, "mount-unit-wall")] += 1
    transfer = in_role(given, fit, "power-transfer")
    if transfer is not None:
        counts["fit-transfer-hinge" if transfer.text_of(FORM) == "transfer-hinge" else "fit-door-loop"] += 1
    new = [known for part in fit.parts if part.role == "strike" and (known := entry(given, part)) is not None]
    if any(part.kind in RELEASES for part in new):
        counts["fit-release"] += 1
    if fit.part(THROUGH) is not None:
        counts["fit-surface-raceway"] += 1
    tasks = [Task(name, count, material if not leafless(given) else "any") for name, count in counts.items()]
    if fit.power == "supply":
        tasks.append(Task("connect-opening"))
        if switched(given, fit):
            tasks.append(Task("connect-release"))
        if fit.part("supply") is not None:
            tasks.append(Task("mount-supply"))
        wire = fit.part("wire")
        if wire is not None:
            tasks.append(Task("lay-wire", wire.quantity))
    # Once an opening, however many of its locks are converted.
    cleaned = [Task("clean-up")] if given.point.number == 1 else []
    return (*tasks, Task("programme-and-test"), *cleaned)
