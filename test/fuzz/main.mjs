import { binary, ensureInstalled, main, node } from "../../src/build/project.mjs";
import { generateValidators } from "../../src/build/validators.mjs";

/*
 * npm run fuzz: the laws of any text over 200,000 cases (CUTWORK_FUZZ_RUNS), and the provers against others over a twentieth of
 * that each, with a new seed each time (CUTWORK_FUZZ_SEED repeats one; it is printed with the results).
 */

await main(async () => {
  await ensureInstalled();
  await generateValidators();
  process.env.CUTWORK_FUZZ_RUNS ??= "200000";
  process.env.CUTWORK_FUZZ_SEED ??= String(Math.floor(Math.random() * 2 ** 31));
  console.log(`${process.env.CUTWORK_FUZZ_RUNS} cases, seed ${process.env.CUTWORK_FUZZ_SEED}`);
  return node(binary("mocha", "mocha"), "test/fuzz/laws.test.ts", "test/prove/against/*.test.ts");
});
