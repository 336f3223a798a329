"""The pictures of the home screen are those of the SVGs beside them: whoever changes a drawing makes its pictures anew.

Compared as pixels, in the browser that draws both; another version of it may smooth an edge otherwise, so a small mean is let pass.
"""

from __future__ import annotations

import base64
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, Playwright

from client.build.icons import CHROMIUM, PICTURES, PUBLIC, picture

# of 255 a channel; a drawing moved by one pixel of 192 differs by more
MOST_MEAN_DIFFERENCE = 0.5

DIFFERENCE = """async ([one, other]) => {
    const pixels = async (base64) => {
        const picture = new Image();
        picture.src = "data:image/png;base64," + base64;
        await picture.decode();
        const canvas = new OffscreenCanvas(picture.width, picture.height);
        const context = canvas.getContext("2d");
        context.drawImage(picture, 0, 0);
        return context.getImageData(0, 0, picture.width, picture.height).data;
    };
    const [a, b] = [await pixels(one), await pixels(other)];
    if (a.length !== b.length) return 255;
    return a.reduce((sum, value, at) => sum + Math.abs(value - b[at]), 0) / a.length;
}"""


@pytest.fixture(scope="module")
def browser(playwright_driver: Playwright) -> Iterator[Browser]:
    """One browser for all pictures."""
    browser = playwright_driver.chromium.launch(executable_path=CHROMIUM)
    yield browser
    browser.close()


def difference(page: Page, one: bytes, other: bytes) -> float:
    """Mean difference of two PNGs over all channels; 255 when they are not of one size."""
    return page.evaluate(DIFFERENCE, [base64.b64encode(png).decode() for png in (one, other)])


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_is_that_of_its_drawing(browser: Browser, name: str) -> None:
    page = browser.new_page()
    assert difference(page, (PUBLIC / name).read_bytes(), picture(browser, name)) <= MOST_MEAN_DIFFERENCE
    page.close()


def test_every_picture_that_is_shipped_has_its_drawing() -> None:
    assert {path.name for path in PUBLIC.glob("*.png")} == set(PICTURES)


def test_another_drawing_is_seen(browser: Browser) -> None:
    page = browser.new_page()
    assert difference(page, (PUBLIC / "icon-512.png").read_bytes(), picture(browser, "icon-maskable-512.png")) > 10
    page.close()
