import type { PDFDocument } from "@cantoo/pdf-lib";

/** A page's label in two parts: `Stakes 2` is page 2 of `Stakes`. */
interface PageLabel {
  readonly prefix: string;
  readonly number: number;
}

/**
 * A PDF file with its title, and each page labeled as given: `Build 1`, `Stakes 2`. Source: PDF 32000-1:2008, 12.4.2.
 * @throws Error where the file has another number of pages than there are labels
 */
export async function withLabels(
  pdf: Uint8Array,
  title: string,
  labels: readonly string[],
): Promise<Uint8Array> {
  const { PDFDocument } = await import("@cantoo/pdf-lib");
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const count = document.getPageCount();
  if (count !== labels.length) {
    throw new Error(`Expected ${labels.length} pages in the PDF file; the browser made ${count}.`);
  }
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setCreator("Drystead");
  await putLabels(document, labels.map(parted));
  return document.save();
}

function parted(label: string): PageLabel {
  const [, prefix = "", number = "1"] = /^(.*?)(\d+)$/.exec(label) ?? ["", label];
  return { prefix, number: Number(number) };
}

/** One entry in the number tree for each run of pages that count on. */
async function putLabels(document: PDFDocument, labels: readonly PageLabel[]): Promise<void> {
  const { PDFName, PDFHexString } = await import("@cantoo/pdf-lib");
  const begins = labels.flatMap(({ prefix, number }, index) => {
    const before = labels[index - 1];
    const goesOn = before?.prefix === prefix && before.number + 1 === number;
    return goesOn ? [] : [{ index, prefix, number }];
  });
  const numbers = begins.flatMap(({ index, prefix, number }) => [
    index,
    { S: "D", P: PDFHexString.fromText(prefix), St: number },
  ]);
  document.catalog.set(PDFName.of("PageLabels"), document.context.obj({ Nums: numbers }));
}
