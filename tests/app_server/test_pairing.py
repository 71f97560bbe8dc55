"""Codes and phones, by a clock that the test turns."""

from datetime import UTC, datetime, timedelta

import pytest

from tripplan.app_server.pairing import MOST_WRONG, Access, Paired, Pairing, Refused


class Clock:
    """A clock that stands still until it is turned."""

    def __init__(self) -> None:
        self.now = datetime(2026, 12, 3, 9, tzinfo=UTC)

    def __call__(self) -> datetime:
        """The present moment."""
        return self.now

    def turn(self, seconds: float) -> None:
        """Let time go by."""
        self.now += timedelta(seconds=seconds)


@pytest.fixture
def clock() -> Clock:
    """A clock of the test's own."""
    return Clock()


@pytest.fixture
def pairing(clock: Clock) -> Pairing:
    """Nothing paired yet."""
    return Pairing(clock)


def paired(pairing: Pairing, name: str = "Red phone", access: Access = Access.ON_THE_DAY) -> Paired:
    """A phone that typed the right code."""
    outcome = pairing.attempt(pairing.new_code(access).digits, name)
    assert isinstance(outcome, Paired)
    return outcome


def not_the(digits: str) -> str:
    """A code of the same length that differs in one digit."""
    return digits[:-1] + str((int(digits[-1]) + 1) % 10)


def test_the_right_code_pairs_one_phone_and_is_used_up(pairing: Pairing) -> None:
    """A code serves once; the phone gets the access chosen for it, and is known by its secret alone."""
    code = pairing.new_code(Access.EVERYTHING)
    first = pairing.attempt(f" {code.digits[:3]} {code.digits[3:]} ", "Red phone")
    assert isinstance(first, Paired)
    assert (first.phone.name, first.phone.access) == ("Red phone", Access.EVERYTHING)
    assert pairing.attempt(code.digits, "Thief") is Refused.NO_CODE
    assert [phone.id for phone in pairing.phones] == [first.phone.id]
    known = pairing.phone_of(first.token)
    assert known is not None
    assert known.id == first.phone.id
    assert pairing.phone_of(first.token + "x") is None
    assert pairing.phone_of(first.phone.id) is None


def test_codes_are_six_digits_and_differ() -> None:
    """Codes are drawn from all six-digit ones, those that begin with zeros included."""
    pairing = Pairing(Clock())
    codes = {pairing.new_code(Access.ON_THE_DAY).digits for _ in range(400)}
    assert all(len(code) == 6 and code.isdigit() for code in codes)
    assert len(codes) > 390
    assert any(code.startswith("0") for code in codes)


def test_a_code_lives_five_minutes(pairing: Pairing, clock: Clock) -> None:
    """The code is good just before five minutes have passed, and nothing at five minutes."""
    code = pairing.new_code(Access.ON_THE_DAY)
    clock.turn(299)
    assert pairing.code == code
    clock.turn(1)
    assert pairing.code is None
    assert pairing.attempt(code.digits, "Late phone") is Refused.NO_CODE


def test_wrong_codes_wait_longer_and_longer(pairing: Pairing, clock: Clock) -> None:
    """The wait doubles from a second to sixteen; until it is over not even the right code is looked at."""
    code = pairing.new_code(Access.ON_THE_DAY)
    for wait in (1, 2, 4, 8, 16, 16):
        assert pairing.attempt(not_the(code.digits), "Guesser") is Refused.WRONG
        clock.turn(wait - 0.5)
        assert pairing.attempt(code.digits, "Guesser") is Refused.TOO_SOON
        clock.turn(0.5)
    assert isinstance(pairing.attempt(code.digits, "Owner"), Paired)


def test_ten_wrong_codes_close_pairing(pairing: Pairing, clock: Clock) -> None:
    """After ten looked-at wrong codes the right one is nothing; only a new code from the computer helps."""
    code = pairing.new_code(Access.ON_THE_DAY)
    outcomes = []
    for _ in range(MOST_WRONG):
        outcomes.append(pairing.attempt(not_the(code.digits), "Guesser"))
        clock.turn(16)
    assert outcomes == [Refused.WRONG] * 9 + [Refused.CLOSED]
    assert clock.now < code.until, "the time of the code must not be what closed it"
    assert pairing.attempt(code.digits, "Owner") is Refused.NO_CODE
    assert paired(pairing).phone in pairing.phones


@pytest.mark.parametrize(
    "typed", ["", "abc", "\uff11\uff12\uff13\uff14\uff15\uff16", "12345", "1234567", "\x00", "9" * 10000]
)
def test_anything_typed_is_just_wrong(pairing: Pairing, typed: str) -> None:
    """Text that is no code is refused as a wrong one is."""
    code = pairing.new_code(Access.ON_THE_DAY)
    assert pairing.attempt(typed, "Guesser") is Refused.WRONG
    assert pairing.phones == []
    assert code.digits != typed


def test_names_are_visible_short_and_told_apart(pairing: Pairing) -> None:
    """Invisible characters are dropped, a second phone of a name gets a number, and none is without one."""
    typed = ("A\u202e\x00b", "", "Blue", "Blue", "x" * 90, " \u200b")
    names = [paired(pairing, name).phone.name for name in typed]
    assert names == ["Ab", "Phone", "Blue", "Blue (2)", "x" * 40, "Phone (2)"]


def test_a_removed_phone_is_nobody(pairing: Pairing) -> None:
    """Removing one phone leaves the other paired."""
    first, second = paired(pairing, "One"), paired(pairing, "Two")
    pairing.remove(first.phone.id)
    assert pairing.phone_of(first.token) is None
    assert pairing.phone_of(second.token) is not None
    pairing.close()
    assert pairing.phone_of(second.token) is None
    assert pairing.phones == []


def test_windows_of_an_earlier_access_are_not_come_back_to(pairing: Pairing) -> None:
    """What a phone opened under another access is forgotten when the access changes, and only then."""
    phone = paired(pairing, access=Access.EVERYTHING).phone
    pairing.note_session(phone.id, "window")
    pairing.let_see(phone.id, Access.EVERYTHING)
    kept = pairing.phone(phone.id)
    assert kept is not None
    assert kept.sessions == {"window"}
    pairing.let_see(phone.id, Access.ON_THE_DAY)
    changed = pairing.phone(phone.id)
    assert changed is not None
    assert (changed.access, changed.sessions) == (Access.ON_THE_DAY, frozenset())
