/*
 * The sentences of the parts Ready? and Calm, from words/en_calm.ftl: imported for its effect by those screens alone, so that
 * the first paint does not wait for them. It must not compute or format a value.
 */
import source from "../../../shared_schemas/words/en_calm.ftl?raw";
import { addWords } from "./words";

addWords(source);
