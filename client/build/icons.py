"""Makes the pictures of the home screen from the two SVGs of client/public, with Chromium.

`.venv/bin/python client/build/icons.py` after an SVG was changed; the pictures are kept beside it. A mask may cut everything
outside a circle of two fifths of the width, so `icon-maskable.svg` keeps within it; `icon.svg` fills its square.
"""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

PUBLIC = Path(__file__).resolve().parents[1] / "public"
CHROMIUM = "/usr/bin/chromium"

# picture → (drawing, pixels a side, whether what the drawing leaves free stays see-through)
PICTURES = {
    "icon-192.png": ("icon.svg", 192, True),
    "icon-512.png": ("icon.svg", 512, True),
    "icon-maskable-192.png": ("icon-maskable.svg", 192, False),
    "icon-maskable-512.png": ("icon-maskable.svg", 512, False),
    "icon-180.png": ("icon-maskable.svg", 180, False),
}


def picture(browser: Browser, name: str) -> bytes:
    """The PNG of one picture, `pixels` wide and high, whatever the machine's own scale is."""
    drawing, pixels, is_see_through = PICTURES[name]
    page = browser.new_page(viewport={"width": pixels, "height": pixels}, device_scale_factor=1)
    svg = (PUBLIC / drawing).read_text(encoding="utf-8")
    page.set_content(f"<style>body{{margin:0}}svg{{display:block;width:{pixels}px;height:{pixels}px}}</style>{svg}")
    png = page.screenshot(omit_background=is_see_through)
    page.close()
    return png


def main() -> None:
    """Writes every picture."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM)
        for name in PICTURES:
            (PUBLIC / name).write_bytes(picture(browser, name))
            print(name)
        browser.close()


if __name__ == "__main__":
    main()
