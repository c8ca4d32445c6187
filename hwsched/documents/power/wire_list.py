"""The wire list: every run point to point, which piece is cut from which reel, and what else a building takes."""

from hwsched.calc.power.supply_practice import wire_waste
from hwsched.documents import words
from hwsched.documents.power.power_words import far, name_of
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.quantities import LengthStyle, run_unit
from hwsched.render.blocks import TICK, Block, Cell, Column, Document, Heading, Paragraph, Section, Table
from hwsched.wiring.goods import ROLES, Bill
from hwsched.wiring.take_off import WireLine


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the wire list of a project."""
    supplies = project.power.supplies
    buildings = list(dict.fromkeys(s.supply.building or "" for s in supplies if s.circuits))
    runs = sum(len(circuit.runs) + len(circuit.unsolved_runs) for supply in supplies for circuit in supply.circuits)
    sections = [Section(tuple(_take_off(project)))]
    for building in buildings:
        sections.append(Section((Heading(building or "No building given"), *_runs(project, building))))
    return Document(
        "Wire list", project.title, project.revision, project.date, tuple(sections), subtitle=f"{runs} runs"
    )


def _take_off(project: ProjectView) -> list[Block]:
    bill, style = project.bill, project.length_style
    unit = run_unit(style)
    blocks: list[Block] = [Heading("Take-off")]
    unknown = [
        f"{name_of(circuit)}: {problem.message}"
        for supply in project.power.supplies
        for circuit in supply.circuits
        for problem in (*supply.problems, *circuit.problems)
        if problem.kind != "mismatch" or not circuit.solved
    ]
    if unknown:
        blocks.append(Paragraph(f"Not worked out: {'; '.join(unknown)}.", "caution"))
    if not bill.wires:
        blocks.append(Paragraph("No run is laid yet."))
    else:
        rows: list[tuple[Cell, ...]] = [
            (
                line.building or "no building", line.part or "-", _conductor(line), line.runs,
                far(line.length_m, style), far(line.leaf_m, style), far(line.with_waste_m, style),
                words.UNKNOWN if line.reel_m is None else far(line.reel_m, style),
                words.UNKNOWN if line.reels is None else line.reels, line.gap_text,
            )
            for line in bill.wires
        ]  # fmt: skip
        columns = (
            Column("Building", 1.4), Column("Wire", 1.2), Column("Conductor", 1.3), Column("Runs", 0.6, "right"),
            Column(f"Runs [{unit}]", 0.8, "right"), Column(f"Leaves, frames [{unit}]", 0.9, "right"),
            Column(f"With {wire_waste() - 1:.0%} [{unit}]", 0.9, "right"), Column(f"Reel [{unit}]", 0.8, "right"),
            Column("Reels", 0.6, "right"), Column("Fewest", 1.2),
        )  # fmt: skip
        blocks.append(Table(columns, tuple(rows), title="Wire"))
        blocks += _reels(bill.wires, style)
    blocks += goods_blocks(bill)
    if bill.goods:
        blocks.append(
            Paragraph(
                "Lengths are one way, as measured or estimated from level, plan and rise; the allowance is common "
                "practice, and what lies on leaves and in frames has it already. Keep power-limited conductors apart "
                "from mains as the code in force asks.",
                "caution",
            )
        )
    return blocks


def goods_blocks(bill: Bill) -> list[Block]:
    """Return what is ordered by the piece, and what is licensed work; nothing where there is none."""
    rows = tuple(
        (
            each.building or "no building", each.level, ROLES[each.role], each.part or "-",
            words.quantity(float(each.quantity)), each.text, ", ".join(each.needs),
        )
        for each in bill.goods
        if each.line is None
    )  # fmt: skip
    blocks: list[Block] = []
    if rows:
        columns = (
            Column("Building", 1.2), Column("Level", 0.6), Column("What", 1.1), Column("Part", 1.2),
            Column("Qty", 0.5, "right"), Column("For", 2.2), Column("Needs", 1.8),
        )  # fmt: skip
        blocks += [Heading("Goods by the piece", 2), Table(columns, rows, title="Goods by the piece")]
    if bill.licensed:
        work = tuple(
            (each.building or "no building", each.level, each.supply, each.place, each.text, ", ".join(each.needs))
            for each in bill.licensed
        )
        titles = (
            Column("Building", 1.2), Column("Level", 0.6), Column("For", 0.9), Column("It stands", 1.2),
            Column("Work", 4.0), Column("Needs", 1.4),
        )  # fmt: skip
        blocks += [
            Heading("Licensed work", 2),
            Paragraph(
                "On the mains side nothing is of our goods: somebody with a licence brings and does it.", "small"
            ),
            Table(titles, work, title="Licensed work"),
        ]
    return blocks


def _conductor(line: WireLine) -> str:
    return "surface raceway" if line.kind == "raceway" else f"{line.gauge} {line.stranding}".strip()


def _reels(lines: tuple[WireLine, ...], style: LengthStyle) -> list[Block]:
    """Return which piece is cut from which reel."""
    unit = run_unit(style)
    rows: list[tuple[Cell, ...]] = [
        (
            line.building or "no building", line.part or "-", number + 1,
            "; ".join(f"{piece.name}, {far(piece.length_m, style, 2)} {unit}" for piece in pieces),
            far(line.left_m(number), style, 2),
        )
        for line in lines
        for number, pieces in enumerate(line.cuts)
    ]  # fmt: skip
    if not rows:
        return []
    columns = (
        Column("Building", 1.3), Column("Wire", 1.1), Column("Reel", 0.5, "right"), Column("Pieces cut from it", 4.4),
        Column(f"Left [{unit}]", 0.7, "right", 2),
    )  # fmt: skip
    blocks: list[Block] = [Heading("Reels and bars", 2), Table(columns, tuple(rows), title="Reels")]
    for line in lines:
        what = "bar" if line.kind == "raceway" else "reel"
        if line.gap:
            text = f"{line.part}: {line.reels} {what}s; whether {line.fewest} would do is not proved."
            blocks.append(Paragraph(text, "small"))
        if line.spliced:
            join = "joined" if line.kind == "raceway" else "spliced"
            text = (
                f"{line.part}: {line.spliced} pieces are longer than a {what} and are {join}; order them in one length."
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
                        round(max(run.amps.values()), 3) if run.amps else words.UNKNOWN,
                        round(max(run.drop_v.values()), 3) if run.drop_v else words.UNKNOWN,
                        "transfer" if run.transfer else "",
                    )
                )
    columns = (
        Column("", 0.3, "centre"), Column("Circuit", 1.3), Column("From", 1.1), Column("To", 1.1),
        Column("Conductor", 1.3), Column("Part", 1.1), Column(f"Length [{run_unit(style)}]", 0.8, "right", 2),
        Column("Most [A]", 0.7, "right", 3), Column("Drop [V]", 0.7, "right", 3), Column("", 0.7),
    )  # fmt: skip
    if not rows:
        return [Paragraph("No run is laid yet.")]
    return [Table(columns, tuple(rows), title=f"Runs {building}".strip())]


WIRE_LIST = DocumentKind("wire-list", "Wire list", ("pdf", "xlsx"), False, build)
