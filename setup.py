"""The list of packages: all under `tripplan`, and the demo beside it. All else is in pyproject.toml."""

from setuptools import find_namespace_packages, setup

setup(packages=[*find_namespace_packages(include=["tripplan", "tripplan.*"]), "tripplan.demo_places"])
