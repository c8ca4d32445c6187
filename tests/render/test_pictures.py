"""Pictures of an office's own: what is taken is printed in its proportions, what is not is refused with words."""

import io
import struct
import zlib

import pytest
from PIL import Image

from hwsched.render.pictures import PictureRefusedError, checked_picture, size_of, size_within


def picture(wide, tall, kind="PNG", mode="RGB", colour=None):
    held = io.BytesIO()
    Image.new(mode, (wide, tall), colour if colour is not None else 0).save(held, kind)
    return held.getvalue()


def claiming(wide, tall):
    """A PNG that says in its head that it is as large as that, and holds next to nothing."""

    def chunk(name, data):
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    head = struct.pack(">IIBBBBB", wide, tall, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0")) + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    "content",
    [picture(40, 30), picture(40, 30, "JPEG"), picture(40, 30, mode="RGBA"), picture(40, 30, mode="1"),
     picture(40, 30, mode="P"), picture(40, 30, "JPEG", "CMYK", (0, 0, 0, 0)), picture(40, 30, mode="LA")],
)  # fmt: skip
def test_pictures_of_all_modes_are_taken(content):
    taken = checked_picture(content)
    assert size_of(taken) == (40, 30)
    # In a room of 80 by 30 the height decides: 40 by 30 keeps its proportions.
    assert size_within(taken, 80.0, 30.0) == (40.0, 30.0)
    assert checked_picture(content) == taken


def test_what_is_transparent_is_white_on_paper():
    taken = checked_picture(picture(4, 4, mode="RGBA", colour=(0, 0, 0, 0)))
    assert Image.open(io.BytesIO(taken)).getpixel((0, 0)) == (255, 255, 255)


def test_a_large_one_is_kept_as_large_as_is_printed():
    assert max(size_of(checked_picture(picture(3000, 1500, mode="1")))) == 2400


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "no picture"),
        (b"GIF89a" + bytes(40), "no picture"),
        (b"%PDF-1.4", "no picture"),
        (picture(400, 300)[:-200], "broken"),
        (picture(400, 300, "JPEG")[:300], "broken"),
        (b"\x89PNG\r\n\x1a\n" + bytes(100), "picture"),
        (claiming(40, 30), "broken"),
        (claiming(60_000, 60_000), "40,000,000"),
        (claiming(9_000, 9_000), "9000 x 9000"),
        (picture(1, 300), "20 to 1"),
        (picture(2000, 3), "20 to 1"),
        (bytes(21 * 2**20), "at most 20 MB"),
    ],
)
def test_what_cannot_be_printed_is_refused(content, said):
    with pytest.raises(PictureRefusedError, match=said):
        checked_picture(content)
