import { type FileHandle, open } from "node:fs/promises";
import type { FileBytes } from "../../shared/messages.ts";

/**
 * A file read by its handle, which is open for as long as something is being read. Node 20's own `openAsBlob` wraps
 * around at 4 GiB.
 * @param bytes size of the file
 */
export function fileSlices(path: string, bytes: number): FileBytes {
  let handle: Promise<FileHandle> | null = null;
  let readers = 0;

  const read = async (start: number, length: number): Promise<ArrayBuffer> => {
    handle ??= open(path, "r");
    const own = handle;
    readers++;
    try {
      return await readAll(await own, start, length);
    } finally {
      readers--;
      if (readers === 0) {
        handle = null;
        await own.then((it) => it.close()).catch(() => {});
      }
    }
  };

  return {
    size: bytes,
    slice(from, to) {
      const start = Math.min(from, bytes);
      const length = Math.max(0, Math.min(to, bytes) - start);
      return { arrayBuffer: () => read(start, length) };
    },
  };
}

/** Bytes of a file, fewer where it has become shorter. */
async function readAll(file: FileHandle, start: number, length: number): Promise<ArrayBuffer> {
  const bytes = new Uint8Array(length);
  let done = 0;
  while (done < length) {
    const { bytesRead } = await file.read(bytes, done, length - done, start + done);
    if (bytesRead === 0) return bytes.buffer.slice(0, done);
    done += bytesRead;
  }
  return bytes.buffer;
}
