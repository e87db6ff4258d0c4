"""Answers: pages from templates, JSON, and the files that never change, each by its name from a table."""

from __future__ import annotations

import json
import mimetypes
import re
from importlib.resources import files
from pathlib import PurePosixPath
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response

from jambs import __version__

_WITHIN_LENGTH = re.compile(r"(?<=\d) (?=\d+/\d|(?:mm|cm|m|ft)\b)")


def unbroken(shown: object) -> object:
    """Keep each length of a text on one line: 5 1/2 read as 5 is a board too short, 902 alone is of no unit.

    What modules put there: page.js.
    """
    if not isinstance(shown, str) or isinstance(shown, Markup):
        return shown
    return _WITHIN_LENGTH.sub("\N{NO-BREAK SPACE}", shown)


_TEMPLATES = Environment(
    loader=PackageLoader("jambs.page"),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
    finalize=unbroken,
)
_TEMPLATES.globals["version"] = __version__
FONTS = ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf")
KINDS = {".js": "text/javascript", ".css": "text/css", ".ttf": "font/ttf", ".svg": "image/svg+xml"}


def page(template: str, *, status: int = 200, **shown: Any) -> HTMLResponse:
    """Return a page: a template of ``templates/`` with what it shows, escaped."""
    return HTMLResponse(_TEMPLATES.get_template(template).render(**shown), status_code=status)


def data(value: Any, *, status: int = 200) -> JSONResponse:
    """Return data as JSON."""
    return JSONResponse(value, status_code=status)


def as_json(value: Any) -> str:
    """Return data as JSON text, small, for a web socket."""
    return json.dumps(value, separators=(",", ":"), ensure_ascii=False)


async def body_of(request: Request) -> dict[str, Any]:
    """Return the JSON object that a request brings; an empty one where it brings none."""
    try:
        found = json.loads(await request.body() or b"{}")
    except (ValueError, RecursionError):
        return {}
    return found if isinstance(found, dict) else {}


def _static_files() -> dict[str, tuple[bytes, str]]:
    own = [one for one in files("jambs.page").joinpath("static").iterdir() if one.is_file()]
    fonts = [files("jambs.data").joinpath("fonts").joinpath(name) for name in FONTS]
    return {one.name: (one.read_bytes(), _kind(one.name)) for one in (*own, *fonts)}


def _kind(name: str) -> str:
    return KINDS.get(PurePosixPath(name).suffix) or mimetypes.guess_type(name)[0] or "application/octet-stream"


_STATIC = _static_files()


async def static(request: Request) -> Response:
    """Serve a module, a style or a font by its name in the table."""
    found = _STATIC.get(request.path_params["name"])
    if found is None:
        return Response("There is no such file.", status_code=404, media_type="text/plain")
    content, kind = found
    return Response(content, media_type=kind, headers={"cache-control": "no-cache"})
