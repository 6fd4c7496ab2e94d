"""Where jobs are kept when nothing else is said."""

from pathlib import Path

import platformdirs


def usual_store() -> Path:
    """Give the usual file of jobs, in the user's folder for data of programs."""
    return Path(platformdirs.user_data_dir("plankwright", appauthor=False)) / "jobs.db"
