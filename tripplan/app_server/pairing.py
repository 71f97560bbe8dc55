"""Pairing a phone: codes that live five minutes, wrong ones that slow down, and the list of paired phones.

Nothing of this is written to the disk: after a new start of the app every phone pairs anew.
"""

import hashlib
import hmac
import secrets
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from enum import Enum
from threading import RLock
from unicodedata import category

CODE_DIGITS = 6
"""Twenty bits: the least that OWASP ASVS 4.0 (2.7.5, from memory) asks of a code sent another way."""
CODE_LIVES = timedelta(minutes=5)
MOST_WRONG = 10
"""So many wrong codes take the code away; ten guesses hit six digits once in a hundred thousand times."""
LONGEST_WAIT = timedelta(seconds=16)
LONGEST_NAME = 40
_CONTROL = ("Cc", "Cf", "Co", "Cs", "Cn", "Zl", "Zp")

Clock = Callable[[], datetime]


class Access(Enum):
    """What a phone sees."""

    ON_THE_DAY = "On the day and the logbook"
    EVERYTHING = "Everything"


@dataclass(frozen=True)
class Code:
    """A code to type on a phone, once.

    Attributes:
        digits: the code.
        until: when it ends.
        access: what the phone that shows it will see.
        wrong: how many wrong codes were typed since it was made.
        not_before: the next attempt is looked at from then on.
    """

    digits: str
    until: datetime
    access: Access
    wrong: int
    not_before: datetime


@dataclass(frozen=True)
class Phone:
    """A paired phone.

    Attributes:
        id: tells it from the others; no secret.
        name: as it was typed on it.
        access: what it sees.
        since: when it was paired.
        seen: when it last asked for anything.
        sessions: the windows it opened, as the app numbers them, under the present access.
    """

    id: str
    name: str
    access: Access
    since: datetime
    seen: datetime
    sessions: frozenset[str] = field(default=frozenset(), repr=False)


class Refused(Enum):
    """Why an attempt did not pair the phone."""

    NO_CODE = "There is no code to type now. Ask for a new one on the computer."
    TOO_SOON = "Wrong codes make the next one wait. Please try again in a moment."
    WRONG = "That is not the code. Please look at the computer again."
    CLOSED = "Ten wrong codes: pairing is closed. Ask for a new code on the computer."


@dataclass(frozen=True)
class Paired:
    """A phone that was just paired.

    Attributes:
        phone: as it stands on the list.
        token: the secret it shows from now on; known to the phone alone, kept here as a hash.
    """

    phone: Phone
    token: str


class Pairing:
    """The code that may be typed now, and the phones that are paired; safe to use from several threads."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._lock = RLock()
        self._code: Code | None = None
        self._phones: dict[str, Phone] = {}
        self._by_token: dict[bytes, str] = {}

    def new_code(self, access: Access) -> Code:
        """A code in the place of any other; wrong ones are counted from the start."""
        now = self._clock()
        digits = "".join(secrets.choice("0123456789") for _ in range(CODE_DIGITS))
        with self._lock:
            self._code = Code(digits, now + CODE_LIVES, access, 0, now)
            return self._code

    @property
    def code(self) -> Code | None:
        """The code that may be typed now; None where there is none, or it has ended."""
        with self._lock:
            if self._code is not None and self._clock() >= self._code.until:
                self._code = None
            return self._code

    def attempt(self, typed: str, name: str) -> Paired | Refused:
        """Pair a phone that shows the code; a code serves one phone.

        After the first wrong code the next waits a second, then two, four and so on up to `LONGEST_WAIT`; an
        attempt that comes sooner is not looked at. Wrong codes slow all: an attacker has many addresses.
        """
        now = self._clock()
        with self._lock:
            code = self.code
            if code is None:
                return Refused.NO_CODE
            if now < code.not_before:
                return Refused.TOO_SOON
            digits = "".join(filter(str.isdigit, typed))
            if not hmac.compare_digest(digits.encode(), code.digits.encode()):
                wrong = code.wrong + 1
                wait = min(timedelta(seconds=2 ** (wrong - 1)), LONGEST_WAIT)
                waiting = replace(code, wrong=wrong, not_before=now + wait)
                self._code = waiting if wrong < MOST_WRONG else None
                return Refused.WRONG if self._code else Refused.CLOSED
            self._code = None
            token = secrets.token_urlsafe(32)
            phone = Phone(secrets.token_hex(8), self._free_name(name), code.access, now, now)
            self._phones[phone.id] = phone
            self._by_token[_hashed(token)] = phone.id
            return Paired(phone, token)

    def _free_name(self, typed: str) -> str:
        visible = "".join(letter for letter in typed if category(letter) not in _CONTROL)
        name = " ".join(visible.split())[:LONGEST_NAME].strip() or "Phone"
        taken = {phone.name for phone in self._phones.values()}
        numbered = (f"{name} ({number})" for number in range(2, len(taken) + 2))
        return name if name not in taken else next(other for other in numbered if other not in taken)

    @property
    def phones(self) -> list[Phone]:
        """The paired phones, the first one first."""
        with self._lock:
            return list(self._phones.values())

    def phone(self, phone_id: str) -> Phone | None:
        """One phone; None where it is not paired, or no longer."""
        with self._lock:
            return self._phones.get(phone_id)

    def phone_of(self, token: str) -> Phone | None:
        """The phone that shows this secret, noted as just seen; None where nobody has it."""
        with self._lock:
            phone_id = self._by_token.get(_hashed(token))
            if phone_id is None:
                return None
            phone = self._phones[phone_id] = replace(self._phones[phone_id], seen=self._clock())
            return phone

    def note_session(self, phone_id: str, session: str) -> None:
        """Note that a phone opened a window, so that it may come back to this one."""
        with self._lock:
            phone = self._phones.get(phone_id)
            if phone is not None and session not in phone.sessions:
                self._phones[phone_id] = replace(phone, sessions=phone.sessions | {session})

    def let_see(self, phone_id: str, access: Access) -> None:
        """Change what a phone sees. It comes back to none of its windows: they hold what it saw before."""
        with self._lock:
            phone = self._phones.get(phone_id)
            if phone is not None and phone.access is not access:
                self._phones[phone_id] = replace(phone, access=access, sessions=frozenset())

    def remove(self, phone_id: str) -> None:
        """Take a phone off the list; what it shows is worth nothing from then on."""
        with self._lock:
            self._phones.pop(phone_id, None)
            self._by_token = {token: one for token, one in self._by_token.items() if one != phone_id}

    def close(self) -> None:
        """Forget the code and every phone."""
        with self._lock:
            self._code = None
            self._phones.clear()
            self._by_token.clear()


def _hashed(token: str) -> bytes:
    """A token has 256 random bits, so a plain hash keeps it as well as a slow one."""
    return hashlib.sha256(token.encode("utf-8", "replace")).digest()
