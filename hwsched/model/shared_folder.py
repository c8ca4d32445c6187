"""Whether a project file lies on a network: there SQLite's own locks and its write-ahead log cannot be relied on.

sqlite.org/wal.html, "All processes using a database must be on the same host computer". Here belongs telling; what
follows stands in `project` (no write-ahead log, a warning) and in `write_lock` (who is writing).
"""

import os
import sys
from pathlib import Path
from typing import Final

NETWORK: Final = frozenset(
    {
        *("nfs", "nfs4", "cifs", "smb3", "smbfs", "9p", "afs", "ncpfs", "ceph", "glusterfs", "lustre", "gfs2", "ocfs2"),
        *("fuse.sshfs", "fuse.rclone", "fuse.davfs", "davfs", "fuse.gvfsd-fuse", "fuse.s3fs", "fuse.curlftpfs"),
        *("vboxsf", "fuse.vmhgfs-fuse", "prl_fs", "drvfs", "webdav", "afpfs"),
    }
)
"""File systems that other machines write to as well, by the names that systems give them."""
MOUNTS: Final = Path("/proc/mounts")
_REMOTE_DRIVE: Final = 4
"""DRIVE_REMOTE of the Windows call GetDriveType."""


def network_of(path: Path, mounts: Path = MOUNTS) -> str:
    """Return what kind of network a file lies on; empty where it lies on a disk of this machine, or nobody can tell.

    Parameters
    ----------
    path : Path
        Of the project; it need not be there yet.
    mounts : Path
        Table of mounts as Linux writes it.
    """
    place = Path(os.path.realpath(path))
    if sys.platform == "win32":
        # Not tried where this was written.
        return _of_windows(place)
    try:
        lines = mounts.read_text(encoding="utf-8", errors="replace").splitlines()
    except OSError:
        return ""
    best, kind = "", ""
    for line in lines:
        fields = line.split(" ")
        if len(fields) < 3:
            continue
        # Blanks in names are written as \040. man 5 fstab
        point = fields[1].replace("\\040", " ").replace("\\011", "\t").replace("\\134", "\\")
        if len(point) >= len(best) and (place == Path(point) or Path(point) in place.parents):
            best, kind = point, fields[2]
    return kind if kind in NETWORK else ""


def _of_windows(place: Path) -> str:
    anchor = place.anchor
    if anchor.startswith("\\\\"):
        return "share"
    import ctypes  # noqa: PLC0415 there only

    windows = getattr(ctypes, "windll", None)
    return "share" if windows is not None and windows.kernel32.GetDriveTypeW(anchor) == _REMOTE_DRIVE else ""
