/**
 * Work in steps: it stops now and then to say what it is at, and goes on when it is asked to. What comes out does not hang on
 * when that is, so a caller may watch the clock, do other things meanwhile, or drop the work.
 */
export type Steps<Result, State = string> = Generator<State, Result, void>;

/** The result, without a pause. */
export function finished<Result>(steps: Steps<Result, unknown>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** A function that takes all steps of another at once. */
export function atOnce<Given extends readonly unknown[], Result>(
  steps: (...given: Given) => Steps<Result, unknown>,
): (...given: Given) => Result {
  return (...given) => finished(steps(...given));
}

/** The same steps, all of them told in these words. */
export function* told<Result>(steps: Steps<Result, unknown>, words: string): Steps<Result> {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    yield words;
  }
}

/** What is made of each, with a pause after each. */
export function* mapped<Each, Made>(
  all: Iterable<Each>,
  make: (each: Each, index: number) => Made,
): Steps<Made[], undefined> {
  const made: Made[] = [];
  for (const each of all) {
    made.push(make(each, made.length));
    yield;
  }
  return made;
}

/** Those of which a question in steps is answered with yes. */
export function* sifted<Each>(
  all: readonly Each[],
  question: (each: Each) => Steps<boolean, unknown>,
): Steps<Each[], unknown> {
  const found: Each[] = [];
  for (const each of all) if (yield* question(each)) found.push(each);
  return found;
}
