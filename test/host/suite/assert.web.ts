import { assert as chai } from "chai";

/*
 * Stands in for `node:assert/strict` where tests run in a web worker: the functions that the suite uses, with the same meaning.
 */

type Check = (error: unknown) => void;

const fits = (expected: RegExp): Check => {
  return (error) => chai.match(error instanceof Error ? error.message : String(error), expected);
};

const assert = Object.assign((value: unknown, message?: string): asserts value => chai.isOk(value, message), {
  ok: (value: unknown, message?: string): asserts value => chai.isOk(value, message),
  equal: (actual: unknown, expected: unknown, message?: string) => chai.strictEqual(actual, expected, message),
  notEqual: (actual: unknown, expected: unknown, message?: string) => chai.notStrictEqual(actual, expected, message),
  deepEqual: (actual: unknown, expected: unknown, message?: string) => chai.deepEqual(actual, expected, message),
  notDeepEqual: (actual: unknown, expected: unknown, message?: string) => chai.notDeepEqual(actual, expected, message),
  match: (actual: string, expected: RegExp, message?: string) => chai.match(actual, expected, message),
  doesNotMatch: (actual: string, expected: RegExp, message?: string) => chai.notMatch(actual, expected, message),
  fail: (message?: string): never => chai.fail(message),
  throws: (act: () => unknown, expected?: RegExp) => {
    let thrown: { readonly error: unknown } | undefined;
    try {
      act();
    } catch (error) {
      thrown = { error };
    }
    if (thrown === undefined) chai.fail("nothing was thrown");
    else if (expected !== undefined) fits(expected)(thrown.error);
  },
  rejects: async (promise: PromiseLike<unknown>, expected?: RegExp) => {
    let rejection: { readonly error: unknown } | undefined;
    try {
      await promise;
    } catch (error) {
      rejection = { error };
    }
    if (rejection === undefined) chai.fail("nothing was rejected");
    else if (expected !== undefined) fits(expected)(rejection.error);
  },
});

export default assert;
