"""What was changed and not saved yet, as data: the files of a job, step by step, back and forth."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace

from jambs.job.editing.file_text import FileText


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One change: what it is called, and each file that it touched before and after; nothing where it was not there."""

    words: str
    files: tuple[tuple[FileText | None, FileText | None], ...]

    def touches(self, names: Collection[str]) -> bool:
        """Say whether it changed one of some files."""
        return any(one.name in names for pair in self.files for one in pair if one)

    def turned(self) -> Step:
        """Return the step that takes this one back."""
        return replace(self, files=tuple((after, before) for before, after in self.files))


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """The files of a job as they would be saved, and the way there. ``saved``: as they stand on the disk.

    ``done``: the steps so far, the last one last; ``undone``: those that were taken back, the next to do again last.
    """

    saved: Mapping[str, FileText]
    files: Mapping[str, FileText]
    done: tuple[Step, ...] = field(default=())
    undone: tuple[Step, ...] = field(default=())

    @classmethod
    def of(cls, *files: FileText) -> Draft:
        """Begin with files as they stand."""
        named = {file.name: file for file in files}
        return cls(saved=named, files=named)

    def with_step(self, words: str, *files: FileText) -> Draft:
        """Change some files; what was taken back before is forgotten. Nothing changed is no step."""
        pairs = tuple((self.files.get(file.name), file) for file in files if self.files.get(file.name) != file)
        if not pairs:
            return self
        step = Step(words=words, files=pairs)
        return replace(self._stepped(step), done=(*self.done, step), undone=())

    def back(self) -> Draft:
        """Take the last step back; as it is where there is none."""
        if not self.done:
            return self
        *rest, last = self.done
        return replace(self._stepped(last.turned()), done=tuple(rest), undone=(*self.undone, last))

    def forth(self) -> Draft:
        """Do again what was taken back last; as it is where there is nothing."""
        if not self.undone:
            return self
        *rest, last = self.undone
        return replace(self._stepped(last), done=(*self.done, last), undone=tuple(rest))

    def as_saved(self) -> Draft:
        """Return the draft once its files stand on the disk; its steps can still be taken back."""
        return replace(self, saved=self.files)

    def last_of(self, names: Collection[str]) -> int:
        """Count the steps up to the last one that touched one of some files."""
        return max((at for at, step in enumerate(self.done, start=1) if step.touches(names)), default=0)

    def without(self, names: Collection[str]) -> Draft:
        """Let go files that stand as they were saved; steps up to the last one of them are no longer taken back."""
        undone = () if any(step.touches(names) for step in self.undone) else self.undone
        saved, files = ({n: one for n, one in those.items() if n not in names} for those in (self.saved, self.files))
        return Draft(saved=saved, files=files, done=self.done[self.last_of(names) :], undone=undone)

    @property
    def changed(self) -> tuple[tuple[FileText | None, FileText | None], ...]:
        """Each file that differs from the disk: as it stands there, and as it would be saved."""
        names = dict.fromkeys([*self.saved, *self.files])
        pairs = ((self.saved.get(name), self.files.get(name)) for name in names)
        return tuple((before, after) for before, after in pairs if before != after)

    def _stepped(self, step: Step) -> Draft:
        files = dict(self.files)
        for before, after in step.files:
            if after is None:
                assert before is not None
                files.pop(before.name)
            else:
                files[after.name] = after
        return replace(self, files=files)
