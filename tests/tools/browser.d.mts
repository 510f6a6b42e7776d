export function findBrowser(): string;
