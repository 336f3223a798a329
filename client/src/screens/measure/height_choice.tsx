/* The cuff against the heart in one question of four: level, above, below, not known; above and below by 5 cm, 10 cm or another
   distance. Kept as mm above the heart base; "not known" stays out of the record and is remembered in the draft alone. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { Choices } from "../../parts/choices";
import { cm } from "../../parts/figures";
import { Guide } from "../../parts/guide";
import { kebab } from "../../parts/word_ids";
import { Fold, type Folds } from "./cuff_question";
import { withField, withPlain } from "./fields";
import type { Keeping } from "./keeping";
import { changed, inSetNow, setNow, type Open } from "./open";
import { Typed } from "./typed";

export type Level = "level" | "above" | "below" | "not_known";
type Distance = "5" | "10" | "other";

const DISTANCES_MM: Record<"5" | "10", number> = { "5": 50, "10": 100 };

const LEVELS: readonly Level[] = ["level", "above", "below", "not_known"];

/** Which of the four was chosen; undefined when none was. */
export function levelOf(open: Open): Level | undefined {
  const said = open.texts["height_side"] as Level | undefined;
  const mm = setNow(open).cuff_above_heart_mm;
  if (mm === undefined) return said === "level" ? undefined : said;
  return mm === 0 ? (said ?? "level") : mm > 0 ? "above" : "below";
}

function distanceOf(open: Open): Distance | undefined {
  if (open.texts["height_other"] === "yes") return "other";
  const mm = Math.abs(setNow(open).cuff_above_heart_mm ?? 0);
  return mm === DISTANCES_MM[5] ? "5" : mm === DISTANCES_MM[10] ? "10" : undefined;
}

/** One of the four. Above and below keep a distance that was noted; level is 0 mm, not known nothing at all. */
export function withLevel(open: Open, level: Level): Open {
  const before = Math.abs(setNow(open).cuff_above_heart_mm ?? 0);
  const isOff = level === "above" || level === "below";
  const texts = { ...open.texts, height_side: level, ...(isOff ? {} : { height: "", height_other: "" }) };
  const off = before === 0 ? undefined : level === "above" ? before : -before;
  return changed({ ...open, texts }, "field-height", inSetNow(open, "cuff_above_heart_mm"), isOff ? off : level === "level" ? 0 : undefined);
}

/** How far above or below. */
export function withDistance(open: Open, distance: Distance): Open {
  const at = inSetNow(open, "cuff_above_heart_mm");
  const side = levelOf(open) ?? "above";
  if (distance === "other") {
    const asked = withPlain({ ...open, texts: { ...open.texts, height_side: side, height_other: "yes" } }, at, undefined);
    return withField(asked, "height", open.texts["height"] ?? "");
  }
  const mm = side === "below" ? -DISTANCES_MM[distance] : DISTANCES_MM[distance];
  return changed({ ...open, texts: { ...open.texts, height_side: side, height: "", height_other: "" } }, "field-height", at, mm);
}

function answerOf(open: Open): string | undefined {
  const level = levelOf(open);
  const mm = setNow(open).cuff_above_heart_mm;
  if (!level) return undefined;
  return mm === undefined || mm === 0 ? say(`height-${kebab(level)}`) : say("height-line", { cm: cm(Math.abs(mm)), where: say(`height-word-${level}`) });
}

/** The question, and how far only when the cuff is above or below. */
export function HeightChoice({ open, keeping, folds }: { open: Open; keeping: Keeping; folds: Folds }): JSX.Element {
  const level = levelOf(keeping.head());
  const distance = distanceOf(keeping.head());
  const isOff = level === "above" || level === "below";
  return (
    <Fold folds={folds} question="height" label={say("line-height")} answer={answerOf(open)}>
      <div class="stack">
        <Choices
          name="height"
          label={say("field-height")}
          answers={LEVELS.map((value) => ({ value, label: say(`height-${kebab(value)}`) }))}
          value={level}
          onChoose={(value) => keeping.act((head) => withLevel(head, value))}
        />
        {isOff && (
          <Choices
            name="height-by"
            label={say("field-height-by")}
            answers={(["5", "10", "other"] as const).map((value) => ({ value, label: say(`height-${value}`) }))}
            value={distance}
            onChoose={(value) => keeping.act((head) => withDistance(head, value))}
          />
        )}
        {isOff && distance === "other" && <Typed open={open} keeping={keeping} field="height" />}
        <Guide step="level" species={open.measurement.species} method={setNow(open).method} />
      </div>
    </Fold>
  );
}
