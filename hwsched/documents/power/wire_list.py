"""The wire list: every run point to point, and what wire, reels, transfers and boxes a building takes."""

from hwsched.calc.power.supply_practice import wire_waste
from hwsched.documents import words
from hwsched.documents.power.power_words import name_of
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import TICK, Block, Cell, Column, Document, Heading, Paragraph, Section, Table
from hwsched.wiring.take_off import WireLine, device_lines, wire_lines


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
    supplies = project.power.supplies
    lines = wire_lines(supplies, project.catalogue)
    blocks: list[Block] = [Heading("Take-off")]
    unknown = [
        f"{name_of(circuit)}: {problem.message}"
        for supply in supplies
        for circuit in supply.circuits
        for problem in (*supply.problems, *circuit.problems)
        if problem.kind != "mismatch" or not circuit.solved
    ]
    if unknown:
        blocks.append(Paragraph(f"Not worked out: {'; '.join(unknown)}.", "caution"))
    if not lines:
        return [*blocks, Paragraph("No run is laid yet.")]
    rows: list[tuple[Cell, ...]] = [
        (
            line.building or "no building", line.part or "-", f"{line.gauge} {line.stranding}", line.runs,
            round(line.length_m, 1), round(line.with_waste_m, 1),
            words.UNKNOWN if line.reel_m is None else line.reel_m,
            words.UNKNOWN if line.reels is None else line.reels,
        )
        for line in lines
    ]  # fmt: skip
    columns = (
        Column("Building", 1.5), Column("Wire", 1.3), Column("Conductor", 1.4), Column("Runs", 0.6, "right"),
        Column("Length [m]", 0.9, "right"), Column(f"With {wire_waste() - 1:.0%} [m]", 0.9, "right"),
        Column("Reel [m]", 0.8, "right"), Column("Reels", 0.6, "right"),
    )  # fmt: skip
    blocks.append(Table(columns, tuple(rows), title="Wire"))
    blocks += _reels(lines)
    others = tuple(
        (line.building or "no building", line.part or "-", line.text, line.quantity) for line in device_lines(supplies)
    )
    if others:
        titles = (Column("Building", 1.5), Column("Part", 1.5), Column("What", 2.0), Column("Qty", 0.6, "right"))
        blocks += [Heading("Transfers and boxes", 2), Table(titles, others, title="Transfers and boxes")]
    blocks.append(
        Paragraph(
            "Lengths are one way, as measured or estimated from level, plan and rise; the allowance is common "
            "practice. Keep power-limited conductors apart from mains as the code in force asks.",
            "caution",
        )
    )
    return blocks


def _reels(lines: tuple[WireLine, ...]) -> list[Block]:
    """Return which run is cut from which reel."""
    rows: list[tuple[Cell, ...]] = [
        (line.building or "no building", line.part or "-", number, "; ".join(runs))
        for line in lines
        for number, runs in enumerate(line.cuts, start=1)
    ]
    if not rows:
        return []
    columns = (
        Column("Building", 1.3),
        Column("Wire", 1.1),
        Column("Reel", 0.5, "right"),
        Column("Runs cut from it", 4.6),
    )
    blocks: list[Block] = [Heading("Reels", 2), Table(columns, tuple(rows), title="Reels")]
    for line in lines:
        if line.reels is not None and line.fewest is not None and line.fewest < line.reels:
            text = f"{line.part}: {line.reels} reels; whether {line.fewest} would do is not proved."
            blocks.append(Paragraph(text, "small"))
        if line.spliced:
            text = f"{line.part}: {line.spliced} runs are longer than a reel and are spliced; order them in one length."
            blocks.append(Paragraph(text, "caution"))
    return blocks


def _runs(project: ProjectView, building: str) -> list[Block]:
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
                        round(run.length_m, 2),
                        round(max(run.amps.values()), 3) if run.amps else words.UNKNOWN,
                        round(max(run.drop_v.values()), 3) if run.drop_v else words.UNKNOWN,
                        "transfer" if run.transfer else "",
                    )
                )
    columns = (
        Column("", 0.3, "centre"), Column("Circuit", 1.3), Column("From", 1.1), Column("To", 1.1),
        Column("Conductor", 1.3), Column("Part", 1.1), Column("Length [m]", 0.8, "right"),
        Column("Most [A]", 0.7, "right"), Column("Drop [V]", 0.7, "right"), Column("", 0.7),
    )  # fmt: skip
    if not rows:
        return [Paragraph("No run is laid yet.")]
    return [Table(columns, tuple(rows), title=f"Runs {building}".strip())]


WIRE_LIST = DocumentKind("wire-list", "Wire list", ("pdf", "xlsx"), False, build)
