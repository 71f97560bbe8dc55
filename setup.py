"""The list of packages: all under `tripplan`, and the demo beside it. All else is in pyproject.toml."""

from setuptools import find_namespace_packages, setup

program = find_namespace_packages(include=["tripplan", "tripplan.*"])
demo = find_namespace_packages(include=["demo_places", "demo_places.*"], exclude=["*.screenshots"])
setup(packages=[*program, *(f"tripplan.{package}" for package in demo)])
