"""JSON schemas of the written forms, as TOML can say them."""

from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core.core_schema import NullableSchema, WithDefaultSchema

from tripplan.values.ages import AgeBand


class _ForToml(GenerateJsonSchema):
    """Leaves null out, which TOML does not know, and writes age bands as a card does."""

    def nullable_schema(self, schema: NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: WithDefaultSchema) -> JsonSchemaValue:
        if schema.get("default", ...) is None:
            return self.generate_inner(schema["schema"])
        return super().default_schema(schema)

    def encode_default(self, dft: object) -> object:
        return str(dft) if isinstance(dft, AgeBand) else super().encode_default(dft)


def schema_of(form: type[BaseModel], title: str) -> dict[str, Any]:
    """The JSON schema of a written form (draft 2020-12), each field with its description.

    Args:
        form: the form.
        title: what the schema is called.
    """
    schema = form.model_json_schema(schema_generator=_ForToml)
    return {"$schema": _ForToml.schema_dialect, **schema, "title": title}
