"""Connections of a page, counted and waited for only so long: each takes a file of the few that a program may open.

Somebody in the network who opens hundreds and says nothing would else keep the desk from writing its job file.
"""

from __future__ import annotations

import asyncio

from uvicorn.protocols.http.h11_impl import H11Protocol

MOST = 120
"""At once, of one door: a browser opens six, and a window at the desk one more for the hand (common practice)."""
PATIENCE = 20.0
"""So long the first request of a connection may take to come [s]."""


class BoundedConnection(H11Protocol):
    """A connection that is shut at once where there are too many, and where it asks nothing."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take it, or shut it."""
        super().connection_made(transport)
        if len(self.connections) > MOST:
            transport.abort()
        else:
            self.loop.call_later(PATIENCE, self._shut_if_silent)

    def _shut_if_silent(self) -> None:
        if self.cycle is None and self in self.connections:  # not gone, nor a web socket by now
            self.transport.close()
