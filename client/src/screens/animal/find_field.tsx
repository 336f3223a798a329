/* The field by which an animal is found in a list: on the round, and where a visit is filed under one. Must not search by itself. */
import type { JSX } from "preact";
import { say } from "../../contract/words";

export function FindField({ search, onSearch }: { search: string; onSearch: (text: string) => void }): JSX.Element {
  return (
    <div class="field">
      <label for="search">{say("patients-search")}</label>
      <input id="search" type="text" autocomplete="off" enterkeyhint="search" value={search} onInput={(event) => onSearch(event.currentTarget.value)} />
    </div>
  );
}
