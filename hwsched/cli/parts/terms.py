"""`hwsched parts terms`: what the project pays: currency, discounts, exchange rates, labour."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Terms(TypedDict):
    """What the project pays; money as decimal strings in its currency."""

    currency: str | None
    discounts: dict[str, str]
    rates: dict[str, str]
    labour_per_hour: str | None
    hours: dict[str, str]
    learning_rate: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--currency", help="three letters, such as USD")
    parser.add_argument("--labour", metavar="AMOUNT", help="price of an hour")
    parser.add_argument("--learning", metavar="RATE", help="time of every doubled opening alike over the one before")
    for name, text in (
        ("discount", "SUPPLIER=SHARE"),
        ("rate", "CURRENCY=WORTH"),
        ("hours", "TASK[/MATERIAL]=HOURS"),
    ):
        parser.add_argument(
            f"--{name}", action="append", default=[], metavar=text, help="nothing after = takes it away"
        )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, who
    from hwsched.model.queries import read_terms
    from hwsched.operations.parts.cost_terms import set_terms

    def pairs(entries: list[str]) -> dict[str, str | None]:
        return {name: value or None for name, _, value in (entry.partition("=") for entry in entries)}

    asked = {
        "currency": arguments.currency,
        "labour_per_hour": arguments.labour,
        "learning_rate": arguments.learning,
        "discounts": pairs(arguments.discount),
        "rates": pairs(arguments.rate),
        "hours": pairs(arguments.hours),
    }
    with opened(arguments) as project:
        # To be shown they need no right to write.
        if any(each not in (None, {}) for each in asked.values()):
            set_terms(project, who=who(arguments), **asked)
        with project.reading() as connection:
            terms = read_terms(connection)
    told: Terms = {
        "currency": terms.currency or None,
        "discounts": dict(terms.discounts),
        "rates": dict(terms.rates),
        "labour_per_hour": terms.labour_per_hour,
        "hours": dict(terms.hours),
        "learning_rate": terms.learning_rate,
    }
    print_json(told)
    if arguments.json:
        return DONE
    print(
        f"currency {terms.currency or 'that of the parts'}, labour an hour {terms.labour_per_hour or 'unknown'}, "
        f"learning rate {terms.learning_rate}"
    )
    for name, held in (("discount", terms.discounts), ("rate", terms.rates), ("hours", terms.hours)):
        for key, value in held.items():
            print(f"{name} {key} = {value}")
    return DONE


VERB = Verb(_arguments, _run, result=Terms)
