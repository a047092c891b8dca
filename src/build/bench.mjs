import { readdirSync } from "node:fs";
import { ensureInstalled, inProject, main, node, Stop } from "./project.mjs";
import { generateValidators } from "./validators.mjs";

/*
 * npm run bench [WORD]: runs test/bench/*.bench.ts one after the other, or those with the word in their name; translated as the
 * extension is, so that nothing is measured that only a test runner adds.
 */

await main(async () => {
  await ensureInstalled();
  await generateValidators();
  const word = process.argv[2] ?? "";
  const files = readdirSync(inProject("test/bench"))
    .filter((file) => file.endsWith(".bench.ts") && file.includes(word))
    .sort();
  const { build } = await import("esbuild");
  if (files.length === 0) throw new Stop(`no benchmark named ${word}`);
  for (const file of files) {
    console.log(`\n── ${file}`);
    const outfile = inProject(".test-out/bench", file.replace(/ts$/, "mjs"));
    await build({
      entryPoints: [inProject("test/bench", file)],
      outfile,
      bundle: true,
      packages: "external",
      platform: "node",
      format: "esm",
      target: "node20",
      logLevel: "error",
    });
    const code = await node(outfile);
    if (code !== 0) return code;
  }
  return 0;
});
