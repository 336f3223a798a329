/**
 * What the screens may ask of the phone's own record, as types only.
 * This file says what a promise means when it resolves; it holds no code and must not learn how rows are kept.
 */
import type { Signal } from "@preact/signals";

/** A person known to this phone, as the server last confirmed it. Stays readable without network. */
export interface SignedIn {
  readonly practice: string;
  readonly practiceName: string;
  readonly person: string;
  readonly personName: string;
  readonly role: "nurse" | "veterinarian" | "manager" | "student";
  readonly device: string;
}

/** Why sending or fetching does not get through just now. A code; the sentence is `network-<code>` in words/en.ftl. */
export type NetworkTrouble =
  | "no_network" // no answer at all
  | "timed_out" // nothing within 30 s
  | "not_ours" // an answer, but not from our server: a hotel's or a shop's own page
  | "not_understood" // cut off, wrong count or wrong form: nothing in it was taken for delivery
  | "busy" // the server asked us to wait
  | "server_trouble" // the server failed
  | "practice_closed" // the server does not know this practice or this phone may not hand in to it
  | "app_too_old" // the server no longer speaks this build's language for reading
  | "record_differs"; // a pulled page does not fit what came before it: nothing of it was kept

/** What is wrong with the phone's own store. The sentence is `storage-<code>`. */
export type StorageTrouble =
  | "blocked" // an older window of this app keeps the store from opening
  | "reload_needed" // a newer window wants to change the store; this one has let go of it
  | "lost" // the browser dropped the store and did not give it back
  | "full"; // no room left: what is on the screen is not saved

/** The one true line about what is where. Every number is counted in the store, never in memory. */
export interface Status {
  /** Entries filed here and not yet answered by the server; 0 is said too. */
  readonly unsent: number;
  /** When the oldest unanswered entry was filed, ms UTC. */
  readonly oldestUnsentMs?: number;
  /** When the server last took something from this phone, ms UTC. */
  readonly lastSentMs?: number;
  /** When the last pull came to its end, ms UTC: the record shown is "as of" then. */
  readonly lastPulledMs?: number;
  /** Those of `unsent` that were filed for another practice: they go out when somebody of it signs in here again. */
  readonly unsentElsewhere?: number;
  /** A hand-in is under way in this window. */
  readonly sending: boolean;
  /** Entries that wait for a person: refused, held, or set aside after five failures of their own. */
  readonly needsYou: number;
  readonly network?: NetworkTrouble;
  readonly storage?: StorageTrouble;
  /** When the phone tries again by itself, ms UTC. */
  readonly nextTryMs?: number;
  /** Reading asks for sign-in; handing in goes on without. */
  readonly signInNeeded: boolean;
  /** The server does not know this phone any more: handing in waits for a sign-in too. */
  readonly signInToSend: boolean;
  /** What the browser answered when asked to keep this store; undefined = not asked yet. */
  readonly keptByBrowser?: boolean;
}

/**
 * Unfinished work. The screens own `content` (plain JSON); nothing here looks inside, but for one key: with `form: true`
 * it is a half-typed form (a new animal, say) and no measurement.
 */
export interface Draft {
  /** Make it with `newId()`: it becomes the letter's id, so that two windows cannot file it twice. */
  readonly id: string;
  readonly updatedMs: number;
  readonly content: unknown;
}

export type Kind = "patient" | "measurement" | "bag";

/** What the author states; id, author, times, basis are added at filing. */
export interface LetterParts {
  readonly kind: Kind;
  readonly body: object;
  /** Name of the rule set, with `assessment`: both for a measurement, none for anything else. */
  readonly rules?: string;
  readonly assessment?: object;
  /** Id of the first letter this one replaces, with the whole new body. */
  readonly amends?: string;
  readonly reason?: string;
}

/** letter.1 as kept: read-only, its bytes were made once. */
export interface Letter {
  readonly id: string;
  readonly kind: string;
  readonly schema: number;
  readonly author: string;
  readonly basis: number;
  readonly made_at_ms: number;
  readonly zone: string;
  readonly offset_min: number;
  readonly clock_offset_ms?: number;
  readonly amends?: string;
  readonly reason?: string;
  readonly rules?: string;
  readonly assessment?: object;
  readonly body: Readonly<Record<string, unknown>>;
}

/** A filed letter: it is on this phone for good, whatever the network does. */
export interface Filed {
  readonly id: string;
  /** The phone's own count, dense from 1. */
  readonly number: number;
  readonly sha: string;
  readonly letter: Letter;
}

