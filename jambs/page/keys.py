"""Who may come in: links with a token for the two roles, exchanged for a cookie that dies with the program."""

from __future__ import annotations

import secrets
import time
from collections.abc import Callable
from enum import StrEnum

TOKEN_BYTES = 16
"""128 bits: nobody guesses one."""
MOST_WRONG, WITHIN = 10, 60.0
"""So many wrong tokens in so many seconds [s], and nobody may try for a while."""


class KeyRole(StrEnum):
    """What somebody may do: everything at the desk; read and enter measures on a telephone."""

    DESK = "desk"
    TELEPHONE = "telephone"


class TooManyWrong(Exception):
    """Too many wrong tokens were tried; whoever comes has to wait."""


class KeyRing:
    """Tokens of links, one for each role, and the cookies that were given for them."""

    def __init__(self, *, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._tokens: dict[str, KeyRole] = {}
        self._cookies: dict[str, KeyRole] = {}
        self._wrong: list[float] = []

    def token(self, role: KeyRole) -> str:
        """Return the token of a role's link; the first call makes it."""
        found = next((token for token, own in self._tokens.items() if own is role), None)
        if found is None:
            found = secrets.token_urlsafe(TOKEN_BYTES)
            self._tokens[found] = role
        return found

    def renew(self, role: KeyRole) -> str:
        """Make a new token for a role; the old link and all cookies of that role hold no longer."""
        self._tokens = {token: own for token, own in self._tokens.items() if own is not role}
        self._cookies = {cookie: own for cookie, own in self._cookies.items() if own is not role}
        return self.token(role)

    def exchange(self, token: str) -> tuple[str, KeyRole] | None:
        """Return a new cookie and its role for a token; nothing for a wrong one.

        Raises:
            TooManyWrong: ten wrong ones came within a minute.
        """
        now = self._clock()
        self._wrong = [moment for moment in self._wrong if now - moment < WITHIN]
        if len(self._wrong) >= MOST_WRONG:
            raise TooManyWrong
        role = next(
            (own for one, own in self._tokens.items() if secrets.compare_digest(one.encode(), token.encode())), None
        )
        if role is None:
            self._wrong.append(now)
            return None
        cookie = secrets.token_urlsafe(TOKEN_BYTES)
        self._cookies[cookie] = role
        return cookie, role

    def role_of(self, cookie: str | None) -> KeyRole | None:
        """Return the role a cookie was given for."""
        return self._cookies.get(cookie) if cookie else None
