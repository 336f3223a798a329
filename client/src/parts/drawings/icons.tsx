/* The few icons of the app, drawn by us on 24 units with one line. An icon never stands for a word alone: a word is beside it, or the
   button has a name. Must not use a sign that belongs to somebody: no tick, cloud, bell, hourglass, heart. */
import type { JSX } from "preact";

export type IconName =
  | "back" | "undo" | "delete_digit" | "more" | "warning"
  | "waiting" | "sending" | "in_the_record" | "needs_you"
  | "look_day" | "look_dim" | "look_outdoor" | "hand_left" | "hand_right" | "quiet_time" | "add" | "search" | "bag" | "help";

const SUN = "M12 2V4M12 20V22M2 12H4M20 12H22M5 5L6.400 6.400M17.600 17.600L19 19M5 19L6.400 17.600M17.600 6.400L19 5";
const HAND = "M8 21V15L5 11C4 9.500 6 8.500 7 10L9 12.500V5C9 3.300 11.500 3.300 11.500 5V10V4C11.500 2.300 14 2.300 14 4V10.500V6C14 4.500 16.500 4.500 16.500 6V16C16.500 18 16 19 15 21Z";

/** Lines of each icon; what is filled stands under `solid`. */
const LINES: Readonly<Record<IconName, string>> = {
  back: "M15 4L7 12L15 20",
  undo: "M8 5L4 9L8 13M4 9H14C18 9 20 11.500 20 14.500S18 20 14 20H10",
  delete_digit: "M8 5H21V19H8L2 12ZM11 9L17 15M17 9L11 15",
  more: "",
  warning: "M12 3L22 20H2ZM12 9.500V14",
  waiting: "M6 2H18V22H6Z",
  sending: "M8.500 12H13M11 9.500L13.500 12L11 14.500M16 8H23V16H16Z",
  in_the_record: "M4 4H20V20H4Z",
  needs_you: "M12 2L22 12L12 22L2 12ZM12 7.500V13",
  look_day: `M12 8A4 4 0 1 0 12 16A4 4 0 1 0 12 8Z${SUN}`,
  look_dim: "M19 15A8 8 0 1 1 10 4.500A6.500 6.500 0 0 0 19 15Z",
  look_outdoor: `${SUN}`,
  hand_left: HAND,
  hand_right: HAND,
  quiet_time: "M2 7V17M22 7V17M2 12H22",
  add: "M12 4V20M4 12H20",
  search: "M10.500 4A6.500 6.500 0 1 0 10.500 17A6.500 6.500 0 1 0 10.500 4ZM15.500 15.500L21 21",
  bag: "M4 8H20V20H4ZM9 8V5H15V8M4 13H20",
  help: "M8 9C8 4 16 4 16 9C16 12 12 12 12 15.500",
};

/** A round point of 1 unit. */
const point = (x: number, y: number): string => `M${x - 1} ${y}a1 1 0 1 0 2 0a1 1 0 1 0 -2 0Z`;

const SOLID: Partial<Readonly<Record<IconName, string>>> = {
  more: point(5, 12) + point(12, 12) + point(19, 12),
  warning: point(12, 17),
  needs_you: point(12, 16.500),
  help: point(12, 19.500),
  waiting: "M9.500 9.500H14.500V14.500H9.500Z",
  sending: "M1.500 9.500H6.500V14.500H1.500Z",
  quiet_time: "M2 10H13V14H2Z",
  in_the_record: "M8 8H16V16H8Z",
  look_outdoor: "M12 7A5 5 0 1 0 12 17A5 5 0 1 0 12 7Z",
};

/** Always passed over by a screen reader: what it sits in has the name. */
export function Icon({ name }: { name: IconName }): JSX.Element {
  const solid = SOLID[name];
  return (
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <g transform={name === "hand_right" ? "translate(24 0) scale(-1 1)" : undefined}>
        {LINES[name] && <path d={LINES[name]} />}
        {solid && <path class="solid" d={solid} />}
      </g>
    </svg>
  );
}

export const ICON_NAMES = Object.keys(LINES) as readonly IconName[];
