"""The family's calendar on a server of its own, and what of its outings lies there."""

from typing import Annotated, Self

from pydantic import Field, StringConstraints, model_validator

from tripplan.documents.model import Written

WebAddress = Annotated[str, Field(pattern=r"^https?://[!-~]+$", max_length=1000)]
"""An address as a server gives it, escaped."""
Uid = Annotated[str, Field(min_length=1, max_length=300)]
LONGEST_ETAG = 8000
"""The longest that is worth keeping; servers take lines of 8 KB in a request, which names it [characters].
Common practice, no source."""
LONGEST_TROUBLE = 500
"""[characters]"""
LONGEST_ENTRY = 200_000
"""[characters]"""
ETag = Annotated[str, Field(max_length=LONGEST_ETAG)]
"""What a server calls one state of an entry (RFC 4791, 5.3.4)."""
EntryText = Annotated[str, StringConstraints(max_length=LONGEST_ENTRY, strip_whitespace=False)]
"""An entry as a calendar file, to the letter."""


class ServerCalendar(Written):
    """Where outings are sent to; the password is kept elsewhere."""

    server: WebAddress
    """What was asked for the calendars."""
    user: Annotated[str, Field(min_length=1, max_length=200)]
    """Who signs in."""
    calendar: WebAddress
    """The calendar that was picked."""
    name: Annotated[str, Field(min_length=1, max_length=200)]
    """What the server calls it."""
    takes_tasks: bool = False
    """Whether tasks can lie in it beside entries."""
    plain_http: bool = False
    """Whether the parent allows a connection that others can listen to."""
    certificate: Annotated[str, Field(max_length=1000)] = ""
    """A file with the server's certificate; the usual ones are trusted when left out."""


class SentCopy(Written):
    """One entry as it was sent last."""

    uid: Uid
    address: WebAddress
    """Where it lies."""
    etag: ETag = ""
    """Its state there that this program knows; empty where it has written none."""
    body: EntryText
    """What was sent, or what would have been where the parent left the server's own."""


class ChangedThere(Written):
    """An entry that somebody else has changed on the server, or removed, since it was sent."""

    uid: Uid
    address: WebAddress
    ours: EntryText
    """What was to be sent; empty where it was to be removed."""
    theirs: EntryText
    """What lies there; empty where it was removed."""
    etag: ETag = ""
    """The state of theirs."""


class OnServer(Written):
    """What of one outing lies on the server, once the parent has sent it for the first time."""

    outing: Annotated[str, Field(min_length=1, max_length=80)]
    """The id of the planned outing."""
    calendar: WebAddress
    """The calendar it was sent to."""
    copies: tuple[SentCopy, ...] = ()
    """By UID, each once."""
    sent: Annotated[str, Field(max_length=80)] = ""
    """The edition of the outing that has arrived; empty before it has."""
    changed_there: tuple[ChangedThere, ...] = ()
    """What the parent has to decide about."""
    trouble: Annotated[str, Field(max_length=LONGEST_TROUBLE)] = ""
    """Why the last sending did not get through, in words; empty where it did."""

    @model_validator(mode="after")
    def _each_once(self) -> Self:
        for listed in (self.copies, self.changed_there):
            if len({one.uid for one in listed}) < len(listed):
                raise ValueError("an entry is listed twice")
        return self

    def is_due(self, edition: str | None) -> bool:
        """Whether there is something to send.

        Args:
            edition: the outing's own; None where it is planned no more.
        """
        if self.changed_there:
            return False  # The parent decides first.
        return bool(self.copies) if edition is None else self.sent != edition

    def ours_wins(self) -> Self:
        """After the parent has looked: the next sending writes over what has changed there."""
        known = {one.uid: one for one in self.copies}
        for changed in self.changed_there:
            if not changed.theirs:
                known.pop(changed.uid, None)  # It is made anew.
            else:
                known[changed.uid] = SentCopy(
                    uid=changed.uid, address=changed.address, etag=changed.etag, body=changed.theirs
                )
        return self.model_copy(
            update={"copies": tuple(known.values()), "changed_there": (), "sent": "", "trouble": ""}
        )

    def theirs_wins(self) -> Self:
        """After the parent has looked: what has changed there stays until the outing changes again.

        The state known of it stays the old one, so that a later sending is asked about again.
        """
        known = {one.uid: one for one in self.copies}
        for changed in self.changed_there:
            if not changed.ours:
                known.pop(changed.uid, None)
                continue
            before = known.get(changed.uid)
            known[changed.uid] = SentCopy(
                uid=changed.uid,
                address=changed.address,
                etag=before.etag if before else "",
                body=changed.ours,
            )
        return self.model_copy(
            update={"copies": tuple(known.values()), "changed_there": (), "sent": "", "trouble": ""}
        )
