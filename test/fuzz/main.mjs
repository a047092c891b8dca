import { binary, ensureInstalled, inProject, main, node } from "../../src/build/project.mjs";
import { generateValidators } from "../../src/build/validators.mjs";

/*
 * npm run fuzz: the laws of any text over 200,000 cases (CUTWORK_FUZZ_RUNS), with a new seed each time (CUTWORK_FUZZ_SEED
 * repeats one; it is printed with the results).
 */

await main(async () => {
  await ensureInstalled();
  await generateValidators();
  process.env.CUTWORK_FUZZ_RUNS ??= "200000";
  process.env.CUTWORK_FUZZ_SEED ??= String(Math.floor(Math.random() * 2 ** 31));
  console.log(`${process.env.CUTWORK_FUZZ_RUNS} cases, seed ${process.env.CUTWORK_FUZZ_SEED}`);
  return node(binary("mocha", "mocha"), inProject("test/fuzz/laws.test.ts"));
});
