/* Sentences: Fluent's own notation (projectfluent.org syntax guide), a visible mark where one is missing. */
import { expect, test } from "vitest";
import { hasWords, say, wordsFrom } from "../../../client/src/contract/words.ts";

const WORDS = wordsFrom(
  "plain = Good evening\nwith-fact = { $name } rests.\n" +
    "with-plural = { $n ->\n    [one] One reading\n   *[other] { $n } readings\n }\n",
);

test("facts are filled in, without isolation marks", () => {
  expect(say("plain", {}, WORDS)).toBe("Good evening");
  expect(say("with-fact", { name: "Mo" }, WORDS)).toBe("Mo rests.");
});

test("a number chooses the plural", () => {
  expect(say("with-plural", { n: 1 }, WORDS)).toBe("One reading");
  expect(say("with-plural", { n: 5 }, WORDS)).toBe("5 readings");
});

test("a missing sentence shows its id, and a missing fact its name", () => {
  expect(say("no-such-sentence")).toBe("[no-such-sentence]");
  expect(hasWords("no-such-sentence")).toBe(false);
  expect(hasWords("plain", WORDS)).toBe(true);
  expect(say("with-fact", {}, WORDS)).toBe("{$name} rests.");
});

test("what is no Fluent sentence at all is dropped by the parser and then missing", () => {
  expect(say("broken", {}, wordsFrom("broken = { $n\n"))).toBe("[broken]");
});
