"""Hours of work on openings: tasks by leaf material, difficulty, and how work grows quicker when it is repeated.

Here belong hours. Their price stands in `cost`, what must be done at an opening with whoever plans it. The hours of the
table `resources/labour/tasks.csv` are from memory, unverified: defaults that a project replaces by its own.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from math import fsum, log2
from typing import Final, Literal, get_args

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.parts.cost import exact
from hwsched.calc.tables import rows
from hwsched.quantities.money import Exact, product, summed

ANY: Final = "any"
"""Leaf material of a row that holds for every material."""
_MOST_UNITS: Final = 1_000_000
Curve = Literal["unit", "cumulative-average"]
"""How a learning rate is meant: Crawford's (the time of the unit falls) or Wright's own (the average so far falls)."""


@dataclass(frozen=True, slots=True)
class TaskRow:
    """Hours of one task on one leaf material."""

    task: str
    material: str
    """Leaf material, or `ANY`."""
    text: str
    unit: str
    """each, or m."""
    hours: Decimal
    """For one [h]."""
    source: str
    """Publication, "from memory", or "the project's own"."""
    verified: bool
    """False where the hours are from memory; printed as unverified."""


LabourTable = Mapping[tuple[str, str], TaskRow]
"""Rows by task and leaf material."""


@dataclass(frozen=True, slots=True)
class Task:
    """Something to be done, so many times."""

    task: str
    count: Exact = 1
    """Times, or metres; 0 or more."""
    material: str | None = ANY
    """Of the leaf; None where it is not known."""


@dataclass(frozen=True, slots=True)
class TaskHours:
    """Hours of a task before the difficulty of its opening."""

    row: TaskRow
    count: Decimal
    hours: Decimal
    """[h]."""


@dataclass(frozen=True, slots=True)
class Labour:
    """Hours of an opening, with what they are made of."""

    lines: tuple[TaskHours, ...]
    difficulty: Decimal
    hours: Decimal
    """Of what is known, with the difficulty [h]."""
    needs: tuple[str, ...]
    """What is missing to know all hours; empty where they are complete."""


def labour_table(own: Mapping[str | tuple[str, str], Exact] | None = None) -> LabourTable:
    """Hours of the table, with those of a project in their place.

    Parameters
    ----------
    own : mapping of task, or of (task, leaf material), to hours
        Hours for one [h], 0 or more. Those of a task replace all its rows, of whatever material; those of a task and
        material replace that row alone, and go before the former. A task that is not in the table is added to it.

    Raises
    ------
    InputError
        Names the task whose hours cannot be taken.

    Examples
    --------
    >>> table = labour_table({"fit-rim": "0.5", ("drill-access-hole", "wood"): 0.1})
    >>> [str(table[key].hours) for key in (("fit-rim", "any"), ("drill-access-hole", "wood"), ("clean-up", "any"))]
    ['0.5', '0.1', '0.15']
    """
    table = {
        (row.text("task"), row.text("leaf_material")): TaskRow(
            row.text("task"),
            row.text("leaf_material"),
            row.text("text"),
            row.text("unit"),
            exact(row.text("hours"), f"hours of {row.text('task')}"),
            row.source,
            row.verified,
        )
        for row in rows("tasks", "labour")
    }
    for key, hours in (own or {}).items():
        # Hours for every material first: those for one material, set below, must stand over them.
        if isinstance(key, str):
            known = [at for at in table if at[0] == key]
            row = _own(table[known[0]] if known else None, key, ANY, hours)
            for at in known:
                # Otherwise the table's own hours for a material would go before the project's for all.
                del table[at]
            table[key, ANY] = row
    for key, hours in (own or {}).items():
        if not isinstance(key, str):
            task, material = key
            like = table.get(key) or next((row for at, row in table.items() if at[0] == task), None)
            table[key] = _own(like, task, material, hours)
    order = {
        task: place for place, task in enumerate(dict.fromkeys(row.text("task") for row in rows("tasks", "labour")))
    }
    return dict(sorted(table.items(), key=lambda item: order.get(item[0][0], len(order))))


def _own(like: TaskRow | None, task: str, material: str, hours: Exact) -> TaskRow:
    known = exact(hours, f"hours of {task} ({material})")
    row = like or TaskRow(task, material, task, "each", known, "", True)
    return replace(row, material=material, hours=known, source="the project's own", verified=True)


def labour(tasks: Iterable[Task], table: LabourTable, difficulty: Exact = 1) -> Labour:
    """Hours of the tasks of an opening.

    Parameters
    ----------
    tasks : iterable of Task
        In the order of work; a task may come more than once.
    table : LabourTable
        Of `labour_table`.
    difficulty : number
        Factor of the opening, above 0; 1 is normal. Whoever gives another keeps the reason.

    Returns
    -------
    Labour
        Sum of count · hours for one · difficulty. A task without hours, or whose leaf material must be known and is
        not, adds nothing and stands in `needs`.

    Raises
    ------
    InputError
        Names the task or factor that cannot be taken.

    Notes
    -----
    Quantity times labour unit times condition: method of the electrical trade's manual of labour units (as described in
    trade articles; none of its values is used).

    Examples
    --------
    >>> found = labour([Task("drill-access-hole", 2, "hollow-metal"), Task("lay-wire", "12.5")], labour_table(), "1.25")
    >>> found.hours, found.needs
    (Decimal('1.37500'), ())
    >>> labour([Task("drill-access-hole", 1, None)], labour_table()).needs
    ('leaf material for drill-access-hole',)
    """
    factor = exact(difficulty, "difficulty", above=0)
    by_material = {task for task, material in table if material != ANY}
    lines, needs = [], []
    for task in tasks:
        count = exact(task.count, f"count of {task.task}")
        # Any of the rows would be a guess: the hours of a steel leaf are not those of a wooden one.
        if task.material is None and task.task in by_material:
            needs.append(f"leaf material for {task.task}")
            continue
        # The row of the material goes before the one that holds for all.
        row = table.get((task.task, task.material or ANY)) or table.get((task.task, ANY))
        if row is None:
            needs.append(f"hours of {task.task} ({task.material or ANY})")
            continue
        lines.append(TaskHours(row, count, product(count, row.hours)))
    hours = product(summed(line.hours for line in lines), factor)
    return Labour(tuple(lines), factor, hours, tuple(dict.fromkeys(needs)))


def series_share(count: int, rate: float, done: int = 0, curve: Curve = "unit") -> float:
    """Time of some units one after another, as a multiple of the time of the very first.

    Parameters
    ----------
    count : int
        Units to be done, 0 to 1,000,000.
    rate : float
        Learning rate, 0.5 to 1: what is left of the time when the count doubles. 1 means that nothing is learnt.
    done : int
        Units of this kind done before, 0 to 1,000,000.
    curve : str
        ``unit`` (Crawford): the n-th unit takes n^b of the first. ``cumulative-average`` (Wright 1936): the average
        of the first n units is n^b of the first. b = log2(rate). The same rate gives different totals.

    Returns
    -------
    float
        Unit curve: sum over n = done + 1 to done + count of n^b, term by term and not by an integral. Cumulative
        average: (done + count)^(b + 1) - done^(b + 1).

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Source of both equations: operations-management texts and a project-management workbook (2018), read in copies.

    Examples
    --------
    >>> round(10 * series_share(10, 0.80), 4), round(10 * series_share(8, 0.80, curve="cumulative-average"), 2)
    (63.1537, 40.96)
    """
    _check_units(count, "count", 0)
    _check_units(done, "done", 0)
    rate = _check_curve(rate, curve)
    # Exactly the count: a sum of ones as powers might differ in its last digit and show as labour.
    if rate == 1.0:
        return float(count)
    if curve == "unit":
        return fsum(_falling(n, rate) for n in range(done + 1, done + count + 1))
    # Wright's rate lowers the average of all so far: the time of some is the difference of two totals.
    return _average_total(done + count, rate) - _average_total(done, rate)


def unit_share(n: int, rate: float, curve: Curve = "unit") -> float:
    """Time of the n-th unit of a kind, as a share of the first.

    Parameters
    ----------
    n : int
        1 to 1,000,000.
    rate, curve
        As of `series_share`.

    Examples
    --------
    >>> round(10 * unit_share(3, 0.80), 4), round(10 * unit_share(8, 0.80, "cumulative-average"), 4)
    (7.021, 3.5457)
    """
    _check_units(n, "n", 1)
    return series_share(1, rate, n - 1, curve)


def learnt_hours(first_h: Exact, count: int, rate: float, done: int = 0, curve: Curve = "unit") -> Decimal:
    """Hours of some openings alike, one after another.

    Parameters
    ----------
    first_h : number
        Hours of the first of its kind, 0 or more [h].
    count, rate, done, curve
        As of `series_share`.

    Returns
    -------
    Decimal
        [h]. The share is irrational and known to about 16 digits; with rate 1 the hours are exact.

    Examples
    --------
    >>> learnt_hours("1.4", 3, 1.0)
    Decimal('4.20')
    """
    return product(exact(first_h, "first_h"), exact(series_share(count, rate, done, curve), "share"))


def learning_rate(first_h: float, nth_h: float, n: int) -> float:
    """Learning rate of the unit curve from two measured times.

    Parameters
    ----------
    first_h, nth_h : float
        Hours of the first and the n-th unit, above 0 [h].
    n : int
        2 to 1,000,000.

    Returns
    -------
    float
        (nth / first)^(1 / log2 n). Above 1 the work grew slower; `series_share` takes 0.5 to 1.

    Examples
    --------
    >>> learning_rate(10, 1.25, 8)
    0.5
    """
    check_number(first_h, "first_h", above=0)
    check_number(nth_h, "nth_h", above=0)
    _check_units(n, "n", 2)
    return float((nth_h / first_h) ** (1.0 / log2(n)))


def _falling(n: int, rate: float) -> float:
    """n^log2(rate), written the other way round: exact where n is a power of two."""
    return float(rate ** log2(n))


def _average_total(n: int, rate: float) -> float:
    return n * _falling(n, rate) if n else 0.0


def _check_units(value: int, field: str, least: int) -> None:
    if isinstance(value, bool) or not isinstance(value, int):
        raise InputError(field, f"must be a whole number, got {value!r}")
    check_number(value, field, at_least=least, at_most=_MOST_UNITS)


def _check_curve(rate: float, curve: str) -> float:
    if curve not in get_args(Curve):
        raise InputError("curve", f"must be one of {', '.join(get_args(Curve))}; got {curve!r}")
    return check_number(rate, "rate", at_least=0.5, at_most=1)
