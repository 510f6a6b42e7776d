/// <reference types="vite/client" />

/** What the page was built from; put in at the build. `commit` is null when that was not a git working copy. */
declare const BUILT_FROM: { readonly version: string; readonly commit: string | null };