/** `training`: made in training, in a store of its own, and never offered to a server. */
export type EntryState = "waiting" | "stored" | "held" | "refused" | "training";

/** One of this phone's own entries, and what the server said to it. */
export interface OutboxEntry {
  readonly number: number;
  readonly id: string;
  readonly practice: string;
  readonly state: EntryState;
  /** Its place in the record; only with `stored`. */
  readonly position?: number;
  /** Why it is held or refused, or why it was set aside while still waiting. Such an entry needs a person. */
  readonly code?: string;
  /** Where in the letter, a JSON Pointer. */
  readonly path?: string;
  /** How often this very entry failed while others went through. */
  readonly tries: number;
  /** The server's own assessment, only where it differs from the letter's. */
  readonly serverAssessment?: object;
  /** Undefined when its box cannot be opened with this practice's key. */
  readonly letter?: Letter;
}

/** What a patient's latest letter says, and where it stands. */
export interface PatientCard {
  /** Id of the patient's first letter. */
  readonly id: string;
  readonly letter: Letter;
  /** The server has answered for this letter; false = on this phone only. */
  readonly inRecord: boolean;
  /** Letters that amended the first one. */
  readonly amendments: number;
  readonly visits: number;
  /** When the latest visit began, ms UTC. */
  readonly lastVisitMs?: number;
}

/** What a bag's latest letter says, and where it stands. */
export interface BagCard {
  /** Id of the bag's first letter: what an amendment names. */
  readonly id: string;
  readonly letter: Letter;
  /** The server has answered for this letter; false = on this phone only. */
  readonly inRecord: boolean;
}

/** One measurement in its latest wording. */
export interface Visit {
  /** Id of the measurement's first letter. */
  readonly id: string;
  readonly patient?: string;
  /** When the measurement began, ms UTC; its filing where no beginning is stated. */
  readonly startedMs: number;
  readonly letter: Letter;
  readonly inRecord: boolean;
  readonly position?: number;
  /** Only for own entries that are not in the record. */
  readonly state?: EntryState;
  readonly code?: string;
  /** The server's own assessment, only where it differs; it stands, and the difference is shown. */
  readonly serverAssessment?: object;
  /** Earlier wordings, oldest first. */
  readonly earlier: readonly Letter[];
}

/** The phone's own record. One a window; `close` is for tests and for letting go before a reload. */
export interface Phone {
  readonly who: Signal<SignedIn | undefined>;
  readonly status: Signal<Status>;
  /** Goes up by one after every commit, of this window or of another. Read again when it changes. */
  readonly changed: Signal<number>;
  /** Measurements not filed yet, newest first. Empty while nobody is signed in. */
  drafts(): Promise<Draft[]>;
  /** Half-typed forms, newest first. Kept, dropped and filed like any draft. */
  forms(): Promise<Draft[]>;
  /**
   * Resolves when the draft is flushed to the phone's disk: only then may the screen show what was typed as kept.
   * `ifThere`: nothing is written where it was filed or dropped meanwhile.
   */
  keepDraft(draft: Draft, ifThere?: boolean): Promise<void>;
  dropDraft(id: string): Promise<void>;
  /** Resolves when the letter is flushed to disk and the draft is gone, and the setting of this name with it: one transaction. */
  file(parts: LetterParts, draftId?: string, setting?: string): Promise<Filed>;
  /** Own entries of this practice, newest first. */
  outbox(): Promise<OutboxEntry[]>;
  /** By latest visit, newest first, then by name. */
  patients(): Promise<PatientCard[]>;
  /** Each in its latest wording, by name. */
  bags(): Promise<BagCard[]>;
  /** Of one patient, newest first. */
  visits(patient: string): Promise<Visit[]>;
  /** A small setting of this practice on this phone (the bag's widths), boxed like everything else. */
  remember(name: string, value: unknown): Promise<void>;
  /** undefined when it was never remembered. */
  recall(name: string): Promise<unknown>;
  /** Needs network. Throws PhoneTrouble: wrong_login, wait, or a NetworkTrouble. */
  signIn(login: string, password: string): Promise<SignedIn>;
  /** Works without network. Keeps everything unsent, and goes on handing it in. */
  signOut(): Promise<void>;
  /** A press on the button: try now, whatever the waiting time was. Never throws; the status says how it went. */
  syncNow(): Promise<void>;
  close(): void;
}
