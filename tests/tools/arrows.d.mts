export function findOffences(files: ReadonlyMap<string, string>): string[];
