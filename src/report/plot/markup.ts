const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text inside an element or a quoted attribute; characters that XML cannot hold become a replacement sign. */
export const escapeMarkup = (text: string): string =>
  text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "\ufffd")
    .replace(/[&<>"']/g, (sign) => entities[sign]!);

/** A coordinate to 0.01, so that the same drawing has the same bytes everywhere. */
export const coordinate = (value: number): string => String(Math.round(value * 100) / 100 + 0);

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element with its attributes in the order given and its content, which is markup already. */
export function element(name: string, attributes: Attributes, content?: string): string {
  const said = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) => ` ${key}="${typeof value === "number" ? coordinate(value) : escapeMarkup(value!)}"`,
    )
    .join("");
  return content === undefined ? `<${name}${said}/>` : `<${name}${said}>${content}</${name}>`;
}
