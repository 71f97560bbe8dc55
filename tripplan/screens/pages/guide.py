"""The Guide page."""

from tripplan.screens.guide import render

render()
