"""Rule: where a thumb turn opens from inside, the new euro-profile cylinder has one too."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import THUMB_TURN
from hwsched.rules.reading import lock_item, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, lock = lock_part(given, fit), lock_item(given)
    if part is None or lock is None or part.kind != "euro-cylinder":
        return
    if lock.thumb_turn is None:
        yield unknown(("existing_item.thumb_turn",), part.number)
    elif lock.thumb_turn and part.flag_of(THUMB_TURN) is None:
        yield unknown((f"part {part.number}.thumb_turn",), part.number)
    elif lock.thumb_turn and not part.flag_of(THUMB_TURN):
        yield Verdict("The old cylinder opens from inside by a thumb turn; this one has none.", about=part.number)


RULE = Rule(
    id="thumb-turn-kept",
    title="Thumb turn inside kept",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice; IBC 1010.2 (2021), secondary copy: no key from the egress side",
    cure="Take the cylinder with a thumb turn, or record that none is wanted.",
    judge=_judge,
    slot="lock",
    defers=True,
)
