"""Pictures of an office's own: what is taken is printed in its proportions, what is not is refused with words."""

import io
import random
import struct
import zlib

import pytest
from PIL import Image

from hwsched.render.pictures import PictureRefusedError, checked_picture, printed_photo, size_of, size_within


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


# --- photos of doors ------------------------------------------------------------------------------------------------


def test_a_photo_stands_as_its_camera_was_held():
    """A camera that was held upright writes a picture on its side, and beside it how it was held (Exif, tag 274)."""
    held = io.BytesIO()
    exif = Image.Exif()
    exif[274] = 6  # to be turned by a quarter to the right
    Image.new("RGB", (400, 300)).save(held, "JPEG", exif=exif)
    assert size_of(printed_photo(held.getvalue())) == (300, 400)
    assert size_of(printed_photo(picture(400, 300, "JPEG"))) == (400, 300)


def test_a_photo_is_no_larger_than_is_seen_on_a_packet():
    taken = printed_photo(picture(3000, 2000, "JPEG"))
    # 300 dots an inch over 47 mm are 555.
    assert size_of(taken) == (560, 373)
    assert len(taken) < 100_000


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (picture(400, 300, "JPEG")[:300], "broken"),
        (b"GIF89a" + bytes(40), "no picture"),
        (claiming(9_000, 9_000), "9000 x 9000 pixels"),
        (picture(2100, 100), "2100 x 100 pixels"),
        (b"\xff\xd8\xff" + bytes(20 * 1024 * 1024), "at most 20 MB"),
    ],
)
def test_a_photo_that_cannot_be_printed_says_why(content, said):
    with pytest.raises(PictureRefusedError, match=said):
        printed_photo(content)


def test_whatever_the_bytes_a_photo_is_printed_or_refused():
    dice = random.Random(5)
    noise = Image.effect_noise((80, 60), 90)
    came = {"printed": 0, "refused": 0}
    for number in range(300):
        held = io.BytesIO()
        noise.save(held, "JPEG" if number % 2 else "PNG")
        content = bytearray(held.getvalue())
        for _ in range(dice.randrange(1, 6)):
            content[dice.randrange(12, len(content))] = dice.randrange(256)
        try:
            assert size_of(printed_photo(bytes(content)))
            came["printed"] += 1
        except PictureRefusedError:
            came["refused"] += 1
    assert min(came.values()) > 20
