"""The verbs as a group that answers an unknown one with the verb that does what was meant."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import click

MEANT: Mapping[str, tuple[str, ...]] = {
    "new": ("init", "start", "create", "begin", "make", "setup", "ask"),
    "check": ("validate", "read", "show", "summary", "summarize", "test", "verify", "lint", "list", "place"),
    "build": (
        "print",
        "draw",
        "order",
        "run",
        "all",
        "write",
        "export",
        "generate",
        "output",
        "render",
        "sheets",
        "dxf",
    ),
    "measure": ("tape", "site", "survey", "remeasure", "depths"),
    "compare": ("positions", "heat", "damp", "study", "options", "candidates"),
    "buy": ("cut", "order", "boards", "lumber", "shop", "plan", "price", "cost", "nest", "optimize", "stock", "list"),
    "labels": ("print", "label", "stickers", "tags"),
    "revisions": ("undo", "back", "revert", "history", "log", "withdraw", "restore", "issues", "changes"),
    "catalog": ("materials", "layers", "boards", "find", "search"),
    "keys": ("words", "reference", "fields", "picture", "pictures", "glossary", "options", "explain", "manual"),
    "schema": ("json", "editor"),
}
"""Words people try, by the verb that does it; a word may lead to two."""
SAME_VERB = {"catalogue": "catalog"}
"""A verb in its other spelling: one word, so it does the same."""


class Verbs(click.Group):
    """The group of all verbs."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the verb; say of an unknown one what does that."""
        name = SAME_VERB.get(str(args[0]), str(args[0]))
        if self.get_command(ctx, name) is None and name[:1].isalnum():
            ctx.fail(unknown_verb(name, {one: self._short_help(ctx, one) for one in self.list_commands(ctx)}))
        return super().resolve_command(ctx, [name, *args[1:]])

    def _short_help(self, ctx: click.Context, name: str) -> str:
        command = self.get_command(ctx, name)
        return command.get_short_help_str(limit=90) if command else ""


def unknown_verb(found: str, verbs: Mapping[str, str]) -> str:
    """Say that there is no such verb, and which ones were meant; ``verbs``: each with what it does."""
    meant = _by_meaning(found.lower(), verbs) or _near(found.lower(), verbs)
    if not meant:
        return f"There is no verb {found!r}; the verbs are {', '.join(verbs)}."
    lines = "\n".join(f"  jambs {verb}  {verbs[verb]}" for verb in meant)
    return f"There is no verb {found!r}. What does that:\n{lines}"


def _by_meaning(found: str, verbs: Iterable[str]) -> list[str]:
    known = [verb for verb in verbs if found in MEANT.get(verb, ())]
    if known:
        return known
    words = [word for verb in verbs for word in MEANT.get(verb, ())]
    near = _near(found, [*words, *verbs], cutoff=0.75)
    return [verb for verb in verbs if near and (near[0] == verb or near[0] in MEANT.get(verb, ()))]


def _near(found: str, words: Iterable[str], *, cutoff: float = 0.6) -> list[str]:
    from difflib import get_close_matches  # not needed for ``--help``

    return get_close_matches(found, list(words), n=1, cutoff=cutoff)
