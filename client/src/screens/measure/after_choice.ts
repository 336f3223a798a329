/* Where the focus goes once the choice of an animal is over, since the key that ended it is gone: to the line that says under whom the
   visit is filed, else to the result. Must not move it at any other time. */
import { useEffect, useRef } from "preact/hooks";

/** The line that names the animal, and the result itself, in the page. */
export const FILE_WHO_ID = "file-who";
export const RESULT_ID = "result-now";

/** For the whole part; a screen reader reads out what takes the focus. */
export function useAfterChoice(isChoosing: boolean): void {
  const wasChoosing = useRef(isChoosing);
  useEffect(() => {
    const isOver = wasChoosing.current && !isChoosing;
    wasChoosing.current = isChoosing;
    const goal = document.getElementById(FILE_WHO_ID) ?? document.getElementById(RESULT_ID);
    if (isOver) goal?.focus({ preventScroll: true });
  }, [isChoosing]);
}
