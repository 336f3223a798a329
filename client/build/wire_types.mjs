/*
 * Writes client/src/contract/wire_types.ts from shared_schemas/wire, one type per schema: `patient.1` is `Patient1`.
 * The types are never written by hand, so that they cannot say something else than the check does.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const WIRE = new URL("../../shared_schemas/wire/", import.meta.url);
const OUT = new URL("../src/contract/wire_types.ts", import.meta.url);

const typeName = (file) =>
  file
    .replace(/\.json$/, "")
    .split(/[._]/)
    .map((word) => word[0].toUpperCase() + word.slice(1))
    .join("");

function typeOf(schema, indent) {
  if (schema.$ref) return typeName(schema.$ref);
  if (schema.enum) return schema.enum.map((value) => JSON.stringify(value)).join(" | ");
  if (schema.type === "string") return "string";
  if (schema.type === "integer") return "number";
  if (schema.type === "boolean") return "boolean";
  if (schema.type === "array") return `readonly (${schema.items ? typeOf(schema.items, indent) : "unknown"})[]`;
  if (schema.type === "object") return objectType(schema, indent);
  throw new Error(`no type for ${JSON.stringify(schema.type)}`);
}

function objectType(schema, indent) {
  if (!schema.properties) return "Readonly<Record<string, unknown>>";
  const inner = `${indent}  `;
  const lines = Object.entries(schema.properties).map(([key, property]) => {
    const note = property.description ? `${inner}/** ${property.description.replaceAll("*/", "* /")} */\n` : "";
    const optional = schema.required?.includes(key) ? "" : "?";
    return `${note}${inner}readonly ${key}${optional}: ${typeOf(property, inner)};\n`;
  });
  return `{\n${lines.join("")}${indent}}`;
}

const files = readdirSync(fileURLToPath(WIRE)).filter((file) => file.endsWith(".json") && file !== "api.json");
const types = files.sort().map((file) => {
  const schema = JSON.parse(readFileSync(new URL(file, WIRE), "utf8"));
  return `/** ${schema.title} */\nexport type ${typeName(file)} = ${typeOf(schema, "")};\n`;
});
const head = "/* Made from shared_schemas/wire by client/build/wire_types.mjs; do not edit, do not commit. */\n\n";
writeFileSync(OUT, head + types.join("\n"));
