/*
 * What a page is asked about itself. One expression: an object of functions, each answering with a list of faults in words.
 * It only looks; what it turns for a moment (an attribute, a size of text) it turns back. It must not know one screen from another.
 */
(() => {
  const TARGETS = "a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex='0'], [role=button], [role=link]";
  const COLOURS = ["color", "backgroundColor", "borderBlockStartColor", "borderInlineStartColor", "borderBlockEndColor", "borderInlineEndColor",
    "outlineColor", "fill", "stroke"];
  const SHAPES = ["borderBlockStartWidth", "borderInlineStartWidth", "borderBlockEndWidth", "borderInlineEndWidth", "borderBlockStartStyle",
    "borderInlineStartStyle", "borderBlockEndStyle", "outlineStyle", "outlineWidth", "fontWeight", "fontSize", "fontStyle", "textDecorationLine",
    "paddingInlineStart", "paddingBlockStart", "display", "visibility", "strokeWidth", "strokeDasharray", "content"];

  const isSeen = (element) => {
    if (!element.checkVisibility({ visibilityProperty: true })) return false;
    const { width, height, bottom } = element.getBoundingClientRect();
    return width > 1 && height > 1 && bottom + scrollY > 0;
  };
  const nameOf = (element) => {
    const said = element.getAttribute("aria-label") ?? (element.labels?.[0]?.textContent || element.textContent) ?? "";
    return said.trim().slice(0, 40) || element.tagName.toLowerCase();
  };
  const isIn = (element, part) => element.closest(part) !== null;
  const targets = () => [...document.querySelectorAll(TARGETS)].filter(isSeen);
  const everything = () => [...document.body.querySelectorAll("*")].filter((element) => element.checkVisibility());
  const floatOf = (element) => {
    for (let at = element; at; at = at.parentElement) if (/fixed|sticky/.test(getComputedStyle(at).position)) return at;
    return null;
  };

  /** Targets smaller than `least` px, in the Readings than `inReadings`. */
  function smallTargets(least, inReadings) {
    return targets().flatMap((element) => {
      const { width, height } = element.getBoundingClientRect();
      const wanted = isIn(element, ".readings") ? inReadings : least;
      return Math.min(width, height) >= wanted - 0.5 ? [] : [`${nameOf(element)}: ${width.toFixed(1)} × ${height.toFixed(1)}, not ${wanted}`];
    });
  }

  /** Neighbours nearer than `least` px, in the Readings than `inReadings`. What floats over the rest has neighbours only there. */
  function closeTargets(least, inReadings) {
    const found = targets().map((element) => [element, element.getBoundingClientRect(), floatOf(element)]);
    const apart = (a, b) => Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
    return found.flatMap(([one, a, over], at) => found.slice(at + 1).flatMap(([other, b, under]) => {
      if (over !== under || one.contains(other) || other.contains(one)) return [];
      const wanted = isIn(one, ".readings") && isIn(other, ".readings") ? inReadings : least;
      return apart(a, b) >= wanted - 0.5 ? [] : [`${nameOf(one)} and ${nameOf(other)}: ${apart(a, b).toFixed(1)} px, not ${wanted}`];
    }));
  }

  /** What sticks out of a page of this width, out of a box that hides it, or out of its own key. */
  function clipped(width) {
    const wide = document.documentElement.scrollWidth > width ? [`the page is ${document.documentElement.scrollWidth} px wide, not ${width}`] : [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const cut = [];
    for (let text = walker.nextNode(); text; text = walker.nextNode()) {
      const element = text.parentElement;
      if (!text.data.trim() || !isSeen(element) || isIn(element, ".unseen, .skip, title")) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      for (const box of range.getClientRects()) if (sticksOut(element, box, width)) cut.push(`“${text.data.trim().slice(0, 40)}” is cut`);
    }
    const numbers = [...document.querySelectorAll("input[inputmode=none]")].filter(isSeen);
    const full = numbers.filter((field) => field.scrollWidth > field.clientWidth + 1);
    return [...wide, ...new Set(cut), ...full.map((field) => `the number in ${nameOf(field)} does not fit`)];
  }

  function sticksOut(element, box, width) {
    if (box.width < 1) return false;
    if (box.left < -1 || box.right > width + 1) return true;
    for (let at = element; at && at !== document.body; at = at.parentElement) {
      const hides = /hidden|clip/.test(getComputedStyle(at).overflow);
      if (!hides && !/^(button|a|label|svg)$/i.test(at.tagName)) continue;
      const around = at.getBoundingClientRect();
      if (box.left < around.left - 1.5 || box.right > around.right + 1.5) return true;
      if (hides && (box.top < around.top - 1.5 || box.bottom > around.bottom + 1.5)) return true;
    }
    return false;
  }

  const isReachedAt = (element, block) => {
    element.scrollIntoView({ block, behavior: "instant" });
    const { left, top, width, height } = element.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + height / 2);
    return hit !== null && (element.contains(hit) || hit.closest("label")?.contains(element) === true);
  };

  /** Targets that cannot be brought under a finger: wherever the page is scrolled to, something else lies on top. */
  function outOfReach() {
    const before = scrollY;
    const found = targets().filter((element) => !["center", "start", "end"].some((block) => isReachedAt(element, block)));
    scrollTo({ top: before, behavior: "instant" });
    return found.map((element) => `${nameOf(element)} cannot be reached`);
  }

  // a radio button is drawn by what stands beside it
  const besideOf = (element) => (element.tagName === "INPUT" && element.nextElementSibling ? [element.nextElementSibling] : []);
  const parts = (element) => [element, ...element.querySelectorAll("*"), ...besideOf(element)];
  const looksOf = (element, names) => parts(element).flatMap((part) => [null, "::before", "::after"].map((pseudo) => {
    const style = getComputedStyle(part, pseudo);
    return names.map((name) => style[name]).join("|");
  })).join("\n");
  // a shadow's or outline's colour is no shape, its reach is; a shape is filled or hollow
  const shapeOf = (element) => looksOf(element, SHAPES) + parts(element).map((part) => {
    const style = getComputedStyle(part);
    return style.boxShadow.replace(/(rgba?|color)\([^)]*\)/g, "") + (style.fill === "none") + (style.backgroundImage !== "none");
  }).join("\n") + element.textContent;
  const colourOf = (element) => looksOf(element, COLOURS) + parts(element).map((part) => getComputedStyle(part).boxShadow).join("\n");

  const STATES = ["aria-pressed", "aria-expanded", "aria-checked", "aria-current", "aria-selected", "aria-invalid", "data-now",
    "data-wrong", "data-ok", "data-over", "data-state", "disabled", "open"];
  const shownOnes = (selector) => [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility());

  /** States told by colour alone: with the state taken away the colours change and no shape and no word does. */
  function colourOnly() {
    const byAttribute = STATES.flatMap((name) => shownOnes(`[${name}]`).flatMap((element) => {
      const value = element.getAttribute(name);
      const [colour, shape] = [colourOf(element), shapeOf(element)];
      element.removeAttribute(name);
      const isOnlyColour = colourOf(element) !== colour && shapeOf(element) === shape;
      element.setAttribute(name, value);
      return isOnlyColour ? [`${nameOf(element)}: ${name} is told by colour alone`] : [];
    }));
    return [...byAttribute, ...byChecked(), ...bySibling()];
  }

  /** A chosen answer against one that is not chosen, in the same group. */
  function byChecked() {
    return [...document.querySelectorAll("input:checked")].filter(isSeen).flatMap((chosen) => {
      const other = [...document.querySelectorAll(`input[name="${chosen.name}"]:not(:checked)`)].find(isSeen);
      if (!other) return [];
      const words = (element) => shapeOf(element).replaceAll(element.nextElementSibling?.textContent ?? "", "");
      return words(chosen) === words(other) && colourOf(chosen) !== colourOf(other) ? [`${nameOf(chosen)}: chosen is told by colour alone`] : [];
    });
  }

  /** Marks and words of the same kind side by side that differ in colour and in nothing else. */
  function bySibling() {
    const same = (one, other) => one.tagName === other.tagName && one.textContent === other.textContent;
    return shownOnes("li, svg *, .state-word, span, strong").flatMap((element) => {
      const next = element.nextElementSibling;
      if (!next || !same(element, next) || element.tagName === "text") return [];
      const [fill, other] = [getComputedStyle(element).fill, getComputedStyle(next).fill];
      const isHollow = (fill === "none") !== (other === "none");
      const isAnother = ["d", "r", "points"].some((name) => element.getAttribute(name) !== next.getAttribute(name));
      const isOnlyColour = colourOf(element) !== colourOf(next) && shapeOf(element) === shapeOf(next);
      return isOnlyColour && !isHollow && !isAnother ? [`${nameOf(element)} and its neighbour differ by colour alone`] : [];
    });
  }

  const hex = (colour) => {
    const [red, green, blue, alpha] = colour.match(/[\d.]+/g)?.map(Number) ?? [];
    if (blue === undefined || alpha === 0) return undefined;
    const thin = alpha === undefined || alpha === 1 ? "" : " half-transparent";
    return `#${[red, green, blue].map((part) => part.toString(16).padStart(2, "0")).join("")}${thin}`;
  };

  /** Colours on the screen that are none of the look's, and the accent on what is no action. */
  function strangeColours(known, accent) {
    const faults = new Set();
    for (const element of everything()) {
      const style = getComputedStyle(element);
      if (style.opacity === "0") continue;
      const isDrawn = element instanceof SVGElement;
      for (const name of isDrawn ? ["fill", "stroke"] : COLOURS.slice(0, 6)) {
        if (/border|outline/.test(name) && style[name.replace("Color", "Style")] === "none") continue;
        const colour = style[name] === "none" ? undefined : hex(style[name]);
        if (!colour || (isDrawn && element.children.length > 0)) continue;
        const what = `${element.tagName.toLowerCase()}.${element.getAttribute("class") ?? ""}`;
        if (!known.includes(colour)) faults.add(`${name} ${colour} on ${what}`);
        else if (accent.includes(colour) && !element.closest("a, button, summary, [role=button]")) faults.add(`the accent on ${what}`);
      }
    }
    return [...faults];
  }

  /** Whatever moves although less motion was asked for. */
  function moving() {
    const running = document.getAnimations().map((one) => `${one.effect?.target?.className} runs ${one.animationName ?? one.transitionProperty}`);
    const could = everything().filter((element) => {
      const style = getComputedStyle(element);
      const lasts = style.transitionDuration.split(",").some((time) => parseFloat(time) > 0);
      return style.animationName !== "none" || lasts || style.scrollBehavior === "smooth";
    });
    return [...running, ...could.map((element) => `${element.tagName.toLowerCase()}.${element.className} could move`)];
  }

  return { smallTargets, closeTargets, clipped, outOfReach, colourOnly, strangeColours, moving };
})()
