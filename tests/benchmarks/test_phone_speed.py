"""A phone's first visit under TLS and behind the gate, against the computer's own, in one running app."""

import re
import time
from http.cookies import SimpleCookie
from pathlib import Path
from statistics import median
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from tests.app_server.asking import ask
from tests.app_server.home_network import ELSEWHERE_ON_LOOPBACK
from tests.browser.conftest import settle
from tests.running_app import started_app

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser

VISITS = 5


def first_visit(browser: "Browser", address: str, cookie: str = "") -> float:
    """How long a browser that has never been there takes until the logbook is drawn [s]."""
    context = browser.new_context(ignore_https_errors=True)
    if cookie:
        ((name, morsel),) = SimpleCookie(cookie).items()
        context.add_cookies([{"name": name, "value": morsel.value, "url": address, "secure": True}])
    page = context.new_page()
    began = time.perf_counter()
    page.goto(f"{address}/logbook")
    page.get_by_test_id("stMain").get_by_role("heading", level=1).wait_for()
    took = time.perf_counter() - began
    settle(page)
    context.close()
    return took


def test_a_first_visit_by_a_paired_phone(browser: "Browser", tmp_path: Path) -> None:
    """First visits in turns, by their medians: wanted is 1.1; measured were 1.05 to 1.15, mostly 1.10."""
    with started_app(tmp_path, TRIPPLAN_PHONES=ELSEWHERE_ON_LOOPBACK) as app:
        found = re.search(r"open (https://\S+)/ there and type (\d{6})", app.log.read_text(encoding="utf-8"))
        assert found
        form = urlencode({"code": found[2], "name": "Red phone"}).encode()
        cookie = ask(found[1], "/pair", "POST", {"Origin": found[1]}, form).cookies[0].split(";")[0]
        first_visit(browser, app.address)
        without, paired = [], []
        for _ in range(VISITS):
            without.append(first_visit(browser, app.address))
            paired.append(first_visit(browser, found[1], cookie))
        ratio = median(paired) / median(without)
        times = f"{median(paired):.2f} s paired, {median(without):.2f} s without"
        print(f"first visit: {times}, ratio {ratio:.2f}")  # noqa: T201
        assert ratio <= 1.5
