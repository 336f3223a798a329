/*
 * The sentences of the part Cuff and of the bag, from words/en_cuff.ftl: imported for its effect by those screens alone, so that
 * the first paint does not wait for them. It must not compute or format a value.
 */
import source from "../../../shared_schemas/words/en_cuff.ftl?raw";
import { addWords } from "./words";

addWords(source);
