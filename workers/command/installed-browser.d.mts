export const NAMES: readonly string[];
export const PLACES: readonly string[];
export function onPath(name: string): string | undefined;
export function installedBrowser(refuse: (given: string) => never): string | undefined;
