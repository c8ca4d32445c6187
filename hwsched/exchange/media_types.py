"""What kind of file some bytes are, by how they begin: the name of a file may say anything.

Sources of the beginnings: PNG ISO/IEC 15948, PDF ISO 32000, gzip RFC 1952, office books in ZIP ISO/IEC 29500, films and
HEIF ISO/IEC 14496-12; the others from memory, unverified. Names of media types: IANA's registry.
"""

from typing import Final

UNKNOWN: Final = "application/octet-stream"
_ZIP: Final = "application/zip"

_BEGINS: Final[tuple[tuple[bytes, str], ...]] = (
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"GIF87a", "image/gif"),
    (b"GIF89a", "image/gif"),
    (b"II*\x00", "image/tiff"),
    (b"MM\x00*", "image/tiff"),
    (b"BM", "image/bmp"),
    (b"%PDF-", "application/pdf"),
    (b"PK\x03\x04", _ZIP),
    (b"\x1f\x8b", "application/gzip"),
    (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "application/x-ole-storage"),
)
_BRANDS: Final = {b"heic": "image/heic", b"heix": "image/heic", b"mif1": "image/heif", b"avif": "image/avif"}
"""Of ISO base media files (ISO/IEC 14496-12), that stand behind ``ftyp``; any other is taken for a film."""
_OF_ZIP: Final = (
    (b"xl/", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
    (b"word/", "application/vnd.openxmlformats-officedocument.wordprocessingml.document"),
)
_LOOKED_AT: Final = 4096


def media_type_of(content: bytes) -> str:
    r"""Return the media type that some bytes begin like.

    Parameters
    ----------
    content : bytes
        All of a file.

    Returns
    -------
    str
        As IANA lists it; ``application/octet-stream`` where nothing is recognised.

    Examples
    --------
    >>> media_type_of(b"%PDF-1.7 ..."), media_type_of(b"Door 12, seen from inside"), media_type_of(b"\x00\x01")
    ('application/pdf', 'text/plain', 'application/octet-stream')
    """
    head = content[:_LOOKED_AT]
    if head.startswith(b"RIFF") and head[8:12] == b"WEBP":
        return "image/webp"
    if head[4:8] == b"ftyp":
        # The box's length stands in front of its name, so that the signature is not at the beginning.
        return _BRANDS.get(head[8:12], "video/mp4")
    for begins, kind in _BEGINS:
        if head.startswith(begins):
            return _in_zip(content) if kind == _ZIP else kind
    return _text_type(content, head)


def _in_zip(content: bytes) -> str:
    if b"[Content_Types].xml" not in content:
        return _ZIP
    return next((kind for folder, kind in _OF_ZIP if folder in content), _ZIP)


def _text_type(content: bytes, head: bytes) -> str:
    if not content or b"\x00" in head:
        return UNKNOWN
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        return UNKNOWN
    # Drawings as SVG are text too, and begin with a declaration as often as with their own tag.
    start = text[:_LOOKED_AT].lstrip("\ufeff \t\r\n").lower()
    if start.startswith("<svg") or (start.startswith("<?xml") and "<svg" in start):
        return "image/svg+xml"
    return "text/plain"
