/** Which commit the sources are, for the report of a bug. */
import { execFileSync } from "node:child_process";
import { realpathSync } from "node:fs";

/** The commit of the git working copy at `root`, marked where files were changed since; null when `root` is none. */
export function commitOf(root) {
  const git = (...words) =>
    execFileSync("git", words, {
      cwd: root,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
  try {
    if (realpathSync(git("rev-parse", "--show-toplevel").trim()) !== realpathSync(root))
      return null;
    return git("describe", "--always", "--dirty", "--abbrev=12", "--exclude=*").trim();
  } catch {
    return null;
  }
}
