import assert from "node:assert/strict";
import { Latest, type Turn } from "../../src/editor/latest";
import { HandClock } from "./handClock";

function workbench() {
  const clock = new HandClock();
  const runs: { readonly key: string; readonly turn: Turn }[] = [];
  const errors: unknown[] = [];
  const latest = new Latest<string>(
    async (key, turn) => {
      runs.push({ key, turn });
      if (key === "breaks") throw new Error("broken");
    },
    (error) => errors.push(error),
    clock,
  );
  return { clock, runs, errors, latest, keys: () => runs.map(({ key }) => key) };
}

describe("the last request wins", () => {
  it("runs once after the pause, however often it was asked", () => {
    const { clock, latest, keys } = workbench();
    latest.request("a", 150);
    clock.pass(100);
    latest.request("a", 150);
    clock.pass(100);
    assert.deepEqual(keys(), []);
    clock.pass(50);
    assert.deepEqual(keys(), ["a"]);
    clock.pass(1000);
    assert.deepEqual(keys(), ["a"]);
  });

  it("keeps documents apart", () => {
    const { clock, latest, keys } = workbench();
    latest.request("a", 150);
    clock.pass(100);
    latest.request("b", 150);
    clock.pass(50);
    assert.deepEqual(keys(), ["a"]);
    clock.pass(100);
    assert.deepEqual(keys(), ["a", "b"]);
  });

  it("outdates a run by a newer request, and serves that one too", () => {
    const { clock, runs, latest } = workbench();
    latest.request("a", 0);
    clock.pass(0);
    assert.equal(runs[0]?.turn.current, true);
    latest.request("a", 150);
    assert.equal(runs[0]?.turn.current, false);
    clock.pass(150);
    assert.equal(runs[1]?.turn.current, true);
  });

  it("drops what waits and what runs", () => {
    const { clock, runs, latest, keys } = workbench();
    latest.request("a", 0);
    clock.pass(0);
    latest.request("b", 0);
    latest.dropAll();
    clock.pass(10);
    assert.deepEqual(keys(), ["a"]);
    assert.equal(runs[0]?.turn.current, false);
  });

  it("survives a job that fails", async () => {
    const { clock, errors, latest, keys } = workbench();
    latest.request("breaks", 0);
    clock.pass(0);
    await Promise.resolve();
    await Promise.resolve();
    assert.equal(errors.length, 1);
    latest.request("a", 0);
    clock.pass(0);
    assert.deepEqual(keys(), ["breaks", "a"]);
  });
});
