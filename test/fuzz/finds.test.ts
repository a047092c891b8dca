import { testWorkshop } from "../support/units";
import { fixHolds } from "./laws";

/* Texts that broke the law of fixes once, as they were shrunk. */

const finds: Readonly<Record<string, string>> = {
  "a comment behind a title of several lines": "---\ntitle: The café\n - ☀ #5 = ☀\n\n",
  "a line that ends in a lone return, before which another one is put":
    "## One\r\r- pão = pão\r| pão |\r| --- |\r\r```activity\rmake: tiles\r```\r\r",
};

describe("texts that broke a law", () => {
  for (const [what, text] of Object.entries(finds)) {
    it(what, async () => {
      const workshop = await testWorkshop();
      for (let pick = 0; pick < 12; pick++) fixHolds(workshop, text, pick);
    });
  }
});
