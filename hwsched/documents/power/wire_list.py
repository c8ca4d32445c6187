"""The wire list: every run point to point, which piece is cut from which reel, and what else a building takes."""

from hwsched.calc.power.supply_practice import wire_waste
from hwsched.documents import words
from hwsched.documents.power.power_words import far, name_of
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle, run_unit
from hwsched.render.blocks import TICK, Block, Cell, Column, Document, Heading, Paragraph, Section, Table
from hwsched.values.amounts import plain_amount
from hwsched.wiring.goods import ROLES, Bill
from hwsched.wiring.take_off import WireLine


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the wire list of a project."""
    supplies = project.power.supplies
    buildings = list(dict.fromkeys(s.supply.building or "" for s in supplies if s.circuits))
    runs = sum(len(circuit.runs) + len(circuit.unsolved_runs) for supply in supplies for circuit in supply.circuits)
    sections = [Section(tuple(_take_off(project)))]
    for building in buildings:
        sections.append(Section((Heading(building or phrase("No building given")), *_runs(project, building))))
    return Document(
        phrase("Wire list"),
        project.title,
        project.revision,
        project.date,
        tuple(sections),
        subtitle=phrase_of_count("{count} run", "{count} runs", runs),
    )


def _take_off(project: ProjectView) -> list[Block]:
    bill, style = project.bill, project.length_style
    unit = run_unit(style)
    blocks: list[Block] = [Heading(phrase("Take-off"))]
    unknown = [
        f"{name_of(circuit)}: {problem.message}"
        for supply in project.power.supplies
        for circuit in supply.circuits
        for problem in (*supply.problems, *circuit.problems)
        if problem.kind != "mismatch" or not circuit.solved
    ]
    if unknown:
        blocks.append(Paragraph(phrase("Not worked out: {unknown}.", unknown="; ".join(unknown)), "caution"))
    if not bill.wires:
        blocks.append(Paragraph(phrase("No run is laid yet.")))
    else:
        rows: list[tuple[Cell, ...]] = [
            (
                line.building or phrase("no building"),
                line.part or "-",
                _conductor(line),
                line.runs,
                far(line.length_m, style),
                far(line.leaf_m, style),
                far(line.with_waste_m, style),
                phrase(words.UNKNOWN) if line.reel_m is None else far(line.reel_m, style),
                phrase(words.UNKNOWN) if line.reels is None else line.reels,
                line.gap_text,
            )
            for line in bill.wires
        ]
        columns = (
            Column(phrase("Building"), 1.4),
            Column(phrase("Wire"), 1.2),
            Column(phrase("Conductor"), 1.3),
            Column(phrase("Runs"), 0.6, "right"),
            Column(phrase("Runs [{unit}]", unit=unit), 0.8, "right"),
            Column(phrase("Leaves, frames [{unit}]", unit=unit), 0.9, "right"),
            Column(phrase("With {wire_waste:.0%} [{unit}]", wire_waste=wire_waste() - 1, unit=unit), 0.9, "right"),
            Column(phrase("Reel [{unit}]", unit=unit), 0.8, "right"),
            Column(phrase("Reels"), 0.6, "right"),
            Column(phrase("Fewest"), 1.2),
        )
        blocks.append(Table(columns, tuple(rows), title=phrase("Wire")))
        blocks += _reels(bill.wires, style)
    blocks += goods_blocks(bill)
    if bill.goods:
        blocks.append(
            Paragraph(
                phrase(
                    "Lengths are one way, as measured or estimated from level, plan and rise; the allowance is "
                    "common practice, and what lies on leaves and in frames has it already. Keep power-limited "
                    "conductors apart from mains as the code in force asks."
                ),
                "caution",
            )
        )
    return blocks


def goods_blocks(bill: Bill) -> list[Block]:
    """Return what is ordered by the piece, and what is licensed work; nothing where there is none."""
    rows = tuple(
        (
            each.building or phrase("no building"),
            each.level,
            ROLES[each.role],
            each.part or "-",
            plain_amount(float(each.quantity)),
            each.text,
            words.needed(each.needs),
        )
        for each in bill.goods
        if each.line is None
    )
    blocks: list[Block] = []
    if rows:
        columns = (
            Column(phrase("Building"), 1.2),
            Column(phrase("Level"), 0.6),
            Column(phrase("What"), 1.1),
            Column(phrase("Part"), 1.2),
            Column(phrase("Qty"), 0.5, "right"),
            Column(phrase("For"), 2.2),
            Column(phrase("Needs"), 1.8),
        )
        blocks += [Heading(phrase("Goods by the piece"), 2), Table(columns, rows, title=phrase("Goods by the piece"))]
    if bill.licensed:
        work = tuple(
            (
                each.building or phrase("no building"),
                each.level,
                each.supply,
                each.place,
                each.text,
                words.needed(each.needs),
            )
            for each in bill.licensed
        )
        titles = (
            Column(phrase("Building"), 1.2),
            Column(phrase("Level"), 0.6),
            Column(phrase("For"), 0.9),
            Column(phrase("It stands"), 1.2),
            Column(phrase("Work"), 4.0),
            Column(phrase("Needs"), 1.4),
        )
        blocks += [
            Heading(phrase("Licensed work"), 2),
            Paragraph(
                phrase("On the mains side nothing is of our goods: somebody with a licence brings and does it."),
                "small",
            ),
            Table(titles, work, title=phrase("Licensed work")),
        ]
    return blocks


def _conductor(line: WireLine) -> str:
    return phrase("surface raceway") if line.kind == "raceway" else f"{line.gauge} {line.stranding}".strip()


def _reels(lines: tuple[WireLine, ...], style: LengthStyle) -> list[Block]:
    """Return which piece is cut from which reel."""
    unit = run_unit(style)
    rows: list[tuple[Cell, ...]] = [
        (
            line.building or phrase("no building"),
            line.part or "-",
            number + 1,
            "; ".join(f"{piece.name}, {far(piece.length_m, style, 2)} {unit}" for piece in pieces),
            far(line.left_m(number), style, 2),
        )
        for line in lines
        for number, pieces in enumerate(line.cuts)
    ]
    if not rows:
        return []
    columns = (
        Column(phrase("Building"), 1.3),
        Column(phrase("Wire"), 1.1),
        Column(phrase("Reel"), 0.5, "right"),
        Column(phrase("Pieces cut from it"), 4.4),
        Column(phrase("Left [{unit}]", unit=unit), 0.7, "right", 2),
    )
    blocks: list[Block] = [Heading(phrase("Reels and bars"), 2), Table(columns, tuple(rows), title=phrase("Reels"))]
    for line in lines:
        what = "bar" if line.kind == "raceway" else "reel"
        if line.gap:
            text = phrase(
                "{part}: {reels} {what}s; whether {fewest} would do is not proved.",
                part=line.part,
                reels=line.reels,
                what=what,
                fewest=line.fewest,
            )
            blocks.append(Paragraph(text, "small"))
        if line.spliced:
            join = "joined" if line.kind == "raceway" else "spliced"
            text = phrase_of_count(
                "{part}: {count} piece is longer than a {what} and is {join}; order it in one length.",
                "{part}: {count} pieces are longer than a {what} and are {join}; order them in one length.",
                line.spliced,
                part=line.part,
                what=what,
                join=join,
            )
            blocks.append(Paragraph(text, "caution"))
    return blocks


def _runs(project: ProjectView, building: str) -> list[Block]:
    style = project.length_style
    rows: list[tuple[Cell, ...]] = []
    for supply in project.power.supplies:
        if (supply.supply.building or "") != building:
            continue
        for circuit in supply.circuits:
            for run in (*circuit.runs, *circuit.unsolved_runs):
                rows.append(
                    (
                        TICK,
                        name_of(circuit),
                        supply.supply.name if run.from_node == "supply" else run.from_name,
                        run.to_name,
                        f"{run.gauge} {run.stranding}" + (f" ×{run.parallel}" if run.parallel > 1 else ""),
                        run.part or "-",
                        far(run.length_m, style, 2),
                        round(max(run.amps.values()), 3) if run.amps else phrase(words.UNKNOWN),
                        round(max(run.drop_v.values()), 3) if run.drop_v else phrase(words.UNKNOWN),
                        "transfer" if run.transfer else "",
                    )
                )
    columns = (
        Column("", 0.3, "centre"),
        Column(phrase("Circuit"), 1.3),
        Column(phrase("From"), 1.1),
        Column(phrase("To"), 1.1),
        Column(phrase("Conductor"), 1.3),
        Column(phrase("Part"), 1.1),
        Column(phrase("Length [{run_unit}]", run_unit=run_unit(style)), 0.8, "right", 2),
        Column(phrase("Most [A]"), 0.7, "right", 3),
        Column(phrase("Drop [V]"), 0.7, "right", 3),
        Column("", 0.7),
    )
    if not rows:
        return [Paragraph(phrase("No run is laid yet."))]
    return [Table(columns, tuple(rows), title=f"Runs {building}".strip())]


WIRE_LIST = DocumentKind("wire-list", to_phrase("Wire list"), ("pdf", "xlsx"), False, build)
