/* The cuff against the heart: level, above or below, by 5 cm, 10 cm or another distance. Kept as mm above the heart base. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { withField, withPlain } from "./fields";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type Open } from "./open";
import { Typed } from "./typed";

type Side = "level" | "above" | "below";
type Distance = "5" | "10" | "other";

const DISTANCES_MM: Record<"5" | "10", number> = { "5": 50, "10": 100 };

function sideOf(open: Open): Side | undefined {
  const said = open.texts["height_side"] as Side | undefined;
  const mm = setNow(open).cuff_above_heart_mm;
  if (mm === undefined) return said;
  return mm === 0 ? (said ?? "level") : mm > 0 ? "above" : "below";
}

function distanceOf(open: Open): Distance | undefined {
  if (open.texts["height_other"] === "yes") return "other";
  const mm = Math.abs(setNow(open).cuff_above_heart_mm ?? 0);
  return mm === DISTANCES_MM[5] ? "5" : mm === DISTANCES_MM[10] ? "10" : undefined;
}

function withSide(open: Open, side: Side): Open {
  const before = Math.abs(setNow(open).cuff_above_heart_mm ?? 0);
  const texts = { ...open.texts, height_side: side, ...(side === "level" ? { height: "", height_other: "" } : {}) };
  const mm = side === "level" ? 0 : before === 0 ? undefined : side === "above" ? before : -before;
  return changed({ ...open, texts }, "field-height", inSetNow(open, "cuff_above_heart_mm"), mm);
}

function withDistance(open: Open, distance: Distance): Open {
  const at = inSetNow(open, "cuff_above_heart_mm");
  if (distance === "other") {
    const asked = withPlain({ ...open, texts: { ...open.texts, height_other: "yes" } }, at, undefined);
    return withField(asked, "height", open.texts["height"] ?? "");
  }
  const mm = open.texts["height_side"] === "below" ? -DISTANCES_MM[distance] : DISTANCES_MM[distance];
  return changed({ ...open, texts: { ...open.texts, height: "", height_other: "" } }, "field-height", at, mm);
}

/** Two questions, the second only when the cuff is not level. */
export function HeightChoice({ open, keeping }: { open: Open; keeping: Keeping }): JSX.Element {
  const side = sideOf(keeping.head());
  const distance = distanceOf(keeping.head());
  return (
    <>
      <Choices
        name="height"
        label={say("field-height")}
        answers={(["level", "above", "below"] as const).map((value) => ({ value, label: say(`height-${value}`) }))}
        value={side}
        onChoose={(value) => keeping.act((head) => withSide(head, value))}
      />
      {(side === "above" || side === "below") && (
        <Choices
          name="height-by"
          label={say("field-height-by")}
          answers={(["5", "10", "other"] as const).map((value) => ({ value, label: say(`height-${value}`) }))}
          value={distance}
          onChoose={(value) => keeping.act((head) => withDistance(head, value))}
        />
      )}
      {side !== "level" && distance === "other" && <Typed open={open} keeping={keeping} field="height" />}
    </>
  );
}
