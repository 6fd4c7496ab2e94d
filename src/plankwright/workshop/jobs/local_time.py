"""Times as a clock beside the computer shows them; they are kept in universal time."""

from datetime import datetime, tzinfo


def local_time(at: str, zone: tzinfo | None = None) -> str:
    """Write when something was done, to the minute.

    Parameters
    ----------
    at
        When, in ISO 8601 with its zone.
    zone
        Whose clock; that of the computer that runs the app when left out.

    Returns
    -------
    str
        Such as "2026-04-11 15:20"; empty when it is not known.
    """
    return datetime.fromisoformat(at).astimezone(zone).strftime("%Y-%m-%d %H:%M") if at else ""
