/** A reader written from the grammar of RFC 4180 section 2, for round trips. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  for (let match = field.exec(text); match; match = field.exec(text)) {
    row.push(match[1] === undefined ? match[2]! : match[1].replaceAll('""', '"'));
    if (match[3] === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
