"""The three examples print the very papers they printed before; see ``same_papers.py``."""

from __future__ import annotations

import pytest
import same_papers
from example_papers import example_papers


@pytest.mark.parametrize("example", same_papers.EXAMPLES)
def test_an_example_prints_the_papers_it_printed_before(example: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    from jambs.solids import availability

    record = same_papers.recorded()
    found, before = same_papers.hashes(example_papers(example, tmp_path_factory).folder), record["papers"][example]
    if availability() is not None:
        before = {name: hashed for name, hashed in before.items() if not name.startswith("solids/")}
    assert sorted(found) == sorted(before)
    if record["versions"] != same_papers.versions():  # other libraries write other bytes
        found = {name: hashed for name, hashed in found.items() if name.endswith(same_papers.OURS)}
        before = {name: before[name] for name in found}
    assert {name for name in found if found[name] != before[name]} == set()
