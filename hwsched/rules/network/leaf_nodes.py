"""Names of the nodes beyond the power transfer of an opening: on its leaf, and at what a unit there switches."""


def leaf_node(opening_id: str, leaf: str = "") -> str:
    """Name the node on a leaf, beyond the opening's power transfer; the leaf where there are several."""
    return f"{opening_id}/leaf {leaf}".rstrip()


def strike_node(opening_id: str, leaf: str = "") -> str:
    """Name the node at a strike in the frame that a unit on the leaf switches; the leaf where there are several."""
    return f"{opening_id}/strike {leaf}".rstrip()


def opening_of(node: str) -> str:
    """Return the opening of a node on a leaf or at a strike; any other node as it is."""
    if "/" not in node:
        return node
    return node.partition("/leaf")[0].partition("/strike")[0]


def leaf_words(node: str) -> str:
    """Return what is put behind the name of an opening for such a node of it; nothing for any other node."""
    if "/" not in node:
        return ""
    opening = opening_of(node)
    what, _, leaf = node[len(opening) :].removeprefix("/").partition(" ")
    if not opening or what not in ("leaf", "strike"):
        return ""
    if what == "strike":
        return f" (strike, {leaf} leaf)" if leaf else " (strike)"
    return f" ({leaf} leaf)" if leaf else " (leaf)"
