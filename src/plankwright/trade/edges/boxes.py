"""How far a box is to be brought forward, and how wide the hole around it may be."""

from plankwright.measure import Nm


def extension_nm(finish_nm: Nm, box_face_nm: Nm) -> Nm:
    """Give how deep an extender a box needs to end flush with the new face.

    Parameters
    ----------
    finish_nm
        From the face of the framing to the new face: all that lies between, shim and board. [nm]
    box_face_nm
        From the face of the framing to the front of the box as it is. [nm]

    Returns
    -------
    int
        Nothing where the box reaches the new face or stands out. [nm]
    """
    return max(0, finish_nm - box_face_nm)
