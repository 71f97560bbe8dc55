"""What the guide quotes of the program's own accuracy."""

from tests.published.guide_figures import GUIDE, with_figures


def test_the_guide_quotes_the_committed_tables_of_errors() -> None:
    """Every figure of accuracy in the guide is that of the tables; `write_figures` puts it there."""
    text = GUIDE.read_text(encoding="utf-8")
    assert text == with_figures(text)
