"""The power schedule: supplies with circuits, loads, voltages in every state and standby; risers."""

from collections.abc import Mapping
from typing import Final

from hwsched.documents import words
from hwsched.documents.power.power_words import STATES, amps, far, name_of, said, states_of, volts
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.drawings.power.riser import risers
from hwsched.drawings.power.voltage_plot import voltage_plot
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import run_unit
from hwsched.render.blocks import Block, Cell, Column, Document, Drawings, Facts, Heading, Paragraph, Section, Table
from hwsched.rules.saying import cure_of, message_of, rule_said
from hwsched.values.amounts import plain_amount
from hwsched.values.power import CircuitResult, NodeResult, PowerFinding, SupplyResult
from hwsched.wiring.failure import What, failures, on_alarm, without_power
from hwsched.wiring.goods import ROLES


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the power schedule of a project."""
    # A place where a supply may stand has nothing to schedule yet.
    supplies = [supply for supply in project.power.supplies if supply.circuits]
    sections = [Section((*_summary(project, supplies),))]
    for supply in supplies:
        sections.append(Section(tuple(_supply(project, supply))))
        plots = [voltage_plot(supply, circuit, project.length_style) for circuit in supply.circuits if circuit.nodes]
        sections += [Section((Drawings((plot,), height_mm=150.0),), landscape=True) for plot in plots]
    sections += [
        Section(
            (
                Heading(phrase("Riser of {building}", building=building or phrase("no building"))),
                Drawings((drawing,), height_mm=165.0),
            ),
            landscape=True,
        )
        for building in dict.fromkeys(supply.supply.building for supply in supplies)
        for drawing in risers(project.power, building or "", _levels(project), project.length_style)
    ]
    return Document(
        phrase("Power schedule"),
        project.title,
        project.revision,
        project.date,
        tuple(sections),
        subtitle=phrase_of_count("{count} supply", "{count} supplies", len(supplies)),
    )


def _levels(project: ProjectView) -> Mapping[str, tuple[str, float | None]]:
    found = {}
    for view in project.openings:
        opening = view.given.opening
        found[opening.id] = (opening.level or "", project.level_heights.get((opening.building, opening.level)))
    return found


def _summary(project: ProjectView, supplies: list[SupplyResult]) -> list[Block]:
    connected = {opening for supply in supplies for opening in supply.openings}
    wired = [v for v in project.openings if v.fit is not None and v.fit.power == "supply"]
    loose = [view.mark for view in wired if view.given.opening.id not in connected]
    rows = tuple(
        (
            supply.supply.name,
            words.place(supply.supply.building, supply.supply.level),
            supply.supply.part or phrase(words.UNKNOWN),
            amps(supply.holding_a),
            amps(supply.rated_a),
            phrase(words.UNKNOWN) if supply.share is None else f"{supply.share:.0%}",
            len(supply.openings),
        )
        for supply in supplies
    )
    columns = (
        Column(phrase("Supply"), 1.2),
        Column(phrase("Place"), 1.8),
        Column(phrase("Part"), 1.3),
        Column(phrase("Held [A]"), 0.8, "right", 2),
        Column(phrase("Rated [A]"), 0.8, "right", 2),
        Column(phrase("Share"), 0.7, "right"),
        Column(phrase("Openings"), 0.8, "right"),
    )
    blocks: list[Block] = [
        Heading(phrase("Summary")),
        Facts(
            (
                (phrase("Supplies"), str(len(supplies))),
                (phrase("Openings on circuits"), str(len(connected))),
                (phrase("Wired, on no circuit yet"), str(len(loose))),
            )
        ),
    ]
    if rows:
        blocks.append(Table(columns, rows, title=phrase("Supplies")))
    else:
        blocks.append(Paragraph(phrase("Nothing is laid yet: no supply has a circuit.")))
    if loose:
        blocks.append(Paragraph(phrase("On no circuit yet: {loose}.", loose=", ".join(loose))))
    blocks += [
        Paragraph(
            phrase(
                "Voltages are between the two wires at the load. Lowest mains: the supply at its lower "
                "tolerance. Standby: the battery at its end. Peak: the operations at one time that are worst "
                "for the place, at the lowest of these; all circuits of a supply together. What is unknown "
                "is reckoned at its least; how low it may bring a place at the most is told beside it."
            ),
            "small",
        ),
        Paragraph(phrase(words.ADVICE), "caution"),
    ]
    return blocks


def _supply(project: ProjectView, result: SupplyResult) -> list[Block]:
    supply = result.supply
    pairs = [
        (
            phrase("Place"),
            " · ".join(p for p in (supply.building, supply.level, supply.place) if p) or phrase("place not given"),
        ),
        (phrase("Power supply"), supply.part or phrase(words.UNKNOWN)),
        (phrase("Output"), f"{said(result.output_v, 'V', 1)}, {said(result.rated_a, 'A')}"),
        (phrase("Lowest output"), said(result.lowest_v, "V")),
        (phrase("Held at once"), f"{said(result.holding_a, 'A')}" + (f", {result.share:.0%}" if result.share else "")),
    ]
    standby = result.standby
    if standby is not None:
        size = (
            phrase("no size suffices")
            if standby.size_ah is None
            else phrase("next size {size_ah:g} Ah", size_ah=standby.size_ah)
        )
        held = (
            phrase("none laid") if standby.held_ah is None else phrase("{held_ah:g} Ah laid", held_ah=standby.held_ah)
        )
        more = phrase(" or more") if standby.at_least else ""
        asked = phrase(
            "{hours:g} h at {load_a:.3f} A{more}: {needed_ah:.2f} Ah{more}",
            hours=standby.hours,
            load_a=standby.load_a,
            more=more,
            needed_ah=standby.needed_ah,
        )
        pairs += [
            (phrase("Standby"), f"{asked}, {size}; {held}"),
            *([(phrase("Peukert"), standby.peukert)] if standby.peukert else []),
            (phrase("Battery at its end"), said(result.battery_end_v, "V")),
        ]
    blocks: list[Block] = [Heading(phrase("Supply {name}", name=supply.name)), Facts(tuple(pairs))]
    for circuit in result.circuits:
        blocks += _circuit(project, result, circuit)
    blocks += _margins(result)
    blocks += _goods(project, supply.id)
    blocks += _findings([f for f in project.power.findings if f.supply_id == supply.id])
    return blocks


_WHAT: Final[Mapping[What, str]] = {
    "supply": to_phrase("The supply"),
    "mains": to_phrase("Its mains"),
    "battery": to_phrase("Its battery, and the mains"),
    "circuit": to_phrase("A circuit"),
    "run": to_phrase("A run, cut"),
}


def _margins(result: SupplyResult) -> list[Block]:
    """Return who falls out when one thing fails, what remains on the fire alarm, and room for later openings."""
    if not result.openings:
        return []
    marks, stands = result.marks, without_power(result)
    words_of = {"released": phrase(" (released)"), "locked": phrase(" (stays locked)"), "unit": ""}
    rows = tuple(
        (
            phrase(_WHAT[each.what]),
            each.name,
            phrase(words.UNKNOWN)
            if each.after_h is None
            else phrase("at once")
            if each.after_h == 0
            else f"{each.after_h:.3g} h",
            ", ".join(marks[opening] + words_of[stands[opening]] for opening in each.opening_ids) or "nothing",
        )
        for each in failures(result)
    )
    columns = (
        Column(phrase("What fails"), 1.4),
        Column(phrase("Which"), 2.2),
        Column(phrase("After"), 0.7),
        Column(phrase("Without power"), 3.4),
    )
    alarm = on_alarm(result)
    pairs = [
        (title, ", ".join(marks[opening] for opening in found))
        for title, found in (
            (phrase("Lose power"), alarm.dropped),
            (phrase("Keep power"), alarm.kept),
            (phrase("Unknown: nobody has said"), alarm.unknown),
        )
        if found
    ]
    blocks: list[Block] = [
        Heading(phrase("When something fails"), 2),
        Table(columns, rows, title=phrase("When something fails")),
        Paragraph(phrase("A run that is shorted takes its whole circuit."), "small"),
        Heading(phrase("On the fire alarm"), 2),
        Facts(tuple(pairs)),
        Heading(phrase("Room for later openings"), 2),
    ]
    if not result.growth:
        blocks.append(
            Paragraph(
                phrase(
                    "None is asked: the rule '{rule}' says how many each circuit is to bear.",
                    rule=rule_said("supply-growth"),
                )
            )
        )
    for each in result.growth:
        many = phrase_of_count("{count} later opening", "{count} later openings", each.count)
        if each.borne:
            blocks.append(
                Paragraph(
                    phrase(
                        "Circuit {circuit} bears {many} at the place with the least room.",
                        circuit=each.circuit,
                        many=many,
                    )
                )
            )
        else:
            verdict = phrase("not borne") if each.borne is False else "unknown"
            blocks.append(
                Paragraph(
                    phrase(
                        "Circuit {circuit}, {many}: {verdict}. {why}",
                        circuit=each.circuit,
                        many=many,
                        verdict=verdict,
                        why=each.why,
                    ),
                    "caution",
                )
            )
    return blocks


def _goods(project: ProjectView, supply_id: str) -> list[Block]:
    """Return what is put up with a supply, and what of it is licensed work; its wire is cut for the whole building."""
    rows = tuple(
        (ROLES[each.role], each.part or "-", plain_amount(float(each.quantity)), each.text, words.needed(each.needs))
        for each in project.bill.goods
        if each.supply_id == supply_id
    )
    if not rows:
        return []
    columns = (
        Column(phrase("What"), 1.2),
        Column(phrase("Part"), 1.2),
        Column(phrase("Qty"), 0.5, "right"),
        Column(phrase("For"), 2.6),
        Column(phrase("Needs"), 2.0),
    )
    blocks: list[Block] = [Heading(phrase("Goods"), 2), Table(columns, rows, title=phrase("Goods"))]
    for work in project.bill.licensed:
        if work.supply_id == supply_id:
            needs = phrase(" (unknown: needs {needs})", needs=words.needed(work.needs)) if work.needs else ""
            blocks.append(
                Paragraph(
                    phrase("Licensed work, not of these goods: {text}{needs}.", text=work.text, needs=needs), "caution"
                )
            )
    return blocks


def _circuit(project: ProjectView, result: SupplyResult, circuit: CircuitResult) -> list[Block]:
    style = project.length_style
    alarm = {"drops": phrase("loses power"), "stays": "keeps power"}.get(
        circuit.circuit.alarm or "", phrase(words.UNKNOWN)
    )
    pairs = (
        (phrase("Openings"), str(len(circuit.openings))),
        (phrase("Conductor"), circuit.wire or phrase(words.UNKNOWN)),
        (phrase("Fuse or limiter"), _limiter(circuit)),
        (phrase("Current held"), said(circuit.holding_a, "A", 3)),
        (phrase("First moment"), said(circuit.inrush_a, "A", 3)),
        (phrase("On the fire alarm"), alarm),
        (phrase("Operations at one time"), _at_once(circuit)),
    )
    blocks: list[Block] = [Heading(phrase("Circuit {name_of}", name_of=name_of(circuit)), 2), Facts(pairs)]
    for problem in (*result.problems, *circuit.problems):
        blocks.append(Paragraph(phrase("Not worked out: {message}.", message=problem.message), "caution"))
    states = states_of(circuit)
    for state, why in circuit.collapsed.items():
        blocks.append(
            Paragraph(
                phrase("Collapsed in the state {lower}: {why}.", lower=phrase(STATES[state]).lower(), why=why), "stop"
            )
        )
    rows: list[tuple[Cell, ...]] = []
    for node in circuit.nodes:
        if node.minimum_v is None:
            continue
        margin = node.margin_v
        rows.append(
            (
                node.name,
                ", ".join(node.parts),
                far(node.distance_m, style),
                *(volts(node, state) for state in states),
                node.minimum_v,
                phrase(words.UNKNOWN) if margin is None else round(margin, 2),
                ", ".join(node.operating) or phrase("none draws more"),
                _verdict(circuit, node),
            )
        )
    if rows:
        columns = (
            Column(phrase("At"), 1.0),
            Column(phrase("Load"), 1.4),
            Column(phrase("Run [{run_unit}]", run_unit=run_unit(style)), 0.8, "right", 1),
            *(Column(f"{phrase(STATES[state])} [V]", 0.9, "right", 2) for state in states),
            Column(phrase("Needs [V]"), 0.8, "right", 2),
            Column(phrase("Room [V]"), 0.8, "right", 2),
            Column(phrase("Operating at its peak"), 1.4),
            Column("", 0.8),
        )
        blocks.append(Table(columns, tuple(rows), title=phrase("Circuit {name_of}", name_of=name_of(circuit))))
    marks = dict(zip(circuit.openings, circuit.marks, strict=True))
    shown = {node.opening_id for node in circuit.nodes if node.minimum_v is not None}
    hidden = [
        f"{marks[proof.opening_id]} ({words.needed(proof.missing, project.catalogue) or proof.why})"
        for proof in circuit.unproved
        if proof.opening_id not in shown
    ]
    if hidden:
        blocks.append(Paragraph(phrase("Not proved: {hidden}.", hidden="; ".join(hidden)), "stop"))
    return blocks


def _verdict(circuit: CircuitResult, node: NodeResult) -> str:
    if node.margin_v is not None and node.margin_v < 0:
        return "LOW"
    if any(proof.opening_id == node.opening_id for proof in circuit.unproved):
        return (
            phrase("NOT PROVED")
            if node.may_fall_v is None
            else phrase("NOT PROVED, {may_fall_v:.2f} V or more", may_fall_v=node.may_fall_v)
        )
    return "" if node.may_fall_v is None else phrase("{may_fall_v:.2f} V or more", may_fall_v=node.may_fall_v)


def _at_once(circuit: CircuitResult) -> str:
    if circuit.at_once is None:
        return phrase(words.UNKNOWN)
    return phrase_of_count(
        "{count} opening, each with all its devices", "{count} openings, each with all its devices", circuit.at_once
    )


def _limiter(circuit: CircuitResult) -> str:
    if circuit.circuit.limiter and circuit.limiter_a is not None:
        return f"{said(circuit.limiter_a, 'A')}, {circuit.circuit.limiter}"
    if circuit.limiter_a is None or circuit.circuit.limiter_a is not None:
        return said(circuit.limiter_a, "A")
    return phrase("{said} (proposed, none is laid)", said=said(circuit.limiter_a, "A"))


def _findings(found: list[PowerFinding]) -> list[Block]:
    if not found:
        return []
    rows = tuple(
        (
            phrase(words.SEVERITY[f.finding.severity]) + (phrase(" (waived)") if f.finding.waived else ""),
            message_of(f.finding),
            cure_of(f.finding),
            phrase(f.finding.basis),
        )
        for f in found
    )
    columns = (
        Column(phrase("Severity"), 0.8),
        Column(phrase("Finding"), 3.6),
        Column(phrase("Cure"), 2.6),
        Column(phrase("Basis"), 1.8),
    )
    return [Heading(phrase("What the rules say"), 2), Table(columns, rows, title=phrase("Findings"))]


POWER_SCHEDULE = DocumentKind("power-schedule", to_phrase("Power schedule"), ("pdf", "xlsx"), False, build)
