"""The command line: ``hwsched ROOM VERB``, one verb a file; the lines below are its table of contents.

No calculation and no query here. What a verb is called stands here and not in its file, so that `hwsched --help` loads
none of them.
"""

from hwsched.cli.contents import Entry, Room

# The order is the one in which people see them.
ROOMS = (
    Room(
        "project",
        "The project as a whole: make it, settings, people, history.",
        Entry("sample", "Run the main job on the invented sample.", "demo"),
        Entry("new", "Make a project file.", "new"),
        Entry("upgrade", "Bring a project of an earlier version up to date, with a copy first.", "upgrade"),
        Entry("verify", "See whether anything was changed past the journal."),
        Entry("backups", "List the daily copies of a project file, or put one back."),
        Entry("rescue", "Save what can be read of a damaged project into a new one."),
        Entry("settings", "Change units, limits, rules switched off, and what is preferred.", "settings"),
        Entry("people", "List who works on a project and in which role; add and remove people.", "people"),
        Entry("history", "List what was changed, when and by whom.", "history"),
        Entry("list", "List change sets, settings, people."),
        Entry("batch", "Run many verbs as one step: whole, or not at all."),
        Entry("undo", "Take back your last step, or any one step that nothing depends on.", "undo"),
        Entry("redo", "Do again what you took back last, or any one step that was taken back.", "redo"),
        Entry("calc", "Calculate: JSON lines in, JSON lines out.", "calc"),
        Entry("desktop", "Open the desktop.", "desktop"),
        Entry("completion", "Print what makes a shell complete commands."),
        Entry("manual", "Write the manual page of the command line."),
    ),
    Room(
        "survey",
        "The openings as they stand: take in, type in, ask for what is missing.",
        Entry("import", "Take in a survey workbook.", "import survey"),
        Entry("form", "Write the surveyor's workbook or paper sheets, blank or for a return visit.", "survey-form"),
        Entry("add", "Add an opening, or an existing item of one.", "add"),
        Entry("edit", "Set one surveyed fact of an opening.", "edit"),
        Entry("remove", "Remove an opening, a leaf, or an existing item.", "remove"),
        Entry("field", "Define a field of the project's own, or take it away.", "field"),
        Entry("list", "List openings, leaves, existing items, buildings, facts, fields."),
        Entry("missing", "List the missing facts, most useful first; write the return-visit sheet.", "missing"),
    ),
    Room(
        "opening",
        "What goes onto an opening: fit, choose, place, draw.",
        Entry("fit", "Work out parts, place, cable, power and holes.", "fit"),
        Entry("show", "Show openings with all that is known of them.", "show"),
        Entry("list", "List fits, parts, places, holes, pieces."),
        Entry("choose", "Choose a part by hand for an opening, at a lock point of it.", "choose"),
        Entry("place", "Place the control unit of an opening by hand.", "place"),
        Entry("unchoose", "Leave a choice by hand to the fit again.", "release"),
        Entry("what-if", "Show what another catalogue, limit, preference or choice would change.", "what-if"),
        Entry("draw", "Draw one view of an opening, or of what feeds it, as SVG or PDF.", "draw"),
        Entry("pieces", "List the pieces of an opening; write down serial numbers and lots.", "pieces"),
    ),
    Room(
        "power",
        "Supplies, circuits and cable runs.",
        Entry("import", "Take in a power workbook.", "import power"),
        Entry("level", "Say how high the floor of a level lies.", "level"),
        Entry("add", "Add a supply, circuit or run, or change one.", "lay"),
        Entry("remove", "Take away a supply, circuit or run.", "lift"),
        Entry("connect", "Put openings on a circuit, or take them off.", "hang"),
        Entry("route", "Say how long a cable route is, or pin an opening to a supply.", "route"),
        Entry("plan", "Propose where the supplies of a building go.", "site"),
        Entry("list", "List supplies, circuits, loads, routes."),
        Entry("show", "Show supplies, circuits and the volts at every opening.", "power"),
    ),
    Room(
        "parts",
        "The catalogue, hardware sets and what they cost.",
        Entry("import", "Take in a catalogue workbook.", "import catalogue"),
        Entry("export", "Write the catalogue as a workbook.", "export catalogue"),
        Entry("list", "List parts, kinds, sets."),
        Entry("set", "Make, propose, change, assign or remove hardware sets.", "set"),
        Entry("successors", "Show where the successor of a superseded part fits.", "successors"),
        Entry("fewest", "Choose parts so that few different ones are needed.", "fewest-kinds"),
        Entry("cost", "Show what the project costs.", "cost"),
        Entry("terms", "Show or set what the project pays.", "terms"),
    ),
    Room(
        "findings",
        "What the rules say, and who accepted it.",
        Entry("check", "Let every rule speak of the openings and their fits.", "check"),
        Entry("list", "List findings, waivers, rules."),
        Entry("why", "Tell why an opening has what it has.", "why"),
        Entry("waive", "Accept the findings of a rule, or take a waiver back.", "waive"),
        Entry("waivers", "List the waivers.", "waivers"),
        Entry("rules", "Show the rulebook, or one rule.", "rules"),
    ),
    Room(
        "release",
        "What leaves the office: documents, revisions, files that go with them.",
        Entry("print", "Print a document: schedules, lists, packets, true-size templates.", "print"),
        Entry("list", "List pick lines, schedule rows, revisions, packets."),
        Entry("revision", "Freeze the project under a letter, show and compare such states.", "revision"),
        Entry("attach", "Attach a file to an opening, a part or another thing.", "attach"),
        Entry("attachments", "List attached files, and write them into a folder.", "attachments"),
        Entry("detach", "Take an attached file off; undo brings it back.", "detach"),
    ),
)

ENTRIES: tuple[Entry, ...] = tuple(entry for room in ROOMS for entry in room.entries)
