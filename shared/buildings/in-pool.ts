/**
 * Does tasks, so many at once, begun in their order. Ends when all have; after the first that fails none is begun,
 * and it is thrown once those under way have ended.
 */
export async function inPool<Task>(
  atOnce: number,
  tasks: readonly Task[],
  work: (task: Task) => Promise<void>,
): Promise<void> {
  let next = 0;
  let failed: { readonly thrown: unknown } | null = null;
  const one = async () => {
    while (next < tasks.length && !failed) {
      const task = tasks[next++]!;
      try {
        await work(task);
      } catch (thrown) {
        failed ??= { thrown };
      }
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, atOnce) }, one));
  const end = failed as { readonly thrown: unknown } | null;
  if (end) throw end.thrown;
}
