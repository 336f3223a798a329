/*
 * What a part draws, as markup, without a browser: its components are called and their elements written down.
 * Only for parts without hooks; one with hooks fails here, loudly.
 */
import type { ComponentChild, VNode } from "preact";

const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPES[sign] as string);

function isElement(child: unknown): child is VNode<Record<string, unknown>> {
  return typeof child === "object" && child !== null && "type" in child;
}

/** `<path class="far" d="…"></path>` and so on; what a component gives back is written in its place. */
export function markup(child: unknown): string {
  if (child === null || child === undefined || typeof child === "boolean") return "";
  if (Array.isArray(child)) return child.map(markup).join("");
  if (!isElement(child)) return escaped(String(child));
  const { type, props } = child;
  if (typeof type === "function") return markup((type as (given: unknown) => ComponentChild)(props));
  const attributes = Object.entries(props)
    .filter(([name, value]) => name !== "children" && value !== undefined && value !== false)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
  return `<${type}${attributes.join("")}>${markup(props["children"])}</${type}>`;
}
