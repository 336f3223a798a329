/*
 * The number parser: every case of tests/vectors/number.json, and what the platform's own formatter writes in other
 * languages (Intl, that is Unicode CLDR), which must be read back as the number it came from.
 */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parseNumber, type NumberField } from "../../../client/src/contract/number.ts";

interface Case extends NumberField {
  readonly text: string;
  readonly expect: object;
}

const vectors = new URL("../../vectors/number.json", import.meta.url);
const { cases } = JSON.parse(readFileSync(vectors, "utf8")) as { cases: Case[] };

test("there are at least a hundred cases", () => expect(cases.length).toBeGreaterThanOrEqual(100));

test.each(cases)("$text with decimal $decimal", ({ text, units, decimal, expect: expected }) => {
  expect(parseNumber(text, { units, decimal })).toEqual(expected);
});

test.each(["en", "de", "fr", "pl", "hi-u-nu-deva", "ar-u-nu-arab", "fa-u-nu-arabext", "ja-u-nu-fullwide"])(
  "reads back what is written in %s",
  (locale) => {
    const written = new Intl.NumberFormat(locale, { useGrouping: false, minimumFractionDigits: 1 });
    for (const tenths of [0, 1, 5, 10, 125, 999, 1234, 4560, 78901]) {
      const text = written.format(tenths / 10);
      expect([text, parseNumber(text, { decimal: true })]).toEqual([text, { value_tenths: tenths }]);
    }
  },
);
