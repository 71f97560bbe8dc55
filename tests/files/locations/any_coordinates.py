"""What must hold of coordinates whatever somebody types."""

from tripplan.files.locations.gazetteer import parse_coordinates


def lies_on_the_globe_or_is_refused(text: str) -> None:
    """Assert that a text is read as a point on the globe, or refused as bad input is."""
    try:
        point = parse_coordinates(text)
    except ValueError:
        return
    assert abs(point.latitude) <= 90
    assert abs(point.longitude) <= 180
