"""Wire sizes against the published wire table."""

from itertools import pairwise

import pytest

from hwsched.quantities import Gauge, QuantityError, awg_area_mm2, parse_gauge


# ASTM B258 formula, 100 % IACS; facts, check values 1.2 (agrees with a published bench wire table within 0.1 %).
@pytest.mark.parametrize(
    ("awg", "diameter_mm", "area_mm2"),
    [
        (14, 1.6277, 2.0809),
        (16, 1.2908, 1.3087),
        (18, 1.0237, 0.8230),
        (20, 0.8118, 0.5176),
        (22, 0.6438, 0.3255),
        (24, 0.5106, 0.2047),
    ],
)
def test_wire_table(awg: int, diameter_mm: float, area_mm2: float) -> None:
    gauge = parse_gauge(f"{awg} AWG")
    assert gauge.awg == awg
    assert gauge.diameter_mm == pytest.approx(diameter_mm, abs=6e-5)
    assert gauge.area_mm2 == pytest.approx(area_mm2, abs=6e-5)


def test_defining_sizes() -> None:
    # ASTM B258: No. 36 is 0.005 in, No. 0000 is 0.46 in.
    assert parse_gauge("36 AWG").diameter_mm == pytest.approx(0.005 * 25.4)
    assert parse_gauge("4/0 AWG").diameter_mm == pytest.approx(0.46 * 25.4)


@pytest.mark.parametrize(
    ("text", "awg"),
    [
        ("18 AWG", 18), ("18awg", 18), ("AWG 18", 18), ("AWG18", 18), ("#18", 18), ("#18 AWG", 18),
        ("18 ga.", 18), ("18 gauge", 18),
        ("0 AWG", 0), ("1/0 AWG", 0), ("2/0", -1), ("000 AWG", -2), ("AWG 4/0", -3), ("0000 AWG", -3), ("40 AWG", 40),
    ],
)  # fmt: skip
def test_gauges(text: str, awg: int) -> None:
    assert parse_gauge(text) == Gauge(awg, awg_area_mm2(awg))


@pytest.mark.parametrize(
    ("text", "area_mm2"),
    [("1.0 mm2", 1.0), ("0.5 mm²", 0.5), ("0,75mm²", 0.75), ("1,5 sq mm", 1.5), ("2.5 mm^2", 2.5), ("2.5 MM2", 2.5)],
)
def test_areas(text: str, area_mm2: float) -> None:
    assert parse_gauge(text) == Gauge(None, area_mm2)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("18/2", "2 conductors of 18 AWG"), ("18/2 AWG", "2 conductors"), ("18 AWG/4", "4 conductors"),
        ("2x0.5 mm²", "2 conductors"),
        ("2C 18 AWG", "2 conductors"), ("18", "18 AWG or 18 mm²"), ("41 AWG", "end at 40"),
        ("0 mm2", "above zero"), ("1e999 mm2", "above zero"),
        ("1,000 mm2", "1000"), ("wire", "no wire size"), ("", "no wire size"), ("-18 AWG", "no wire size"),
        ("5/0 AWG", "no wire size"),
        ("18.5 AWG", "no wire size"), ("18 mm", "no wire size"), ("1 m2", "no wire size"), ("8" * 60, "no wire size"),
    ],
)  # fmt: skip
def test_refused(text: str, named: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_gauge(text)
    assert named in refused.value.message


def test_written() -> None:
    assert [str(parse_gauge(text)) for text in ("18 AWG", "0 AWG", "4/0 AWG", "0,5 mm²")] == [
        "18 AWG",
        "1/0 AWG",
        "4/0 AWG",
        "0.5 mm²",
    ]


def test_each_gauge_is_the_same_ratio_finer() -> None:
    areas = [awg_area_mm2(awg) for awg in range(-3, 41)]
    ratios = [larger / smaller for larger, smaller in pairwise(areas)]
    assert ratios == pytest.approx([92 ** (2 / 39)] * len(ratios))
    for awg in (-4, 41):
        with pytest.raises(ValueError, match="no wire gauge"):
            awg_area_mm2(awg)
