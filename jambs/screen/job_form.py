"""The job as fields: every value of the job file with what its key means and what is wrong with it, beside it.

The form is the file: its sections, names and keys in its own order, so that what one learns here holds in an editor
too. Meanings, choices and complaints are the command line's own.
"""

from __future__ import annotations

from typing import Any, get_args, get_origin

from jambs.job import Job
from jambs.job.editing.file_text import EditRefused
from jambs.job.editing.yaml_nodes import nodes_of
from jambs.job.key_list import KeyLine, key_line
from jambs.job.models.fields import Model
from jambs.job.models.gang import OF_UNITS
from jambs.job.models.job_file import JobFile, models_in
from jambs.job.models.layers import LayerEntry, Role
from jambs.job.reading.catalog import catalog_layers
from jambs.job.reading.faults import Fault, JobFaults, Location
from jambs.job.reading.marks import marks_of
from jambs.job.reading.tree import NAMING_KEYS, TreePiece, grown
from jambs.screen.desk import Desk, House
from jambs.screen.elevation_shapes import view_records
from jambs.screen.form_keys import NAMED, YES_NO, choices_of, keys_of, names_for
from jambs.screen.spoken_keys import spoken
from jambs.screen.unmade_data import fields_of
from jambs.sheets.key_pictures import PICTURES
from jambs.values import Record
from jambs.wall.planes import WallError, stack_wall

SECTIONS = (
    ("walls", "Walls"),
    ("windows", "Windows"),
    ("openings", "Openings"),
    ("position", "Where the windows stand"),
    ("interior_trim", "Trim inside"),
    ("exterior_trim", "Trim outside"),
    ("shop", "Shop and boards"),
    ("limits", "Limits"),
    ("site", "Site"),
)
"""Sections of the file in the order in which a job is thought out; all others follow as they stand."""
LAYERS, MATERIAL, OPENINGS, UNITS, SCHEDULE = "layers", "material", "openings", "units", "schedule"
TRIM_WITH = "trim_with"
"""Its ``wall`` is a length, and no name of a wall."""
STUFF = {
    Role.FINISH: "gypsum",
    Role.FRAMING: "framing",
    Role.SHEATHING: "sheathing",
    Role.MEMBRANE: "membrane",
    Role.INSULATION: "rigid",
    Role.COVER: "cover",
    Role.STRAPPING: "strapping",
    Role.CLADDING: "cladding",
}
"""How a layer is drawn, by its role, where no section says it better."""


def form_record(desk: Desk) -> Record:
    """Return the whole job as fields."""
    with desk.lock:
        house, file = desk.house(), desk.draft.files[desk.file.name]
        try:
            piece, _ = grown(nodes_of(file), file.name)
        except (JobFaults, EditRefused) as error:
            return {"number": house.number, "sections": [], "wrong": str(error).splitlines(), "pictures": {}}
        form = _Form(piece, house)
        known = [name for name, _ in SECTIONS]
        rest = [(key, key.replace("_", " ").capitalize()) for key in piece.root if key not in known]
        plain = [key for key, _ in rest if isinstance(piece.root[key], str)]
        named = [(key, title) for key, title in (*SECTIONS, *rest) if key in piece.root and key not in plain]
        return {
            "number": house.number,
            "top": [form.field((key,)) for key in plain],
            "sections": [form.section(key, title) for key, title in named],
            "wrong": [*form.unplaced(), *(() if house.faults else map(spoken, house.wrong))],
            "walls": wall_pictures(house),
            "trims": trim_pictures(house),
            "more": keys_of(JobFile, given=piece.root),
            "names": {key: names_for(key, piece.root) for key in NAMED},
            "materials": [layer.name for layer in catalog_layers()],
            "is_new": not desk.draft.saved,
        }


def key_pictures() -> dict[str, str]:
    """Return the pictures of the keys as SVG, by name; each key in the words of its field."""
    return {name: draw().replace("_", " ") for name, draw in PICTURES.items()}


