"""`hwsched project completion`: prints what makes a shell complete commands."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.completing import SHELLS

    parser.add_argument("shell", choices=SHELLS, help='such as in ~/.bashrc: eval "$(hwsched project completion bash)"')


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.completing import shell_code

    print(shell_code(arguments.shell))
    return DONE


VERB = Verb(_arguments, _run)
