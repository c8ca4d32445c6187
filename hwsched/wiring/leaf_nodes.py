"""Names of the nodes on leaves: beyond the power transfer of an opening."""


def leaf_node(opening_id: str, leaf: str = "") -> str:
    """Name the node on a leaf, beyond the opening's power transfer; the leaf where there are several."""
    return f"{opening_id}/leaf {leaf}".rstrip()


def opening_of(node: str) -> str:
    """Return the opening of a node on a leaf; any other node as it is."""
    return node.partition("/leaf")[0]


def leaf_words(node: str) -> str:
    """Return what is put behind the name of an opening for a node on its leaf; nothing for any other node."""
    opening, on, leaf = node.partition("/leaf")
    return f" ({f'{leaf.strip()} leaf' if leaf.strip() else 'leaf'})" if on and opening else ""
