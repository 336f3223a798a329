/* The look before the first paint: without it a phone in a dim room flashes bright at each start. It runs before the style sheet is
   read, so it stands beside the bundle; what it finds stays on the root, where the app reads it. Kept in the browser's small store. */
(() => {
  const root = document.documentElement;
  let kept = null;
  try {
    kept = localStorage.getItem("quietcuff-look");
  } catch {
    /* A browser that refuses its small store still gets the look of the device. */
  }
  const known = ["day", "dim", "outdoor"].includes(kept);
  const device = matchMedia("(prefers-contrast: more)").matches ? "outdoor" : matchMedia("(prefers-color-scheme: dark)").matches ? "dim" : "day";
  root.dataset.look = known ? kept : device;
  root.style.colorScheme = root.dataset.look === "dim" ? "dark" : "light";
})();
