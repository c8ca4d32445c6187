"""Typed characters come to one alphabet, and transport escapes are undone."""

import pytest

from hwsched.quantities import plain_text


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("3’–0”", "3'-0\""),
        ("3′ 0″", "3' 0\""),
        ("36”\u00a0×\u202f80”", '36" x 80"'),
        ("  a \t\n b ", "a b"),
        ("1¾", "1 3⁄4"),
        ("8⅟2", "8 1⁄2"),
        ("1³⁄₄", "1 3⁄4"),
        ("¹⁵⁄₁₆", "15⁄16"),
        ("3\u200b6\ufeff", "36"),
        ("２１００", "2100"),
        ("4 \u2126", "4 \u03a9"),
        ("5 \u03bcA", "5 \u00b5A"),
        ("≈3", "~3"),
        ("20 ℃", "20 °C"),
        # ISO 10303-21, 6.4.3: control directives in strings
        (r"0,90\X2\00D7\X0\2,10", "0,90x2,10"),
        (r"3\X\B4", "3'"),
        (r"\X4\000000D7\X0\ ", "x"),
        (r"\X2\00D\X0\ ", "\\X2\\00D\\X0\\"),
        (r"\X4\FFFFFFFF\X0\ ", "\\X4\\FFFFFFFF\\X0\\"),
        (r"a\b", r"a\b"),
        ("`", "`"),
    ],
)
def test_plain_text(typed: str, plain: str) -> None:
    assert plain_text(typed) == plain
