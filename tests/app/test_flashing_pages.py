"""The order of laps goes on where the bends end, two openings on a page: no page of the flashing is left half empty."""

from __future__ import annotations

import pytest
from example_papers import example_papers
from pypdf import PdfReader


@pytest.mark.parametrize(("example", "pages"), [("creamery", 7), ("harbour-house", 7), ("hillside-house", 5)])
def test_flashing_takes_as_few_pages_as_that(
    example: str, pages: int, tmp_path_factory: pytest.TempPathFactory
) -> None:
    paper = PdfReader(example_papers(example, tmp_path_factory).folder / "outside" / "flashing.pdf")
    assert len(paper.pages) == pages


def test_the_order_of_laps_begins_on_the_page_of_the_last_bends(tmp_path_factory: pytest.TempPathFactory) -> None:
    folder = example_papers("creamery", tmp_path_factory).folder
    texts = [page.extract_text() for page in PdfReader(folder / "outside" / "flashing.pdf").pages]
    (first,) = (text for text in texts if "Order of laps, from below" in text)
    assert "girth to cut" in first and "For N1" in first  # its first opening stands under it
