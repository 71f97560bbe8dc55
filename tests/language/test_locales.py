"""Who is spoken to in which language."""

from threading import Thread

import pytest

from tests.builders import make_household
from tripplan.language import locales
from tripplan.language.locales import Locale, of_country, of_tag, speak, speaking, spoken


@pytest.mark.parametrize(
    ("country", "locale"),
    [("US", "en-US"), ("GB", "en-GB"), ("IE", "en-GB"), ("NZ", "en-GB"), ("AT", "de"), ("JP", "en-US")],
)
def test_a_country_decides_where_nobody_chose(country: str, locale: str) -> None:
    """The British Isles and the antipodes read British, German-speaking countries German, others American."""
    assert of_country(country) == locale


@pytest.mark.parametrize(
    ("tag", "locale"),
    [
        ("de-AT", "de"),
        ("en-AU", "en-GB"),
        ("en_US", "en-US"),
        ("en", "en-US"),
        ("en-DE", "en-US"),
        ("fr", "en-US"),
        ("", "en-US"),
    ],
)
def test_a_browsers_language_is_met_as_nearly_as_can_be(tag: str, locale: str) -> None:
    """Any German is German; English goes by its country; what nobody has put into words is American."""
    assert of_tag(tag) == locale


def test_a_household_may_choose_another_language_than_its_countrys() -> None:
    """As one from Ulm does that lives in Ohio."""
    household = make_household()
    assert household.locale is Locale.EN_US
    assert household.model_copy(update={"language": "de"}).locale is Locale.DE


def test_threads_speak_each_their_own_language() -> None:
    """What one window chooses no other hears, and a choice for a while ends with it."""
    heard = []

    def other_window() -> None:
        heard.append(spoken())
        speak(Locale.EN_GB)
        heard.append(spoken())

    with speaking(Locale.DE):
        thread = Thread(target=other_window)
        thread.start()
        thread.join()
        heard.append(spoken())
    assert heard == [Locale.EN_US, Locale.EN_GB, Locale.DE]
    assert spoken() is Locale.EN_US


def test_who_serves_windows_is_asked_where_a_thread_chose_nothing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A press answered in a new thread is answered in its window's language."""
    monkeypatch.setattr(locales, "_asked", [lambda: Locale.DE])
    assert spoken() is Locale.DE
    with speaking(Locale.EN_GB):
        assert spoken() is Locale.EN_GB
