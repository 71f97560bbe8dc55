"""Where the family's records lie on this computer."""

from collections.abc import Mapping
from pathlib import Path

import platformdirs

from tripplan.errors import Finding, InputFaults

FOLDER_VARIABLE = "TRIPPLAN_DATA"


def data_folder(environment: Mapping[str, str]) -> Path:
    """The folder of the records; it need not exist yet.

    Args:
        environment: environment variables; `TRIPPLAN_DATA`, where set, names the folder.

    Returns:
        That folder, else where this operating system keeps a user's data.

    Raises:
        InputFaults: it is said to lie in the home folder of a user who is not there.
    """
    chosen = environment.get(FOLDER_VARIABLE)
    if chosen:
        try:
            return Path(chosen).expanduser().absolute()
        except RuntimeError as trouble:
            message = "there is no user of this name"
            raise InputFaults((Finding("data folder", FOLDER_VARIABLE, chosen, message),)) from trouble
    return platformdirs.user_data_path("tripplan", appauthor=False)
