"""The watch that every field test ends with (no violation of the security policy, no uncaught error) can fail."""

from pathlib import Path

from playwright.sync_api import Playwright

from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

INLINE_SCRIPT = "document.body.insertAdjacentHTML('beforeend', '<p onclick=\"1\">planted</p>')"
ERROR = "setTimeout(() => { throw new Error('planted'); })"


def test_a_planted_violation_and_a_planted_error_are_seen(
        server: ServerProcess, playwright_driver: Playwright, tmp_path: Path) -> None:
    seen: list[str] = []
    phone = Phone(playwright_driver, tmp_path / "phone", server.url, seen)
    phone.open()
    phone.page.evaluate(f"try {{ {INLINE_SCRIPT} }} catch {{ /* refused, as it should be */ }}")
    phone.page.evaluate(ERROR)
    phone.page.wait_for_timeout(300)
    phone.close()
    assert any("CSP violation" in line for line in seen), seen
    assert any("page error: planted" in line for line in seen), seen
