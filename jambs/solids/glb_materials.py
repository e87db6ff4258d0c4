"""What a GLB says of its surfaces: wood, metal sheet and paint scatter light; unsaid, a viewer takes all for metal.

Layout of the file and the meaning of the two factors: glTF 2.0, binary format and metallic-roughness material.
"""

from __future__ import annotations

import json
import struct

HEADER, CHUNK = struct.Struct("<4sII"), struct.Struct("<I4s")
PAD = 4
"""Chunks begin at multiples of four bytes; the JSON is filled up with spaces."""
SURFACE = {"metallicFactor": 0, "roughnessFactor": 0.9}
"""No metal; nearly matt, as planed wood is to the eye: common practice, no source."""


def with_dull_surfaces(data: bytes) -> bytes:
    """Return a GLB whose materials all say that they are no metal."""
    magic, version, _ = HEADER.unpack_from(data)
    size, kind = CHUNK.unpack_from(data, HEADER.size)
    start = HEADER.size + CHUNK.size
    document = json.loads(data[start : start + size])
    for material in document.get("materials", ()):
        material.setdefault("pbrMetallicRoughness", {}).update(SURFACE)
    text = json.dumps(document, separators=(",", ":"), ensure_ascii=False).encode("utf-8")
    text += b" " * (-len(text) % PAD)
    rest = data[start + size :]
    whole = HEADER.size + CHUNK.size + len(text) + len(rest)
    return HEADER.pack(magic, version, whole) + CHUNK.pack(len(text), kind) + text + rest
