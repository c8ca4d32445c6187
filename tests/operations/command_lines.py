"""A project in which every verb has something to do, and a good command line for every verb at it."""

import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from hwsched.catalogue import kind_of
from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.parts.hardware_sets import Line, make_set
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.attachments import attach_content, attachments_of
from hwsched.operations.survey.editing import add_opening, edit_facts
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.retiring import retire_openings
from hwsched.operations.survey.survey_import import import_survey
from hwsched.values import Part
from tests.exchange.powers import WHOLE, write_power
from tests.operations.powered import WHO, circuit, closet, doors, fit_all, heights, more_parts
from tests.wiring.power_rows import parts

RULE = "case-offset-taken"

# P: the project; F: the folder with the files; A: what is attached to opening 1.
WRITING = {
    "add": "survey add P NEW hand=LH",
    "add an item": "survey add P 1 --item kind=closer",
    "edit": "survey edit P 1 opening wave W1",
    "remove": "survey remove P 2",
    "retire": "survey retire P 2 --why seen",
    "bring back": "survey restore P 7",
    "decide": "survey decide P --decide blank=file",
    "delivery taken back": "survey deliveries P 2 --undo",
    "field": "survey field P opening foreman Foreman",
    "field taken away": "survey field P opening clerk --remove",
    "settings": "project settings P --prefer holes --limit battery-life.days=301",
    "choose": "opening choose P 1 unit UNIT",
    "choose and fit": "opening choose P 1 unit UNIT --fit",
    "place": "opening place P 1 40mm 1100mm",
    "release": "opening unchoose P 3 unit",
    "level": "power level P Main 1 3.5",
    "lay": "power add P supply PS9 building=Main level=1 part=PSU",
    "lift": "power remove P PS1",
    "hang": "power connect P PS1/C1 3 4",
    "route": "power route P 3 PA 12.5 --pin",
    "site": "power plan P Main --accept",
    "layout": "power layout P Main --accept",
    "part added": "parts add P CYL-2 --like CYL list_price=81.50",
    "part edited": "parts edit P CYL list_price=81.50 length_mm=30mm",
    "part withdrawn": "parts withdraw P GATE",
    "set made": "parts set P make HS-2 unit=UNIT",
    "set changed": "parts set P change HS unit=UNIT",
    "set given": "parts set P assign HS 4 5",
    "set removed": "parts set P remove HS",
    "sets proposed": "parts set P propose --accept",
    "fit": "opening fit P",
    "fit and check": "findings check P --fit",
    "waive": f"findings waive P {RULE} 3 --person Doe --reason seen",
    "waiver taken back": f"findings waive P {RULE} 1 --back",
    "terms": "parts terms P --currency USD --labour 80",
    "what-if": (
        "opening what-if P --catalogue F/catalogue.xlsx --limit battery-life.days=301 --choose unit=UNIT --accept"
    ),
    "fewest kinds": "parts fewest P --mark 4 --mark 5 --accept",
    "import survey": "survey import P F/survey.csv",
    "import survey and fit": "survey import P F/survey.csv --fit",
    "import catalogue": "parts import P F/catalogue.xlsx",
    "import power": "power import P F/power.xlsx",
    "packets": "release print P packets --mark 1 --to F/out --issue",
    "revision": "release revision P --freeze B",
    "attach": "release attach P 2 F/survey.csv",
    "detach": "release detach P A",
    "office": "release office P F/office.toml",
    "transmit": "release transmit P F/survey.csv --recipient Architect",
    "pieces": "opening pieces P 1 --serial unit=123",
    "batch": "project batch P F/batch.jsonl",
    "undo": "project undo P",
    "redo": "project redo P --who rex",
    "people": "project people P --add ann --role specifier",
}
"""Command lines of all verbs that write into a project."""
ELSEWHERE = {
    "new": "project new F/new.hwsched --lengths mm",
    "sample": "project sample --to F/sample",
    "upgrade": "project upgrade P",
    "verify": "project verify P",
    "backups": "project backups P",
    "today": "project today P",
    "rescue": "project rescue P F/rescued.hwsched",
    "history": "project history P --last 5",
    "calculators": "project calc --help length",
    "desktop": "project desktop P",
    "completion": "project completion bash",
    "manual": "project manual -o F/hwsched.1",
    "form": "survey form P -o F/form.xlsx",
    "plans": "survey plan",
    "questions": "survey questions P",
    "origin": "survey origin P 1",
    "missing": "survey missing P",
    "release gate": "release gate P",
    "labels": "release labels P -o F/out",
    "verify sheet": "release verify P 00000000",
    "show": "opening show P 1",
    "draw": "opening draw P 1 inside -o F/inside.svg",
    "power shown": "power show P",
    "goods": "power goods P --going",
    "margins": "power margins P --most 4",
    "parts written": "parts export P -o F/parts.xlsx",
    "used": "parts used P UNIT",
    "successors": "parts successors P",
    "cost": "parts cost P",
    "why": "findings why P 1",
    "waivers": "findings waivers P",
    "rules": "findings rules battery-life",
    "attachments": "release attachments P -o F/attachments",
    "list of the project": "project list P settings",
    "list of the survey": "survey list P openings",
    "list of openings": "opening list P fits",
    "list of power": "power list P supplies",
    "list of parts": "parts list P parts",
    "list of findings": "findings list P findings",
    "list of the release": "release list P schedule-rows",
}
"""Of the verbs that make a project, or write nothing into one."""


