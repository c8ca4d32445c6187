"""How the tests are tested: one line of the program is changed, and a test that runs it has to fail.

`sites` says which lines can be changed and how, `touching` which tests run a line, `trying` changes a copy of the tree
and runs them. ``tests/run --mutants --help`` is the command, `test_share` the share of it that every run has.
"""
