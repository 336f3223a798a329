"""Makes a picture small: a PNG of a few colours (PNG, third edition, W3C: colour type 3, filter 0), for flat screens.

The browser that took the picture reads it back to pixels, so no image library is needed. It must not be used where colours matter.
"""

from __future__ import annotations

import base64
import struct
import zlib

import numpy as np
from playwright.sync_api import Page

_PIXELS = """async (picture) => {
    const bytes = Uint8Array.from(atob(picture), (one) => one.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    let text = "";
    for (let at = 0; at < data.length; at += 32768) text += String.fromCharCode(...data.subarray(at, at + 32768));
    return [image.width, image.height, btoa(text)];
}"""


def as_palette_png(page: Page, picture: bytes, colours: int) -> bytes:
    """The picture with its most frequent colours only, each pixel in the nearest of them; at most 256."""
    width, height, text = page.evaluate(_PIXELS, base64.b64encode(picture).decode())
    pixels = np.frombuffer(base64.b64decode(text), np.uint8).reshape(height, width, 4)[:, :, :3]
    palette, places = _reduced(pixels.reshape(-1, 3), colours)
    return _png(width, height, palette, places.reshape(height, width))


def _reduced(pixels: np.ndarray, colours: int) -> tuple[np.ndarray, np.ndarray]:
    """A palette and each pixel's place in it. Colours that stand near a more frequent one give way to it."""
    found, which, counts = np.unique(pixels, axis=0, return_inverse=True, return_counts=True)
    kept: list[int] = []
    for apart in (24, 12, 6, 0):  # far ones first, then finer steps, until the palette is full
        for place in np.argsort(-counts, kind="stable"):
            if len(kept) < colours and all(_apart(found[place], found[other]) > apart for other in kept):
                kept.append(int(place))
    palette = found[kept].astype(int)
    nearest = np.abs(found[:, None, :].astype(int) - palette[None, :, :]).sum(axis=2).argmin(axis=1)
    return palette.astype(np.uint8), nearest[which.reshape(-1)].astype(np.uint8)


def _apart(one: np.ndarray, other: np.ndarray) -> int:
    return int(np.abs(one.astype(int) - other.astype(int)).sum())


def _png(width: int, height: int, palette: np.ndarray, places: np.ndarray) -> bytes:
    header = struct.pack(">IIBBBBB", width, height, 8, 3, 0, 0, 0)
    lines = np.hstack([np.zeros((height, 1), np.uint8), places]).tobytes()
    chunks = ((b"IHDR", header), (b"PLTE", palette.tobytes()), (b"IDAT", zlib.compress(lines, 9)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(kind, data) for kind, data in chunks)


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
