"""Contents of files by their hash: held once, read back only whole."""

import hashlib

from sqlalchemy import Connection, insert, select

from hwsched.model.errors import DamagedProjectError, MissingRowError
from hwsched.model.tables import BLOB


def hash_of(content: bytes) -> str:
    """Return the SHA-256 under which a content is held, as 64 hexadecimal digits."""
    return hashlib.sha256(content).hexdigest()


def hold_blob(connection: Connection, content: bytes, media_type: str) -> str:
    """Hold a content, once; returns its hash.

    Parameters
    ----------
    connection : Connection
        In a writing transaction.
    content : bytes
        All of it.
    media_type : str
        What kind of file it is.
    """
    key = hash_of(content)
    if connection.execute(select(BLOB.c.hash).where(BLOB.c.hash == key)).first() is None:
        row = {"hash": key, "size": len(content), "media_type": media_type, "content": content}
        connection.execute(insert(BLOB), row)
    return key


def read_blob(connection: Connection, key: str) -> bytes:
    """Return a content.

    Raises
    ------
    MissingRowError
        Where there is none of that hash.
    DamagedProjectError
        Where what is held has another hash: the file was changed from outside.
    """
    found = connection.execute(select(BLOB.c.content).where(BLOB.c.hash == key)).scalar()
    if found is None:
        raise MissingRowError(f"the project holds no file of the content {key}")
    content = bytes(found)
    if hash_of(content) != key:
        raise DamagedProjectError(f"the project is damaged: the file of the content {key} is not what was taken in")
    return content
