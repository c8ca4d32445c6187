"""The desktop: windows, forms and views over the operations. Qt stands here and nowhere else."""

from hwsched.desktop.application import run_desktop

__all__ = ["run_desktop"]
