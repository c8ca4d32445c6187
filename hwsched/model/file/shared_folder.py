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
OF_THIS_MACHINE: Final = frozenset(
    {
        *("fuse.ntfs-3g", "fuse.exfat", "fuse.lxcfs", "fuse.mergerfs", "fuse.unionfs", "fuse.bindfs", "fuse.portal"),
        *("fuse.gocryptfs", "fuse.encfs", "fuse.cryfs", "fuse.squashfuse", "fuse.fuse-overlayfs", "fuse.snapfuse"),
    }
)
"""File systems kept by programs whose files lie on this machine all the same; of others nobody can tell."""
MOUNTS: Final = Path("/proc/mounts")
_REMOTE_DRIVE: Final = 4
"""DRIVE_REMOTE of the Windows call GetDriveType."""


def network_of(path: Path, mounts: Path = MOUNTS) -> str:
    """Return what kind of network a file lies on; empty where it lies on a disk of this machine, or nobody can tell.

    A file system that a program keeps counts as one, unless it is known to lie on this machine.

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
        if len(point) >= len(best) and f"{place}/".startswith(f"{point.rstrip('/')}/"):
            best, kind = point, fields[2]
    # What a program keeps may lie anywhere, and come and go as it wants.
    kept = kind == "fuse" or (kind.startswith("fuse.") and kind not in OF_THIS_MACHINE)
    return kind if kept or kind in NETWORK else ""


def _of_windows(place: Path) -> str:
    anchor = place.anchor
    if anchor.startswith("\\\\"):
        return "share"
    import ctypes  # noqa: PLC0415 there only

    windows = getattr(ctypes, "windll", None)
    return "share" if windows is not None and windows.kernel32.GetDriveTypeW(anchor) == _REMOTE_DRIVE else ""
