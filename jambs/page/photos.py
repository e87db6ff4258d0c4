"""A photo of an opening, kept beside the job: made smaller, written anew as JPEG, without what a telephone adds to it.

A telephone writes place and time into its photos; nothing of the file that was sent is kept but what is seen.
"""

from __future__ import annotations

import errno
import io
import threading
from pathlib import Path

from jambs.face import write_whole

FOLDER = "photos"
LARGEST_PHOTO = 20_000_000
"""Of a photo as a telephone sends it [bytes]."""
MOST_PIXELS = 50_000_000
"""More than telephones take today; a picture is whole in memory while it is made smaller, and only one at a time is."""
ONE_AT_A_TIME = threading.Lock()
JPEG = b"\xff\xd8"
"""What every JPEG begins with."""
LONGEST_SIDE = 1600
"""Of a photo as it is kept [pixels]."""
QUALITY = 82


UNREAD_BOX = (
    "This photo is HEIC or another format that cannot be read here; set the camera to JPEG (most compatible), "
    "or send a screenshot of the photo."
)
TOO_LARGE = (
    f"This photo is larger than {LARGEST_PHOTO // 1_000_000} MB, and could not be made smaller here; "
    "take a smaller one."
)
FOR_TELEPHONES = {"data-unread": UNREAD_BOX, "data-too-large": TOO_LARGE, "data-largest": LARGEST_PHOTO}
"""What a telephone has to know of photos before it sends one: a large one is minutes on a slow network."""


class NoPhoto(Exception):
    """What was sent is no photo that can be kept; the message is a sentence."""


def photo_file(folder: Path, mark: str) -> Path:
    """Return where the photo of an opening is kept; a mark is a file's name everywhere, the job sees to it."""
    return folder / FOLDER / f"{mark}.jpg"


def has_photo(folder: Path, mark: str) -> bool:
    """Say whether there is one."""
    return kept_file(folder, mark) is not None


def kept_file(folder: Path, mark: str) -> Path | None:
    """Return the photo of an opening; nothing where there is none, or where a link leads out of its folder."""
    file = photo_file(folder, mark)
    return file if file.is_file() and file.resolve() == folder.resolve() / FOLDER / file.name else None


def _why_unread(content: bytes) -> str:
    """Say why a photo cannot be read, and what to do."""
    if content[4:8] == b"ftyp":  # the container of HEIC and AVIF: ISO/IEC 23008-12, from memory
        return UNREAD_BOX
    if content.startswith(JPEG):
        return "This photo is damaged or was cut off on its way; take it again."
    return "This is no photo that can be read; send a JPEG, PNG or WebP picture."


def keep_photo(folder: Path, mark: str, photo: bytes) -> Path:
    """Write the photo of an opening into the folder of photos, and return where it is.

    Raises:
        OSError: it cannot be written; a link in the place of the folder is not followed.
    """
    file = photo_file(folder, mark)
    if file.parent.is_symlink():
        raise OSError(errno.ELOOP, "is a link to another folder", str(file.parent))
    file.parent.mkdir(exist_ok=True)
    write_whole(file, photo)
    return file


def kept_photo(content: bytes) -> bytes:
    """Return a photo as it is kept: upright, no longer than 1600 pixels, JPEG, with nothing but its picture.

    Raises:
        NoPhoto: it is none, or too large.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with ONE_AT_A_TIME, Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP")) as sent:
            if sent.width * sent.height > MOST_PIXELS:
                raise NoPhoto(f"The photo has more than {MOST_PIXELS // 1_000_000} million pixels; take a smaller one.")
            sent.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
            upright = ImageOps.exif_transpose(sent).convert("RGB")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise NoPhoto(_why_unread(content)) from None
    plain = Image.new("RGB", upright.size)
    plain.paste(upright)
    out = io.BytesIO()
    plain.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()
