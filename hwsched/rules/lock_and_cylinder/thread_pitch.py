"""Rule: a threaded cylinder has the thread of mortise cases."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import THREAD_DIAMETER_MM, THREAD_PITCH_MM
from hwsched.rules.reading import lock_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "mortise-cylinder":
        return
    pitch, diameter = part.number_of(THREAD_PITCH_MM), part.number_of(THREAD_DIAMETER_MM)
    if pitch is None:
        yield unknown((f"part {part.number}.thread_pitch_mm",), part.number)
        return
    # Within a tolerance: catalogues say 0.794, 0.79375 or 1/32 in of one thread.
    if abs(pitch - limits["pitch_mm"]) > limits["pitch_tolerance_mm"]:
        yield Verdict(
            f"The thread's pitch is {pitch:.3f} mm; mortise cases have {limits['pitch_mm']:.3f} mm.",
            values={"pitch_mm": pitch, "wanted_mm": limits["pitch_mm"]},
            about=part.number,
        )
    if diameter is not None and abs(diameter - limits["diameter_mm"]) > limits["diameter_tolerance_mm"]:
        yield Verdict(
            f"The thread's diameter is {diameter:.2f} mm; mortise cases have {limits['diameter_mm']:.2f} mm.",
            values={"diameter_mm": diameter, "wanted_mm": limits["diameter_mm"]},
            about=part.number,
        )


RULE = Rule(
    id="thread-pitch",
    title="Thread of the cylinder matches the case",
    discipline="lock-and-cylinder",
    severity="error",
    basis="1.150 in, 32 threads an inch: trade practice (ASME/BHMA A156.5), from memory, unverified",
    cure="Take a cylinder with the case's thread, or change the limit where the cases have another.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "pitch_mm",
            25.4 / 32,
            "Pitch of the case's thread.",
            "from memory, unverified",
            unit="mm",
            low=0.1,
            high=5.0,
        ),
        Limit(
            "pitch_tolerance_mm", 0.01, "Deviation allowed.", "from memory, unverified", unit="mm", low=0.0, high=25.0
        ),
        Limit(
            "diameter_mm",
            29.21,
            "Diameter of the case's thread.",
            "from memory, unverified",
            unit="mm",
            low=10.0,
            high=60.0,
        ),
        Limit(
            "diameter_tolerance_mm", 0.2, "Deviation allowed.", "from memory, unverified", unit="mm", low=0.0, high=25.0
        ),
    ),
)