class _Form:
    """Fields and groups of one state of the job file; each complaint is taken by the field that it is about."""

    def __init__(self, piece: TreePiece, house: House) -> None:
        self.piece = piece
        self.faults = list(house.faults)
        self.unmade = dict(house.unmade)
        self.unplanned = [(fields_of(subject), sentence) for subject, sentence in house.unplanned]
        self.used: set[Fault] = set()
        self.told: set[str] = set()

    def section(self, key: str, title: str) -> Record:
        """Return one section of the file: its groups by name or number, or its fields alone."""
        value, found = self.piece.root[key], self.complaints((key,))
        has_names = isinstance(value, dict) and dict in _origins(JobFile, key)
        names = list(value) if has_names else list(range(len(value))) if isinstance(value, list) else []
        groups = [self.group((key, name), _title(value[name], name)) for name in names]
        if key == OPENINGS:
            groups = [{**one, "marks": _marks(value[name])} for name, one in zip(names, groups, strict=True)]
        groups = groups or ([self.group((key,), "")] if isinstance(value, dict) else [])
        fields = [] if groups else [self.field((key,))]
        line = key_line(JobFile, key, JobFile.model_fields[key]) if key in JobFile.model_fields else None
        return {
            "key": key, "title": title, "words": self._section_words(key, line.words if line else ""), "wrong": found,
            "groups": groups, "fields": fields, "can_copy": bool(names),
            "can_remove": line is not None and not line.is_required,
        }  # fmt: skip

    def _section_words(self, key: str, words: str) -> str:
        """Say where openings stand that have no fields here."""
        schedule = self.piece.root.get(SCHEDULE)
        return f"{words}; more of them are rows of {schedule}" if key == OPENINGS and schedule else words

    def group(self, path: Location, title: str) -> Record:
        """Return the keys under one name: values, then what holds keys of its own, then what may be added."""
        value, model = _at(self.piece.root, path), _model_at(path)
        wrong = [*self.complaints(path), *self.why_unmade(path, value), *self.why_unplanned(path)]
        if isinstance(value, list):
            return self._list(path, title)
        if not isinstance(value, dict):
            more = keys_of(LayerEntry, given=[MATERIAL]) if path[-2] == LAYERS else []
            return {"path": list(path), "title": title, "wrong": [], "fields": [self.field(path)], "groups": [],
                    "more": more}  # fmt: skip
        fields, groups = [], []
        for key, one in value.items():
            inner = (*path, key)
            if isinstance(one, dict):
                groups.append(self.group(inner, key))
            elif isinstance(one, list) and (key == LAYERS or any(not isinstance(item, str) for item in one)):
                groups.append(self._list(inner, key))
            else:
                fields.append(self.field(inner))
        more = keys_of(model, given={*value, *(OF_UNITS if UNITS in value else ())}) if model else []
        if path[0] == OPENINGS and TRIM_WITH not in path:
            more = [{**one, "choices": names_for(one["key"], self.piece.root) or one["choices"]} for one in more]
        return {"path": list(path), "title": title, "wrong": wrong, "fields": fields, "groups": groups, "more": more}

    def _list(self, path: Location, title: str) -> Record:
        items = _at(self.piece.root, path)
        groups = [self.group((*path, place), _title(one, place)) for place, one in enumerate(items)]
        return {"path": list(path), "title": title, "wrong": self.complaints(path), "fields": [], "groups": groups,
                "more": [], "is_list": True}  # fmt: skip

    def field(self, path: Location) -> Record:
        """Return one value as it is written, with its meaning, its choices, and what is wrong with it."""
        value, line = _at(self.piece.root, path), _line_at(path)
        return {
            "path": list(path),
            "key": str(path[-1]),
            "value": value if isinstance(value, str) else ", ".join(map(str, value or ())),
            "words": line.words if line else "",
            "picture": line.picture if line else "",
            "choices": self._choices(path, line, value),
            "wrong": self.complaints(path),
        }

    def _choices(self, path: Location, line: KeyLine | None, value: Any) -> list[str]:
        if path[0] == OPENINGS and TRIM_WITH not in path and (names := names_for(str(path[-1]), self.piece.root)):
            return names
        if line is not None and (choices := choices_of(_annotation_at(path))):
            return choices if line.is_required else ["", *choices]  # an empty one: nothing said
        return list(YES_NO) if isinstance(value, str) and value in YES_NO else []

    def complaints(self, path: Location) -> list[str]:
        """Return what the command line says of the value at a path."""
        where = self.piece.fault(path, "").where
        found = [one for one in self.faults if one.where == where and one.file == self.piece.file]
        self.used |= set(found)
        return [spoken(one.sentence) for one in found]

    def why_unmade(self, path: Location, value: Any) -> list[str]:
        """Return why openings cannot be made that an entry of the job file is of."""
        is_entry = path[0] == OPENINGS and len(path) == 2 and isinstance(value, dict)
        marks = [mark for mark in _marks(value) if mark in self.unmade] if is_entry else []
        self.told |= {*marks}
        return [*dict.fromkeys(spoken(sentence) for mark in marks for sentence in self.unmade[mark])]

    def why_unplanned(self, path: Location) -> list[str]:
        """Return why something of the outside cannot be planned that an entry of the job file is of."""
        found = [sentence for where, sentence in self.unplanned if where == path]
        self.unplanned = [one for one in self.unplanned if one[0] != path]
        return [*map(spoken, found)]

    def unplaced(self) -> list[str]:
        """Return the complaints that no field or entry has taken, whole."""
        rows = [spoken(one) for mark, said in self.unmade.items() if mark not in self.told for one in said]
        rows += [spoken(sentence) for _, sentence in self.unplanned]
        return [*(str(one) for one in self.faults if one not in self.used), *dict.fromkeys(rows)]


