"""What is typed of a new animal survives a killed tab, and a form that cannot be saved says so in the window's title."""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess


def test_a_new_animal_half_typed_survives_a_killed_tab(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("Add animal")
    phone.tap("Save animal")
    expect(phone.page).to_have_title("Error: Add animal · quietcuff")
    phone.choose("Species", "Cat")
    phone.page.get_by_label("Name", exact=True).press_sequentially("Quill")
    phone.page.wait_for_timeout(300)
    phone.kill_tab()
    expect(phone.page.get_by_label("Name", exact=True)).to_have_value("Quill")
    expect(phone.page.get_by_role("radio", name="Cat")).to_be_checked()
    phone.tap("Save animal")
    phone.page.get_by_role("heading", name="Quill").first.wait_for()
    phone.page.goto(phone.url + "/#/patients")
    expect(phone.page.get_by_role("heading", name="Round", exact=True)).to_be_visible()
