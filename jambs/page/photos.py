"""A photo of an opening, kept beside the job: made smaller, written anew as JPEG, without what a telephone adds to it.

A telephone writes place and time into its photos; nothing of the file that was sent is kept but what is seen.
"""

from __future__ import annotations

import io
from pathlib import Path

FOLDER = "photos"
LARGEST_PHOTO = 20_000_000
"""Of a photo as a telephone sends it [bytes]."""
MOST_PIXELS = 80_000_000
LONGEST_SIDE = 1600
"""Of a photo as it is kept [pixels]."""
QUALITY = 82


class NoPhoto(Exception):
    """What was sent is no photo that can be kept; the message is a sentence."""


def photo_file(folder: Path, mark: str) -> Path:
    """Return where the photo of an opening is kept; a mark is a file's name everywhere, the job sees to it."""
    return folder / FOLDER / f"{mark}.jpg"


def has_photo(folder: Path, mark: str) -> bool:
    """Say whether there is one."""
    return photo_file(folder, mark).is_file()


def kept_photo(content: bytes) -> bytes:
    """Return a photo as it is kept: upright, no longer than 1600 pixels, JPEG, with nothing but its picture.

    Raises:
        NoPhoto: it is none, or too large.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP")) as sent:
            if sent.width * sent.height > MOST_PIXELS:
                raise NoPhoto(f"The photo has more than {MOST_PIXELS // 1_000_000} million pixels; take a smaller one.")
            upright = ImageOps.exif_transpose(sent).convert("RGB")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise NoPhoto("This is no photo that can be read; send a JPEG, PNG or WebP picture.") from None
    upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    plain = Image.new("RGB", upright.size)
    plain.paste(upright)
    out = io.BytesIO()
    plain.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()
