"""marshmallow schemas built from the wire files, for the JSON bodies of the web room.

Answers a schema whose first problem is exactly that of `wire.check`. Nothing is written twice: one field per
top-level property, and below it the one compiled check. Must never convert: "120" is not 120.
"""

from functools import cache
from typing import Any

from marshmallow import RAISE, Schema, ValidationError, fields

from quietcuff.contract.compile_schema import Check, compile_schema
from quietcuff.contract.wire import Problem, check, compiled, wire_schema


class NotAsAgreed(ValidationError):
    """A body is not what its wire schema says; `problem` is the first problem, as `wire.check` gives it."""

    def __init__(self, problem: Problem) -> None:
        super().__init__({problem.path: [problem.why]})
        self.problem = problem


class WireField(fields.Field):
    """One top-level property: passes its value through unchanged, or gives the compiled check's code."""

    def __init__(self, check_value: Check, **settings: Any) -> None:
        super().__init__(**settings)
        self.check_value = check_value
        # null never travels: it is judged by the check like any other value of the wrong type.
        found = check_value(None)
        self.error_messages |= {"required": "missing", "null": found[1] if found else "missing"}

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        found = self.check_value(value)
        if found:
            raise ValidationError({found[0]: [found[1]]})
        return value


class WireSchema(Schema):
    """Base of the built schemas: unknown keys are refused, and errors name the first problem only."""

    wire_name: str
    error_messages = {"unknown": "unknown_key", "type": "not_an_object"}

    class Meta:
        unknown = RAISE

    def handle_error(self, error: ValidationError, data: Any, *, many: bool, **kwargs: Any) -> None:
        """marshmallow gathers all problems in an order of its own; ours is the one the phone would give."""
        problem = check(self.wire_name, data)
        if problem is not None:
            raise NotAsAgreed(problem) from error


@cache
def schema_class(name: str) -> type[WireSchema]:
    """The schema class of a wire file such as `sign_in.1`. Raises KeyError for an unknown name."""
    wire = wire_schema(name)
    required = wire.get("required", [])
    built = {
        key: WireField(_compiled_property(of), required=key in required) for key, of in wire["properties"].items()
    }
    class_name = "".join(part.capitalize() for part in name.replace(".", "_").split("_"))
    return type(class_name, (WireSchema,), {**built, "wire_name": name})


def load(name: str, document: Any) -> dict[str, Any]:
    """Check a body, already read by `read_json`, by its built schema, and return it. Raises NotAsAgreed."""
    return _schema(name).load(document)


@cache
def _schema(name: str) -> WireSchema:
    """One instance for all requests: it holds no state of a load, and making one costs more than the check."""
    return schema_class(name)()


def _compiled_property(schema: dict[str, Any]) -> Check:
    return compile_schema(schema, lambda file_name: compiled(file_name.removesuffix(".json")))
