/*
 * What judges a sentence besides `[x]` and `[ ]`: words, letters and signs in languages that are often taught or explain.
 */

/** Words for true and false. */
export const trueWords = words(
  "true right correct verdadeiro verdadeira certo correto correcto verdadero cierto correcto vrai juste vero giusto richtig wahr stimmt правда правильно вірно верно prawda waar doğru đúng σωστό σωστο benar oikein sant igaz adevărat pravda točno صح صحيح נכון सही ถูก 对 正确 맞음",
);
export const falseWords = words(
  "false wrong incorrect falso falsa errado incorreto incorrecto faux falsch unwahr sbagliato неправда неправильно невірно неверно ложь хиба fałsz onwaar yanlış sai λάθος λαθος salah väärin falskt hamis nepravda netočno خطأ ग़लत गलत ผิด 错 错误 틀림",
);

/** Letters, signs and short words that say the same in brackets. `o`, `w`, `e`, `s` or `y` may say either. */
const trueMarks = words("v r t p c 1 ok √ + sim sí si sì oui yes ja j tak да д так п da");
const falseMarks = words("f n 0 não nao no non nein nie нет ні н л х");

/** Ticks, crosses and empty boxes that stand alone before what is judged, or done. */
export const boxes = "☐☑☒✓✔✖✅❌✗✘";

/** Signs for true and for false. A letter x is a cross where no bracket is empty. */
const ticks = words("✓ ✔ √ ☑ ✅ v ○ 〇 ◯ ⭕ 👍");
const crosses = words("✗ ✘ ✕ ✖ × x х ｘ ☒ ❌ 👎");

/** Letters and signs that judge where both of them are used: what one of them says alone, another language says of the other. */
const both: readonly (readonly [ReadonlySet<string>, ReadonlySet<string>])[] = [
  [ticks, crosses],
  ...[
    "v f",
    "r f",
    "t f",
    "c e",
    "c i",
    "d y",
    "đ s",
    "b s",
    "o v",
    "õ v",
    "i h",
    "a f",
    "w f",
    "r g",
    "s u",
    "s f",
    "s n",
    "y n",
    "σ λ",
    "в н",
    "ص خ",
    "ص غ",
    "נ ל",
    "正 误",
    "是 否",
  ].map((pair) => {
    const [yes = "", no = ""] = pair.split(" ");
    return [words(yes), words(no)] as const;
  }),
];

function words(text: string): ReadonlySet<string> {
  return new Set(text.split(" "));
}

/** Whether a mark is a word for true or false. */
export const isWord = (mark: string): boolean =>
  trueWords.has(mark.toLowerCase()) || falseWords.has(mark.toLowerCase());

/** What a mark in other words or letters says; undefined where it is none, or may say either. */
export function truthOf(written: string): boolean | undefined {
  const word = written.toLowerCase();
  if (trueMarks.has(word) || trueWords.has(word)) return true;
  return falseMarks.has(word) || falseWords.has(word) ? false : undefined;
}

/** What a tick or a cross says where nothing says which sign is for true: × may be for either, and an x is read as true. */
export function truthOfSign(sign: string): boolean | undefined {
  if ((!ticks.has(sign) && !crosses.has(sign)) || /^[×✕]$/u.test(sign)) return undefined;
  return !/^[✗✘✖☒❌👎]$/u.test(sign);
}

/** What the marks say that are used in one section. */
export interface Custom {
  /** Equal where the same is said of every mark. */
  readonly key: string;
  /** Each is known, and one at least says true and one false. */
  readonly both: boolean;
  /** Signs alone, and an `x` that is read as true stands where a cross would say false. */
  readonly crossed: boolean;
  of(mark: string): boolean | undefined;
}

/** What `marks` say, all that plain items begin with; `truths` are the marks of statements. */
export function customOf(marks: readonly string[], truths: readonly boolean[]): Custom {
  const used = [...new Set(marks.map(plainMark))].filter((mark) => mark !== "").sort();
  // Where brackets are empty a letter x in others says true.
  const empty = truths.includes(false) || marks.includes("");
  const key = [...used, empty, truths.includes(true)].join(" ");
  const isX = (mark: string): boolean => /^[xхｘ]$/u.test(mark);
  // A letter x is a cross where there is no other one.
  const asCross = !empty && !used.some((mark) => crosses.has(mark) && !isX(mark));
  const crossed = asCross && truths.includes(true);
  const pair = both.find(([yes, no]) => {
    const isNo = (mark: string): boolean => no.has(mark) && (asCross || !isX(mark));
    const signs = yes === ticks && crossed ? [...used, "x"] : used;
    const areOf = signs.every((mark) => yes.has(mark) || no.has(mark));
    return areOf && used.some((mark) => yes.has(mark)) && signs.some(isNo);
  });
  if (pair) {
    const [yes, no] = pair;
    const isTrue = (mark: string): boolean => yes.has(mark) || (!asCross && isX(mark));
    const of = (mark: string): boolean | undefined => {
      const plain = plainMark(mark);
      return isTrue(plain) ? true : no.has(plain) ? false : truthOf(plain);
    };
    return { key, both: true, crossed: yes === ticks && crossed, of };
  }
  const said = (mark: string): boolean | undefined => {
    return ticks.has(mark) || crosses.has(mark) ? truthOfSign(mark) : truthOf(mark);
  };
  // A letter that nothing says anything of leaves those in doubt that say either in different languages.
  const doubtful = used.some((mark) => /^\p{L}/u.test(mark) && said(mark) === undefined);
  const isEither = (mark: string): boolean =>
    both.some(([yes]) => yes.has(mark)) && both.some(([, no]) => no.has(mark));
  const all = used.map(said);
  return {
    key,
    both: all.includes(true) && all.includes(false) && !all.includes(undefined),
    crossed: false,
    of: (mark) => (doubtful && isEither(plainMark(mark)) ? undefined : said(plainMark(mark))),
  };
}

const plainMark = (mark: string): string => mark.toLowerCase().replace(/\uFE0F/g, "");
