/**
 * Articles by language (BCP 47 primary tag), as learners' lists write them before a noun. Those that end in an apostrophe stand
 * right before the next word. A small table of our own: values from memory, no package lists them.
 */
const articles: Readonly<Record<string, readonly string[]>> = {
  ca: ["el", "la", "els", "les", "l'", "un", "una", "uns", "unes"],
  da: ["en", "et", "den", "det", "de"],
  de: ["der", "die", "das", "den", "dem", "des", "ein", "eine", "einen", "einem", "einer", "eines"],
  el: ["ο", "η", "το", "οι", "τα", "τον", "την", "τη", "του", "της", "των", "ένας", "μια", "μία", "ένα"],
  en: ["the", "a", "an"],
  es: ["el", "la", "los", "las", "un", "una", "unos", "unas"],
  fr: ["le", "la", "les", "l'", "un", "une", "des", "du"],
  hu: ["a", "az", "egy"],
  it: ["il", "lo", "la", "i", "gli", "le", "l'", "un", "uno", "una", "un'"],
  nl: ["de", "het", "een"],
  no: ["en", "et", "ei", "den", "det", "de"],
  pt: ["o", "a", "os", "as", "um", "uma", "uns", "umas"],
  ro: ["un", "o", "niște"],
  sv: ["en", "ett", "den", "det", "de"],
};

/** How texts with an article begin, by language. */
const beginnings = new Map(
  Object.entries(articles).map(([lang, known]) => [
    lang,
    known.flatMap((article) => (article.endsWith("'") ? [article, article.replace("'", "’")] : [`${article} `])),
  ]),
);

/** By language with its region, as it is asked for. */
const asked = new Map<string, readonly string[]>();

function beginningsIn(lang: string): readonly string[] {
  const known = asked.get(lang);
  if (known) return known;
  const found = beginnings.get(lang.split("-", 1)[0]?.toLowerCase() ?? "") ?? [];
  asked.set(lang, found);
  return found;
}

/** A text in lower case without the article at its start; the text itself where nothing else would be left. */
export function withoutArticle(text: string, lang: string): string {
  for (const start of beginningsIn(lang)) {
    if (!text.startsWith(start)) continue;
    const rest = text.slice(start.length).trim();
    if (rest !== "") return rest;
  }
  return text;
}
