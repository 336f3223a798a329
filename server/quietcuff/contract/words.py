"""Sentences by id, from words/en.ftl: what a person reads.

Answers one sentence. Must never compute or format a number: facts arrive as they shall be read.
"""

from functools import cache

from fluent.runtime import FluentBundle, FluentResource

from quietcuff.contract.shared_files import shared_folder

# Tests set this (not a setting: nobody should serve with it), so that a missing sentence fails there and never in
# front of an animal.
is_strict = False


class MissingWords(LookupError):
    """A sentence, or a fact it needs, is missing."""


@cache
def _bundle() -> FluentBundle:
    # Isolation marks would end up in terminals and problem bodies as invisible characters.
    bundle = FluentBundle(["en"], use_isolating=False)
    bundle.add_resource(FluentResource((shared_folder() / "words" / "en.ftl").read_text(encoding="utf-8")))
    return bundle


def has_words(message_id: str) -> bool:
    """Whether there is a sentence of this id."""
    return _bundle().has_message(message_id) and _bundle().get_message(message_id).value is not None


def say(message_id: str, **facts: object) -> str:
    """The sentence of an id, its facts filled in; a missing one reads `[id]`, or raises MissingWords if `is_strict`."""
    if not has_words(message_id):
        if is_strict:
            raise MissingWords(message_id)
        return f"[{message_id}]"
    sentence, errors = _bundle().format_pattern(
        _bundle().get_message(message_id).value, {name: str(fact) for name, fact in facts.items()}
    )
    if errors and is_strict:
        raise MissingWords(f"{message_id}: {errors[0]}")
    return sentence
