"""How the program runs its integer solver: quiet, repeatable, on two threads, with progress and cancelling.

Here belongs one run of a model. What is asked of it stands with the question, such as in `siting_model`.
"""

from collections.abc import Callable
from dataclasses import dataclass
from time import monotonic
from typing import Final

import highspy
import numpy as np
from numpy.typing import NDArray

THREADS: Final = 2
"""The same for every model: the solver keeps one pool of threads a process, and refuses another number."""
_SEED: Final = 1
_TOUCH: Final = 1e-6

Progress = Callable[[str, float | None], None]
"""Called with the step in words, and the gap that is left where one is known."""
Cancelled = Callable[[], bool]
"""True once the person has cancelled."""

Floats = NDArray[np.float64]
Ints = NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class Model:
    """Minimise cost · x with row_low <= A x <= row_high; A by rows."""

    cost: Floats
    low: Floats
    high: Floats
    whole: NDArray[np.bool_]
    """Columns that take whole numbers."""
    row_low: Floats
    row_high: Floats
    start: Ints
    """First entry of each row, and the number of entries."""
    column: Ints
    value: Floats


@dataclass(frozen=True, slots=True)
class Limits:
    """When to stop."""

    gap: float = 0.0
    """Share of the objective that may stay unproven."""
    until: float = float("inf")
    """On the clock of `time.monotonic` [s]."""
    target: float | None = None
    """Objective that suffices."""
    cancelled: Cancelled | None = None
    progress: Progress | None = None
    step: str = ""
    """What the run is for, in words, for progress."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a run found."""

    x: Floats | None
    """None where nothing was found."""
    objective: float
    bound: float
    """No answer is better than this."""
    infeasible: bool
    finished: bool
    """Proven within the gap, at the target, or infeasible; False where time or the person stopped it."""
    reduced_cost: Floats | None = None
    """Of a model without whole numbers."""
    row_price: Floats | None = None


class _Quiet(highspy.Highs):
    """Solver that prints nothing: its banner would stand among the answers on standard output."""

    def enableCallbacks(self) -> None:  # noqa: N802 (the library's name)
        """Silence first: this is the first step of the library's own start that prints."""
        self.silent()
        super().enableCallbacks()  # type: ignore[no-untyped-call]


def run(model: Model, limits: Limits, start: Floats | None = None) -> Outcome:
    """Solve a model.

    Parameters
    ----------
    model : Model
        With or without whole numbers.
    limits : Limits
        When to stop, and whom to tell.
    start : array
        An answer to begin from; only saves time.

    Returns
    -------
    Outcome
        The best answer and what is proven of it.
    """
    # Not the time of day: that jumps when a clock is set, and a run would end at once or never.
    left_s = limits.until - monotonic()
    if left_s <= 0.0 or (limits.cancelled is not None and limits.cancelled()):
        return Outcome(None, float("inf"), -float("inf"), False, False)
    highs = _Quiet()  # type: ignore[no-untyped-call]
    highs.setOptionValue("threads", THREADS)
    # The same question must have the same answer each time: a list that is ordered by must not change by itself.
    highs.setOptionValue("random_seed", _SEED)
    highs.setOptionValue("mip_rel_gap", limits.gap)
    # The solver's own allowance is absolute; what is left unproven is to be the share that was asked for, and nothing
    # else.
    highs.setOptionValue("mip_abs_gap", 0.0)
    if left_s < float("inf"):
        highs.setOptionValue("time_limit", left_s)
    if limits.target is not None:
        highs.setOptionValue("objective_target", limits.target)
    highs.passModel(_as_lp(model))
    if start is not None:
        known = highspy.HighsSolution()
        known.col_value = start.tolist()
        highs.setSolution(known)
    _listen(highs, limits)
    if highs.run() == highspy.HighsStatus.kError:
        # Another part of the process used another number of threads.
        highspy.Highs.resetGlobalScheduler(True)
        highs.run()
    found = _outcome(highs, bool(model.whole.any()))
    if start is not None and found.x is not None and _stale(model, found):
        # Where its preparation settles the whole model, the solver (HiGHS 1.16) gives the objective of the answer with
        # the columns of the start.
        return run(model, limits)
    return found


def _stale(model: Model, found: Outcome) -> bool:
    return found.x is not None and float(model.cost @ found.x) > found.objective + _TOUCH * max(
        1.0, abs(found.objective)
    )


def _as_lp(model: Model) -> highspy.HighsLp:
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(model.cost), len(model.row_low)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = model.cost, model.low, model.high
    lp.row_lower_, lp.row_upper_ = model.row_low, model.row_high
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = model.start, model.column, model.value
    kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
    if model.whole.any():
        lp.integrality_ = [kinds[int(w)] for w in model.whole]
    return lp


def _listen(highs: highspy.Highs, limits: Limits) -> None:
    cancelled, progress = limits.cancelled, limits.progress
    if cancelled is not None:

        def stop(event: highspy.HighsCallbackEvent) -> None:
            if cancelled():
                event.interrupt()

        highs.cbSimplexInterrupt.subscribe(stop)
        highs.cbIpmInterrupt.subscribe(stop)
        highs.cbMipInterrupt.subscribe(stop)
    if progress is not None:
        progress(limits.step, None)

        def tell(event: highspy.HighsCallbackEvent) -> None:
            gap = event.data_out.mip_gap
            progress(limits.step, float(gap) if gap < 1.0 else None)

        # A silenced solver tells its log to nobody, not to a callback either: it is kept off the screen alone.
        highs.setOptionValue("log_to_console", False)
        highs.setOptionValue("output_flag", True)
        highs.cbMipLogging.subscribe(tell)


def _outcome(highs: highspy.Highs, whole: bool) -> Outcome:
    status = highs.getModelStatus()
    kinds = highspy.HighsModelStatus
    if status in (kinds.kInfeasible, kinds.kUnboundedOrInfeasible):
        return Outcome(None, float("inf"), float("inf"), True, True)
    info = highs.getInfo()
    finished = status in (kinds.kOptimal, kinds.kObjectiveTarget)
    if whole:
        found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
        x = np.array(highs.getSolution().col_value) if found else None
        objective = info.objective_function_value if found else float("inf")
        return Outcome(x, objective, info.mip_dual_bound, False, finished)
    if not finished:
        return Outcome(None, float("inf"), -float("inf"), False, False)
    solution = highs.getSolution()
    value = info.objective_function_value
    return Outcome(
        np.array(solution.col_value),
        value,
        value,
        False,
        True,
        np.array(solution.col_dual),
        np.array(solution.row_dual),
    )
