"""A whole measurement by keyboard alone, and by what a screen reader is given: each stop has a name, is in sight and shows the focus.

Tab, Enter, arrows, space and digits; no finger. Sources: WCAG 2.2, 2.1.1, 2.4.3, 2.4.7, 2.4.11, 4.1.2. The series is invented: 142,
138, 140, 136, 144 count, 700 / 5 = 140, which belongs to "low".
"""

from __future__ import annotations

from playwright.sync_api import Page, expect

from tests.design.places import Walk
from tests.field.server_process import PASSWORD, ServerProcess

STOPS_MOST = 120
FOCUSED = """() => {
    const at = document.activeElement;
    const box = at.getBoundingClientRect();
    const shown = at.matches("input[type=radio]") ? at.nextElementSibling : at;
    const { outlineStyle, outlineWidth } = getComputedStyle(shown);
    const hit = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height / 2, 20));
    return {
        isShown: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
        isInSight: box.bottom > 0 && box.top < innerHeight && (at === hit || at.contains(hit) || hit?.contains(at) || at.parentElement.contains(hit)),
        what: at.outerHTML.slice(0, 120),
    };
}"""


def tab_to(page: Page, role: str, name: str, *, exact: bool = True) -> None:
    """Presses Tab until the focus is there; on the way each stop shows the focus and is in sight."""
    wanted = page.get_by_role(role, name=name, exact=exact).first  # type: ignore[arg-type]  # roles are words here
    wanted.wait_for()
    for _ in range(STOPS_MOST):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement === document.body"):
            continue
        stop = page.evaluate(FOCUSED)
        assert stop["isShown"], f"the focus does not show: {stop['what']}"
        assert stop["isInSight"], f"the focus is out of sight: {stop['what']}"
        if wanted.evaluate("(element) => element === document.activeElement"):
            return
    raise AssertionError(f"Tab never came to {role} {name!r}")


def press(page: Page, name: str, *, exact: bool = True) -> None:
    """Tab to the button of this name and Enter."""
    tab_to(page, "button", name, exact=exact)
    page.keyboard.press("Enter")


def answer(page: Page, group: str, name: str) -> None:
    """Into the group by Tab, to the answer by arrows."""
    radios = page.get_by_role("group", name=group).first.get_by_role("radio")
    radios.first.wait_for()
    inside = "(all) => all.includes(document.activeElement)"
    for _ in range(STOPS_MOST):
        page.keyboard.press("Tab")
        if radios.evaluate_all(inside):
            break
    # the element itself, not a search for it: the last answer of a part opens the next one, and its group is gone
    wanted = page.get_by_role("group", name=group).first.get_by_role("radio", name=name, exact=True).element_handle()
    tries = radios.count()
    page.keyboard.press("Space")
    for _ in range(tries):
        if wanted.evaluate("({ checked }) => checked"):
            return
        page.keyboard.press("ArrowDown")
    raise AssertionError(f"arrows never came to {name!r} of {group!r}")


def test_a_measurement_without_a_finger(open_page: Page, server: ServerProcess) -> None:
    """From the round to the result and into the record."""
    page = open_page
    walk = Walk(page, server.url, "ada", PASSWORD)
    walk.to("#/round", "Round")
    press(page, "A dog")
    for question in ("Breathing easy?", "Awake and responsive?", "Free of pain?", "Safe to handle?"):
        answer(page, question, "Yes")
    walk.sees("group", "Demeanour")
    answer(page, "Demeanour", "Calm")
    press(page, "Show Readings")
    for count, reading in enumerate(("168", "142", "138", "140", "136", "144"), 1):
        if count == 1:
            tab_to(page, "textbox", "Systolic")
        page.keyboard.type(reading)
        walk.holds("Systolic", reading)
        page.keyboard.press("Enter")
        walk.sees("img", f"{reading}")
        walk.holds("Systolic", "")
    press(page, "Finish")
    walk.sees("region", "Result")
    assert "low risk of organ damage (140–159)" in page.get_by_role("region", name="Result").inner_text().lower()
    press(page, "File")
    walk.sees("heading", "Which animal was this?")
    press(page, "Add animal")
    tab_to(page, "textbox", "Name")
    page.keyboard.type("Thistle")
    press(page, "Save animal")
    walk.shows("Thistle")
    press(page, "File")
    walk.shows("Filed: Thistle")


def test_a_line_that_was_opened_hands_the_focus_on(open_page: Page, server: ServerProcess) -> None:
    """The line is gone when it is open: the focus stands on the first answer, not at the top of the page (WCAG 2.2, 2.4.3)."""
    page = open_page
    Walk(page, server.url, "ada", PASSWORD).to("#/round", "Round")
    press(page, "A dog")
    press(page, "Show Cuff")
    press(page, "Posture not noted", exact=False)
    answers = page.get_by_role("group", name="Posture").get_by_role("radio")
    answers.first.wait_for()
    expect(answers.first).to_be_focused()
