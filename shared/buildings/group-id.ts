/** The identifier of a group; its members are in the order of their ids, so that the same give the same. */
export function groupId(members: readonly { readonly id: string }[]): string {
  return `group:${members.map(({ id }) => id).join("+")}`;
}
