/** The licenses of every package that the program is built from. */
export function notices(): string;

import type { Plugin } from "vite";

export function noticesPlugin(): Plugin;
