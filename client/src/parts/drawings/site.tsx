/* One close look per site: where the cuff lies, where the artery runs (dashed), where the probe goes (the small square with its lead).
   Common practice, drawn from the side; must not say which site to choose. */
import type { JSX } from "preact";
import type { Site } from "./body";
import { Band, Drawing, type Heard, type Species } from "./drawing";

type Region = "fore" | "hind" | "tail";

interface Outline {
  limb: string;
  lines: readonly string[];
}

const OUTLINES: Readonly<Record<Species, Readonly<Record<Region, Outline>>>> = {
  dog: {
    fore: {
      limb: "M20 -6C24 12 28 26 36 38C43 46 47 52 48 60C50 70 50 80 49 88C48 95 43 98 37 102C32 106 30 112 33 116H66C69 112 69 106 67 101C66 97 70 94 69 88C70 76 75 64 80 54C94 60 106 58 126 53V-6Z",
      lines: ["M80 54C84 50 83 44 80 40C86 28 88 16 88 8", "M41 116C40 112 41 110 43 108M51 116C50 112 51 110 53 108", "M60 116C62 112 65 110 68 110"],
    },
    hind: {
      limb: "M-6 18C8 34 16 36 23 38C23 46 27 51 33 55C45 61 56 68 63 77C66 84 65 92 62 98C57 101 51 104 48 108C46 112 47 115 50 116H81C83 112 82 106 82 101C84 92 89 84 92 76C93 70 90 66 86 62C79 54 77 46 80 36C84 24 84 12 82 -6H-6Z",
      lines: ["M23 38C24 26 30 14 38 6", "M57 116C56 112 57 110 59 108M66 116C65 112 66 110 68 108"],
    },
    tail: {
      limb: "M-6 31C22 26 40 28 53 35C70 43 92 44 113 38C118 38 120 46 114 49C94 57 76 60 64 60C55 62 54 72 56 82C58 98 64 110 66 126H-6Z",
      lines: ["M10 118C8 96 16 76 34 66"],
    },
  },
  cat: {
    fore: {
      limb: "M22 -6C26 14 32 28 40 40C47 48 50 56 51 64C52 74 52 82 51 90C50 96 44 99 41 103C37 109 39 116 47 116H61C69 116 71 110 68 104C66 100 68 96 67 90C68 80 71 70 75 60C88 68 104 66 126 63V-6Z",
      lines: ["M75 60C78 56 78 50 75 46C80 34 82 22 82 12", "M48 116C46 112 47 109 49 107M55 116C54 112 55 109 57 107"],
    },
    hind: {
      limb: "M-6 38C6 42 16 42 22 42C23 50 28 55 34 58C46 63 57 69 65 76C68 82 67 90 64 97C60 100 54 102 52 106C49 111 51 116 57 116H74C81 115 81 108 80 101C82 92 86 84 89 76C90 70 87 66 83 62C76 55 74 48 77 38C82 26 82 14 78 -6H-6Z",
      lines: ["M22 42C22 30 28 16 38 8", "M60 116C58 112 59 109 61 107M67 116C66 112 67 109 69 107"],
    },
    tail: {
      limb: "M-6 48C18 34 38 32 52 38C70 46 92 48 126 38V48C96 60 78 58 63 57C55 59 54 68 57 80C60 96 66 110 68 126H-6Z",
      lines: ["M12 118C8 98 16 80 36 70"],
    },
  },
};

interface Placing {
  region: Region;
  cuff: { at: readonly [number, number]; width: number; across: number; turn: number };
  artery: string;
  /** Middle of the probe, and where its lead goes. */
  probe: readonly [number, number];
  lead: string;
}

const PALM = { probe: [71, 98], lead: "M75 98C88 98 92 106 106 104" } as const;
const TO_PALM = "C66 66 62 80 63 90C63 96 62 100 60 104";

const PLACINGS: Readonly<Record<Site, Placing>> = {
  forearm: { region: "fore", cuff: { at: [60, 70], width: 22, across: 29, turn: 8 }, artery: `M46 12C56 26 66 38 67 50${TO_PALM}`, ...PALM },
  above_elbow: { region: "fore", cuff: { at: [61, 36], width: 20, across: 46, turn: -32 }, artery: `M46 12C56 26 66 38 67 50${TO_PALM}`, ...PALM },
  above_hock: {
    region: "hind", cuff: { at: [62, 60], width: 18, across: 32, turn: -48 },
    artery: "M36 36C46 50 60 62 68 74C71 82 69 92 63 104", probe: [60, 91], lead: "M56 91C42 90 36 98 22 96",
  },
  metatarsus: {
    region: "hind", cuff: { at: [76, 88], width: 17, across: 26, turn: 12 },
    artery: "M68 50C78 60 84 72 80 84C76 94 76 98 73 105", probe: [85, 104], lead: "M89 104C98 104 102 110 114 108",
  },
  tail_base: {
    region: "tail", cuff: { at: [74, 50], width: 17, across: 27, turn: 88 },
    artery: "M44 50C56 54 84 56 112 46", probe: [93, 60], lead: "M93 64C92 76 100 82 112 82",
  },
};

const PROBE = 8;

interface Props extends Heard {
  species: Species;
  site: Site;
  /** The probe is drawn for Doppler only; a machine needs none. */
  probe?: boolean;
}

/** The limb or tail from its left side, cuff on, toes or tip as in life. */
export function SiteDrawing({ species, site, probe = true, label }: Props): JSX.Element {
  const { region, cuff, artery, probe: [x, y], lead } = PLACINGS[site];
  const { limb, lines } = OUTLINES[species][region];
  return (
    <Drawing size={[120, 120]} label={label} framed>
      <path class="skin" d={limb} />
      {lines.map((line) => (
        <path class="fine" key={line} d={line} />
      ))}
      <path class="dashed" d={artery} />
      <Band {...cuff} kind="now" />
      {probe && <path d={lead} />}
      {probe && <rect class="skin" x={x - PROBE / 2} y={y - PROBE / 2} width={PROBE} height={PROBE} />}
    </Drawing>
  );
}
