/** What a browser stores of this program, and how much more it has room for. */
export interface StorageRoom {
  readonly usedBytes: number;
  readonly leftBytes: number;
  /** True when the browser has agreed not to clear it by itself. */
  readonly stays: boolean;
}

/** `Saved in this browser: 12 MB, room for 2.1 GB more. It stays until you clear it.` */
export function roomWords({ usedBytes, leftBytes, stays }: StorageRoom): string {
  const until = stays
    ? "It stays until you clear it."
    : "The browser may clear it when the disk is full: save plans as files.";
  return `Saved in this browser: ${bytesWords(usedBytes)}, room for ${bytesWords(leftBytes)} more. ${until}`;
}

/** `12 MB`, `2.1 GB`. */
export function bytesWords(bytes: number): string {
  const mb = bytes / 1e6;
  if (mb < 1) return "under 1 MB";
  return mb < 1000 ? `${Math.round(mb)} MB` : `${(mb / 1000).toFixed(1)} GB`;
}
