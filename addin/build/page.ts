const tag = (file: string): string =>
  file.endsWith(".css") ? `<link rel="stylesheet" href="${file}" />` : `<script defer src="${file}"></script>`;

/** A page: its template with the scripts and style sheets that were built for it, in their order. */
export const page = (template: string, files: readonly string[]): string => {
  const [head, body, more] = template.split("</head>");
  if (head === undefined || body === undefined || more !== undefined) throw new Error("a page has one end of its head");
  return `${head}  ${files.map(tag).join("\n    ")}\n  </head>${body}`;
};
