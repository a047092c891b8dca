import { readdirSync } from "node:fs";
import { ensureInstalled, inProject, main, node, Stop } from "./project.mjs";
import { generateValidators } from "./validators.mjs";

/* npm run bench [WORD]: runs test/bench/*.bench.ts one after the other, or those with the word in their name. */

await main(async () => {
  await ensureInstalled();
  await generateValidators();
  const word = process.argv[2] ?? "";
  const files = readdirSync(inProject("test/bench"))
    .filter((file) => file.endsWith(".bench.ts") && file.includes(word))
    .sort();
  if (files.length === 0) throw new Stop(`no benchmark named ${word}`);
  for (const file of files) {
    console.log(`\n── ${file}`);
    const code = await node("--import", "tsx", inProject("test/bench", file));
    if (code !== 0) return code;
  }
  return 0;
});
