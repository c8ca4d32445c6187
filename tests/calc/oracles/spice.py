"""Many circuits in one run of ngspice: both wires of every run, one operating point."""

import math
import re
import shutil
import subprocess
from pathlib import Path

PRINTED = re.compile(r"^v\((\S+?),(\S+?)\) = (\S+)$", re.MULTILINE)


def ohm_per_m(run: dict, temperature_c: float) -> float:
    """Resistance of one of the two wires of a run of AWG conductors."""
    number = int(run["gauge"].split()[0])
    diameter_mm = 25.4 * 0.005 * 92 ** ((36 - number) / 39)
    lay = 1.02 if run["stranding"] == "stranded" else 1
    warm = 1 + 0.00393 * (temperature_c - 20)
    return lay * warm / 58 / (math.pi * diameter_mm**2 / 4) / run.get("conductors_in_parallel", 1)


def volts(inputs: list[dict], folder: Path) -> list[dict[str, float]]:
    """Voltage between the two wires at every node of every case.

    A case's return wire is grounded at its source. Power loads draw P / max(v, 1 V), and every node begins at the
    source's voltage: from zero the program may settle on the solution of low voltage.
    """
    program = shutil.which("ngspice")
    if program is None:
        raise RuntimeError("ngspice is missing: .ci/setup test installs it")
    lines, hints, prints, nodes = [], [], [], []
    for k, given in enumerate(inputs):
        names = {"supply": f"c{k}x0"}
        source_v, source_ohm = given["source_v"], given.get("source_ohm", 0)
        lines.append(f"V{k} c{k}i c{k}x0n DC {source_v!r}")
        lines.append(f"RS{k} c{k}i c{k}x0p {max(source_ohm, 1e-9)!r}")
        lines.append(f"RG{k} c{k}x0n 0 1m")
        for i, run in enumerate(given["runs"]):
            first, second = (names.setdefault(run[end], f"c{k}x{len(names)}") for end in ("from", "to"))
            ohm = run["length_m"] * ohm_per_m(run, given["temperature_c"])
            lines += [f"R{k}{wire}{i} {first}{wire} {second}{wire} {ohm!r}" for wire in "pn"]
        for i, load in enumerate(given["loads"]):
            plus, minus = f"{names[load['node']]}p", f"{names[load['node']]}n"
            value = load["value"]
            lines.append(
                {
                    "current": f"I{k}l{i} {plus} {minus} DC {value!r}",
                    "resistance": f"R{k}l{i} {plus} {minus} {value!r}",
                    "power": f"B{k}l{i} {plus} {minus} I={value!r}/max(V({plus},{minus}),1)",
                }[load["kind"]]
            )
        hints += [f".nodeset v({name}p)={source_v!r} v({name}n)=0" for name in names.values()]
        prints += [f"print v({name}p,{name}n)" for name in names.values()]
        nodes.append(names)
    text = [
        "* circuits",
        *lines,
        ".options reltol=1e-9 abstol=1e-15 vntol=1e-12",
        *hints,
        ".control",
        "set numdgt=12",
        "op",
        *prints,
        "quit",
        ".endc",
        ".end",
    ]
    deck = folder / "circuits.cir"
    deck.write_text("\n".join(text) + "\n")
    done = subprocess.run([program, "-b", str(deck)], capture_output=True, text=True, timeout=300, check=False)
    found = {plus: float(value) for plus, _, value in PRINTED.findall(done.stdout)}
    return [{node: found[f"{name}p"] for node, name in names.items()} for names in nodes]
