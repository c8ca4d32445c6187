"""`hwsched power add`: lays a supply, a circuit of a supply, or a run of a circuit; or changes one."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class LaidItem(Step):
    """What was laid or changed, and the openings that it touched."""

    what: str
    name: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("what", choices=("supply", "circuit", "run"))
    parser.add_argument("name", help="SUPPLY, SUPPLY/CIRCUIT, or for a run the SUPPLY/CIRCUIT that it belongs to")
    parser.add_argument(
        "facts",
        nargs="*",
        metavar="FACT=VALUE",
        help="such as part=PS-12; hwsched power list PROJECT facts tells which there are",
    )
    parser.add_argument(
        "--run-to", metavar="NODE", help="with run: change the run of this circuit that ends at a junction or mark"
    )
    parser.add_argument(
        "--new-building", action="store_true", help="building= may name one that the project does not have yet"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.model.errors import ValueRefusedError
    from hwsched.operations.power import power_editing
    from hwsched.operations.power.power_editing import power_row_named, run_to, typed_power_fact

    for entry in arguments.facts:
        if "=" not in entry:
            raise ValueRefusedError(
                "fact", f"'{entry}' cannot be read; accepted: FACT=VALUE, nothing after = for unknown"
            )
    if (arguments.what == "supply") == ("/" in arguments.name):
        kind, accepted = ("supply", "SUPPLY") if arguments.what == "supply" else ("circuit", "SUPPLY/CIRCUIT")
        raise ValueRefusedError("name", f"'{arguments.name}' names no {kind}; accepted: {accepted}")
    if arguments.run_to and arguments.what != "run":
        raise ValueRefusedError("--run-to", f"'{arguments.what}' is laid here; accepted: with run")
    texts = dict(entry.partition("=")[::2] for entry in arguments.facts)
    facts = typed_power_fact(arguments.what, texts)
    supply, _, circuit = arguments.name.partition("/")
    done = "Added"
    with opened(arguments) as project:
        if arguments.run_to:
            done = "Changed"
            entity, row_id = run_to(project, power_row_named(project, arguments.name)[1], arguments.run_to)
            changes = power_editing.edit_power_row(project, entity, row_id, facts, who=who(arguments))
        elif arguments.what == "run":
            changes, _ = power_editing.add_run(
                project, power_row_named(project, arguments.name)[1], facts, who=who(arguments)
            )
        elif power_editing.is_power_row(project, arguments.name):
            done = "Changed"
            entity, row_id = power_row_named(project, arguments.name)
            changes = power_editing.edit_power_row(
                project, entity, row_id, facts, who=who(arguments), new_building=arguments.new_building
            )
        elif arguments.what == "supply":
            named = {**facts, "name": arguments.name}
            changes, _ = power_editing.add_supply(
                project, named, who=who(arguments), new_building=arguments.new_building
            )
        else:
            owner = power_row_named(project, supply)[1]
            changes, _ = power_editing.add_circuit(project, owner, {**facts, "name": circuit}, who=who(arguments))
        laid: LaidItem = {**step_of(project, changes), "what": arguments.what, "name": arguments.name}
    return tell_step(arguments, done, changes, laid)


VERB = Verb(_arguments, _run, result=LaidItem, in_batch=True)
