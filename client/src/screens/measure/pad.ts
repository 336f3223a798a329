/* What the keys of the number pad do to the half-typed reading. Pure: a pad and a key in, a pad out.
   Must not know of limits, of saving or of the screen; wrong text stays as it was typed. */

export type PadField = "systolic" | "mean" | "diastolic" | "pulse";

/** The half-typed reading: which field the keys go to, and the text of each field as typed. */
export interface Pad {
  field: PadField;
  texts: Partial<Record<PadField, string>>;
}

/** Longest number the keys make; more digits are typed only by mistake. */
export const DIGITS_MOST = 3;

export const EMPTY_PAD: Pad = { field: "systolic", texts: {} };

/** The fields one method fills, in the order in which a machine shows them. */
export function fieldsOf(method: "doppler" | "oscillometric"): PadField[] {
  return method === "doppler" ? ["systolic"] : ["systolic", "mean", "diastolic", "pulse"];
}

function after(field: PadField, fields: PadField[]): PadField {
  return fields[fields.indexOf(field) + 1] ?? field;
}

/** The pad with the text of one field replaced, as a keyboard, a paste or dictation leaves it. */
export function typed(pad: Pad, field: PadField, text: string): Pad {
  return { field, texts: { ...pad.texts, [field]: text } };
}

/** A digit key. A full field stays as it is; the third digit moves on to the next field of the method. */
export function digit(pad: Pad, key: string, fields: PadField[]): Pad {
  const before = pad.texts[pad.field] ?? "";
  if (before.length >= DIGITS_MOST) return pad;
  const text = before + key;
  const now = typed(pad, pad.field, text);
  return text.length === DIGITS_MOST ? { ...now, field: after(pad.field, fields) } : now;
}

/** *Delete digit*: the last character of this field, or of the field before when this one is empty. */
export function deleted(pad: Pad, fields: PadField[]): Pad {
  const text = pad.texts[pad.field] ?? "";
  if (text) return typed(pad, pad.field, text.slice(0, -1));
  const before = fields[fields.indexOf(pad.field) - 1];
  return before ? typed(pad, before, (pad.texts[before] ?? "").slice(0, -1)) : pad;
}

/** *Skip*: on to the next field; after the last one back to the first. */
export function skipped(pad: Pad, fields: PadField[]): Pad {
  const at = fields.indexOf(pad.field);
  return { ...pad, field: fields[(at + 1) % fields.length] ?? pad.field };
}

/** Whether nothing at all is typed. */
export function isEmpty(pad: Pad): boolean {
  return Object.values(pad.texts).every((text) => !text?.trim());
}
