"""The marks by which a screen reader finds its way through a page, of many PDFs joined into one.

Each file has a tree of them (ISO 32000-1, 14.7); in the joined file it becomes a branch under one root. A page finds
its elements by a number, a cell of a table its heading by a name: both are told apart by file. Of a file nothing is
held but where its branches were written.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from pypdf import PdfReader
from pypdf.generic import (
    ArrayObject,
    BooleanObject,
    ByteStringObject,
    DictionaryObject,
    IndirectObject,
    NameObject,
    NumberObject,
    PdfObject,
    TextStringObject,
)

ROOT = "/StructTreeRoot"
BY_NUMBER = ("/StructParents", "/StructParent")
"""How a page, and what stands on it, find their elements."""
Move = Callable[[PdfObject], PdfObject]
Pair = tuple[PdfObject, PdfObject]


class Out(Protocol):
    """Where objects are written: a number is reserved first, then the object put there."""

    def reserve(self) -> IndirectObject:
        """Return the next number."""

    def put(self, at: IndirectObject, found: PdfObject) -> None:
        """Write an object."""


class JoinedTags:
    """The tree of a joined file while it is written."""

    def __init__(self, out: Out) -> None:
        self._out, self._files, self._first, self._next = out, 0, 0, 0
        self._root: IndirectObject | None = None
        self._is_whole = True
        self._kids, self._parents, self._names = (ArrayObject() for _ in range(3))
        self._roles = DictionaryObject()

    @property
    def root(self) -> IndirectObject:
        """The number of the root."""
        self._root = self._root or self._out.reserve()
        return self._root

    def begin(self, reader: PdfReader) -> IndirectObject | None:
        """Begin with a file; return what its own root is called there, nothing where it has no marks."""
        self._files, self._first = self._files + 1, self._next
        catalog = reader.root_object
        if ROOT not in catalog:
            self._is_whole = False
            return None
        tree = catalog[ROOT]
        assert isinstance(tree, DictionaryObject)
        self._next += _number(tree["/ParentTreeNextKey"])
        at = catalog.raw_get(ROOT)
        return at if isinstance(at, IndirectObject) else None

    def renamed(self, found: DictionaryObject) -> None:
        """Tell the numbers and names in an object of the file from those of other files."""
        for key in BY_NUMBER:
            if key in found:
                found[NameObject(key)] = NumberObject(_number(found[key]) + self._first)
        if "/S" in found and "/ID" in found:
            found[NameObject("/ID")] = self._name(found["/ID"])
        if found.get("/O") == "/Table" and "/Headers" in found:
            headers = found["/Headers"]
            assert isinstance(headers, ArrayObject)
            found[NameObject("/Headers")] = ArrayObject(self._name(one) for one in headers)

    def end(self, reader: PdfReader, move: Move) -> None:
        """Hang the branches of a file under the root."""
        tree = reader.root_object[ROOT]
        assert isinstance(tree, DictionaryObject)
        kids = tree.raw_get("/K")
        self._kids += [move(one) for one in (kids if isinstance(kids, ArrayObject) else [kids])]
        roles = tree.get("/RoleMap")
        self._roles.update(roles if isinstance(roles, DictionaryObject) else {})
        pairs = _leaves(tree["/ParentTree"], "/Nums")
        numbers: list[Pair] = [(NumberObject(_number(key) + self._first), move(value)) for key, value in pairs]
        self._parents += self._leaf("/Nums", numbers)
        if "/IDTree" in tree:
            names = [(self._name(key), move(value)) for key, value in _leaves(tree["/IDTree"], "/Names")]
            self._names += self._leaf("/Names", names)

    def finish(self) -> dict[str, PdfObject]:
        """Write the root; return what the catalog says of it."""
        if self._root is None:
            return {}
        tree: dict[str, PdfObject] = {
            "/Type": NameObject(ROOT),
            "/K": self._kids,
            "/RoleMap": self._roles,
            "/ParentTree": _dictionary({"/Kids": self._parents}),
            "/ParentTreeNextKey": NumberObject(self._next),
        }
        tree |= {"/IDTree": _dictionary({"/Kids": self._names})} if self._names else {}
        self._out.put(self.root, _dictionary(tree))
        return {ROOT: self.root, "/MarkInfo": _dictionary({"/Marked": BooleanObject(self._is_whole)})}

    def _name(self, name: PdfObject) -> PdfObject:
        """Put the number of the file before a name, so that names stay in order over all files."""
        before = f"{self._files:06d}-"
        if isinstance(name, ByteStringObject):
            return ByteStringObject(before.encode() + name)
        return TextStringObject(f"{before}{name}")

    def _leaf(self, key: str, pairs: list[Pair]) -> list[IndirectObject]:
        if not pairs:
            return []
        at, limits = self._out.reserve(), ArrayObject([pairs[0][0], pairs[-1][0]])
        flat = ArrayObject(one for pair in pairs for one in pair)
        self._out.put(at, _dictionary({"/Limits": limits, key: flat}))
        return [at]


def _number(found: PdfObject) -> int:
    assert isinstance(found, NumberObject)
    return int(found)


def _leaves(node: PdfObject, key: str) -> list[Pair]:
    """Return what a tree of numbers or names holds, in order; what it leads to stays unread."""
    tree = node.get_object()
    assert isinstance(tree, DictionaryObject)
    kids, flat = tree.get("/Kids", ArrayObject()), tree.get(key, ArrayObject())
    assert isinstance(kids, ArrayObject) and isinstance(flat, ArrayObject)
    own = list(zip(list.__iter__(flat[0::2]), list.__iter__(flat[1::2]), strict=True))
    return [*own, *(pair for kid in kids for pair in _leaves(kid, key))]


def _dictionary(values: dict[str, PdfObject]) -> DictionaryObject:
    return DictionaryObject({NameObject(key): value for key, value in values.items()})
