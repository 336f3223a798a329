/*
 * The closed list of JSON Schema keywords the wire documents may use, checked when the schemas are loaded.
 * It must not interpret anything: an unknown keyword raises, so that no limit is silently not enforced.
 */

/** A wire schema, or a part of one. */
export interface Schema {
  readonly type?: string;
  readonly $ref?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly enum?: readonly (string | number)[];
  readonly pattern?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
}

const NOTES = ["type", "$schema", "$id", "title", "description"];
const BY_TYPE: Readonly<Record<string, readonly string[]>> = {
  object: ["properties", "required", "additionalProperties"],
  array: ["items", "minItems", "maxItems"],
  string: ["enum", "pattern", "minLength", "maxLength"],
  integer: ["enum", "minimum", "maximum"],
  boolean: [],
};

/** Raises unless the schema keeps to the closed keyword list, all the way down. */
export function requireKnownKeywords(schema: Schema, where: string): void {
  if (schema.$ref !== undefined) {
    if (Object.keys(schema).length !== 1) throw new Error(`${where}: $ref stands alone`);
    return;
  }
  const allowed = Object.hasOwn(BY_TYPE, schema.type ?? "") ? BY_TYPE[schema.type as string] : undefined;
  if (!allowed) throw new Error(`${where}: unknown type ${schema.type}`);
  for (const keyword of Object.keys(schema)) {
    if (!NOTES.includes(keyword) && !allowed.includes(keyword)) throw new Error(`${where}: keyword ${keyword}`);
  }
  requireClosedForm(schema, where);
  for (const [key, inner] of Object.entries(schema.properties ?? {})) requireKnownKeywords(inner, `${where}/${key}`);
  if (schema.items) requireKnownKeywords(schema.items, `${where}/items`);
}

/** Objects with properties are closed; patterns are anchored at the start and never end in `$` (engines differ). */
function requireClosedForm(schema: Schema, where: string): void {
  if (schema.properties && schema.additionalProperties !== false) throw new Error(`${where}: an open object`);
  if (!schema.properties && (schema.required || schema.additionalProperties !== undefined)) {
    throw new Error(`${where}: an object without properties is open`);
  }
  if (schema.pattern !== undefined && (!schema.pattern.startsWith("^") || schema.pattern.includes("$"))) {
    throw new Error(`${where}: pattern ${schema.pattern}`);
  }
}