def _at(root: Any, path: Location) -> Any:
    for step in path:
        root = root[step]
    return root


def _marks(entry: Any) -> list[str]:
    """Return the marks that an entry of an opening is of."""
    return marks_of(entry.get("mark")) if isinstance(entry, dict) else []


def _title(value: Any, name: str | int) -> str:
    if isinstance(name, str):
        return name
    named = [value[key] for key in NAMING_KEYS if isinstance(value, dict) and isinstance(value.get(key), str)]
    return named[0] if named else value if isinstance(value, str) else str(name + 1)


def _origins(model: type[Model], key: str) -> set[Any]:
    if key not in model.model_fields:
        return set()
    annotation = model.model_fields[key].annotation
    return {get_origin(one) for one in (annotation, *get_args(annotation))}


def _model_at(path: Location) -> type[Model] | None:
    """Return the model that the keys at a path are of; nothing where the file has what no model knows."""
    model: type[Model] | None = JobFile
    is_name = False
    for step in path:
        if is_name or isinstance(step, int):
            is_name = False
            continue
        if model is None or step not in model.model_fields:
            return None
        inner = models_in(model.model_fields[step].annotation)
        is_name = dict in _origins(model, step)
        model = inner[0] if inner else None
    return model


def _line_at(path: Location) -> KeyLine | None:
    *above, key = path
    model = _model_at(tuple(above))
    if model is None or not isinstance(key, str) or key not in model.model_fields:
        return None
    return key_line(model, key, model.model_fields[key])


def _annotation_at(path: Location) -> Any:
    """Return what a key that its model knows may hold."""
    *above, key = path
    model = _model_at(tuple(above))
    return model.model_fields[str(key)].annotation if model else None


def trim_pictures(house: House) -> dict[str, dict[str, Record]]:
    """Return each trim as it is seen at the first opening that has it, by section and name; none that nobody has."""
    found: dict[str, dict[str, Record]] = {"interior_trim": {}, "exterior_trim": {}}
    for kit in house.asked.kits if house.asked else ():
        opening, (inside, outside) = kit.placement.opening, view_records(kit)
        found["interior_trim"].setdefault(opening.interior_name, inside)
        if opening.exterior_name:
            found["exterior_trim"].setdefault(opening.exterior_name, outside)
    return found


def wall_pictures(house: House) -> dict[str, list[Record]]:
    """Return each wall of the job as its layers lie, inside → outside; none that cannot be stacked."""
    if house.job is None:
        return {}
    return {name: found for name, found in _stacks(house.job) if found}


def _stacks(job: Job) -> list[tuple[str, list[Record]]]:
    found = []
    for wall in {one.wall.name: one.wall for one in job.openings}.values():
        try:
            planes = stack_wall(wall, grid=job.shop.grid)
        except WallError:
            continue
        layers = [
            {
                "from": one.inner,
                "to": one.outer,
                "name": one.layer.name,
                "text": job.units.text(one.layer.thickness),
                "stuff": STUFF.get(one.layer.role, "air"),
            }
            for one in planes.layers
        ]
        found.append((wall.name, layers))
    return found
