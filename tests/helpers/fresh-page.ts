import { notices } from "../../src/document/notices.ts";

/* Before each file of unit tests: files share a process, and what one leaves on the screen is not the next one's. */
notices.value = [];
