import { attr, findChild, findChildren, parseXml, textContent, type XmlElement } from "@cj-tech-master/excelts/xml";
import type { FileSheet } from "./book";
import type { Parts } from "./parts";

const WORKBOOK = "xl/workbook.xml";

const rootOf = (parts: Parts, path: string): XmlElement | undefined => {
  const part = parts[path];
  return part && parseXml(new TextDecoder().decode(part)).root;
};

/** What a part refers to, by the id of the reference: its kind, and the path from the file's root. */
const referencesOf = (parts: Parts, path: string): ReadonlyMap<string, { kind: string; path: string }> => {
  const folder = path.slice(0, path.lastIndexOf("/"));
  const root = rootOf(parts, `${folder}/_rels/${path.slice(folder.length + 1)}.rels`);
  return new Map(
    (root ? findChildren(root, "Relationship") : []).map((one) => [
      attr(one, "Id") ?? "",
      {
        kind: (attr(one, "Type") ?? "").replace(/.*\//, ""),
        path: new URL(attr(one, "Target") ?? "", `file:///${folder}/`).pathname.slice(1),
      },
    ]),
  );
};

/** All letters under an element, in order, but for the reading aids of East Asian words. */
const lettersOf = (element: XmlElement): string =>
  element.children
    .map((child) => {
      if (child.type !== "element" || child.name === "rPh") return "";
      return child.name === "t" ? textContent(child) : lettersOf(child);
    })
    .join("");

/** The notes of each sheet, by its name. The library knows only those of cells that have content or a look. */
export const notesIn = (parts: Parts): ReadonlyMap<string, FileSheet["notes"]> => {
  const book = rootOf(parts, WORKBOOK);
  const sheets = book && findChild(book, "sheets");
  const references = referencesOf(parts, WORKBOOK);
  return new Map(
    (sheets ? findChildren(sheets, "sheet") : []).map((sheet) => {
      const path = references.get(attr(sheet, "r:id") ?? "")?.path ?? "";
      const notes = [...referencesOf(parts, path).values()]
        .filter(({ kind }) => kind === "comments")
        .flatMap((reference) => {
          const root = rootOf(parts, reference.path);
          const list = root && findChild(root, "commentList");
          return list ? findChildren(list, "comment") : [];
        })
        .flatMap((note) => {
          const words = findChild(note, "text");
          const [at, text] = [attr(note, "ref"), words && lettersOf(words)];
          return at && text ? [{ at, text }] : [];
        });
      return [attr(sheet, "name") ?? "", notes];
    }),
  );
};
