"""The power page of a packet: what feeds the opening, run by run, with volts to find and cautions to keep."""

from hwsched.calc.power_limits import caution
from hwsched.documents import words
from hwsched.documents.power_words import STATES, name_of, said, states_of, volts
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.drawings.wiring_sheet import wiring_sheet
from hwsched.render.blocks import Block, Cell, Column, Drawings, Facts, Heading, Paragraph, Table
from hwsched.wiring.batteries import dues


def power_blocks(project: ProjectView, view: OpeningView) -> list[Block]:
    """Return the blocks of an opening's power; nothing where nothing feeds it."""
    fit = view.fit
    if fit is None or fit.power == "none":
        return []
    if fit.power == "battery":
        return _battery(view)
    found = project.power.circuit_of(view.case.opening.id)
    if found is None:
        return [
            Heading("Power"),
            Paragraph("Fed from a supply of its own, as listed under box contents; it hangs on no circuit.", "body"),
            Paragraph(f"{caution('mains-on-leaf')} {caution('separation')}", "caution"),
        ]
    supply, circuit = found
    opening_id = view.case.opening.id
    node = min(
        (n for n in circuit.nodes if n.opening_id == opening_id and n.margin_v is not None),
        key=lambda n: n.margin_v or 0.0,
        default=circuit.node_of(opening_id),
    )
    place = (supply.supply.building, supply.supply.level, supply.supply.place)
    pairs = [
        ("Supply", f"{supply.supply.name}, {supply.supply.part or words.UNKNOWN}"),
        ("It stands", " · ".join(part for part in place if part) or "place not given"),
        ("Circuit", f"{name_of(circuit)}, limiter {said(circuit.limiter_a, 'A')}"),
    ]
    if node is not None and node.minimum_v is not None:
        pairs.append(("Needs at the unit", f"{node.minimum_v:g} to {node.maximum_v:g} V"))
    blocks: list[Block] = [Heading("Power"), Facts(tuple(pairs))]
    for problem in (*supply.problems, *circuit.problems):
        if problem.opening_id in ("", opening_id):
            blocks.append(Paragraph(f"Not worked out: {problem.message}.", "caution"))
    if node is not None and node.volts:
        states = states_of(circuit)
        row: tuple[Cell, ...] = tuple(volts(node, state) for state in states)
        columns = tuple(Column(f"{STATES[state]} [V]", 1.0, "right") for state in states)
        blocks.append(Table((*columns, Column("Measured [V]", 1.2)), ((*row, "........"),), title="Volts at the unit"))
    blocks.append(Drawings((wiring_sheet(supply, circuit, opening_id, project.length_style),), height_mm=110.0))
    blocks.append(Paragraph(f"{caution('mains-on-leaf')} {caution('separation')}", "caution"))
    return blocks


def _battery(view: OpeningView) -> list[Block]:
    found = dues([(view.case, view.fit)])
    if not found:
        return []
    due = found[0]
    life = words.UNKNOWN if due.days is None else f"about {due.days:.0f} days"
    pairs = (
        ("Cells", f"{words.quantity(due.count)} × {due.designation or due.cell}"),
        ("Life at the surveyed use", life),
        ("Change by", due.due_on.isoformat() if due.due_on else "write down the day of installation"),
    )
    return [Heading("Power"), Facts(pairs)]
