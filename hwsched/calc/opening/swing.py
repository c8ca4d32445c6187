"""A leaf as it swings: how far what stands on its face comes nearer to the frame beside its lock edge.

Here belongs the arc about the hinge pins. What stands on the leaf, and what the frame needs, is said above.
"""


def nears_frame_mm(reach_mm: float, proud_mm: float, thickness_mm: float, pin_mm: float) -> float:
    """Say how much nearer to the frame's stop something comes as its leaf opens, beyond where it stands when shut.

    Parameters
    ----------
    reach_mm : float
        From the hinge pins to its side that is nearest to the lock edge, along the leaf [mm]; positive.
    proud_mm : float
        How far it stands off the face that closes against the stop [mm]; 0 or more.
    thickness_mm : float
        Of the leaf [mm].
    pin_mm : float
        From the centre of the hinge pins to the leaf's other face, on which they stand [mm].

    Returns
    -------
    float
        ``sqrt(reach^2 + a^2 - b^2) - reach`` with `a` from the pins to its front and `b` to the face that it stands on
        [mm]: its front corner runs on an arc, and is past the stop once it has come back to where that face was.

    Notes
    -----
    Source: geometry.

    Examples
    --------
    >>> round(nears_frame_mm(884.0, 32.0, 44.45, 6.35), 3)  # 884^2 + 82.8^2 - 50.8^2 = 785731.2
    2.415
    """
    front, face = pin_mm + thickness_mm + proud_mm, pin_mm + thickness_mm
    return float((reach_mm**2 + front**2 - face**2) ** 0.5 - reach_mm)
