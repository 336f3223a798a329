/*
 * Finds text shown to people that stands in code: `node texts_in_code.mjs FILE…` prints a JSON list of {file, line, text}.
 * Read from the syntax tree, so that neither types nor comparisons look like text. It decides nothing about what is found.
 *
 * Found are: text between tags; literals that reach an attribute people read or hear, document.title or a child of an element;
 * and, anywhere else, a literal that reads like a sentence. Not found: what is handed to say(), sayGuide() or an Error.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const client = createRequire(new URL("../../client/package.json", import.meta.url));
const { parseSync } = await import(pathToFileURL(client.resolve("vite")).href);

const READ = new Set([
  "aria-label", "aria-description", "aria-valuetext", "aria-roledescription", "aria-placeholder", "title", "placeholder", "alt",
  "label", "hint", "echo", "summary", "legend", "caption", "sentence", "content",
]);
const LETTER = /\p{L}/u;
const SENTENCE = /^\p{Lu}[\p{L}’']*(?:[ ,:]+[\p{L}\d’'(“]+)+/u;
const COMPARES = new Set(["===", "!==", "==", "!=", "<", ">", "<=", ">=", "in", "instanceof"]);
const WRAPPERS = new Set(["TSAsExpression", "TSNonNullExpression", "ParenthesizedExpression", "JSXExpressionContainer"]);
const SAYS = /^(say\w*|hasWords|Error|\w*Error|\w*Trouble)$/;

const nameOf = (node) => node?.name?.name ?? node?.name ?? node?.property?.name ?? "";

/** Literals of an expression that can become its value: not what it is compared with, nor what is handed to a function. */
function* values(node) {
  if (!node) return;
  if (node.type === "Literal" && typeof node.value === "string") yield [node, node.value];
  else if (node.type === "TemplateLiteral") {
    for (const part of node.quasis) yield [part, part.value.cooked ?? ""];
    for (const inner of node.expressions) yield* values(inner);
  } else if (node.type === "ConditionalExpression") yield* [...values(node.consequent), ...values(node.alternate)];
  else if (node.type === "LogicalExpression") yield* [...values(node.left), ...values(node.right)];
  else if (node.type === "BinaryExpression" && !COMPARES.has(node.operator)) yield* [...values(node.left), ...values(node.right)];
  else if (node.type === "ArrayExpression") for (const one of node.elements) yield* values(one);
  else if (WRAPPERS.has(node.type)) yield* values(node.expression);
}

/** Each node below `node` with its parents, nearest last. */
function* nodes(node, above = []) {
  if (Array.isArray(node)) {
    for (const one of node) yield* nodes(one, above);
  } else if (node && typeof node.type === "string") {
    yield [node, above];
    for (const [key, inner] of Object.entries(node)) if (key !== "loc" && inner && typeof inner === "object") yield* nodes(inner, [...above, node]);
  }
}

const isHandedOn = (above) => above.some((node) => ["CallExpression", "NewExpression"].includes(node.type) && SAYS.test(nameOf(node.callee)));
/** A module's name, a type, or one side of a comparison. */
const isNoText = (above) => /^(Import|Export|TSLiteralType)/.test(above.at(-1)?.type ?? "") || COMPARES.has(above.at(-1)?.operator);

/** Whatever of one node people would read. */
function* textsOf(node, above) {
  if (node.type === "JSXText") yield [node, node.value];
  else if (node.type === "JSXAttribute" && READ.has(nameOf(node))) yield* values(node.value);
  else if (node.type === "JSXExpressionContainer" && /^JSX(Element|Fragment)$/.test(above.at(-1)?.type ?? "")) yield* values(node.expression);
  else if (node.type === "AssignmentExpression" && /^(title|textContent|innerText)$/.test(nameOf(node.left))) yield* values(node.right);
  else if (node.type === "Property" && READ.has(nameOf(node.key))) yield* values(node.value);
  else if (node.type === "Literal" && SENTENCE.test(node.value) && !isHandedOn(above) && !isNoText(above)) yield [node, node.value];
}

function foundIn(file) {
  const source = readFileSync(file, "utf8");
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0].message}`);
  const found = new Map();
  for (const [node, above] of nodes(program)) {
    for (const [at, text] of textsOf(node, above)) if (LETTER.test(text)) found.set(at.start, text.trim());
  }
  return [...found].map(([start, text]) => ({ file, line: source.slice(0, start).split("\n").length, text }));
}

console.log(JSON.stringify(process.argv.slice(2).flatMap(foundIn)));
