import type { Plugin } from "vite";

export function noticesPlugin(): Plugin;