def sold(part: Part) -> Part:
    """Return a part as a catalogue has it: with a price, and with no other attributes than its kind has."""
    kind = kind_of(part.kind)
    assert kind is not None
    declared = {each.name for each in kind.attributes}
    attributes = {name: value for name, value in part.attributes.items() if name in declared}
    return replace(part, list_price=part.list_price or Decimal(1), attributes=attributes)


def furnish(folder: Path) -> Path:
    """Fill a folder with such a project and with files to take in; returns the folder."""
    with create_project(folder / "yard.hwsched", "Yard", length_style="mm", bare_unit="mm") as project:
        more_parts(project, *(sold(part) for part in parts().parts.values()))
        made = doors(project, "1236")
        unit = parts().get("UNIT")
        more_parts(project, replace(unit, list_price=200), replace(unit, number="UNIT-2", list_price=150))
        made |= doors(project, "45", power_wish=None, plan_y_m=5.0)
        heights(project, l1=0.0)
        supply = closet(project)
        closet(project, "PA", x_m=10.0, use="candidate")
        closet(project, "PB", x_m=35.0, use="candidate")
        connect_openings(project, circuit(project, supply), [made["1"], made["2"]], who=WHO)
        define_field(project, "opening", "clerk", "Clerk", "text", who=WHO)
        make_set(project, "HS", [Line("cam", "CAM")], who=WHO, openings=[made["5"]])
        for mark in "34":
            choose_part(project, made[mark], "unit", "UNIT", who=WHO)
        fit_all(project)
        waive(project, RULE, person="Doe", reason="seen", who=WHO, opening_id=made["1"])
        set_settings(project, who="rex", name="Rex's yard")
        undo(project, who="rex")
        edit_facts(project, "opening", made["6"], {"power_wish": None}, who=WHO)
        attach_content(project, "opening", made["1"], "note.txt", b"seen", who=WHO)
        (attached,) = attachments_of(project)
        for number, hand in enumerate(("LH", "")):
            file = folder / f"delivery-{number}.csv"
            file.write_text(f"Mark,Hand\n8,{hand}\n")
            import_survey(project, file, SurveyOptions(), who=WHO)
            file.unlink()
        retire_openings(project, [add_opening(project, {"mark": "7"}, who=WHO)[1]], who=WHO)
    write_catalogue(folder / "catalogue.xlsx", [replace(unit, list_price=170, description="Other unit")], "mm")
    (folder / "survey.csv").write_text("Mark,Hand,Room to,Operations a day\n1,RH,Hall,20\n3,LH,Loft,30\n9,LH,Attic,\n")
    (folder / "attached").write_text(attached.id)
    (folder / "office.toml").write_text('format = 1\npaper = "a4"\n')
    lines = [
        {"verb": "survey edit", "mark": "6", "where": "opening", "fact": "notes", "value": "seen"},
        {"verb": "opening fit", "mark": ["6"]},
    ]
    (folder / "batch.jsonl").write_text("".join(json.dumps(line) + "\n" for line in lines))
    to_3 = [{"Supply": "PS1", "Circuit": "C1", "From": "supply", "To": "3", "Length, one way [m]": 4.0}]
    write_power(folder / "power.xlsx", **{**WHOLE, "Runs": to_3})
    return folder


def words_of(line: str, folder: Path) -> list[str]:
    """Return the words of a command line at such a folder."""
    words = [word.replace("F/", f"{folder}/") for word in line.split()]
    named = {"P": str(folder / "yard.hwsched"), "A": (folder / "attached").read_text()}
    words = [named.get(word, word) for word in words]
    return words if "--who" in words else [*words, "--who", WHO]
