"""Where the family's records lie on this computer."""

from collections.abc import Mapping
from pathlib import Path

import platformdirs

FOLDER_VARIABLE = "TRIPPLAN_DATA"


def data_folder(environment: Mapping[str, str]) -> Path:
    """The folder of the records; it need not exist yet.

    Args:
        environment: environment variables; `TRIPPLAN_DATA`, where set, names the folder.

    Returns:
        That folder, else where this operating system keeps a user's data.
    """
    chosen = environment.get(FOLDER_VARIABLE)
    if chosen:
        return Path(chosen).expanduser().absolute()
    return platformdirs.user_data_path("tripplan", appauthor=False)
