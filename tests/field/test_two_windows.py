"""Two windows of one phone: they share one outbox, hand in each entry once, and tell each other."""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess


def test_two_windows_hand_in_each_entry_once(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    assert phone.context is not None
    phone.context.set_offline(True)
    first, second = phone.page, phone.context.new_page()
    second.goto(server.url)
    for page, name in ((first, "Brammel"), (second, "Quill"), (first, "Tansy"), (second, "Moss")):
        phone.page = page
        page.goto(server.url + "/#/patients")
        work.add_animal(phone, "Dog", name, "")
    for page in (first, second):
        expect(page.get_by_role("link", name="Outbox, 4 not sent")).to_be_visible()
    phone.context.set_offline(False)
    for page in (first, second):
        expect(page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    assert server.rows("SELECT count(*), count(DISTINCT id), max(position) FROM journal") == [(4, 4, 4)]
    assert server.rows("SELECT number FROM journal ORDER BY number") == [(1,), (2,), (3,), (4,)]
    assert server.rows("SELECT count(*) FROM tray") == [(0,)]
