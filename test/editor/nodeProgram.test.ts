import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import path from "node:path";
import { nodeProgram } from "../../src/editor/nodeProgram";
import { Desk } from "../cli/desk";

describe("the Node that checks units in a task", () => {
  it("is the one that runs the extension", () => {
    assert.deepEqual(nodeProgram({ execPath: "/opt/editor/editor" }), {
      path: "/opt/editor/editor",
      env: { ELECTRON_RUN_AS_NODE: "1" },
    });
    assert.equal(nodeProgram(undefined).path, "node");
  });

  it("runs the command line, with nothing on the path", function () {
    this.timeout(60_000);
    const desk = new Desk();
    const file = desk.write("a.unit.md", "## A\n");
    const { path: program, env } = nodeProgram(process);
    const command = path.join(__dirname, "../../dist/cli.js");
    const { status, stdout } = spawnSync(program, [command, "check", file], {
      cwd: desk.folder,
      env: { ...env, PATH: "" },
      encoding: "utf8",
    });
    desk.clear();
    assert.deepEqual([status, stdout], [0, "a.unit.md: nothing found\n"]);
  });
});
