"""The page that lets phones in."""

from tripplan.screens.phones import render

render()
