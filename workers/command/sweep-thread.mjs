/* Starts the thread in TypeScript: Node does not hand its loader on to threads. */
import { register } from "tsx/esm/api";

register();
const { work } = await import("./sweep-thread.ts");

export default work;
