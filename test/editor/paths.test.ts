import assert from "node:assert/strict";
import { insidePath, isAbsolute, pathFrom, upwards } from "../../src/editor/files/paths";

describe("paths of pictures", () => {
  const cases: readonly (readonly [string, string | undefined])[] = [
    ["spoon.png", "/school/units/spoon.png"],
    ["./img/spoon.png", "/school/units/img/spoon.png"],
    ["../img/spoon.png", "/school/img/spoon.png"],
    ["img/../../img/a spoon.png", "/school/img/a spoon.png"],
    ["../../secret.png", undefined],
    ["../../school2/spoon.png", undefined],
    ["../../../../../etc/passwd", undefined],
    ["/etc/passwd", undefined],
    ["\\\\server\\share\\a.png", undefined],
    ["..\\..\\secret.png", undefined],
    ["C:\\a.png", undefined],
    ["file:///etc/passwd", undefined],
    ["https://example.org/a.png", undefined],
    ["data:image/png;base64,AA", undefined],
    ["", undefined],
    ["..", undefined],
  ];
  for (const [written, path] of cases) {
    it(`${JSON.stringify(written)} is ${path ?? "out of bounds"}`, () => {
      assert.equal(insidePath("/school", "/school/units", written), path);
    });
  }

  it("takes the whole tree where the workspace is its root", () => {
    assert.equal(insidePath("/", "/units", "../a.png"), "/a.png");
  });
});

describe("how a place is written", () => {
  it("leads back to it", () => {
    for (const [folder, file, written] of [
      ["/w/units", "/w/units/a.unit.md", "a.unit.md"],
      ["/w/units", "/w/units/img/a.png", "img/a.png"],
      ["/w/units/may", "/w/units/a.unit.md", "../a.unit.md"],
      ["/w/a/b", "/w/c/d/e.unit.md", "../../c/d/e.unit.md"],
      ["/w/a", "/w/a", "../a"],
      ["/", "/a.unit.md", "a.unit.md"],
    ] as const) {
      assert.equal(pathFrom(folder, file), written);
      assert.equal(insidePath("/", folder, written), file);
    }
  });
});

describe("folders upwards", () => {
  it("goes from the unit's folder to the workspace's", () => {
    assert.deepEqual(upwards("/w/s", "/w/s/a/b"), ["/w/s/a/b", "/w/s/a", "/w/s"]);
    assert.deepEqual(upwards("/w/s/", "/w/s"), ["/w/s"]);
    assert.deepEqual(upwards("/", "/a"), ["/a", "/"]);
  });

  it("stays in the folder of a unit outside", () => {
    assert.deepEqual(upwards("/w/s", "/w/s2/a"), ["/w/s2/a"]);
  });
});

describe("an output folder", () => {
  it("is absolute on every system's terms", () => {
    for (const setting of ["/home/out", "C:\\out", "c:/out", "\\\\server\\out"])
      assert.ok(isAbsolute(setting), setting);
    for (const setting of ["out", "../out", "./a", "a:b"]) assert.ok(!isAbsolute(setting), setting);
  });
});
