/** The identifier of a group: the same members in the same order give the same. */
export function groupId(members: readonly { readonly id: string }[]): string {
  return `group:${members.map(({ id }) => id).join("+")}`;
}
