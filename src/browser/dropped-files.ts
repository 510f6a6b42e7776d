import { FOLDER_LIMITS, isGroundName, refuseFolder } from "../../shared/raster-files.ts";

/**
 * The files that were dropped; of a folder those that may be elevation data, in its folders too. Must be called before
 * the drop event has ended.
 * @throws Refusal `file/directory` for a folder without any, or with too many
 */
export async function droppedFiles(transfer: DataTransfer): Promise<File[]> {
  const plain = [...transfer.files];
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry?.() ?? null);
  if (!entries.some((entry) => entry?.isDirectory)) return plain;
  const found: File[] = [];
  for (const entry of entries) {
    if (entry?.isFile) found.push(await fileOf(entry as FileSystemFileEntry));
    else if (entry) found.push(...(await filesIn(entry as FileSystemDirectoryEntry)));
  }
  return found;
}

async function filesIn(folder: FileSystemDirectoryEntry): Promise<File[]> {
  const files: File[] = [];
  const look = async (at: FileSystemDirectoryEntry, depth: number): Promise<void> => {
    for (const entry of await entriesOf(at)) {
      if (entry.isDirectory && depth < FOLDER_LIMITS.depth) {
        await look(entry as FileSystemDirectoryEntry, depth + 1);
      } else if (entry.isFile && isGroundName(entry.name)) {
        files.push(await fileOf(entry as FileSystemFileEntry));
      }
      if (files.length > FOLDER_LIMITS.files) refuseFolder(folder.name, files.length);
    }
  };
  await look(folder, 1);
  if (files.length === 0) refuseFolder(folder.name, 0);
  return files;
}

function fileOf(entry: FileSystemFileEntry): Promise<File> {
  return new Promise((done, failed) => entry.file(done, failed));
}

/** All entries of a folder, by name: the browser gives some at a time. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, failed) =>
      reader.readEntries(done, failed),
    );
    if (some.length === 0) return all.sort((a, b) => (a.name < b.name ? -1 : 1));
    all.push(...some);
  }
}
