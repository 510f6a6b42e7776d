import type { ImageFileDirectory } from "geotiff";

type TagName = Exclude<Parameters<ImageFileDirectory["hasTag"]>[0], number>;

/** The value of a tag as stored; undefined when it is not there. All tags have been read beforehand. */
export function tagValue(directory: ImageFileDirectory, tag: TagName): unknown {
  return directory.getValue(tag as "ImageWidth");
}

/** All numbers of a tag; empty when it is not there or holds text. */
export function tagNumbers(directory: ImageFileDirectory, tag: TagName): ArrayLike<number> {
  const value = tagValue(directory, tag);
  if (typeof value === "number") return [value];
  const isList = typeof value === "object" && value !== null && "length" in value;
  return isList ? (value as ArrayLike<number>) : [];
}

/** The first number of a tag. */
export function tagNumber(directory: ImageFileDirectory, tag: TagName, otherwise: number): number {
  const value = tagNumbers(directory, tag)[0];
  return typeof value === "number" ? value : otherwise;
}
