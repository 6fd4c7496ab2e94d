"""What the documents of this room have in common: frozen, closed to unknown keys, each with a schema."""

from typing import Annotated, Any

from pydantic import AfterValidator, BaseModel, ConfigDict, Field
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from plankwright.files.notation import refusal
from plankwright.measure import System, TapeStyle, write_exact

_LONGEST_NAME = 60
_LONGEST_TEXT = 500
_DIALECT = "https://json-schema.org/draft/2020-12/schema"
_INCHES = TapeStyle(system=System.IMPERIAL)


class Document(BaseModel):
    """A table or object of a file: what is not defined is refused, and nothing changes once it is read."""

    model_config = ConfigDict(frozen=True, extra="forbid", use_enum_values=False)


def one_line(text: str) -> str:
    """Give a text on one line, without marks that nobody sees and no printer prints."""
    return "".join(mark for mark in " ".join(text.split()) if mark.isprintable())


def _usable_name(text: str) -> str:
    name = one_line(text)
    if not name:
        raise refusal("is empty: give it a name")
    if len(name) > _LONGEST_NAME:
        raise refusal(f"is too long for a name: at most {_LONGEST_NAME} characters")
    return name


Name = Annotated[str, Field(strict=True), AfterValidator(_usable_name)]
"""What something is called: one line, not empty."""

Text = Annotated[str, Field(strict=True, max_length=_LONGEST_TEXT), AfterValidator(one_line)]
"""Free text, put on one line."""

Flag = Annotated[bool, Field(strict=True)]
"""True or false."""

Count = Annotated[int, Field(strict=True, ge=0, le=10_000)]
"""How many."""


class _SchemaWriter(GenerateJsonSchema):
    """Writes schemas as a person edits the file: without null, and with defaults as lengths are written."""

    def field_title_should_be_set(self, schema: object) -> bool:  # noqa: ARG002 - the same for all
        return False

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        written = super().default_schema(schema)
        if written.get("default", 0) in (None, (), []) or isinstance(written.get("default"), dict):
            del written["default"]  # a table that may be missing has the defaults of its keys
        elif written.get("type") == ["string", "number"] and isinstance(written.get("default"), int):
            written["default"] = write_exact(written["default"], _INCHES)
        return written


def schema_of(document: type[Document], *, title: str, description: str) -> dict[str, Any]:
    """Give the JSON Schema of a document.

    Parameters
    ----------
    document
        Its definition.
    title, description
        What the schema says of itself.

    Returns
    -------
    dict
        A schema of the 2020-12 dialect.
    """
    schema = document.model_json_schema(schema_generator=_SchemaWriter)
    return {"$schema": _DIALECT, **schema, "title": title, "description": description}
