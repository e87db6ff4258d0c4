"""The square code on a measure sheet or a label, read from a photo: which opening, and of which job.

A sheet is printed before anybody knows at what address the page will stand, and a browser lets a page look through the
camera only where it was sent encrypted. So the code says mark, issue and job, as that of a label does, and the
telephone takes a picture of it, which is read here.
"""

from __future__ import annotations

import io

from jambs.page.photos import MOST_PIXELS, ONE_AT_A_TIME, NoPhoto

LINES = 3
"""Mark, issue and job (``sheets/label_codes.py``)."""


class NoCode(Exception):
    """A picture in which no code of this job is read; the message is a sentence."""


def mark_in(content: bytes, job: str) -> tuple[str, str]:
    """Return the mark of the opening or the part that a photographed code is of, and the issue of its paper.

    Raises:
        NoCode: there is no code, or one of something else.
    """
    texts = _texts(content)
    if not texts:
        raise NoCode(
            "No code is read in this picture: go nearer, hold still, let the light fall on it; or find the mark."
        )
    for text in texts:
        mark, *rest = text.split("\n")
        if len(rest) == LINES - 1 and rest[-1] == job:
            return mark, rest[0]
    raise NoCode(f"This code is not of {job}: it is of another job, or of something else.")


def _texts(content: bytes) -> list[str]:
    import zxingcpp
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with ONE_AT_A_TIME, Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP")) as sent:
            if sent.width * sent.height > MOST_PIXELS:
                raise NoPhoto
            picture = ImageOps.exif_transpose(sent).convert("L")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError, Image.DecompressionBombError, NoPhoto):
        raise NoCode("This is no picture that can be read; send a JPEG, PNG or WebP picture.") from None
    return [one.text for one in zxingcpp.read_barcodes(picture)]
