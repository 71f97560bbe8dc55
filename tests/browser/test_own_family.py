"""A parent on a telephone: from the demo to her own family, her own place, and an entry for the calendar."""

from collections.abc import Iterator

import pytest

from tests.browser.conftest import Visit

TELEPHONE = 390

FAMILY = {"name": "The Larches", "where": "Dubuque, IA"}
PEOPLE = {"person0": "Ada", "born0": "5/20/1988", "person1": "Leo", "born1": "March 2019", "person2": "Mia",
          "born2": "2024-09"}  # fmt: skip
PLACE = {
    "name": "Old Mill",
    "where": "Galena, IL",
    "hours": "Mo-Su 09:30-16:30",
    "0_price": "9.50",
    "1_price": "5",
    "3_price": "0",
    "4_source": "the board at the ticket counter",
}


@pytest.fixture
def telephone(visit: Visit) -> Iterator[Visit]:
    """A window as narrow as a telephone; at the end the app shows the demo again, as other tests expect."""
    visit.page.set_viewport_size({"width": TELEPHONE, "height": 844})
    visit.open()
    yield visit
    visit.open("cupboard")
    back = visit.page.get_by_role("button", name="Show the demo")
    if back.count():
        back.click()
        visit.page.get_by_role("button", name="Use my own family").wait_for()


def fill(visit: Visit, form: str, texts: dict[str, str]) -> None:
    """Type into the fields of a form as a hurried parent does: one after the other, without waiting."""
    for name, text in texts.items():
        visit.page.locator(f".st-key-{form}_{name} input").fill(text)


def assert_fits(visit: Visit) -> None:
    """Nothing is wider than the telephone, and nothing went wrong."""
    assert visit.page.locator("[data-testid=stException]").count() == 0
    main = visit.page.locator("[data-testid=stMain]")
    assert main.evaluate("main => main.scrollWidth <= main.clientWidth")


def test_from_the_demo_to_an_entry_for_ones_own_calendar(telephone: Visit) -> None:
    """Leave the demo, enter a family and a place by the forms, take the outing, download its entry."""
    page = telephone.page
    page.get_by_role("button", name="Use my own family").click()
    fill(telephone, "first", PEOPLE)
    fill(telephone, "first", FAMILY)
    page.get_by_role("button", name="Save and begin").click()
    page.get_by_text("Where would you like to go?").wait_for()
    assert_fits(telephone)

    page.get_by_role("link", name="Ideas", exact=True).click()
    page.get_by_role("heading", level=1, name="Ideas").wait_for()
    page.get_by_role("button", name="Type it in").click()
    telephone.settle()
    page.get_by_role("button", name="More", exact=True).click()
    telephone.settle()
    fill(telephone, "new_card_family", PLACE)
    page.locator(".st-key-new_card_family_4_source input").press("Tab")
    # One grown-up at 9.50, Leo (7 years) at 5, Mia (2 years) free.
    page.get_by_text("For us that is $14.50").first.wait_for()
    assert_fits(telephone)
    page.get_by_role("button", name="Add this place").click()
    page.get_by_text("Old Mill is added.").first.wait_for()
    assert_fits(telephone)

    page.get_by_role("link", name="tripplan").click()
    page.get_by_role("button", name="Plan Old Mill").click()
    page.get_by_role("heading", level=1, name="Old Mill").wait_for()
    page.get_by_role("link", name="Calendar", exact=True).click()
    page.get_by_role("heading", name="Old Mill, ").wait_for()
    assert_fits(telephone)
    with page.expect_download() as download:
        page.get_by_role("button", name="Download").first.click()
    written = download.value.path().read_bytes()
    assert written.startswith(b"BEGIN:VCALENDAR\r\n")
    assert b"Old Mill" in written
    assert telephone.asked_outside == []
