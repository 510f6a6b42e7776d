export const WHERE_LOOKED: string;
export function onPath(name: string): string | undefined;
export function installedBrowser(refuse: (given: string) => never): string | undefined;
