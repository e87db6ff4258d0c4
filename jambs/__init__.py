"""Window extension jamb and trim detailing for thick walls.

What the command line does, for a script; each name is loaded when it is first asked for::

    import jambs

    job = jambs.read_job("examples/harbour-house")
    kits = jambs.make_kits(job)
    for part in kits[0].parts:
        print(part.mark, part.name, part.position, part.width, part.length)

Lengths are inches inside; ``job.units.text(length)`` prints one as the shop reads it. Scripts that run, from a job to a
drawing, stand in ``examples/scripts``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"
__all__ = [
    "InTheWay",
    "Job",
    "JobFaults",
    "Kit",
    "Unbuildable",
    "build",
    "buy",
    "check",
    "compare",
    "cut_files",
    "cut_sections",
    "draw",
    "issues",
    "labels",
    "make_kits",
    "measure",
    "plan_stock",
    "read_job",
    "summary",
    "templates",
    "withdraw",
    "write_comparison",
]

if TYPE_CHECKING:
    from jambs.face import (
        InTheWay,
        Job,
        JobFaults,
        Kit,
        Unbuildable,
        build,
        buy,
        check,
        compare,
        cut_files,
        cut_sections,
        draw,
        issues,
        labels,
        make_kits,
        measure,
        plan_stock,
        read_job,
        summary,
        templates,
        withdraw,
        write_comparison,
    )


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"jambs has no {name!r}; it has {', '.join(__all__)}")
    from jambs import face

    return getattr(face, name)


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
