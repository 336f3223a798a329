/* The name of the animal whose measurement was filed last, said once on the patient list. Nothing else is remembered here. */
import { signal } from "@preact/signals";

export const filedNow = signal<string | undefined>(undefined);
