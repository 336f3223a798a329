/* A text field of the open measurement: what was typed stays, its reading is echoed, and what cannot be read is said once its part was left. */
import type { JSX } from "preact";
import { say } from "../../contract/words";
import { TextField } from "../../parts/text_field";
import { echoOf, nameOf, withField, type FieldId } from "./fields";
import type { Keeping } from "./keeping";
import type { Open } from "./open";
import { problemsToShow } from "./part_problems";
import { saying } from "./wording";

interface Props {
  open: Open;
  keeping: Keeping;
  field: FieldId;
  hint?: string;
  mode?: "decimal" | "numeric";
  onEnter?: () => void;
}

/** A text field of the open measurement. */
export function Typed({ open, keeping, field, hint, mode = "decimal", onEnter }: Props): JSX.Element {
  const echoed = echoOf(field, open);
  return (
    <TextField
      id={field}
      label={say(nameOf(field))}
      hint={hint}
      echo={echoed && saying(echoed)}
      mode={mode}
      text={open.texts[field] ?? ""}
      newest={() => keeping.head().texts[field] ?? ""}
      problems={problemsToShow(open)}
      onText={(text) => keeping.act((head) => withField(head, field, text))}
      onEnter={onEnter}
    />
  );
}
