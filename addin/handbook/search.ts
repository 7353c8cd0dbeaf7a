import type {} from "./found";

/** Search for a page of the handbook. It works from a folder too, where a page may fetch nothing but scripts. */
const MOST = 12;

const top = document.currentScript?.getAttribute("data-top") ?? "";
const place = document.getElementById("search");
if (place) {
  const label = document.createElement("label");
  label.textContent = "Search the handbook";
  label.htmlFor = "wanted";
  const input = document.createElement("input");
  input.id = "wanted";
  input.type = "search";
  input.autocomplete = "off";
  const found = document.createElement("div");
  found.id = "found";
  found.setAttribute("role", "status");
  place.append(label, input, found);

  const show = (): void => {
    found.replaceChildren();
    if (input.value.trim() === "" || !window.handbookSearch) return;
    const pages = window.handbookSearch(input.value).slice(0, MOST);
    if (pages.length === 0) {
      found.textContent = `Nothing found for "${input.value}". Try another word, such as "winter", "meal" or "egg".`;
      return;
    }
    const list = document.createElement("ul");
    for (const { id, title, summary } of pages) {
      const link = document.createElement("a");
      link.href = `${top}${id}`;
      link.textContent = title;
      const words = document.createElement("span");
      words.textContent = summary;
      const item = document.createElement("li");
      item.append(link, words);
      list.append(item);
    }
    found.append(list);
  };
  input.addEventListener("input", show);
  input.addEventListener(
    "focus",
    () => {
      const script = document.createElement("script");
      script.src = `${top}found.js`;
      script.addEventListener("load", show);
      document.head.append(script);
    },
    { once: true },
  );
  place.addEventListener("keydown", (event) => {
    if (event.key === "Escape") {
      input.value = "";
      show();
      input.focus();
    }
    if (event.key === "Enter" && event.target === input) found.querySelector("a")?.click();
  });
}
