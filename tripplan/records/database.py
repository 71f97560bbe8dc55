"""One SQLite file: a connection per operation, writes that happen as a whole, faults said in words."""

import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.records.checksums import checksum

PATIENCE_SECONDS = 10.0
"""How long an operation waits for others to finish before it gives up [s]."""

BACKUP_FOLDER = "backups"
COPIES_LIE_THERE = f"earlier days' copies lie in '{BACKUP_FOLDER}'"

_TROUBLES = {
    sqlite3.SQLITE_FULL: "the disk is full, so nothing was changed; free some space and try again",
    sqlite3.SQLITE_READONLY: "the file or its folder is write-protected; check that both belong to you",
    sqlite3.SQLITE_BUSY: "another program is using the file; try again in a moment",
    sqlite3.SQLITE_LOCKED: "another program is using the file; try again in a moment",
    sqlite3.SQLITE_CORRUPT: f"the file is damaged; {COPIES_LIE_THERE}",
    sqlite3.SQLITE_NOTADB: f"it is no records file; {COPIES_LIE_THERE}",
    sqlite3.SQLITE_CANTOPEN: "the file cannot be opened; check that its folder is there and belongs to you",
    sqlite3.SQLITE_IOERR: "the disk would not read or write the file, so nothing was changed; is it full?",
}


_NO_ROOM = (sqlite3.SQLITE_IOERR_SHMSIZE, sqlite3.SQLITE_IOERR_SHMOPEN, sqlite3.SQLITE_FULL)
"""What reading fails with where a full disk takes no more files beside the database."""

_DAMAGE = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)


def _trouble(path: Path, error: sqlite3.Error | OSError) -> RecordsUnusable:
    if isinstance(error, OSError):
        return RecordsUnusable(f"{path}: {error.strerror or error}")
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF  # the low byte is the kind of trouble
    said = f"{path}: {_TROUBLES.get(code, error)}"
    return RecordsDamaged(path, said) if code in _DAMAGE else RecordsUnusable(said)


@contextmanager
def said_plainly(path: Path) -> Iterator[None]:
    """Turn what SQLite and the operating system complain about into one error with a clear sentence.

    Raises:
        RecordsUnusable: the block failed on the file.
    """
    try:
        yield
    except RecordsUnusable:
        raise
    except (sqlite3.Error, OSError) as error:
        raise _trouble(path, error) from error


@contextmanager
def partial_file(target: Path) -> Iterator[Path]:
    """An empty file beside another, for the user's eyes only, that is gone afterwards unless put in place.

    What SQLite lays beside it goes with it.
    """
    handle, name = tempfile.mkstemp(dir=target.parent, suffix=".partial")
    os.close(handle)
    try:
        yield Path(name)
    finally:
        for left in target.parent.glob(f"{Path(name).name}*"):
            left.unlink(missing_ok=True)


def put_in_place(partial: Path, target: Path) -> None:
    """Let a file that was written under another name take its place, once all of it is on the disk.

    Raises:
        OSError: it cannot be written or renamed; the target is as it was.
    """
    with partial.open("r+b") as file:
        os.fsync(file.fileno())
    os.replace(partial, target)
    if os.name == "posix":  # elsewhere a folder cannot be opened, and its entries need no call of their own
        folder = os.open(target.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)


def _begins_reading(connection: sqlite3.Connection) -> bool:
    """Begin to read; not where a full disk has no room for the memory that is shared with other readers."""
    connection.execute("BEGIN")
    try:
        connection.execute("SELECT 1 FROM sqlite_master").fetchone()
    except sqlite3.OperationalError as error:
        if error.sqlite_errorcode in _NO_ROOM:
            return False
        raise
    return True


class Database:
    """One SQLite file; holds no connection, so that sessions and threads may share it.

    Attributes:
        path: the file.
        patience: how long an operation waits for others to finish before it gives up [s].
    """

    def __init__(self, path: Path, patience: float = PATIENCE_SECONDS) -> None:
        self.path = path
        self.patience = patience

    def create(self) -> None:
        """Make the file, for the user's eyes only, unless it is there.

        Raises:
            RecordsUnusable: folder or file cannot be made.
        """
        with said_plainly(self.path):
            self.path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            os.close(os.open(self.path, os.O_CREAT | os.O_RDONLY, 0o600))
            if self.path.stat().st_size == 0:
                self._write_ahead()

    def _write_ahead(self) -> None:
        # With a write-ahead log, readers and a writer do not wait for each other; the file remembers it.
        with closing(self.connect()) as connection:
            try:
                connection.execute("PRAGMA journal_mode = WAL")
            except sqlite3.OperationalError as error:
                # SQLite does not wait here; another program that begins at the same moment has done it.
                if error.sqlite_errorcode != sqlite3.SQLITE_BUSY:
                    raise

    def connect(self) -> sqlite3.Connection:
        """A new connection without a transaction; `reading` and `writing` are the usual ways in."""
        # mode=rw: a file that has vanished is an error, not a new empty file.
        mode = "mode=ro&immutable=1" if self._is_sealed() else "mode=rw"
        connection = sqlite3.connect(
            f"{self.path.absolute().as_uri()}?{mode}",
            uri=True,
            timeout=self.patience,
            isolation_level=None,
        )
        connection.row_factory = sqlite3.Row
        connection.create_function("row_checksum", -1, checksum, deterministic=True)
        return connection

    def _is_sealed(self) -> bool:
        """Whether the folder may only be read and nobody is at work there.

        SQLite's write-ahead log needs files beside the database even for reading, and gives up where it may
        not make them, unless it is told that the database does not change.
        """
        asked_as = os.access in os.supports_effective_ids
        sealed = not os.access(self.path.parent, os.W_OK, effective_ids=asked_as)
        return sealed and not self.path.with_name(f"{self.path.name}-wal").exists()

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """A connection that sees one unchanging state for as long as the block lasts.

        Raises:
            RecordsUnusable: the file cannot be opened or read.
        """
        with self._connection() as connection:
            with_others = _begins_reading(connection)
            if with_others:
                yield connection
        if not with_others:
            with self._connection() as connection:
                connection.execute("PRAGMA locking_mode = EXCLUSIVE")
                connection.execute("BEGIN")
                yield connection

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """A transaction: when the block ends, everything is on the disk; when it fails, nothing is.

        Raises:
            RecordsUnusable: the file cannot be opened or written.
        """
        with self._connection() as connection:
            connection.execute("PRAGMA foreign_keys = ON")
            connection.execute("PRAGMA synchronous = FULL")
            connection.execute("PRAGMA secure_delete = ON")  # what is deleted is overwritten, not left behind
            connection.execute("BEGIN IMMEDIATE")
            yield connection
            connection.execute("COMMIT")

    @contextmanager
    def _connection(self) -> Iterator[sqlite3.Connection]:
        # Closing without COMMIT rolls back, whatever ended the block.
        try:
            with closing(self.connect()) as connection:
                yield connection
        except sqlite3.Error as error:
            raise _trouble(self.path, error) from error
