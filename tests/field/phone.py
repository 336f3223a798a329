"""A phone for the field tests: Chromium at 360 × 740 on a profile that stays, in a process group that can be killed.

Everything is done through roles and names, as a person or a screen reader would. It watches each page for violations of the content
security policy and for errors, which no test may leave behind.
"""

import os
import re
import signal
from pathlib import Path

from playwright.sync_api import BrowserContext, Error, Locator, Page, Playwright, expect

QUIET = ["--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
         "--disable-sync"]
WATCH = """
addEventListener('securitypolicyviolation', (e) => console.error('CSP violation: ' + e.violatedDirective + ' ' + e.blockedURI));
"""


def chromium_path() -> str:
    """Debian's Chromium, or the one named by CHROMIUM."""
    return os.environ.get("CHROMIUM", "/usr/bin/chromium")


class Phone:
    """One persistent profile. `open` starts the browser on it, `kill` ends it as an empty battery would."""

    def __init__(self, playwright: Playwright, profile: Path, url: str, violations: list[str]) -> None:
        self.playwright, self.profile, self.url, self.violations = playwright, profile, url, violations
        self.context: BrowserContext | None = None
        self.scripts: list[str] = [WATCH]
        self.page: Page

    def open(self, path: str = "/", offline: bool = False) -> int:
        """Cold start of the browser on this profile, with a network or without; returns its process id."""
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.profile), executable_path=chromium_path(), headless=True, args=QUIET,
            viewport={"width": 360, "height": 740}, device_scale_factor=2, has_touch=True, is_mobile=True, locale="en-GB")
        for script in self.scripts:
            self.context.add_init_script(script)
        self.page = self.context.pages[0] if self.context.pages else self.context.new_page()
        self._watch(self.page)
        self.context.set_offline(offline)
        self.page.goto(self.url + path, wait_until="load")
        return self.process_id()

    def back_in_reach(self) -> None:
        """The network is back."""
        assert self.context is not None
        self.context.set_offline(False)

    def _watch(self, page: Page) -> None:
        page.on("console", lambda m: self.violations.append(m.text) if "CSP violation" in m.text
                or "Content Security Policy" in m.text else None)
        page.on("pageerror", lambda e: self.violations.append(f"page error: {e}"))

    def kill_tab(self) -> Page:
        """Close this tab without warning and open its address anew, as a phone does when it is short of memory."""
        assert self.context is not None
        old, address = self.page, self.page.url
        self.page = self.context.new_page()
        self._watch(self.page)
        old.close(run_before_unload=False)
        self.page.goto(address, wait_until="load")
        return self.page

    def process_id(self) -> int:
        """The browser's main process, found by its profile folder."""
        for folder in Path("/proc").iterdir():
            if folder.name.isdigit():
                words = _words_of(folder)
                if f"--user-data-dir={self.profile}" in words and not any(w.startswith("--type=") for w in words):
                    if words[0].endswith("chromium") or "chrom" in words[0]:
                        return int(folder.name)
        raise AssertionError("no browser runs on this profile")

    def kill(self) -> int:
        """SIGKILL to the browser's whole process group."""
        pid = self.process_id()
        os.killpg(os.getpgid(pid), signal.SIGKILL)
        self._forget()
        return pid

    def close(self) -> None:
        """An orderly end, if it still runs."""
        self._forget()

    def _forget(self) -> None:
        if self.context is not None:
            try:
                self.context.close()
            except Error:
                pass
            self.context = None

    def button(self, name: str) -> Locator:
        """The button of exactly this name."""
        return self.page.get_by_role("button", name=name, exact=True)

    def tap(self, name: str) -> None:
        """Tap the button of exactly this name."""
        self.button(name).first.click()

    def fill(self, label: str, text: str) -> None:
        """Type into the field of this label."""
        self.page.get_by_label(label, exact=True).first.fill(text)

    def choose(self, group: str, name: str) -> None:
        """Choose one of a group of radio buttons."""
        self.page.get_by_role("group", name=group).or_(self.page.get_by_role("radiogroup", name=group)).first.get_by_role(
            "radio", name=name, exact=True).check(force=True)

    def type_number(self, digits: str) -> None:
        """Press the keys of the number pad, one after another."""
        for digit in digits:
            self.tap(digit)

    def shows(self, text: str | re.Pattern[str], timeout_ms: int | None = None) -> None:
        """Wait until the page shows this text, as long as any expectation is waited for where no time is named."""
        expect(self.page.get_by_text(text).first).to_be_visible(timeout=timeout_ms)


def _words_of(folder: Path) -> list[str]:
    try:
        return (folder / "cmdline").read_bytes().decode(errors="replace").split("\0")
    except OSError:
        return [""]
