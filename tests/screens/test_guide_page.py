"""The Guide page shows every topic of the guide."""

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import APP
from tripplan.errors import UnknownName
from tripplan.guide import guide_text, topics


def test_every_topic_can_be_read() -> None:
    """Choosing a topic shows its text, without pictures, which stand beside the source alone."""
    app = AppTest.from_file(str(APP), default_timeout=30).switch_page("screens/pages/guide.py").run()
    assert not app.exception
    for topic in topics():
        app.selectbox(key="topic").select(topic).run()
        assert not app.exception
        last_line = guide_text(topic).strip().splitlines()[-1]
        assert last_line.replace("$", r"\$") in app.main.markdown[-1].value
        assert "![" not in app.main.markdown[-1].value


def test_an_unknown_topic_is_refused_with_those_there_are() -> None:
    """The error names what there is instead."""
    with pytest.raises(UnknownName, match="pages"):
        guide_text("nothing")
