"""Content by its sha256: papers, documents and entries, each kept once; a damaged one is healed when it comes again."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from jambs.issued.durable import file_sha256, sha256_of, sync_folder, write_durably
from jambs.issued.errors import Unreadable
from jambs.issued.findings import ContentDamaged, ContentGone


@dataclass(frozen=True, slots=True, kw_only=True)
class Blobs:
    """The folder of kept content."""

    folder: Path

    def keep(self, content: bytes, *, sync: bool = True) -> str:
        """Keep some bytes and return their sha256; a damaged copy of them is replaced."""
        name = sha256_of(content)
        if file_sha256(self._file(name)) != name:
            write_durably(self._file(name), content, sync=sync)
        return name

    def sync(self) -> None:
        """Bring the names of what was kept onto the disk."""
        sync_folder(self.folder)

    def has(self, name: str) -> bool:
        """Say whether some content is kept and whole."""
        return file_sha256(self._file(name)) == name

    def kept(self, name: str) -> bytes:
        """Return kept bytes.

        Raises:
            Unreadable: they are gone or damaged.
        """
        try:
            content = self._file(name).read_bytes()
        except OSError as error:
            raise Unreadable(ContentGone(why=str(error.strerror))) from None
        if sha256_of(content) != name:
            raise Unreadable(ContentDamaged())
        return content

    def found(self, name: str) -> bytes | None:
        """Return kept bytes, or None where they are gone or damaged."""
        try:
            return self.kept(name)
        except Unreadable:
            return None

    def _file(self, name: str) -> Path:
        return self.folder / name
