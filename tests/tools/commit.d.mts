export function commitOf(root: string): string | null;
