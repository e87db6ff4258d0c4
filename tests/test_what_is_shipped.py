"""What goes out beside the code: licenses, marks of the package, the list of changes, help in the README."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import jambs

ROOT = Path(__file__).parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def text_of(name: str) -> str:
    return (ROOT / name).read_text(encoding="utf-8")


def test_the_license_names_its_holder() -> None:
    assert re.match(r"MIT License\n\nCopyright \(c\) \d{4} the jambs authors\n", text_of("LICENSE"))
    assert PROJECT["license"] == "MIT"
    assert [one["name"] for one in PROJECT["authors"]] == ["the jambs authors"]


def test_fonts_go_with_the_text_of_their_own_license() -> None:
    """The OFL asks for its text, with the copyright, in every copy (condition 2)."""
    fonts = ROOT / "jambs" / "data" / "fonts"
    assert {one.suffix for one in fonts.iterdir()} == {".ttf", ".txt"}
    (license_of,) = fonts.glob("*.txt")
    assert str(license_of.relative_to(ROOT)) in PROJECT["license-files"]
    said = license_of.read_text(encoding="utf-8")
    assert "Reserved Font Name Liberation" in said and "SIL OPEN FONT LICENSE Version 1.1" in said
    assert "PERMISSION & CONDITIONS" in said and "TERMINATION" in said and "DISCLAIMER" in said
    assert license_of.name in text_of("README.md")


def test_type_checkers_may_read_the_package() -> None:
    """PEP 561: a file py.typed in the package."""
    assert (ROOT / "jambs" / "py.typed").is_file()
    assert "Typing :: Typed" in PROJECT["classifiers"]


def test_classifiers_are_those_of_the_python_that_is_asked_for() -> None:
    named = [one.rpartition(" ")[2] for one in PROJECT["classifiers"] if re.search(r":: 3\.\d+$", one)]
    assert named and PROJECT["requires-python"] == f">={named[0]}"
    # PEP 639: a license expression leaves no place for a classifier of the license.
    assert not [one for one in PROJECT["classifiers"] if one.startswith("License ::")]


def test_changes_are_listed_up_to_this_version() -> None:
    heads = re.findall(r"^## (.+)$", text_of("CHANGELOG.md"), re.M)
    assert jambs.__version__ in heads and heads[0] in ("Not yet released", jambs.__version__)


def test_every_library_has_its_license_named() -> None:
    """Those of the program, of its extras and of the tests."""
    said = text_of("DEVELOPERS.md").partition("**Licenses**")[2].partition("\n## ")[0]
    extras = PROJECT["optional-dependencies"]
    asked = {
        re.split(r"[<>=\[; ]", one)[0]
        for one in [*PROJECT["dependencies"], *(one for some in extras.values() for one in some)]
    }
    stubs = {one for one in asked if one.startswith("types-")}
    assert {one for one in asked - stubs if not re.search(rf"(?<![\w-]){re.escape(one)}(?![\w-])", said)} == set()
    assert not stubs or "stubs" in said


def test_the_readme_helps_where_something_goes_wrong() -> None:
    said = text_of("README.md")
    for word in ("Windows and macOS", "Space on disk", "*100 %*", "| what happens | what to do |", "Uninstalling"):
        assert word in said
